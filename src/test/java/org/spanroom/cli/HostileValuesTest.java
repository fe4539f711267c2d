package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.json.JsonWriteFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.testing.FolderState;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/**
 * Texts made to be run by whatever shows them, as names and attributes of ducts and vaults, through a whole run and its
 * explanations. What harms where: OWASP's pages on CSV injection and cross-site scripting, CWE-89 (SQL), CWE-150 (terminal
 * sequences), CVE-2021-42574 (direction marks), from memory.
 */
class HostileValuesTest {
    private static final List<String> NASTY = List.of(
            "=HYPERLINK(\"http://example.org\",\"x\")",
            "+1+cmd|' /C calc'!A0",
            "-2+3",
            "@SUM(A1)",
            "\t=1+1",
            "\r=1+1",
            "\n=1+1",
            " =1+1",
            "\uFF1D1+1",
            "a\r\nb",
            "<script>alert(1)</script>",
            "\"><img src=x onerror=alert(1)>",
            "]]><!--",
            "&xxe;&#0;",
            "<!DOCTYPE x [<!ENTITY xxe SYSTEM \"file:///etc/passwd\">]>",
            "'; DROP TABLE spans; --",
            "\"; DROP TABLE spans; --",
            "a\"b,c;d|e",
            "../../etc/passwd",
            "..\\..\\con",
            "nul\u0000byte",
            "\u001b[31mred\u001b[2J",
            "\u001b]0;title\u0007",
            "\u009b31m",
            "gpj.\u202Ecod",
            "two\u2028lines",
            "half \uD800 pair",
            "\uFEFFmark",
            "%n%s%d%x",
            "${jndi:ldap://example.org/a}",
            "{{7*7}}",
            "null",
            "{\"a\": [1]}",
            "- yaml: *x",
            "long".repeat(100),
            "e\u0301 \uD83D\uDE80");

    private static final Set<String> DRAWN = Set.of(
            "svg", "title", "rect", "line", "polyline", "polygon", "path", "circle", "text", "g", "tspan", "desc");

    private static final Pattern NUMBER = Pattern.compile("[+-]?\\d+(\\.\\d+)?");
    private static final Pattern ACTING =
            Pattern.compile("[\\p{Cntrl}&&[^\\n]]|[\\u0080-\\u009f\\u2028-\\u202e\\u2066-\\u2069]");

    @TempDir
    static Path folder;

    private static Path run;
    private static CommandRun ranked;

    @BeforeAll
    static void rankDuctsWithTheseNames() throws IOException {
        writeLayers();
        Files.writeString(folder.resolve("config.yaml"), config(), StandardCharsets.UTF_8);
        run = folder.resolve("run");
        ranked = CommandRun.of(
                "rank",
                "--columns",
                "all",
                "--formats",
                "geopackage,csv,geojson,shapefile",
                "--config",
                folder.resolve("config.yaml").toString(),
                "--output",
                run.toString());
        assertThat(ranked.exitCode()).as(ranked.err()).isZero();
    }

    @Test
    void everyDuctBecomesASpanAndNoFileIsWrittenElsewhere() throws IOException {
        assertThat(csv("spans.csv")).hasSizeGreaterThanOrEqualTo(NASTY.size() - 2);
        assertThat(FolderState.names(folder)).containsExactly("config.yaml", "ducts.geojson", "run", "vaults.geojson");
        assertThat(FolderState.names(run)).allMatch(name -> name.matches("[._a-z]+"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"spans.csv", "pulls.csv", "findings.csv"})
    void noCellOfATableIsAFormula(String file) throws IOException {
        List<CSVRecord> rows = csv(file);

        assertThat(rows).isNotEmpty();
        assertThat(rows).extracting(CSVRecord::size).containsOnly(rows.get(0).size());
        for (CSVRecord row : rows) {
            for (String cell : row) {
                boolean begins = !cell.isEmpty() && "=+-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20".indexOf(cell.charAt(0)) >= 0;
                assertThat(begins && !NUMBER.matcher(cell).matches()).as(cell).isFalse();
                assertThat(cell).doesNotContain("\u0000", "\u001b", "\u009b");
            }
        }
    }

    @Test
    void layersAreWholeAndHoldTheTextsAsTexts() throws IOException, SQLException {
        JsonNode json = new ObjectMapper().readTree(run.resolve("spans.geojson").toFile());
        assertThat(json.path("features")).hasSize(csv("spans.csv").size());
        new ObjectMapper().readTree(run.resolve("run.json").toFile());
        try (Connection database = DriverManager.getConnection("jdbc:sqlite:" + run.resolve("spanroom.gpkg"));
                Statement statement = database.createStatement()) {
            assertThat(strings(statement, "PRAGMA integrity_check")).containsExactly("ok");
            List<String> owners = strings(statement, "SELECT owner FROM spans ORDER BY fid");
            assertThat(owners).contains("'; DROP TABLE spans; --", "<script>alert(1)</script>", "%n%s%d%x");
            assertThat(strings(statement, "SELECT table_name FROM gpkg_contents ORDER BY 1"))
                    .contains("bends", "findings", "pulls", "spans", "vaults")
                    .allMatch(layer -> layer.matches("[a-z_]+"));
        }
    }

    @Test
    void nothingActsOnTheTerminal() {
        CommandRun check = CommandRun.of(
                "check", "--all", "--config", folder.resolve("config.yaml").toString());
        CommandRun fields = CommandRun.of(
                "check", "--fields", "--config", folder.resolve("config.yaml").toString());

        assertThat(check.exitCode()).as(check.err()).isZero();
        assertThat(fields.exitCode()).as(fields.err()).isZero();
        for (CommandRun each : List.of(ranked, check, fields)) {
            assertPlain(each.out());
            assertPlain(each.err());
        }
    }

    @Test
    void theProposedMapIsYamlWhateverTheFieldsAreCalled() throws IOException {
        CommandRun fields = CommandRun.of(
                "check",
                "--fields",
                "--routes",
                folder.resolve("ducts.geojson").toString(),
                "--vaults",
                folder.resolve("vaults.geojson").toString());
        String proposal = fields.out()
                .lines()
                .dropWhile(line -> !line.startsWith("inputs:"))
                .reduce("", (all, line) -> all + line + "\n");

        JsonNode map = new ObjectMapper(new YAMLFactory()).readTree(proposal);

        assertThat(map.path("inputs").path("routes").path("fields").isObject()).isTrue();
    }

    @Test
    void explanationsAreHarmlessAsTextJsonAndDrawing() throws IOException, ParserConfigurationException, SAXException {
        for (String spanId : spanIds()) {
            Path svg = folder.resolve("sheet.svg");
            CommandRun text = CommandRun.of("explain", "--run", run.toString(), "--svg", svg.toString(), "--", spanId);
            CommandRun json = CommandRun.of("explain", "--run", run.toString(), "--json", "--", spanId);

            assertThat(text.exitCode()).as(text.err()).isZero();
            assertPlain(text.out());
            assertPlain(text.err());
            assertThat(json.exitCode()).as(json.err()).isZero();
            assertThat(new ObjectMapper().readTree(json.out()).path("span_id").asText(spanId))
                    .isEqualTo(spanId);
            assertOnlyDrawn(Files.readString(svg));
            Files.delete(svg);
        }
        CommandRun none = CommandRun.of("explain", "\u001b[2J\nno", "--run", run.toString());
        assertThat(none.exitCode()).isEqualTo(ExitCode.INPUT);
        assertPlain(none.err());
        assertThat(none.complaint().lines()).hasSize(1);
    }

    private static void assertPlain(String text) {
        assertThat(ACTING.matcher(text.replace(System.lineSeparator(), "\n")).find())
                .as(text)
                .isFalse();
    }

    private static void assertOnlyDrawn(String svg) throws IOException, ParserConfigurationException, SAXException {
        var factory = DocumentBuilderFactory.newInstance();
        factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
        Element root = factory.newDocumentBuilder()
                .parse(new InputSource(new StringReader(svg)))
                .getDocumentElement();
        var elements = root.getElementsByTagName("*");
        for (int i = 0; i < elements.getLength(); i++) {
            Node element = elements.item(i);
            assertThat(element.getNodeName()).isIn(DRAWN);
            for (int j = 0; j < element.getAttributes().getLength(); j++) {
                assertThat(element.getAttributes().item(j).getNodeName()).doesNotMatch("on.*|.*href|style|src");
            }
        }
    }

    private static Set<String> spanIds() throws IOException {
        JsonNode json = new ObjectMapper().readTree(run.resolve("spans.geojson").toFile());
        var ids = new TreeSet<String>();
        json.path("features")
                .forEach(span -> ids.add(span.path("properties").path("span_id").asText()));
        return ids;
    }

    private static List<CSVRecord> csv(String file) throws IOException {
        try (var parser = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get()
                .parse(Files.newBufferedReader(run.resolve(file)))) {
            return parser.getRecords();
        }
    }

    private static List<String> strings(Statement statement, String query) throws SQLException {
        var found = new ArrayList<String>();
        try (ResultSet rows = statement.executeQuery(query)) {
            while (rows.next()) {
                found.add(rows.getString(1));
            }
        }
        return found;
    }

    /** One duct for each text between two vaults of its own, far out in the ocean, a hundredth of a degree from the next. */
    private static void writeLayers() throws IOException {
        var mapper = new ObjectMapper();
        ObjectNode ducts = mapper.createObjectNode().put("type", "FeatureCollection");
        ObjectNode vaults = mapper.createObjectNode().put("type", "FeatureCollection");
        ArrayNode ductFeatures = ducts.putArray("features");
        ArrayNode vaultFeatures = vaults.putArray("features");
        for (int i = 0; i < NASTY.size(); i++) {
            double lat = 40 + i * 0.01;
            ObjectNode duct = ductFeatures.addObject().put("type", "Feature");
            ObjectNode line = duct.putObject("geometry").put("type", "LineString");
            line.putArray("coordinates").add(pair(mapper, -30, lat)).add(pair(mapper, -29.999, lat));
            ObjectNode properties = duct.putObject("properties")
                    .put("innerducts", 3)
                    .put("cables", 1)
                    .put("live", "yes");
            for (String field : List.of("route", "duct", "bank", "own\"er'; --", "material", "kind", "<surface>")) {
                properties.put(field, NASTY.get(i));
            }
            for (String end : List.of("A", "B")) {
                ObjectNode vault = vaultFeatures.addObject().put("type", "Feature");
                vault.putObject("geometry")
                        .put("type", "Point")
                        .set("coordinates", pair(mapper, end.equals("A") ? -30 : -29.999, lat));
                vault.putObject("properties").put("vault", NASTY.get(i) + (end.equals("A") ? "" : end));
            }
        }
        Files.writeString(folder.resolve("ducts.geojson"), ascii(ducts));
        Files.writeString(folder.resolve("vaults.geojson"), ascii(vaults));
    }

    private static ArrayNode pair(ObjectMapper mapper, double lon, double lat) {
        return mapper.createArrayNode().add(lon).add(lat);
    }

    /** As JSON with escapes, so that halves of pairs get into the file as well. */
    private static String ascii(JsonNode node) throws IOException {
        return JsonMapper.builder()
                .enable(JsonWriteFeature.ESCAPE_NON_ASCII)
                .build()
                .writeValueAsString(node);
    }

    private static String config() {
        return """
                inputs:
                  routes:
                    file: '%1$s/ducts.geojson'
                    fields:
                      route: route
                      duct: duct
                      duct_bank: bank
                      owner: "own\\"er'; --"
                      duct_material: material
                      duct_type: kind
                      surface: "<surface>"
                      innerduct_count: innerducts
                      cable_count: cables
                      in_service: live
                  vaults:
                    file: '%1$s/vaults.geojson'
                    fields:
                      vault: vault
                      vault_kind: vault
                """.formatted(folder.toString().replace('\\', '/'));
    }
}
