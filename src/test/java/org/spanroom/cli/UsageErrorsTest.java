package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.config.ConfigReader;
import picocli.CommandLine;
import picocli.CommandLine.Model.OptionSpec;

/** Mistakes on the command line: one line that names what is wrong and what was probably meant, and code 2. */
class UsageErrorsTest {
    @TempDir
    Path folder;

    /** Every option of every command with one letter left out, doubled or swapped with its neighbor. */
    @ParameterizedTest(name = "{0} {1}")
    @MethodSource("options")
    void misspelledOptionIsNamedWithTheRightOne(String command, String option) {
        for (String wrong : misspelled(option)) {
            CommandRun run = CommandRun.of(command, wrong, "x");

            assertThat(run.exitCode()).isEqualTo(ExitCode.USAGE);
            assertThat(run.err().lines().toList())
                    .containsExactly(
                            "spanroom: unknown option '" + wrong + "'; did you mean '" + option + "'?",
                            "Try 'spanroom " + command + " --help'.");
        }
    }

    /** Of every command each option that takes one value, given twice in each of the two ways of writing it. */
    @ParameterizedTest(name = "{0} {1}")
    @MethodSource("optionsWithAValue")
    void optionWithOneValueGivenTwiceIsAnError(String command, String option, String value) {
        List<String> others = required(command, option);
        for (List<String> twice : List.of(
                List.of(option, value, option, value),
                List.of(option + "=" + value, option, value),
                List.of(option, value, option + "=" + value))) {
            var arguments = new ArrayList<>(List.of(command));
            arguments.addAll(others);
            arguments.addAll(twice);

            CommandRun run = CommandRun.of(arguments.toArray(String[]::new));

            assertThat(run.exitCode()).as(run.err()).isEqualTo(ExitCode.USAGE);
            assertThat(run.err()).startsWith("spanroom: option '" + option + "' is given twice; it takes one value");
        }
    }

    @ParameterizedTest(name = "{0} {1}")
    @MethodSource("optionsWithOneValue")
    void optionWithoutAValueSaysWhatItNeeds(String command, String option) {
        CommandRun last = CommandRun.of(command, option);
        CommandRun followed = CommandRun.of(command, option, "--help");
        var arguments = new ArrayList<>(List.of(command));
        arguments.addAll(required(command, option));
        arguments.add(option + "=");
        CommandRun empty = CommandRun.of(arguments.toArray(String[]::new));

        assertThat(last.err()).startsWith("spanroom: option '" + option + "' needs a value (" + option + " ");
        assertThat(followed.err())
                .startsWith("spanroom: option '" + option + "' needs a value (")
                .contains("but '--help' follows it");
        assertThat(empty.err()).startsWith("spanroom: ").contains("'" + option + "'");
        assertThat(List.of(last.exitCode(), followed.exitCode(), empty.exitCode()))
                .containsOnly(ExitCode.USAGE);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "rnak | unknown command 'rnak'; did you mean 'rank'?",
                "exp x | unknown command 'exp'; did you mean 'explain'?",
                "help chek | unknown command 'chek'; did you mean 'check'?",
                "frobnicate | unknown command 'frobnicate'; the commands are rank, check,",
                "rank foo.YML | unexpected argument 'foo.YML'; 'rank' takes options only; did you mean '--config foo.YML'?",
                "rank --config c.yaml overwrite | unexpected argument 'overwrite'; 'rank' takes options only; did you mean '--overwrite'?",
                "compare a b c | unexpected argument 'c'; 'compare' takes options and RUN_A RUN_B",
                "compare a | RUN_B is missing",
                "explain B1 | option '--run FOLDER' is missing",
                "explain --run a | no span is named; give a SPAN_ID or --rank N",
                "check --output x | unknown option '--output' of 'check'; it is an option of 'rank', 'compare', 'path', 'corridors', 'connect', 'program', 'report', 'sheets', 'learn', 'sample'",
                "rank --qqqqqqqqq | unknown option '--qqqqqqqqq'",
                "rank --out csv | unknown option '--out'; did you mean '--output'?",
                "rank --formats csv,geojsn | 'geojsn' is not a format; did you mean 'geojson'?",
                "rank --formats xls | 'xls' is not a format; the formats are geopackage, csv, geojson, shapefile",
                "sample --output x --format gpgk | 'gpgk' is not a format; did you mean 'gpkg'?",
                "sample --output x --seed x | 'x' is not a whole number",
                "completion fish | no completion for 'fish'; the shells are bash and zsh",
                "check --write x | --write and --overwrite need --fields",
                "check --fields --json | --json does not go with --fields",
                "sheets r | no span is named; give a SPAN_ID, --top N, or --program FOLDER --year N",
                "sheets r B1 --top 3 | name spans in one way only",
                "sheets r --year 1 | --year needs --program FOLDER",
                "sheets r B1 --street-name name | --street-name needs --streets FILE",
                "sheets r B1 --paper leter | 'leter' is not a size of paper; did you mean 'letter'?"
            })
    void everyMistakeIsOneLine(String line, String message) {
        CommandRun run = CommandRun.of(line.split(" ", -1));

        assertThat(run.exitCode()).isEqualTo(ExitCode.USAGE);
        assertThat(run.err().lines()).hasSize(2);
        assertThat(run.err()).startsWith("spanroom: ").contains(message);
    }

    @Test
    void listsAndFlagsMayBeRepeated() {
        CommandRun lists = CommandRun.of("check", "--routes", "a.shp", "--routes", "b.shp", "--strict", "--strict");

        assertThat(lists.exitCode()).isEqualTo(ExitCode.INPUT);
        assertThat(lists.err()).contains("--vaults");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "# only a comment\n"})
    void anEmptyConfigIsNamed(String text) throws IOException {
        Path config = Files.writeString(folder.resolve("empty.yaml"), text);

        for (String command : List.of("rank", "check")) {
            CommandRun run = CommandRun.of(command, "--config", config.toString());
            assertThat(run.exitCode()).isEqualTo(ExitCode.INPUT);
            assertThat(run.err())
                    .startsWith(
                            "spanroom: " + config + ": the config is empty: it sets nothing and names no inputs. Name");
        }
    }

    @Test
    void aSpansIdMayLookLikeACommandOrOption() {
        CommandRun run = CommandRun.of("explain", "--run", folder.toString(), "--", "--rank");

        assertThat(run.exitCode()).isEqualTo(ExitCode.INPUT);
    }

    @ParameterizedTest
    @CsvSource({
        "gpkg, geopackage",
        "GPKG, geopackage",
        "shp, shapefile",
        "json, geojson",
        "csv, csv",
        "GeoJSON, geojson"
    })
    void formatsMayBeNamedByTheirExtension(String word, String format) throws IOException {
        Path config = folder.resolve("c.yaml");
        Files.writeString(config, "output: {formats: [" + word + "]}\n");

        assertThat(ConfigReader.read(config).output().formats())
                .singleElement()
                .satisfies(read -> assertThat(read.key()).isEqualTo(format));
        assertThat(new OptionWord.OfResults().convert(word).key()).isEqualTo(format);
    }

    /** Every option of every command that takes one of a few words: they are shown in lower case, and a near miss names the right one. */
    @ParameterizedTest(name = "{0} {1}")
    @MethodSource("optionsWithWords")
    void aWrongWordIsNamedWithTheRightOne(String command, String option, List<String> words) {
        for (String word : words) {
            assertThat(word).isEqualTo(word.toLowerCase(Locale.ROOT));
            assertThat(CommandRun.of(command, option, word + "q").err())
                    .contains("'" + word + "q' is not a ", "; did you mean '" + word + "'?");
        }
        CommandRun far = CommandRun.of(command, option + "=zzzzzzzzzzzzzzzz");
        assertThat(far.exitCode()).isEqualTo(ExitCode.USAGE);
        assertThat(far.err()).contains(String.join(", ", words)).doesNotContain("expected one of");
    }

    static Stream<Arguments> optionsWithWords() {
        return commands()
                .flatMap(command -> command.getCommandSpec().options().stream()
                        .filter(UsageErrorsTest::takesWords)
                        .map(option -> Arguments.of(
                                command.getCommandName(), option.longestName(), words(option.completionCandidates()))));
    }

    private static boolean takesWords(OptionSpec option) {
        return option.completionCandidates() != null
                || Stream.of(option.auxiliaryTypes()).anyMatch(Class::isEnum)
                || option.type().isEnum();
    }

    private static List<String> words(Iterable<String> candidates) {
        var words = new ArrayList<String>();
        candidates.forEach(words::add);
        return words;
    }

    @Test
    void aLayerThatTheFileLacksIsNamedWithTheNearest() {
        CommandRun run = CommandRun.of(
                "check",
                "--routes",
                "sample-gis/hillside.gpkg",
                "--routes-layer",
                "duts",
                "--vaults",
                "sample-gis/vaults.geojson");

        assertThat(run.exitCode()).isEqualTo(ExitCode.INPUT);
        assertThat(run.complaint().lines()).singleElement().asString().contains("\"duts\"; did you mean \"ducts\"?");
    }

    private static List<String> misspelled(String option) {
        int middle = 2 + (option.length() - 2) / 2;
        String swapped = option.charAt(middle) == option.charAt(middle - 1)
                ? option + "s"
                : option.substring(0, middle - 1)
                        + option.charAt(middle)
                        + option.charAt(middle - 1)
                        + option.substring(middle + 1);
        return List.of(
                option.substring(0, middle) + option.substring(middle + 1),
                option.substring(0, middle) + option.substring(middle - 1),
                swapped);
    }

    static Stream<Arguments> options() {
        return commands()
                .flatMap(command -> command.getCommandSpec().options().stream()
                        .map(OptionSpec::longestName)
                        .map(option -> Arguments.of(command.getCommandName(), option)));
    }

    static Stream<Arguments> optionsWithOneValue() {
        return commands()
                .flatMap(command -> command.getCommandSpec().options().stream()
                        .filter(option -> option.arity().max() == 1 && !option.isMultiValue())
                        .map(OptionSpec::longestName)
                        .map(option -> Arguments.of(command.getCommandName(), option)));
    }

    /** With a value that each takes. */
    static Stream<Arguments> optionsWithAValue() {
        return commands()
                .flatMap(command -> command.getCommandSpec().options().stream()
                        .filter(option -> option.arity().max() == 1 && !option.isMultiValue())
                        .map(option -> Arguments.of(
                                command.getCommandName(),
                                option.longestName(),
                                takesWords(option)
                                        ? words(option.completionCandidates()).get(0)
                                        : "1")));
    }

    private static Stream<CommandLine> commands() {
        return SpanroomCommand.commandLine(
                        new PrintWriter(new StringWriter()), new PrintWriter(new StringWriter()), false)
                .getSubcommands()
                .values()
                .stream()
                .filter(command -> !command.getCommandName().equals("help"));
    }

    /** What a command cannot do without, other than the option in question. */
    private static List<String> required(String command, String option) {
        return switch (command) {
            case "explain" -> option.equals("--run") ? List.of("B1") : List.of("B1", "--run", "r");
            case "compare" -> List.of("a", "b");
            case "sample" -> option.equals("--output") ? List.of() : List.of("--output", "x");
            case "path" -> without(option, List.of("r", "--from", "1", "--to", "1", "--cables", "1"));
            case "corridors", "program", "report", "sheets" -> List.of("r");
            case "learn" -> without(option, List.of("--run", "r", "--output", "x"));
            case "closeout" -> without(option, List.of("f", "--run", "r"));
            case "connect" -> without(option, List.of("r", "--connections", "1"));
            default -> List.of();
        };
    }

    /** Returns words without an option and its value. */
    private static List<String> without(String option, List<String> words) {
        int place = words.indexOf(option);
        var others = new ArrayList<>(words);
        if (place >= 0) {
            others.subList(place, place + 2).clear();
        }
        return others;
    }
}
