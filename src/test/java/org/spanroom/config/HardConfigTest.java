package org.spanroom.config;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.finding.InputException;

/** Configs that are odd, hostile or damaged: each is read, or refused in one line within seconds. */
class HardConfigTest {
    private static final Duration LONGEST = Duration.ofSeconds(20);

    @TempDir
    private Path folder;

    private RunConfig read(byte[] bytes) throws IOException {
        return ConfigReader.read(Files.write(folder.resolve("c.yaml"), bytes));
    }

    @ParameterizedTest
    @ValueSource(strings = {"UTF-8", "UTF-16LE", "UTF-16BE"})
    void encodingsOfYamlAreReadWithAndWithoutMark(String name) throws IOException {
        Charset charset = Charset.forName(name);
        String text = "threads: 3\nvalues:\n  live: [\u4f7f\u7528\u4e2d]\n";

        for (String mark : List.of("", "\uFEFF")) {
            RunConfig config = read((mark + text).getBytes(charset));
            assertThat(config.threads()).isEqualTo(3);
            assertThat(config.values().live()).containsExactly("\u4f7f\u7528\u4e2d");
        }
    }

    static Stream<List<String>> hostile() {
        return Stream.of(
                List.of("? " + "x".repeat(900_000) + "\n: 1", "unknown key 'xxx"),
                List.of("threads: " + "9".repeat(900_000), "threads must be from 0 to 1024, is "),
                List.of("threads: '" + "x".repeat(900_000) + "'", "threads must be a whole number"),
                List.of("? " + "[".repeat(50_000), "c.yaml: "),
                List.of(
                        IntStream.range(0, 100_000)
                                .mapToObj(i -> "k" + i + ": 1")
                                .collect(Collectors.joining("\n")),
                        "unknown key"),
                List.of(
                        IntStream.range(0, 1_000)
                                .mapToObj(i -> " ".repeat(i) + "a:")
                                .collect(Collectors.joining("\n")),
                        "c.yaml: "),
                List.of("- ".repeat(100_000) + "a", "c.yaml: "),
                List.of("{".repeat(100_000), "c.yaml: "),
                List.of("a: &x {b: 1}\nc:\n  <<: *x", "anchors and aliases are not supported"),
                List.of("threads: !!javax.script.ScriptEngineManager [a]", "c.yaml: "),
                List.of("network:\n  snap_tolerance_m: .inf", "snap_tolerance_m must be a number"),
                List.of("network:\n  snap_tolerance_m: NaN", "snap_tolerance_m must be a number"),
                List.of("network:\n  snap_tolerance_m: 1e999", "snap_tolerance_m must be a number"),
                List.of("network:\n  snap_tolerance_m: -1", "line 2: snap_tolerance_m must"),
                List.of("network:\n  snap_tolerence_m: 1", "Did you mean 'snap_tolerance_m'?"),
                List.of("Threads: 1", "Did you mean 'threads'?"),
                List.of("threads: 1\u0000", "c.yaml: "),
                List.of("threads: \u0007", "c.yaml: "),
                List.of("inputs:\n  routes:\n    file: \"a\\0b\"", "file must be the name of a file or folder"),
                List.of("x".repeat(1_000_001), "more than 1000000 bytes. Is it a config?"));
    }

    @ParameterizedTest(name = "case {index}")
    @MethodSource("hostile")
    void hostileConfigIsRefusedInOneLine(List<String> textAndWords) {
        byte[] bytes = textAndWords.get(0).getBytes(java.nio.charset.StandardCharsets.UTF_8);

        assertTimeoutPreemptively(
                LONGEST,
                () -> assertThatThrownBy(() -> read(bytes))
                        .isInstanceOf(InputException.class)
                        .hasMessageContaining(folder.resolve("c.yaml") + ": ")
                        .hasMessageContaining(textAndWords.get(1))
                        .hasMessageNotContaining("\n")
                        .extracting(failure -> failure.getMessage().length())
                        .satisfies(length -> assertThat(length).isLessThan(2_300)));
    }

    static IntStream seeds() {
        return IntStream.range(0, Integer.getInteger("spanroom.mutations", 150));
    }

    /** The shipped config, damaged at random with a seed. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void damagedConfigIsReadOrRefusedInOneLine(int seed) throws IOException {
        byte[] bytes = Files.readAllBytes(Path.of("config", "spanroom.yaml"));
        var random = new Random(seed);
        String tokens = ":-[]{}&*!|>'\"%@`#?,\n\t \0\u00e4";
        for (int change = random.nextInt(8); change >= 0; change--) {
            bytes[random.nextInt(bytes.length)] = (byte) tokens.charAt(random.nextInt(tokens.length()));
        }
        try {
            assertThat(read(bytes).threads()).isNotNegative();
        } catch (InputException e) {
            // The file is this one or one that it names, and that name may be what was damaged.
            assertThat(e.getMessage()).containsPattern("\\S: \\S").doesNotContain("\n");
        }
    }
}
