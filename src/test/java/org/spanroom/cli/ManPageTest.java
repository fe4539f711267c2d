package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;

/** The manual page says of every command what its help says, in roff that a formatter takes without a warning. */
class ManPageTest {
    @TempDir
    Path folder;

    @Test
    void everyCommandOptionAndExitCodeIsThere() {
        String page = ManPage.of(top(), "1.2.3");

        assertThat(page).startsWith(".TH SPANROOM 1 \"\" \"spanroom 1.2.3\"");
        for (CommandLine command : commands()) {
            CommandSpec spec = command.getCommandSpec();
            String section = section(page, spec.name());
            for (OptionSpec option : spec.options()) {
                String name = "\\fB" + option.longestName().replace("-", "\\-") + "\\fR";
                boolean ofAll = top().optionsMap().containsKey(option.longestName());
                assertThat(ofAll ? page : section).contains(name);
            }
            spec.positionalParameters()
                    .forEach(parameter -> assertThat(section).contains("\\fI" + parameter.paramLabel() + "\\fR"));
        }
        top().usageMessage()
                .exitCodeList()
                .keySet()
                .forEach(code -> assertThat(page).contains(".TP\n\\fB" + code.strip() + "\\fR\n"));
        assertThat(page).contains("SPANROOM_JAVA_OPTS", "do not authorize").doesNotContain("%%", "${", "%n");
    }

    /** Hyphens, quotes, backslashes, and lines that look like requests. */
    @Test
    void textIsNeverTakenForARequest() {
        @Command(
                name = "odd",
                description = {".SH in a text", "'quoted' at the start", "a back\\slash, a hy-phen, 100 %%"},
                footer = "")
        class Odd {}

        String page = ManPage.of(CommandSpec.forAnnotatedObject(new Odd()), "1");

        assertThat(page)
                .contains("\n\\&.SH in a text\n")
                .contains("\n\\(aqquoted\\(aq at the start\n")
                .contains("\na back\\eslash, a hy\\-phen, 100 %\n");
        assertThat(page.lines().filter(line -> line.startsWith(".")))
                .allSatisfy(line -> assertThat(line).matches("\\.(TH|SH|SS|TP|PP|nf|fi)( .*)?"));
    }

    @Test
    void groffFormatsItWithoutAWarning() throws IOException, InterruptedException {
        assumeThat(Path.of("/usr/bin/groff")).as("groff").exists();
        Path file = Files.writeString(folder.resolve("spanroom.1"), ManPage.of(top(), "1.2.3"));
        Path err = folder.resolve("err.txt");

        Process groff = new ProcessBuilder("groff", "-man", "-ww", "-Tutf8", "-P-cbou", file.toString())
                .redirectError(err.toFile())
                .start();
        String text = new String(groff.getInputStream().readAllBytes(), StandardCharsets.UTF_8);

        assertThat(groff.waitFor()).isZero();
        assertThat(err).isEmptyFile();
        assertThat(text)
                .contains("spanroom rank --config sample-gis/spanroom.yaml --output output/demo")
                .contains("duct LIKE 'B18%'");
    }

    @Test
    void theBuildWritesPageAndCompletion() throws IOException {
        DistributionFiles.main(new String[] {folder.toString(), "1.2.3"});

        assertThat(folder.resolve("man/man1/spanroom.1")).content().startsWith(".TH SPANROOM 1");
        assertThat(folder.resolve("completion/spanroom")).content().startsWith("#!/usr/bin/env bash");
    }

    private static String section(String page, String command) {
        int from = page.indexOf(".SS " + command + "\n");
        assertThat(from).as(command).isNotNegative();
        int next = page.indexOf("\n.S", from + 1);
        return page.substring(from, next);
    }

    private static CommandSpec top() {
        var nowhere = new PrintWriter(Writer.nullWriter());
        return SpanroomCommand.commandLine(nowhere, nowhere, false).getCommandSpec();
    }

    private static List<CommandLine> commands() {
        return top().subcommands().values().stream()
                .filter(command -> !command.getCommandName().equals("help"))
                .toList();
    }
}
