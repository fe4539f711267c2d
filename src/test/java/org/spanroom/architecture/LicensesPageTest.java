package org.spanroom.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.jar.JarFile;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.geotools.referencing.CRS;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The page on licenses names what the jar holds of others: nothing is missing and nothing is left over. */
class LicensesPageTest {
    /** A row on a library: group and artifact, version, license, texts. */
    private static final Pattern LIBRARY =
            Pattern.compile("\\| `([\\w.-]+:[\\w.-]+)` \\| (\\S+) \\| ([^|]+) \\| ([^|]+) \\|");

    /** What the build collects from POMs: licenses in brackets, name, and in brackets coordinates and address. */
    private static final Pattern COLLECTED =
            Pattern.compile("(?m)^ *((?:\\((?:[^()]|\\([^()]*\\))*\\) )+).* \\(([^() ]+:[^() ]+):([^() ]+) - .*\\)$");

    private static final Pattern QUOTED = Pattern.compile("`([^`]+)`");

    private static String page;

    @BeforeAll
    static void readThePage() throws IOException {
        page = Files.readString(Path.of("src/site/markdown/licenses.md"));
    }

    @Test
    void everyRuntimeLibraryIsNamedWithItsVersionAndLicense() throws IOException {
        var collected = new TreeMap<String, String>();
        COLLECTED.matcher(resource("/META-INF/THIRD-PARTY.txt")).results().forEach(found -> {
            String licenses = found.group(1).strip().replace(") (", " / ").replaceAll("^\\(|\\)$", "");
            collected.put(found.group(2) + " " + found.group(3), licenses);
        });

        Map<String, String> named = LIBRARY.matcher(section("Libraries"))
                .results()
                .collect(Collectors.toMap(row -> row.group(1) + " " + row.group(2), row -> row.group(3)));

        assertThat(named).isEqualTo(collected).hasSizeGreaterThan(10);
    }

    @Test
    void everyTextThatALibrarysJarHoldsIsInOursAndNamed() throws IOException, URISyntaxException {
        var held = new TreeSet<String>();
        Path licenses = Path.of(url("/META-INF/licenses").toURI());
        try (Stream<Path> files = Files.walk(licenses)) {
            files.filter(Files::isRegularFile)
                    .forEach(file -> held.add(licenses.relativize(file).toString()));
        }

        Set<String> named = LIBRARY.matcher(section("Libraries"))
                .results()
                .flatMap(row -> quoted(row.group(4)).map(file -> artifact(row) + "-jar/" + file))
                .collect(Collectors.toCollection(TreeSet::new));

        assertThat(named).isEqualTo(held).isNotEmpty();
    }

    @Test
    void everyLibraryInsideTheGeotoolsJarIsNamed() throws IOException, URISyntaxException {
        var inside = new TreeSet<String>();
        Set<String> packages = new TreeSet<>();
        try (var jar = new JarFile(geotools().toFile())) {
            for (ZipEntry entry : jar.stream().toList()) {
                String name = entry.getName();
                if (name.startsWith("META-INF/maven/") && name.endsWith("/pom.properties")) {
                    inside.add(artifactAndVersion(jar, entry));
                }
                packages.add(name.replaceAll("/[^/]*$", "").replace('/', '.'));
            }
        }
        inside.removeIf(artifact -> artifact.startsWith("geotools-wrapper "));
        String[] tables = section("Inside geotools-wrapper").split("Without a POM", -1);

        assertThat(quoted(tables[0]).filter(name -> name.contains(" "))).containsExactlyInAnyOrderElementsOf(inside);
        assertThat(tables[1]
                        .lines()
                        .filter(line -> line.startsWith("| `"))
                        .flatMap(line -> quoted(line.split("\\|", -1)[1])))
                .hasSizeGreaterThan(10)
                .allSatisfy(name -> assertThat(packages).anyMatch(one -> (one + ".").startsWith(name + ".")));
    }

    @Test
    void theEpsgDatasetIsNamedWithItsVersion() throws IOException {
        var properties = new Properties();
        try (var zip = new ZipInputStream(
                url("/org/geotools/referencing/factory/epsg/hsql/EPSG.zip").openStream())) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                if (entry.getName().endsWith(".properties")) {
                    properties.load(zip);
                }
            }
        }

        assertThat(section("The EPSG dataset")).contains("version " + properties.getProperty("epsg.version") + ",");
    }

    private static String section(String heading) {
        String[] parts = page.split("(?m)^## ", -1);
        return Stream.of(parts)
                .filter(part -> part.startsWith(heading + "\n"))
                .findFirst()
                .orElseThrow();
    }

    private static Stream<String> quoted(String text) {
        return QUOTED.matcher(text).results().map(found -> found.group(1));
    }

    private static String artifact(MatchResult row) {
        return row.group(1).split(":", -1)[1];
    }

    private static String artifactAndVersion(JarFile jar, ZipEntry entry) throws IOException {
        var properties = new Properties();
        try (InputStream in = jar.getInputStream(entry)) {
            properties.load(in);
        }
        return properties.getProperty("artifactId") + " " + properties.getProperty("version");
    }

    private static Path geotools() throws URISyntaxException {
        return Path.of(
                CRS.class.getProtectionDomain().getCodeSource().getLocation().toURI());
    }

    private static String resource(String name) throws IOException {
        try (InputStream in = url(name).openStream()) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private static URL url(String name) {
        URL found = LicensesPageTest.class.getResource(name);
        assertThat(found).as("the build has not collected %s", name).isNotNull();
        return found;
    }
}
