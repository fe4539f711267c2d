package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.testing.ExternalTool;

/** Names of files that the locale's charset has no letters for: one line with the remedy. The real program, in locales of its own. */
class LocaleNamesTest {
    private static final String OF_C =
            "ANSI_X3.4-1968, lacks; set LC_ALL=C.UTF-8 before you start the program, or rename it";

    private static final String OF_UTF_8 =
            "it has bytes that are not text in UTF-8, the charset of this locale; rename it";

    @TempDir
    private Path folder;

    /** A shell makes the name of octal bytes, so that neither the locale of the test nor Java's own has a say. */
    private String run(String locale, String command, String octal) throws IOException, InterruptedException {
        Path shell = ExternalTool.named("sh").path();
        var words = new ArrayList<>(List.of(
                shell.toString(),
                "-c",
                "name=$(printf '" + octal + "'); \"$@\" " + command + "; echo \"code $?\"",
                "sh",
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                Main.class.getName()));
        var builder = new ProcessBuilder(words).directory(folder.toFile()).redirectErrorStream(true);
        builder.environment().remove("JAVA_TOOL_OPTIONS");
        builder.environment().put("LC_ALL", locale);
        Path printed = folder.resolve("printed.txt");
        Process process = builder.redirectOutput(printed.toFile()).start();
        assertThat(process.waitFor(120, TimeUnit.SECONDS)).isTrue();
        return Files.readString(printed, StandardCharsets.UTF_8);
    }

    @ParameterizedTest
    @CsvSource({
        "C, z\\303\\274rich.geojson",
        "POSIX, \\347\\256\\241\\351\\201\\223.geojson",
        "C, a\\377b.geojson",
        "C.UTF-8, a\\377b.geojson"
    })
    void anOptionNamesTheRemedy(String locale, String octal) throws IOException, InterruptedException {
        for (String command : List.of("check --routes \"$name\" --vaults v.geojson", "sample --output \"$name\"")) {
            String printed = run(locale, command, octal);

            assertThat(printed)
                    .contains(locale.endsWith("UTF-8") ? OF_UTF_8 : OF_C)
                    .contains("code 2\n");
            assertThat(printed.lines().filter(line -> line.startsWith("spanroom: ")))
                    .hasSize(1);
            assertThat(printed).doesNotContain("Exception").hasLineCount(3);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "C, z\u00fcrich.geojson, true",
        "POSIX, \u7ba1\u9053.geojson, true",
        "C.UTF-8, z\u00fcrich.geojson, false"
    })
    void aNameInAConfigDoesToo(String locale, String name, boolean isOutside) throws IOException, InterruptedException {
        Files.writeString(
                folder.resolve("c.yaml"), "inputs:\n  routes: {file: " + name + "}\n  vaults: {file: v.geojson}\n");

        String printed = run(locale, "check --config c.yaml", "x");

        assertThat(printed).contains("code 3\n");
        assertThat(printed.lines().filter(line -> line.startsWith("spanroom: ")))
                .hasSize(1);
        assertThat(printed)
                .contains(
                        isOutside
                                ? "spanroom: c.yaml: line 2: file: the name '" + name
                                        + "' cannot be used: it has letters that the" + " charset of this locale, "
                                        + OF_C
                                : name + ": there is no such file");
    }
}
