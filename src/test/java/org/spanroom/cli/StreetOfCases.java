package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;

/**
 * A street in open ocean for tests: vaults V0 to V10 in a row, about 85 m apart, and between each two of them the ducts of one case. Vault
 * V0-OLD is at the place of V0; a loop begins and ends at V10, another at L, about 850 m east of it; the duct between W0 and W1 is an island about 550 m north of V0.
 */
final class StreetOfCases {
    static final String ON_DATE = "2027-01-15";

    /** The case between vault Vi and the next one. */
    static final List<String> CASES = List.of(
            "empty", "collapsed", "blocked", "refused", "unknown", "buried", "spliced", "embargo", "reserved", "plain");

    private StreetOfCases() {}

    /** Writes the layers and a config; more may be appended to it. */
    static Path write(Path folder, String... more) {
        var ducts = new ArrayList<String>();
        // A small empty bore beside a full one of the same bank.
        ducts.add(duct("E", 0, "\"bank\": \"BK\", \"bore\": 50, \"inner\": 0, \"cables\": 0, \"cond\": \"good\""));
        ducts.add(duct("R", 0, "\"bank\": \"BK\", \"inner\": 3, \"cables\": 3, \"cond\": \"good\""));
        ducts.add(duct("collapsed", 1, "\"inner\": 4, \"cables\": 1, \"cond\": \"collapsed\""));
        ducts.add(duct("blocked", 2, "\"inner\": 4, \"cables\": 1, \"cond\": \"blocked\""));
        ducts.add(duct("refused", 3, "\"inner\": 4, \"cables\": 1, \"consent\": \"no\""));
        ducts.add(duct("unknown", 4, "\"cond\": \"good\""));
        ducts.add(duct("buried", 5, "\"inner\": 4, \"cables\": 1, \"type\": \"direct buried\""));
        ducts.add(duct("spliced", 6, "\"inner\": 4, \"cables\": 1, \"spliced\": \"yes\""));
        ducts.add(duct("embargo", 7, "\"inner\": 3, \"cables\": 3, \"embargo\": \"2027-06-30\""));
        ducts.add(duct("reserved", 8, "\"inner\": 4, \"cables\": 1, \"reserved\": 2, \"spliced\": \"yes\""));
        ducts.add(duct("plain", 9, "\"inner\": 3, \"cables\": 3"));
        // Two loops: one at the last vault of the street, one at a vault that nothing else meets.
        ducts.add(feature(
                "\"duct\": \"loop\", \"inner\": 3, \"cables\": 1",
                "LineString",
                "[[" + lonDeg(10) + ", 40], [-29.9895, 40.0005], [-29.9895, 39.9995], [" + lonDeg(10) + ", 40]]"));
        ducts.add(feature(
                "\"duct\": \"alone\", \"inner\": 3, \"cables\": 1",
                "LineString",
                "[[-29.98, 40], [-29.9795, 40.0005], [-29.9795, 39.9995], [-29.98, 40]]"));
        ducts.add(feature(
                "\"duct\": \"island\", \"inner\": 3, \"cables\": 3",
                "LineString",
                "[[-30, 40.005], [-29.999, 40.005]]"));
        var vaults = new ArrayList<String>();
        for (int vault = 0; vault <= CASES.size(); vault++) {
            vaults.add(feature("\"vault\": \"V" + vault + "\"", "Point", "[" + lonDeg(vault) + ", 40]"));
        }
        vaults.add(feature("\"vault\": \"V0-OLD\"", "Point", "[-30.000001, 40]"));
        vaults.add(feature("\"vault\": \"L\"", "Point", "[-29.98, 40]"));
        vaults.add(feature("\"vault\": \"W0\"", "Point", "[-30, 40.005]"));
        vaults.add(feature("\"vault\": \"W1\"", "Point", "[-29.999, 40.005]"));
        try {
            Files.writeString(folder.resolve("ducts.geojson"), collection(ducts));
            Files.writeString(folder.resolve("vaults.geojson"), collection(vaults));
            return Files.writeString(
                    folder.resolve("street" + more.length + ".yaml"),
                    """
                    inputs:
                      routes:
                        file: '%1$s/ducts.geojson'
                        fields: {duct: duct, duct_bank: bank, inside_diameter: {field: bore, unit: mm}, innerduct_count: inner,
                          cable_count: cables, condition: cond, owner_consent: consent, duct_type: type, splice_inside: spliced,
                          embargo_until: embargo, positions_reserved: reserved}
                      vaults: {file: '%1$s/vaults.geojson', fields: {vault: vault}}
                    assumed: {in_service: live}
                    permit: {on_date: %2$s}
                    """.formatted(folder.toString().replace('\\', '/'), ON_DATE) + String.join("\n", more));
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
    }

    private static String duct(String id, int from, String properties) {
        return feature(
                "\"duct\": \"" + id + "\", " + properties,
                "LineString",
                "[[" + lonDeg(from) + ", 40], [" + lonDeg(from + 1) + ", 40]]");
    }

    private static String lonDeg(int vault) {
        return String.valueOf((-30_000 + vault) / 1000.0);
    }

    private static String collection(List<String> features) {
        return "{\"type\": \"FeatureCollection\", \"features\": [" + String.join(",\n", features) + "]}";
    }

    private static String feature(String properties, String type, String coordinates) {
        return "{\"type\": \"Feature\", \"properties\": {" + properties + "}, \"geometry\": {\"type\": \"" + type
                + "\", \"coordinates\": " + coordinates + "}}";
    }

    /** Ranks into a folder. */
    static Path rank(Path config, Path run, String... options) {
        var args = new ArrayList<>(List.of("rank", "--config", config.toString(), "--output", run.toString()));
        args.addAll(List.of(options));
        CommandRun ranked = CommandRun.of(args.toArray(String[]::new));
        assertThat(ranked.exitCode()).as(ranked.err()).isZero();
        return run;
    }

    /** Returns the bytes of all files below a folder, by name. */
    static Map<String, List<Byte>> bytes(Path folder) {
        try (Stream<Path> files = Files.walk(folder)) {
            var all = new TreeMap<String, List<Byte>>();
            for (Path file : files.sorted().toList()) {
                var bytes = new ArrayList<Byte>();
                if (Files.isRegularFile(file)) {
                    for (byte one : Files.readAllBytes(file)) {
                        bytes.add(one);
                    }
                }
                all.put(folder.relativize(file).toString(), bytes);
            }
            return all;
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
    }

    /** Reads a table. */
    static List<CSVRecord> csv(Path file) {
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (var parser = format.parse(Files.newBufferedReader(file))) {
            return parser.getRecords();
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
    }
}
