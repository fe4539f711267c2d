package org.spanroom.input;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.config.ConfigReader;
import org.spanroom.config.ProgramConfigReader;
import org.spanroom.config.ShippedConfig;
import org.spanroom.finding.InputException;
import org.spanroom.input.fieldbook.CloseoutReader;
import org.spanroom.input.fieldbook.FieldBookReader;
import org.spanroom.input.fields.ConnectionsReader;
import org.spanroom.output.RecordedAccount;
import org.spanroom.output.RecordedRun;
import org.spanroom.pipeline.StreetReader;

/** What {@link HardInputTest} is to layers and contents, for the files beside them: each ends in one line with file, problem and remedy. */
class HardDocumentsTest {
    private static final String CONNECTIONS = "name,from,to,cables\nA,V1,V2,2\n";
    private static final String FACTS = "code,span,vault,fact,item,planned,value,unit,by,date,supersedes,note\n";
    private static final String BOOK =
            "format,entry,run,span,vault,fact,item,planned,value,unit,by,date,supersedes,note,entered\n";

    @TempDir
    private Path folder;

    /** A file that is read as one of our documents, and what the line about it says. */
    @SuppressWarnings("ArrayRecordComponent") // Never compared.
    private record Hard(String name, String kind, byte[] bytes, List<String> words) {
        static Hard of(String kind, String name, String text, String... words) {
            return new Hard(name, kind, text.getBytes(StandardCharsets.UTF_8), List.of(words));
        }

        Path write(Path folder) throws Exception {
            return Files.write(folder.resolve(kind.equals("run record") ? "run.json" : "document"), bytes);
        }

        Object read(Path file) {
            return switch (kind) {
                case "connections" -> ConnectionsReader.read(file);
                case "close-out" -> new CloseoutReader(FuzzedDocument.scope()).read(file);
                case "field book" -> new FieldBookReader(ShippedConfig.get().plausible()).read(file);
                case "program config" -> ProgramConfigReader.read(file);
                case "run config" -> ConfigReader.read(file);
                case "streets" -> StreetReader.read(file, Optional.empty());
                default -> {
                    RecordedRun run = RecordedRun.read(file.getParent());
                    RecordedAccount.read(run);
                    yield run.outputSystem();
                }
            };
        }

        @Override
        public String toString() {
            return kind + ", " + name;
        }
    }

    static Stream<Hard> cases() {
        return Stream.of(tables(), configs(), records()).flatMap(List::stream);
    }

    private static List<Hard> tables() {
        return List.of(
                Hard.of("connections", "workbook", "PK\u0003\u0004xl/workbook.xml", "a workbook", "Save it as CSV"),
                Hard.of("connections", "web page", "<html>Sign in</html>", "the column 'name' is missing"),
                Hard.of("connections", "no rows", "sep=,\n" + CONNECTIONS.split("\n", 2)[0], "has no rows"),
                Hard.of("connections", "nothing", "", "the table of connections is empty", "It needs a header"),
                Hard.of("connections", "zeros", "\0\0\0\0", "the column 'name' is missing"),
                Hard.of(
                        "connections",
                        "row without end",
                        CONNECTIONS + "B,\"" + "x".repeat(1_100_000),
                        "a row of more than 1000000 characters: is a quote not closed?"),
                Hard.of("close-out", "workbook", "PK\u0003\u0004xl/workbook.xml", "a workbook", "Save it as CSV"),
                Hard.of(
                        "close-out",
                        "other header",
                        CONNECTIONS,
                        "this is not a close-out file",
                        "the column 'fact' is missing",
                        "must be code,span,"),
                Hard.of(
                        "close-out",
                        "two columns of one name",
                        FACTS.replace("note", "Fact"),
                        "two columns are called fact"),
                Hard.of(
                        "close-out",
                        "row without end",
                        FACTS + ",\"" + "x".repeat(10_100_000),
                        "a row of more than 10000000 characters"),
                Hard.of(
                        "field book",
                        "close-out file instead",
                        FACTS,
                        "this is not a field book: the column 'format' is missing",
                        "The first line of a field book must be format,entry,run,"),
                Hard.of("field book", "nothing", "", "the field book is empty"),
                Hard.of("field book", "misspelled column", BOOK.replace("unit", "units"), "is it 'units'?"));
    }

    private static List<Hard> configs() {
        String bomb = "a: &a [x, x]\nb: &b [*a, *a]\n";
        return Stream.of("program config", "run config")
                .flatMap(kind -> Stream.of(
                        Hard.of(kind, "aliases", bomb, "line 1: anchors and aliases are not supported"),
                        Hard.of(kind, "tabulator", "\ta: 1\n", "line 1", "TAB"),
                        Hard.of(kind, "deep", "a: " + "[".repeat(100_000), "the nesting is deeper than 20"),
                        Hard.of(kind, "deep by indentation", deep(), "the nesting is deeper than 20"),
                        Hard.of(kind, "two documents", "{}\n---\n{}\n", "a second document begins here"),
                        Hard.of(kind, "a list", "- a\n", "the config must be a section of keys, is a list"),
                        Hard.of(kind, "a word", "hello\n", "the config must be a section of keys"),
                        Hard.of(kind, "zero byte", "a: \0\n", "not valid YAML"),
                        Hard.of(kind, "a line of two megabytes", "a: " + "x".repeat(2_000_000), "Is it a config?"),
                        Hard.of(kind, "two keys of one name", "must: []\nmust: []\n", "the key 'must' is repeated"),
                        new Hard(
                                "another code page",
                                kind,
                                "a: Stra\u00dfe\n".getBytes(StandardCharsets.ISO_8859_1),
                                List.of("not text in UTF-8 or UTF-16", "Save it as UTF-8"))))
                .toList();
    }

    private static String deep() {
        var text = new StringBuilder();
        for (int level = 0; level < 400; level++) {
            text.append(" ".repeat(level)).append("a:\n");
        }
        return text.toString();
    }

    private static List<Hard> records() {
        String run = FuzzDocumentSeeds.runRecord(2);
        return List.of(
                Hard.of(
                        "run record",
                        "another reference system",
                        run.replace("OGC:CRS84\",\"notes", "OGC:CR0:00Z\",\"notes"),
                        "output_crs_definition: 'OGC:CR0:00Z' is not a reference system",
                        "Make the run again"),
                Hard.of("run record", "nothing", "", "it is not the record of a run"),
                Hard.of("run record", "null", "null", "it is not the record of a run"),
                Hard.of("run record", "a list", "[]", "it is not the record of a run"),
                Hard.of(
                        "run record",
                        "another JSON",
                        "{\"type\":\"FeatureCollection\"}",
                        "inputs must be a list, and is missing"),
                Hard.of("run record", "text behind", run + "x", "it is not the record of a run (not JSON)"),
                Hard.of("run record", "cut off", run.substring(0, run.length() / 2), "it is not the record of a run"),
                Hard.of("run record", "deep", "{\"inputs\":" + "[".repeat(100_000), "it is not the record of a run"),
                Hard.of(
                        "run record",
                        "input of no kind",
                        "{\"inputs\":[{}]}",
                        "inputs.role must be a text, and is missing"),
                Hard.of("run record", "inputs that are none", "{\"inputs\":[1,null]}", "must hold JSON objects only"),
                Hard.of("streets", "table", CONNECTIONS, "neither its first bytes nor its file extension"),
                Hard.of(
                        "streets",
                        "point",
                        HardJson.collection(HardJson.feature(1, "{\"type\":\"Point\",\"coordinates\":[1,2]}")),
                        "lines are expected"),
                Hard.of(
                        "streets",
                        "meters",
                        HardJson.collection(HardJson.line(1, "[[630000,4300000],[630100,4300000]]")),
                        "may be in a projected system",
                        "Export it with its reference system"));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("cases")
    void endsInOneLine(Hard hard) throws Exception {
        Path file = hard.write(folder);

        Optional<String> line = assertTimeoutPreemptively(Duration.ofSeconds(30), () -> {
            try {
                hard.read(file);
                return Optional.empty();
            } catch (InputException refused) {
                return Optional.of(refused.getMessage());
            }
        });

        assertThat(line).isPresent();
        assertThat(line.orElseThrow())
                .startsWith(folder + "/")
                .contains(hard.words().toArray(String[]::new))
                .doesNotContain("\n", "\r", "Exception")
                .hasSizeLessThan(2_300);
    }
}
