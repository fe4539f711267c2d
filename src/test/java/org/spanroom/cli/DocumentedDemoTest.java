package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What the documents show of the demo. The worked example is calculated twice: by the program, and by hand with the page's own equations
 * from the given values and the reported lengths. Printed samples are lines of the run's own output.
 */
class DocumentedDemoTest {
    private static final Path PAGE = Path.of("src/site/markdown/worked-example.md");
    private static final String SPAN = "B74-1:V2-1039:V2-1038";
    private static final double IN_MM = 25.4;
    private static final double G = 9.80665;

    /** By hand, sections have their reported lengths, to a centimeter, and bends their reported arcs. */
    private static final double HAND_RATIO = 1e-3;

    @TempDir
    static Path folder;

    private static JsonNode explained;
    private static String printed;

    @BeforeAll
    static void explain() throws IOException {
        String run = folder.resolve("demo").toString();
        CommandRun ranked = CommandRun.of(
                "rank",
                "--config",
                "sample-gis/spanroom.yaml",
                "--output",
                run,
                "--formats",
                "csv",
                "--columns",
                "score");
        assertThat(ranked.exitCode()).as(ranked.err()).isZero();
        CommandRun json = CommandRun.of("explain", SPAN, "--run", run, "--json");
        assertThat(json.exitCode()).as(json.err()).isZero();
        explained = new ObjectMapper().readTree(json.out());
        printed = ranked.out() + CommandRun.of("explain", SPAN, "--run", run).out();
        for (String table : List.of("spans", "field_checks")) {
            printed += Files.readString(folder.resolve("demo").resolve(table + ".csv"));
        }
    }

    /** Times differ from run to run; dots stand for what is left out. */
    @ParameterizedTest
    @ValueSource(strings = {"README.md", "src/site/markdown/results.md", "src/site/markdown/explain.md"})
    void samplesAreLinesOfTheRun(String page) throws IOException {
        List<String> lines = printed.lines().map(String::strip).toList();
        List<String> sample = sample(Files.readAllLines(Path.of(page)));
        assertThat(sample).hasSizeGreaterThan(10);
        assertThat(lines).containsAll(sample);
    }

    /** The columns that the page shows of one span, and the first check in the field. */
    @Test
    void thePageOnConfidenceShowsTheRunsChances() throws IOException {
        List<String> sample = sample(Files.readAllLines(Path.of("src/site/markdown/confidence.md")));
        List<String> header = List.of(printed.lines()
                .filter(line -> line.startsWith("span_id,rank,score_points"))
                .findFirst()
                .orElseThrow()
                .split(",", -1));
        String span = sample.get(3).split(",", -1)[0];
        String[] cells = printed.lines()
                .filter(line -> line.startsWith(span + ","))
                .findFirst()
                .orElseThrow()
                .split(",(?=(?:[^\"]*\"[^\"]*\")*[^\"]*$)", -1);
        String[] names = sample.get(0).split(" +", -1);
        String[] values = sample.get(1).split(" +", -1);
        for (int i = 0; i < names.length; i++) {
            assertThat(cells[header.indexOf(names[i])]).as(names[i]).isEqualTo(values[i]);
        }
        assertThat(printed).contains(sample.get(3).substring(0, sample.get(3).indexOf("; ...")));
    }

    private static List<String> sample(List<String> page) {
        List<String> sample = new ArrayList<>();
        boolean inside = false;
        for (String line : page) {
            if (line.startsWith("```")) {
                inside = !inside;
            } else if (inside
                    && !line.isBlank()
                    && !line.strip().equals("...")
                    && !line.matches("[a-z ]+ +[0-9.]+ s  .*")) {
                sample.add(line.strip());
            }
        }
        return sample;
    }

    /** Two runs on the layers that record nothing of their contents: as they are, and with the lines that the first run prints. */
    @Test
    void thePageOnLittleRecordedShowsItsTwoRuns() throws IOException {
        Path config = folder.resolve("oldtown.yaml");
        CommandRun.of(
                "check",
                "--fields",
                "--routes",
                "sample-gis/oldtown.geojson",
                "--vaults",
                "sample-gis/oldtown_vaults.geojson",
                "--write",
                config.toString());
        String first = rank(config, "oldtown-1");
        String lines = first.substring(first.indexOf("    scenarios:"), first.indexOf("Next: "));
        Files.writeString(config, Files.readString(config) + "\n" + lines.replaceAll("(?m)^ {4}", ""));
        List<String> out =
                (first + rank(config, "oldtown-2")).lines().map(String::strip).toList();

        List<String> sample = sample(Files.readAllLines(Path.of("src/site/markdown/little-recorded.md")));

        assertThat(sample).hasSizeGreaterThan(20);
        assertThat(out).containsAll(sample);
    }

    private static String rank(Path config, String run) {
        CommandRun ranked = CommandRun.of(
                "rank",
                "--config",
                config.toString(),
                "--output",
                folder.resolve(run).toString(),
                "--formats",
                "csv");
        assertThat(ranked.exitCode()).as(ranked.err()).isZero();
        return ranked.out();
    }

    /** Puts today's numbers in, where asked for; what a calculation shows in words is for people to follow up. */
    private static void regenerate() throws IOException {
        List<Double> hand = byHand();
        List<String> lines = new ArrayList<>();
        int next = 0;
        for (String line : Files.readAllLines(PAGE)) {
            String[] cells = isKeyed(line) ? cells(line) : new String[0];
            if (cells.length == 5) {
                cells[2] = rounded(number(cells[4]), cells[2]).toPlainString();
            } else if (cells.length == 7) {
                cells[3] = rounded(hand.get(next++), cells[3]).toPlainString();
                cells[4] = rounded(number(cells[6]), cells[4]).toPlainString();
            }
            lines.add(cells.length == 5 || cells.length == 7 ? "| " + String.join(" | ", cells) + " |" : line);
        }
        Files.writeString(PAGE, String.join("\n", lines) + "\n");
    }

    @Test
    void everyNumberOfTheProgramIsTheProgramsOwn() throws IOException {
        if (Boolean.getBoolean("spanroom.regenerate")) {
            regenerate();
        }
        List<String[]> rows = rows();
        assertThat(rows).hasSizeGreaterThan(45);
        for (String[] cells : rows) {
            JsonNode found = at(cells[cells.length - 1]);
            if (found.isObject()) {
                assertThat(cells[0]).isEqualTo("`" + found.get("criterion").asText() + "`");
                assertThat(new BigDecimal(cells[1]))
                        .isEqualByComparingTo(found.get("quantity_in_unit").decimalValue());
                assertRounded(cells[4], found.get("weight_ratio"));
                assertRounded(cells[6], found.get("points"));
            } else {
                assertRounded(cells[cells.length == 5 ? 2 : cells.length == 7 ? 4 : 6], found);
            }
        }
    }

    @Test
    void everyNumberByHandFollowsFromTheEquations() throws IOException {
        List<String[]> rows = rows().stream().filter(cells -> cells.length == 7).toList();
        List<Double> hand = byHand();
        assertThat(rows).hasSameSizeAs(hand);
        for (int i = 0; i < hand.size(); i++) {
            String[] cells = rows.get(i);
            assertThat(new BigDecimal(cells[3])).as(cells[0]).isEqualByComparingTo(rounded(hand.get(i), cells[3]));
            double program = at(cells[6]).asDouble();
            assertThat(hand.get(i))
                    .as(cells[0])
                    .isCloseTo(program, within(HAND_RATIO * program + halfUnit(program, cells[4])));
        }
    }

    /** Values by (9.2) are those of the program, to the printed decimals, and add up to the score by (9.1). */
    @Test
    void valuesAndPointsByHandAreThoseOfTheScore() throws IOException {
        double total = 0;
        for (String[] cells : rows()) {
            if (cells.length == 8 && at(cells[7]).isObject()) {
                double value = at(cells[7]).get("value_ratio").asDouble();
                assertThat(Double.parseDouble(cells[3])).as(cells[0]).isCloseTo(value, within(5.1e-5));
                double points = 100 * Double.parseDouble(cells[3]) * Double.parseDouble(cells[4]);
                assertThat(Double.parseDouble(cells[5])).as(cells[0]).isCloseTo(points, within(0.0051));
                total += points;
            }
        }
        assertThat(total).isCloseTo(explained.at("/score/total_points").asDouble(), within(0.01));
        assertThat(Files.readString(PAGE))
                .contains("rank " + explained.get("rank").asText() + " of "
                        + explained.get("spans_ranked").asText());
    }

    private static List<Double> byHand() {
        List<Double> hand = new ArrayList<>();
        double[] turn = {number("bends[0].deflection_deg"), number("bends[1].deflection_deg")};
        double[] arc = {number("bends[0].arc_length_m"), number("bends[1].arc_length_m")};
        double[] radius = {arc[0] / Math.toRadians(turn[0]), arc[1] / Math.toRadians(turn[1])};
        double bore = 2.047 * IN_MM;
        double outside = 1.660 * IN_MM;
        double wall = outside / 13.5;
        double cable = 0.40 * IN_MM;
        hand.addAll(List.of(turn[0] + turn[1], radius[0], radius[1]));
        hand.addAll(List.of(
                area(bore),
                100 * area(outside) / area(bore),
                area(outside) - area(cable),
                100 * area(cable) / area(bore),
                3.0,
                3.0));
        double average = wall + Math.max(0.254, 0.06 * wall);
        double massKgPerM = Math.PI * (outside - average) * average * 955e-6;
        double cableNPerM = 47 * 0.00148816 * G;
        double bothNPerM = massKgPerM * G + cableNPerM - area(outside) * 1e-3 * G;
        double[] cableN = cablePass(cableNPerM, turn, radius);
        hand.addAll(List.of(cableN[4], cableN[3], cableN[2], cableN[1], cableN[0]));
        double[] bothN = bodyPass(bothNPerM, cableN[0], turn, radius);
        for (int i = 0; i < 5; i++) {
            hand.add(bothN[i] - cableN[i + 1]);
        }
        double strengthN = 7.584 * Math.PI * (outside - wall) * wall;
        hand.addAll(List.of(
                strengthN,
                1.3 * bothN[4],
                100 * 1.3 * bothN[4] / strengthN,
                100 * 1.3 * cableN[0] / 801,
                100 * (turn[0] + turn[1]) / 360,
                100 * 20 * cable / 1000 / radius[0],
                100 * 1.3 * bothN[3] / (radius[1] - bore / 2000) / 7300));
        hand.addAll(effort(massKgPerM));
        return hand;
    }

    private static List<Double> effort(double massKgPerM) {
        double lengthM = number("length_m");
        double hours = sum("hours");
        double recovery = sum("cost");
        double build = sum("new_build");
        return List.of(
                lengthM / 330,
                hours,
                (hours + 1) * 5,
                massKgPerM * lengthM,
                lengthM + 4,
                0.02 * lengthM,
                recovery,
                build,
                build - recovery,
                (build - recovery) / recovery);
    }

    /** Returns the tension of the cable at the ends of the sections, A first; it begins with 0 at B. */
    private static double[] cablePass(double weightNPerM, double[] turn, double[] radius) {
        double[] tensionN = new double[6];
        for (int i = 4; i >= 0; i--) {
            double slope = -slope(i);
            double loadNPerM = weightNPerM * (0.30 * Math.cos(slope) + Math.sin(slope));
            tensionN[i] = i % 2 == 1
                    ? levelBend(tensionN[i + 1], weightNPerM, 0.30, turn[i / 2], radius[i / 2])
                    : straight(tensionN[i + 1], loadNPerM, 0.30, lengthM(i));
        }
        return tensionN;
    }

    /** Returns the tension of innerduct and cable together at the far ends of the sections. */
    private static double[] bodyPass(double weightNPerM, double holdN, double[] turn, double[] radius) {
        double[] tensionN = new double[5];
        double beforeN = holdN;
        for (int i = 0; i < 5; i++) {
            double loadNPerM = 0.35 * Math.abs(weightNPerM) * Math.cos(slope(i)) + weightNPerM * Math.sin(slope(i));
            tensionN[i] = i % 2 == 1
                    ? levelBend(beforeN, Math.abs(weightNPerM), 0.35, turn[i / 2], radius[i / 2])
                    : straight(beforeN, loadNPerM, 0.35, lengthM(i));
            beforeN = tensionN[i];
        }
        return tensionN;
    }

    /** Equation (6.3). */
    private static double straight(double tensionN, double loadNPerM, double friction, double lengthM) {
        double perM = friction * number("pull.settings.wander_rad_per_m");
        return tensionN * Math.exp(perM * lengthM) + loadNPerM * Math.expm1(perM * lengthM) / perM;
    }

    /** Equation (6.5). */
    private static double levelBend(
            double tensionN, double weightNPerM, double friction, double turnDeg, double radiusM) {
        double angle = friction * Math.toRadians(turnDeg);
        return tensionN * Math.cosh(angle) + Math.sinh(angle) * Math.hypot(tensionN, weightNPerM * radiusM);
    }

    private static double lengthM(int section) {
        return number(section(section) + ".far.at_m") - number(section(section) + ".near.at_m");
    }

    private static double slope(int section) {
        return Math.asin(number(section(section) + ".rise_m") / lengthM(section));
    }

    private static String section(int number) {
        return "pull.innerducts[0].ways[1].sections[" + number + "]";
    }

    private static double area(double diameterMm) {
        return Math.PI * diameterMm * diameterMm / 4;
    }

    private static double sum(String kind) {
        double sum = 0;
        for (JsonNode line : explained.at("/effort/lines")) {
            sum += line.get("kind").asText().equals(kind)
                    ? line.get("amount_in_unit").asDouble()
                    : 0;
        }
        return sum;
    }

    /** Rows of the page's tables whose last cell is a key, without the marks of bold text. */
    private static List<String[]> rows() throws IOException {
        List<String[]> rows = new ArrayList<>();
        for (String line : Files.readAllLines(PAGE)) {
            if (isKeyed(line)) {
                rows.add(cells(line));
            }
        }
        return rows;
    }

    private static boolean isKeyed(String line) {
        return line.startsWith("|") && line.endsWith("` |");
    }

    private static String[] cells(String line) {
        String inside =
                line.replace("**", "").substring(1, line.replace("**", "").length() - 1);
        return Arrays.stream(inside.split("\\|", -1)).map(String::strip).toArray(String[]::new);
    }

    private static JsonNode at(String key) {
        String pointer =
                "/" + key.replace("`", "").replace("]", "").replace('[', '/').replace('.', '/');
        JsonNode found = explained.at(pointer);
        assertThat(found.isMissingNode()).as(key).isFalse();
        return found;
    }

    private static double number(String key) {
        return at(key).asDouble();
    }

    private static void assertRounded(String printed, JsonNode found) {
        assertThat(new BigDecimal(printed)).as(printed).isEqualByComparingTo(rounded(found.asDouble(), printed));
    }

    private static BigDecimal rounded(double value, String printed) {
        return BigDecimal.valueOf(value).setScale(new BigDecimal(printed).scale(), RoundingMode.HALF_UP);
    }

    /** Half a unit of the last place that the program reports, where it reports no more than is printed. */
    private static double halfUnit(double program, String printed) {
        int decimals = Math.min(
                new BigDecimal(printed).scale(),
                BigDecimal.valueOf(program).stripTrailingZeros().scale());
        return Double.parseDouble(String.format(Locale.ROOT, "0.51e-%d", Math.max(0, decimals)));
    }
}
