package org.spanroom.output.report;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/** The template, styles and scripts that the program brings along. */
final class PageParts {
    private static final String LEAFLET = "/META-INF/resources/webjars/leaflet/1.9.4/dist/leaflet";
    private static final String ECHARTS = "/META-INF/resources/webjars/echarts/5.5.0/echarts.min.js";

    /** Names our scripts in the order in which they are joined, a line each: one that is used comes before its users. */
    private static final String OWN_SCRIPTS = "scripts.txt";

    /** What a style may not have: an address would be a request, whatever the policy then says to it. */
    private static final Pattern ADDRESS = Pattern.compile("[\\w-]+\\s*:[^;{}]*url\\((?!['\"]?data:)[^)]*\\)[^;{}]*;?");

    private static final Pattern SOURCE_MAP = Pattern.compile("(?m)^//# sourceMappingURL=.*$");

    private PageParts() {}

    static String template() {
        return text("page.mustache");
    }

    static String styles() {
        return ADDRESS.matcher(text(LEAFLET + ".css")).replaceAll("") + "\n" + text("page.css");
    }

    /** Returns the scripts in the order in which they run; the last is ours. */
    static List<String> scripts() {
        var own = new StringBuilder();
        text(OWN_SCRIPTS)
                .lines()
                .filter(name -> !name.isBlank())
                .forEach(name -> own.append(text(name.strip())).append('\n'));
        return List.of(script(text(LEAFLET + ".js")), script(text(ECHARTS)), script(own.toString()));
    }

    /** Returns a script as it may stand in a page: without the name of a file that nothing can fetch. */
    private static String script(String text) {
        String script = SOURCE_MAP.matcher(text).replaceAll("");
        if (script.toLowerCase(Locale.ROOT).contains("</script") || script.contains("<!--")) {
            throw new IllegalStateException("a script would end its element");
        }
        return script;
    }

    private static String text(String name) {
        try (InputStream in = PageParts.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new FileNotFoundException(name);
            }
            // A browser turns line ends into these before it hashes a script.
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).replace("\r\n", "\n");
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
    }
}
