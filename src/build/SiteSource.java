import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Makes the source of the rendered site from the documents as they are kept: {@code java src/build/SiteSource.java PROJECT TARGET}.
 *
 * <p>The documents link one another as a Git hosting page needs it (to {@code .md} files and to pictures where they are). This copies
 * them, with README and DEVELOPERS as pages of their own, and turns the links into those of the rendered pages. Headings get the
 * anchors that a Git hosting page gives them. A link without a target ends the build.
 */
final class SiteSource {
    private static final Pattern LINK = Pattern.compile("(\\]\\()([^)\\s]+)(\\))");
    private static final Pattern HEADING = Pattern.compile("^(#{1,6})\\s+(.*?)\\s*$");

    private final Path project;
    private final Path target;
    private final Map<Path, String> pages = new TreeMap<>();

    private SiteSource(Path project, Path target) {
        this.project = project.toAbsolutePath().normalize();
        this.target = target;
    }

    /** Copies and rewrites; ends with code 1 where a link leads nowhere. */
    public static void main(String[] args) throws IOException {
        new SiteSource(Path.of(args[0]), Path.of(args[1])).run();
    }

    private void run() throws IOException {
        Path site = project.resolve("src/site");
        pages.put(project.resolve("README.md"), "index");
        pages.put(project.resolve("DEVELOPERS.md"), "developers");
        pages.put(project.resolve("sample-gis/README.md"), "demo-city");
        for (Path page : files(site.resolve("markdown"))) {
            String name = site.resolve("markdown").relativize(page).toString().replace('\\', '/');
            pages.put(page, name.substring(0, name.length() - ".md".length()));
        }
        for (Map.Entry<Path, String> page : pages.entrySet()) {
            Path to = target.resolve("markdown").resolve(page.getValue() + ".md");
            Files.createDirectories(to.getParent());
            Files.writeString(to, rendered(page.getKey(), page.getValue()));
        }
        copy(site.resolve("resources"), target.resolve("resources"));
        copy(project.resolve("config"), target.resolve("resources/config"));
        Files.copy(site.resolve("site.xml"), target.resolve("site.xml"), StandardCopyOption.REPLACE_EXISTING);
    }

    private String rendered(Path page, String name) throws IOException {
        StringBuilder text = new StringBuilder();
        Set<String> anchors = new HashSet<>();
        boolean code = false;
        for (String line : Files.readAllLines(page)) {
            if (line.startsWith("```")) {
                code = !code;
            }
            Matcher heading = HEADING.matcher(line);
            if (!code && heading.matches()) {
                String anchor = anchor(heading.group(2), anchors);
                if (!anchor.equals(heading.group(2))) { // The renderer gives the heading this one itself.
                    text.append("<a id=\"").append(anchor).append("\"></a>\n\n");
                }
            }
            text.append(code || line.startsWith("    ") ? line : relinked(page, name, line)).append('\n');
        }
        return text.toString();
    }

    private String relinked(Path page, String name, String line) {
        return LINK.matcher(line).replaceAll(m ->
                Matcher.quoteReplacement(m.group(1) + siteLink(page, name, m.group(2)) + m.group(3)));
    }

    private String siteLink(Path page, String name, String link) {
        if (link.startsWith("#") || link.matches("[a-z]+:.*")) {
            return link;
        }
        int hash = link.indexOf('#');
        String anchor = hash < 0 ? "" : link.substring(hash);
        Path file = page.getParent().resolve(hash < 0 ? link : link.substring(0, hash)).normalize();
        if (!Files.exists(file)) {
            throw new IllegalStateException(project.relativize(page) + " links to " + link + ", which is no file.");
        }
        String up = "../".repeat((int) name.chars().filter(c -> c == '/').count());
        Path resources = project.resolve("src/site/resources");
        if (pages.containsKey(file)) {
            return up + pages.get(file) + ".html" + anchor;
        }
        if (file.startsWith(resources)) {
            return up + resources.relativize(file).toString().replace('\\', '/');
        }
        if (file.startsWith(project.resolve("config"))) {
            return up + project.relativize(file).toString().replace('\\', '/');
        }
        throw new IllegalStateException(project.relativize(page) + " links to " + link + ", which the site does not hold.");
    }

    /** The anchor that a Git hosting page gives a heading: small letters, words joined by hyphens, other marks dropped. */
    private static String anchor(String heading, Set<String> taken) {
        String base = heading.replaceAll("\\[([^\\]]*)\\]\\([^)]*\\)", "$1")
                .toLowerCase(Locale.ROOT)
                .replaceAll("[^\\p{L}\\p{N}_ -]", "")
                .replace(' ', '-');
        String anchor = base;
        for (int i = 1; !taken.add(anchor); i++) {
            anchor = base + "-" + i;
        }
        return anchor;
    }

    private static void copy(Path from, Path to) throws IOException {
        for (Path file : files(from)) {
            Path copy = to.resolve(from.relativize(file).toString());
            Files.createDirectories(copy.getParent());
            Files.copy(file, copy, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    private static List<Path> files(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(Files::isRegularFile).sorted().toList();
        }
    }
}
