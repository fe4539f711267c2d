package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.config.ConfigReader;
import org.spanroom.config.ProgramConfigReader;
import org.spanroom.finding.InputException;

/**
 * Every number of the shipped configs, replaced by extremes: the config is refused in one line that names the file, the key, the value and
 * the range, or a run with it ends. The ends of each range, as the refusal states them, are among the extremes.
 */
class ConfigNumbersTest {
    private static final String HUGE = "1e308";

    private static final String HUGE_WHOLE = "99999999999999999999";

    /** No number of any config. */
    private static final List<String> NEVER = List.of(HUGE, HUGE_WHOLE, "1e-320", "NaN", ".inf", "x", "-0.0", "-1e308");

    private static final List<String> SOMETIMES =
            List.of("0", "-1", "2147483647", "-2147483648", "4294967296", "1e15", "1e9", "\"\"", "0x10", "1_000", "1d");

    /** Keys whose numbers may be negative, where zero may have a sign too. */
    private static final Pattern SIGNED = Pattern.compile(".*(vault_elevation|seed|curve).*");

    private static final Pattern RANGE = Pattern.compile("from (-?[0-9.e-]+) to ([0-9.e]+)");

    /** Far longer than a run on a street takes on any machine, and far shorter than forever. */
    private static final Duration LONGEST = Duration.ofMinutes(2);

    @TempDir
    private Path folder;

    private Path config;
    private String inputs;
    private String main;

    @BeforeEach
    void writeStreet() throws IOException {
        String street = Files.readString(StreetOfCases.write(folder));
        inputs = street.substring(0, street.indexOf("assumed:"));
        String shipped = Files.readString(Path.of("config", "spanroom.yaml"));
        main = shipped.substring(shipped.indexOf("\nassumed:") + 1)
                .replace("in_service: unknown ", "in_service: live ");
        config = folder.resolve("c.yaml");
    }

    @Test
    void numbersOfTheMainConfig() throws IOException {
        String text = inputs + main;

        for (YamlNumbers.Place place : YamlNumbers.in(text)) {
            // Words of the data and names in the catalog may look like numbers.
            if (!place.key().startsWith("values.") && !place.key().endsWith("design_cable")) {
                tryAll(place.key(), place.unit(), config, other -> write(config, place.replaced(text, other)));
            }
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"scoring", "permits", "catalog"})
    void numbersOfASection(String name) throws IOException {
        String text = Files.readString(Path.of("config", name + ".yaml"));
        Path part = folder.resolve(name + ".yaml");
        write(
                config,
                inputs + "assumed: {in_service: live}\n" + name.replace("permits", "permit") + ": " + name + ".yaml\n");
        Set<String> tried = new LinkedHashSet<>();

        for (YamlNumbers.Place place : YamlNumbers.in(text)) {
            // The rows of a table have the same keys.
            if (!name.equals("catalog") || tried.add(place.key())) {
                tryAll(place.key(), "", part, other -> write(part, place.replaced(text, other)));
            }
        }
    }

    /** The three members of a rate at once, since each must lie between the others. */
    @Test
    void numbersOfRates() throws IOException {
        String text = Files.readString(Path.of("config", "rates.yaml"));
        Path part = folder.resolve("rates.yaml");
        write(config, inputs + "assumed: {in_service: live}\nrates: rates.yaml\n");
        Matcher rate = Pattern.compile("([a-z0-9_]+)(?:: \\{|, )value: [0-9.]+, low: [0-9.]+, high: [0-9.]+")
                .matcher(text);
        int rates = 0;

        while (rate.find()) {
            int value = text.indexOf("value:", rate.start());
            String before = text.substring(0, value);
            String after = text.substring(rate.end());
            tryAll(
                    rate.group(1),
                    "",
                    part,
                    other -> write(part, before + "value: %1$s, low: %1$s, high: %1$s".formatted(other) + after));
            rates++;
        }
        assertThat(rates).isGreaterThan(80);
    }

    @Test
    void numbersOfAProgram() throws IOException {
        Path run = StreetOfCases.rank(ProgramTown.write(folder), folder.resolve("town"));
        String text = Files.readString(Path.of("config", "program.yaml"))
                .replace("most_in_work: {} ", "most_in_work: {Quay: 3}")
                .replace("district: ", "district: owner");
        Set<String> tried = new LinkedHashSet<>();

        for (YamlNumbers.Place place : YamlNumbers.in(text)) {
            if (tried.add(place.key())) {
                tryAll(
                        place.key(),
                        "",
                        config,
                        other -> write(config, place.replaced(text, other)),
                        file -> ProgramConfigReader.read(file),
                        () -> CommandRun.of(
                                "program",
                                run.toString(),
                                "--config",
                                config.toString(),
                                "--output",
                                folder.resolve("p").toString(),
                                "--overwrite",
                                "--skip",
                                "curve,prices,draws"));
            }
        }
    }

    /** Writes a config with something else in place of a number. */
    private interface Writing {
        void with(String other) throws IOException;
    }

    /** Reads the config that was written. */
    private interface Reading {
        void read(Path file);
    }

    /** Runs the program with it. */
    private interface Running {
        CommandRun run();
    }

    private void tryAll(String key, String unit, Path file, Writing writing) throws IOException {
        tryAll(key, unit, file, writing, named -> ConfigReader.read(config), this::rank);
    }

    private void tryAll(String key, String unit, Path file, Writing writing, Reading reading, Running running)
            throws IOException {
        var extremes = new ArrayList<>(SOMETIMES);
        for (String never : NEVER) {
            if (never.equals("-0.0") && SIGNED.matcher(key).matches()) {
                continue;
            }
            writing.with(never);
            String complaint = refusal(reading, file, key + " = " + never + unit);
            assertThat(complaint).as(key + " = " + never).isNotEmpty();
            Matcher range = RANGE.matcher(complaint);
            if (never.equals(HUGE) || never.equals(HUGE_WHOLE)) {
                assertThat(range.find() || complaint.contains("must be a whole number"))
                        .as(complaint)
                        .isTrue();
            }
            if (range.reset().find()) {
                extremes.add(range.group(1));
                extremes.add(range.group(2));
                assertThat(complaint).contains("'" + never + unit + "'. Check the number");
            }
        }
        for (String extreme : new LinkedHashSet<>(extremes)) {
            String what = key + " = " + extreme + unit;
            writing.with(extreme);
            if (refusal(reading, file, what).isEmpty()) {
                assertTimeoutPreemptively(LONGEST, () -> {
                    CommandRun ran = running.run();
                    assertThat(ran.exitCode()).as(what + ": " + ran.err()).isIn(ExitCode.OK, ExitCode.INPUT);
                    assertThat(ran.complaint().lines().count()).as(ran.err()).isLessThanOrEqualTo(1);
                });
            }
        }
    }

    /** Returns the message, checked; empty if the config is accepted. */
    private static String refusal(Reading reading, Path file, String what) {
        try {
            reading.read(file);
            return "";
        } catch (InputException refused) {
            assertThat(refused.getMessage()).as(what).startsWith(file + ": ").doesNotContain("\n");
            assertThat(refused.getMessage().length()).as(what).isLessThan(400);
            return refused.getMessage();
        }
    }

    private CommandRun rank() {
        return CommandRun.of(
                "rank",
                "--config",
                config.toString(),
                "--output",
                folder.resolve("run").toString(),
                "--overwrite",
                "--quiet",
                "--formats",
                "csv",
                "--columns",
                "all");
    }

    private static void write(Path file, String text) throws IOException {
        Files.writeString(file, text);
    }
}
