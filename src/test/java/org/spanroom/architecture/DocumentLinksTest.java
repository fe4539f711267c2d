package org.spanroom.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Holds the documents together: each link, anchor and picture leads somewhere, each page is in the site's menu, each equation is numbered
 * once and in order. Anchors are those of a Git hosting page; {@code src/build/SiteSource.java} gives the rendered pages the same.
 */
class DocumentLinksTest {
    private static final Path MARKDOWN = Path.of("src/site/markdown");
    private static final Pattern LINK = Pattern.compile("\\]\\(([^)\\s]+)\\)");
    private static final Pattern EQUATION_ROW = Pattern.compile("^\\| \\((\\d+)\\.(\\d+)\\) \\|");
    private static final Pattern EQUATION = Pattern.compile("\\((\\d+\\.\\d+)[);,]");

    static List<Path> documents() throws IOException {
        List<Path> documents = new ArrayList<>(
                List.of(Path.of("README.md"), Path.of("DEVELOPERS.md"), Path.of("sample-gis/README.md")));
        try (Stream<Path> files = Files.walk(MARKDOWN)) {
            files.filter(file -> file.toString().endsWith(".md")).sorted().forEach(documents::add);
        }
        return documents;
    }

    @ParameterizedTest
    @MethodSource("documents")
    void everyLinkLeadsSomewhere(Path document) throws IOException {
        assertThat(brokenLinks(document, prose(Files.readAllLines(document)))).isEmpty();
    }

    /** The check itself: a file, an anchor and a picture that are not there. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "[a](no-such-page.md)",
                "[a](glossary.md#no-such-part)",
                "[a](#no-such-part)",
                "![a](../resources/images/no.svg)"
            })
    void aBrokenLinkIsFound(String link) throws IOException {
        assertThat(brokenLinks(MARKDOWN.resolve("methods.md"), List.of("See " + link + ".")))
                .hasSize(1);
    }

    @Test
    void everyPageIsInTheMenu() throws IOException {
        String menu = Files.readString(Path.of("src/site/site.xml"));
        Set<String> pages = new TreeSet<>(Set.of("index", "developers", "demo-city"));
        for (Path document : documents()) {
            if (document.startsWith(MARKDOWN)) {
                String page = MARKDOWN.relativize(document).toString().replace('\\', '/');
                pages.add(page.substring(0, page.length() - ".md".length()));
            }
        }
        Set<String> items = new TreeSet<>();
        Matcher href = Pattern.compile("<item [^>]*href=\"([^\"]+)\\.html\"").matcher(menu);
        while (href.find()) {
            assertThat(items.add(href.group(1))).as(href.group(1)).isTrue();
        }
        assertThat(items).isEqualTo(pages);
    }

    /** (3.1), (3.2) ...: each section from one upwards, on one page; and every number that a page refers to exists. */
    @Test
    void equationsAreNumberedOnceAndInOrder() throws IOException {
        Set<String> numbers = new TreeSet<>();
        for (Path document : documents()) {
            int last = 0;
            for (String line : Files.readAllLines(document)) {
                Matcher row = EQUATION_ROW.matcher(line);
                if (row.find()) {
                    assertThat(Integer.parseInt(row.group(2)))
                            .as("%s: %s", document, line)
                            .isEqualTo(++last);
                    assertThat(numbers.add(row.group(1) + "." + row.group(2)))
                            .as(line)
                            .isTrue();
                    assertThat(line.split("(?<!\\\\)\\|", -1))
                            .as("case, formula, source, validity: " + line)
                            .hasSize(7);
                }
            }
        }
        assertThat(numbers).hasSizeGreaterThan(60);
        for (Path document : documents()) {
            if (document.toString().contains("methods") || document.endsWith("worked-example.md")) {
                for (String line : prose(Files.readAllLines(document))) {
                    Matcher number = EQUATION.matcher(line);
                    while (number.find()) {
                        assertThat(numbers).as("%s: %s", document, line).contains(number.group(1));
                    }
                }
            }
        }
    }

    /** What {@code mvn site} renders: pages with links to pages, and with the anchors that links name. */
    @Test
    void theSitesSourceHasTheSameLinks(@TempDir Path folder) throws IOException, InterruptedException {
        Process made = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "src/build/SiteSource.java",
                        ".",
                        folder.toString())
                .redirectErrorStream(true)
                .start();
        String said = new String(made.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(made.waitFor()).as(said).isZero();
        Path pages = folder.resolve("markdown");
        int links = 0;
        for (Path document : documents()) {
            String name = siteName(document);
            for (String line : prose(Files.readAllLines(pages.resolve(name + ".md")))) {
                Matcher link = LINK.matcher(line);
                while (link.find()) {
                    if (!link.group(1).matches("[a-z]+:.*|#.*")) {
                        assertThat(target(folder, pages.resolve(name), link.group(1)))
                                .as("%s: %s", name, link.group(1))
                                .exists();
                        links++;
                    }
                }
            }
        }
        assertThat(links).isGreaterThan(100);
    }

    private static String siteName(Path document) {
        String path = document.toString().replace('\\', '/');
        return switch (path) {
            case "README.md" -> "index";
            case "DEVELOPERS.md" -> "developers";
            case "sample-gis/README.md" -> "demo-city";
            default ->
                MARKDOWN.relativize(document).toString().replace('\\', '/').replaceFirst("\\.md$", "");
        };
    }

    private static Path target(Path folder, Path page, String link) {
        String file = link.replaceFirst("#.*", "");
        Path beside = page.resolveSibling(file).normalize();
        return file.endsWith(".html")
                ? beside.resolveSibling(beside.getFileName().toString().replaceFirst("html$", "md"))
                : folder.resolve("resources").resolve(folder.resolve("markdown").relativize(beside));
    }

    @Test
    void theReadmeFitsOnePage() throws IOException {
        assertThat(Files.readAllLines(Path.of("README.md"))).hasSizeLessThanOrEqualTo(120);
    }

    private static List<String> brokenLinks(Path document, List<String> lines) throws IOException {
        List<String> broken = new ArrayList<>();
        for (String line : lines) {
            Matcher link = LINK.matcher(line);
            while (link.find()) {
                if (!link.group(1).matches("[a-z]+:.*") && !leadsSomewhere(document, link.group(1))) {
                    broken.add(link.group(1));
                }
            }
        }
        return broken;
    }

    private static boolean leadsSomewhere(Path document, String link) throws IOException {
        int hash = link.indexOf('#');
        String file = hash < 0 ? link : link.substring(0, hash);
        Path target = file.isEmpty() ? document : document.resolveSibling(file).normalize();
        if (!Files.isRegularFile(target)) {
            return false;
        }
        return hash < 0 || anchors(target).contains(link.substring(hash + 1));
    }

    private static Set<String> anchors(Path page) throws IOException {
        Set<String> anchors = new TreeSet<>();
        for (String line : prose(Files.readAllLines(page))) {
            if (line.matches("#{1,6} .*")) {
                String words = line.replaceFirst("#+ ", "").replaceAll("\\[([^\\]]*)\\]\\([^)]*\\)", "$1");
                String base = words.strip()
                        .toLowerCase(Locale.ROOT)
                        .replaceAll("[^\\p{L}\\p{N}_ -]", "")
                        .replace(' ', '-');
                String anchor = base;
                for (int i = 1; !anchors.add(anchor); i++) {
                    anchor = base + "-" + i;
                }
            }
        }
        return anchors;
    }

    /** The lines outside of blocks of code. */
    private static List<String> prose(List<String> lines) {
        List<String> prose = new ArrayList<>();
        boolean code = false;
        for (String line : lines) {
            if (line.startsWith("```")) {
                code = !code;
            } else if (!code && !line.startsWith("    ")) {
                prose.add(line);
            }
        }
        return prose;
    }
}
