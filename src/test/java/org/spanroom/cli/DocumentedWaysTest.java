package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the page on the way through shows of the demo: every printed line is one of the commands' own output. */
class DocumentedWaysTest {
    private static final Path PAGE = Path.of("src/site/markdown/connections.md");

    @TempDir
    static Path folder;

    private static String printed;

    @BeforeAll
    static void run() {
        String run = DemoRun.csv(folder).toString();
        printed = of("path", run, "--from", "V1-1037", "--to", "V1-1072", "--cables", "9")
                + of("corridors", run, "--cables", "6")
                + of("connect", run, "--connections", "sample-gis/connections.csv");
    }

    private static String of(String command, String... options) {
        var words = new ArrayList<>(List.of(command));
        words.addAll(List.of(options));
        words.addAll(List.of("--output", folder.resolve(command).toString()));
        CommandRun done = CommandRun.of(words.toArray(String[]::new));
        assertThat(done.exitCode()).as(done.err()).isZero();
        return done.out();
    }

    @Test
    void samplesAreLinesOfTheCommands() throws IOException {
        List<String> sample = DocumentedLines.of(PAGE);

        assertThat(sample).hasSizeGreaterThan(35);
        assertThat(printed.lines().map(String::strip)).containsAll(sample);
    }

    @Test
    void thePlanRecoversWhatTheRankingWouldNot() throws IOException {
        List<String> lines = Files.readAllLines(folder.resolve("connect").resolve("connection_sections.csv"));
        List<String> header = List.of(lines.get(0).split(",", -1));
        var ranks = new TreeSet<Integer>();
        for (String line : lines.subList(1, lines.size())) {
            String[] cells = line.split(",", -1);
            if (cells[header.indexOf("action")].equals("recover")) {
                ranks.add(Integer.parseInt(cells[header.indexOf("rank")]));
            }
        }

        assertThat(ranks).hasSize(18);
        assertThat(ranks.first()).isEqualTo(74);
        assertThat(ranks.last()).isEqualTo(1119);
        assertThat(Files.readString(PAGE))
                .contains("The 18 ducts", "ranks between 74 and 1,119", "none is among the 50 best");
    }
}
