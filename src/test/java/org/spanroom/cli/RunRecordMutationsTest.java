package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanroom.config.ConfigReader;
import org.spanroom.finding.InputException;

/** A record of a run that was changed by hand or by damage: each command that reads it gives results, or one line and the code for bad input. */
class RunRecordMutationsTest {
    /** Each command runs on every so manieth change only: they share the reader. The quickest runs on more. */
    private static final int EVERY = 60;

    private static final int EVERY_OF_EXPLAIN = 5;

    /** Of the many numbers and words of the config, whose reader has tests of its own. */
    private static final int EVERY_OF_CONFIG = 10;

    @TempDir
    private Path folder;

    private Path run;
    private String record;
    private String spanId;

    @BeforeEach
    void rank() throws IOException {
        Path config = StreetOfCases.write(folder);
        run = StreetOfCases.rank(config, folder.resolve("run"));
        StreetOfCases.rank(config, folder.resolve("other"));
        record = Files.readString(run.resolve("run.json"));
        spanId = StreetOfCases.csv(run.resolve("spans.csv")).get(0).get("span_id");
    }

    /** Returns every command that reads a run, on the changed one. */
    private Map<String, List<String>> commands() throws IOException {
        String here = run.toString();
        Path wishes = Files.writeString(folder.resolve("wishes.csv"), "name,from,to,cables\nA,V0,V1,1\n");
        Path book = folder.resolve("book.csv");
        Path found = Files.writeString(
                folder.resolve("found.csv"),
                "code,span,vault,fact,item,planned,value,unit,by,date,supersedes,note\n,\"" + spanId
                        + "\",,status,,,planned,,crew,2026-10-18,,\n");
        List<String> closeout =
                List.of("closeout", found.toString(), "--run", run.toString(), "--field-book", book.toString());
        CommandRun entered = CommandRun.of(closeout.toArray(String[]::new));
        assertThat(entered.exitCode()).as(entered.out() + entered.err()).isZero();
        Files.copy(Path.of("config", "scoring.yaml"), folder.resolve("scoring.yaml"));
        var commands = new LinkedHashMap<String, List<String>>();
        commands.put("explain", List.of("explain", spanId, "--run", here));
        commands.put("compare", List.of("compare", here, folder.resolve("other").toString()));
        commands.put("compared", List.of("compare", folder.resolve("other").toString(), here));
        commands.put("path", List.of("path", here, "--from", "V0", "--to", "V1", "--cables", "1"));
        commands.put(
                "rank",
                List.of(
                        "rank",
                        "--from",
                        here,
                        "--scoring",
                        folder.resolve("scoring.yaml").toString()));
        commands.put("report", List.of("report", here));
        commands.put("corridors", List.of("corridors", here));
        commands.put("connect", List.of("connect", here, "--connections", wishes.toString()));
        commands.put("program", List.of("program", here, "--skip", "curve,prices,draws"));
        commands.put("sheets", List.of("sheets", here, spanId));
        commands.put("learn", List.of("learn", "--run", here, "--field-book", book.toString()));
        commands.put(
                "closeout",
                Stream.concat(closeout.stream(), Stream.of("--check")).toList());
        var complete = new LinkedHashMap<String, List<String>>();
        commands.forEach((name, words) -> {
            var all = new ArrayList<>(words);
            if (!List.of("explain", "closeout").contains(name)) {
                String end = name.equals("report") ? ".html" : "";
                all.addAll(
                        List.of("--output", folder.resolve("of-" + name + end).toString(), "--overwrite"));
            }
            complete.put(name, all);
        });
        return complete;
    }

    @Test
    void noChangeOfTheRecordEndsInAnInternalError() throws IOException {
        Map<String, List<String>> commands = commands();
        commands.forEach((name, words) -> assertThat(
                        CommandRun.of(words.toArray(String[]::new)).exitCode())
                .as(name)
                .isIn(ExitCode.OK, ExitCode.INPUT));
        List<JsonMutations.Mutation> mutations = JsonMutations.of(record, path -> !path.startsWith("/config"));
        assertThat(mutations).hasSizeGreaterThan(300);
        int at = 0;
        for (JsonMutations.Mutation mutation : mutations) {
            Files.writeString(run.resolve("run.json"), mutation.text());
            int place = 0;
            for (Map.Entry<String, List<String>> command : commands.entrySet()) {
                if ((at + place) % (place == 0 ? EVERY_OF_EXPLAIN : EVERY) == 0) {
                    demandEnd(mutation.what() + ": " + command.getKey(), command.getValue());
                }
                place++;
            }
            at++;
        }
    }

    @Test
    void noChangeOfTheRecordedConfigEndsInAnInternalError() throws IOException {
        Map<String, List<String>> commands = commands();
        List<JsonMutations.Mutation> mutations = JsonMutations.of(record, path -> path.startsWith("/config"));
        assertThat(mutations).hasSizeGreaterThan(1_000);
        for (int at = 0; at < mutations.size(); at += EVERY_OF_CONFIG) {
            JsonMutations.Mutation mutation = mutations.get(at);
            Path file = Files.writeString(run.resolve("run.json"), mutation.text());
            if (isRead(file, mutation.what()) && at % (20 * EVERY_OF_CONFIG) == 0) {
                demandEnd(mutation.what() + ": explain", commands.get("explain"));
            }
        }
    }

    private static boolean isRead(Path file, String what) {
        try {
            ConfigReader.readRecorded(file);
            return true;
        } catch (InputException refused) {
            assertThat(refused.getMessage()).as(what).startsWith(file + ": ").doesNotContain("\n");
            return false;
        }
    }

    private static void demandEnd(String what, List<String> words) {
        CommandRun ran = CommandRun.of(words.toArray(String[]::new));
        assertThat(ran.exitCode()).as(what + ": " + ran.err()).isIn(ExitCode.OK, ExitCode.INPUT);
        assertThat(ran.complaint().lines().count()).as(ran.err()).isLessThanOrEqualTo(1);
    }
}
