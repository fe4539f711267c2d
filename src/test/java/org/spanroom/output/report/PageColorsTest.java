package org.spanroom.output.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.spanroom.output.style.Background;
import org.spanroom.output.style.Palette;
import org.spanroom.output.style.PaletteClass;

/** The page's styles and scripts repeat the program's palette: a map in a browser has the colors, classes and words of the layers. */
class PageColorsTest {
    private static final List<String> ZONES = List.of(
            "zone-cut", "zone-night", "zone-review", "zone-crossing", "zone-people", "zone-works", "zone-other");
    private static final List<String> SEVERITIES = List.of("severity-rejected", "severity-suspect", "severity-note");

    private static String resource(String name) throws IOException {
        try (InputStream in = PageColorsTest.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    /** Returns the custom properties of the first rule with this selector. */
    private static Map<String, String> properties(String css, String selector) {
        int begin = css.indexOf(selector + " {");
        assertTrue(begin >= 0, selector);
        Map<String, String> properties = new HashMap<>();
        Matcher property =
                Pattern.compile("--([\\w-]+):\\s*([^;]+);").matcher(css.substring(begin, css.indexOf('}', begin)));
        while (property.find()) {
            properties.put(property.group(1), property.group(2));
        }
        return properties;
    }

    @ParameterizedTest
    @EnumSource(Background.class)
    void colorsAreThoseOfThePalette(Background page) throws IOException {
        Map<String, String> properties =
                properties(resource("page.css"), page == Background.LIGHT ? ":root" : ":root[data-theme=\"dark\"]");

        assertColors(Palette.rankClasses(), rankProperties(), properties, page);
        assertColors(Palette.years(), numbered("year-", 6), properties, page);
        assertColors(Palette.severities(), SEVERITIES, properties, page);
        assertColors(Palette.zones(), ZONES, properties, page);
        assertEquals(Palette.fieldChecks().get(0).hex(page), properties.get("check"));
    }

    private static void assertColors(
            List<PaletteClass> classes, List<String> names, Map<String, String> properties, Background page) {
        assertEquals(
                classes.stream().map(known -> known.hex(page)).toList(),
                names.stream().map(properties::get).toList());
    }

    private static List<String> rankProperties() {
        return Stream.concat(numbered("rank-", 5).stream(), Stream.of("rank-none"))
                .toList();
    }

    private static List<String> numbered(String begin, int count) {
        return IntStream.rangeClosed(1, count)
                .mapToObj(number -> begin + number)
                .toList();
    }

    @Test
    void limitsOfTheClassesAreThoseOfThePalette() throws IOException {
        Matcher limits = Pattern.compile("LIMITS = \\[([^]]*)]").matcher(resource("classes.js"));
        assertTrue(limits.find());

        assertEquals(
                Palette.rankLimits(),
                Stream.of(limits.group(1).split(",\\s*")).map(Integer::valueOf).toList());
    }

    @Test
    void wordsOfTheLegendAreThoseOfThePalette() throws IOException {
        String script = resource("classes.js");

        assertEquals(labels(Palette.rankClasses()), all("label: '([^']*)'", script));
        assertEquals(labels(Palette.years()), all("'([^']*)'", part(script, "S.yearClasses = [", "]")));
        assertEquals(
                labels(Palette.severities()), all("'[^']*': '([^']*)'", part(script, "S.severityClasses = {", "}")));
        assertEquals(SEVERITIES, all("'([^']*)': '[^']*'", part(script, "S.severityClasses = {", "}")));
        assertEquals(labels(Palette.zones()), all("'[^']*': '([^']*)'", part(script, "S.zoneClasses = {", "}")));
        assertEquals(ZONES, all("'([^']*)': '[^']*'", part(script, "S.zoneClasses = {", "}")));
    }

    /** Kinds of zones share a class of the page as they share one of the palette. */
    @Test
    void kindsOfZonesHaveTheClassesOfThePalette() throws IOException {
        String kinds = part(resource("classes.js"), "const ZONES = {", "}");
        Map<String, String> expected = new HashMap<>();
        for (int i = 0; i < ZONES.size() - 1; i++) {
            for (String kind : Palette.zoneKinds(Palette.zones().get(i))) {
                expected.put(kind, ZONES.get(i));
            }
        }
        Map<String, String> shown = new HashMap<>();
        Matcher kind = Pattern.compile("(\\w+): '([^']*)'").matcher(kinds);
        while (kind.find()) {
            shown.put(kind.group(1), kind.group(2));
        }

        assertEquals(expected, shown);
    }

    private static List<String> labels(List<PaletteClass> classes) {
        return classes.stream().map(PaletteClass::label).toList();
    }

    private static String part(String text, String begin, String end) {
        int from = text.indexOf(begin);
        assertTrue(from >= 0, begin);
        return text.substring(from + begin.length(), text.indexOf(end, from + begin.length()));
    }

    private static List<String> all(String pattern, String text) {
        var found = new ArrayList<String>();
        Matcher matcher = Pattern.compile(pattern).matcher(text);
        while (matcher.find()) {
            found.add(matcher.group(1));
        }
        return found;
    }
}
