package org.spanroom.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * A town in open ocean for tests of annual programs: vaults V00 to V23 in three rows of four, about 85 m apart, and between each two neighbors a bank
 * of two ducts: {@code Hrc-1}, {@code Hrc-2} to the right of vault {@code Vrc}, and {@code Urc-1}, {@code Urc-2} up from it. Those along the lowest row belong
 * to Quay, the others to Hill. H00-1 has many circuits, H01-1 an embargo until June 30, 2027, H02-1 has collapsed; an event zone lies at
 * V23, a night zone at V20.
 */
final class ProgramTown {
    static final String ON_DATE = "2027-01-15";
    static final int ROWS = 3;
    static final int COLUMNS = 4;

    private ProgramTown() {}

    /** Writes the layers and returns the config of a run. */
    static Path write(Path folder) {
        var ducts = new ArrayList<String>();
        var vaults = new ArrayList<String>();
        for (int row = 0; row < ROWS; row++) {
            for (int column = 0; column < COLUMNS; column++) {
                String noted = ", \"depth\": 2.4, \"gas\": \"%s\", \"seen\": \"2025-0%d-17\""
                        .formatted(column == 1 ? "yes" : "no", 1 + row + column);
                vaults.add(feature("\"vault\": \"V" + row + column + "\"" + noted, "Point", place(row, column)));
                if (column + 1 < COLUMNS) {
                    bank("H" + row + column, row, place(row, column), place(row, column + 1), ducts);
                }
                if (row + 1 < ROWS) {
                    bank("U" + row + column, 1, place(row, column), place(row + 1, column), ducts);
                }
            }
        }
        String zones = collection(List.of(
                zone("Z-1", "event", "\"2027-03-01\"", "\"2027-10-31\"", 2, 3),
                zone("Z-2", "night", "null", "null", 2, 0)));
        try {
            Files.writeString(folder.resolve("ducts.geojson"), collection(ducts));
            Files.writeString(folder.resolve("vaults.geojson"), collection(vaults));
            Files.writeString(folder.resolve("zones.geojson"), zones);
            return Files.writeString(
                    folder.resolve("town.yaml"), """
                    inputs:
                      routes:
                        file: '%1$s/ducts.geojson'
                        fields: {duct: duct, duct_bank: bank, innerduct_count: inner, cable_count: cables, owner: owner,
                          condition: cond, circuits_at_risk: circuits, embargo_until: embargo}
                        keep: [inspector]
                      vaults: {file: '%1$s/vaults.geojson', fields: {vault: vault, vault_depth: depth, gas_found: gas, vault_inspected: seen}}
                      zones:
                        file: '%1$s/zones.geojson'
                        fields: {zone: zone, zone_kind: kind, zone_from: starts, zone_until: last}
                    assumed: {in_service: live}
                    permit: {on_date: %2$s}
                    """.formatted(folder.toString().replace('\\', '/'), ON_DATE));
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
    }

    private static void bank(String id, int row, String from, String to, List<String> ducts) {
        for (int number = 1; number <= 2; number++) {
            String duct = id + "-" + number;
            String more = switch (duct) {
                case "H00-1" -> ", \"circuits\": 30";
                case "H01-1" -> ", \"embargo\": \"2027-06-30\"";
                case "H02-1" -> ", \"cond\": \"collapsed\"";
                default -> "";
            };
            ducts.add(feature(
                    "\"duct\": \"%s\", \"bank\": \"%s\", \"inner\": 3, \"cables\": %d, \"owner\": \"%s\", \"inspector\": \"%s\"%s"
                            .formatted(duct, id, number + 1, row == 0 ? "Quay" : "Hill", row == 0 ? "Ida" : "", more),
                    "LineString",
                    "[" + from + ", " + to + "]"));
        }
    }

    private static String place(int row, int column) {
        return "[" + (-30_000 + column) / 1000.0 + ", " + (400_000 + 8 * row) / 10_000.0 + "]";
    }

    /** A square of about 20 m around a vault. */
    private static String zone(String name, String kind, String from, String until, int row, int column) {
        double lon = (-30_000 + column) / 1000.0;
        double lat = (400_000 + 8 * row) / 10_000.0;
        var corners = new ArrayList<String>();
        for (int[] corner : new int[][] {{-1, -1}, {1, -1}, {1, 1}, {-1, 1}, {-1, -1}}) {
            corners.add("[" + (lon + 1e-4 * corner[0]) + ", " + (lat + 1e-4 * corner[1]) + "]");
        }
        return feature(
                "\"zone\": \"%s\", \"kind\": \"%s\", \"starts\": %s, \"last\": %s".formatted(name, kind, from, until),
                "Polygon",
                "[[" + String.join(", ", corners) + "]]");
    }

    private static String collection(List<String> features) {
        return "{\"type\": \"FeatureCollection\", \"features\": [" + String.join(",\n", features) + "]}";
    }

    private static String feature(String properties, String type, String coordinates) {
        return "{\"type\": \"Feature\", \"properties\": {" + properties + "}, \"geometry\": {\"type\": \"" + type
                + "\", \"coordinates\": " + coordinates + "}}";
    }
}
