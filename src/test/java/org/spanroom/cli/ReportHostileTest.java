package org.spanroom.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanroom.testing.Browser;

/** Names that would break out of a page, formulas, marks that turn text around and very long texts: a page shows them and does nothing else. */
class ReportHostileTest {
    private static final List<String> TEXTS = List.of(
            "</script><script>alert(1)</script>",
            "<img src=x onerror=alert(1)>",
            "\"><svg onload=alert(1)>",
            "{{{csp}}}{{#scripts}}",
            "=cmd|' /C calc'!A0",
            "abc\u202Efdp.exe",
            "x".repeat(10_000),
            "<!--",
            "]]>",
            "a&amp;b");

    private static final ObjectMapper JSON = new ObjectMapper();

    @TempDir
    Path folder;

    @Test
    void hostileTextsAreTextsInThePage() throws IOException {
        writeLayers();
        CommandRun ranked = CommandRun.of(
                "rank",
                "--config",
                folder.resolve("config.yaml").toString(),
                "--output",
                folder.resolve("<b>run<").toString());
        assertEquals(ExitCode.OK, ranked.exitCode(), ranked.err());
        Path page = folder.resolve("page.html");
        CommandRun made = CommandRun.of("report", folder.resolve("<b>run<").toString(), "--output", page.toString());
        assertEquals(ExitCode.OK, made.exitCode(), made.err());
        var data = new ReportData(page);

        for (String tag : List.of("<script>alert", "<img src=x", "<svg onload", "<b>run")) {
            assertFalse(data.html().contains(tag), tag);
        }
        assertTrue(data.texts().contains("&lt;b&gt;run&lt;"), "the folder's name is escaped");
        assertEquals(3, data.html().split("<script>", -1).length - 1, "scripts");
        JsonNode spans = data.core().get("spans");
        List<String> banks = texts(ReportData.column(spans, "duct_bank"));
        List<String> owners = texts(ReportData.column(spans, "owner"));
        List<String> kept = texts(ReportData.column(spans, "src_street"));
        assertTrue(spans.get("rows").asInt() >= TEXTS.size());
        for (String text : TEXTS) {
            assertTrue(banks.contains(text), "bank " + text);
            assertTrue(owners.contains(text), "owner " + text);
            assertTrue(kept.contains(text), "kept " + text);
        }
        assertEquals("src_street", data.core().at("/charts/by_district/field").asText());
        demandHarmless(page, folder);
    }

    /** In a browser nothing of them runs, loads or becomes an element; the table shows them as they are. */
    private static void demandHarmless(Path page, Path folder) {
        try (Browser browser = Browser.start(1440, 900, folder)) {
            browser.open(page);
            browser.run("Spanroom.select(0, {from: 'summary'})");
            browser.waitUntil("return document.getElementById('card').open");

            assertEquals(List.of(), browser.problems());
            assertEquals(List.of(), browser.requests(page));
            assertEquals(0L, browser.run("return document.querySelectorAll('img, [onload], [onerror]').length"));
            assertEquals(
                    3L, browser.run("return document.querySelectorAll('script:not([type=\"text/plain\"])').length"));
            String shown = (String) browser.run("return document.getElementById('grid-body').textContent");
            assertTrue(shown.contains("<img src=x onerror=alert(1)>"), shown);
        }
    }

    private static List<String> texts(List<JsonNode> cells) {
        return cells.stream().map(JsonNode::asText).toList();
    }

    private void writeLayers() throws IOException {
        List<String> ducts = new ArrayList<>();
        List<String> vaults = new ArrayList<>();
        for (int i = 0; i < TEXTS.size(); i++) {
            String text = JSON.writeValueAsString(TEXTS.get(i));
            double lat = 40 + 0.002 * i;
            ducts.add(
                    ("{\"type\":\"Feature\",\"properties\":{\"duct\":%s,\"bank\":%s,\"owner\":%s,\"street\":%s,\"n\":3,\"live\":\"live\",\"consent\":\"yes\",\"loose\":\"yes\"},"
                                    + "\"geometry\":{\"type\":\"LineString\",\"coordinates\":[[-30,%s],[-29.999,%s]]}}")
                            .formatted(text, text, text, text, lat, lat));
            for (String lon : List.of("-30", "-29.999")) {
                String vault = JSON.writeValueAsString(TEXTS.get(i) + (lon.equals("-30") ? "/w" : "/e"));
                vaults.add(
                        "{\"type\":\"Feature\",\"properties\":{\"vault\":%s},\"geometry\":{\"type\":\"Point\",\"coordinates\":[%s,%s]}}"
                                .formatted(vault, lon, lat));
            }
        }
        String collection = "{\"type\":\"FeatureCollection\",\"features\":[%s]}";
        Files.writeString(folder.resolve("ducts.geojson"), collection.formatted(String.join(",", ducts)));
        Files.writeString(folder.resolve("vaults.geojson"), collection.formatted(String.join(",", vaults)));
        Files.writeString(folder.resolve("config.yaml"), """
                inputs:
                  routes:
                    file: ducts.geojson
                    keep: [street]
                    fields: {duct: duct, duct_bank: bank, owner: owner, innerduct_count: n, cable_count: n,
                      in_service: live, owner_consent: consent, loose_cable_allowed: loose}
                  vaults: {file: vaults.geojson, fields: {vault: vault}}
                """);
    }
}
