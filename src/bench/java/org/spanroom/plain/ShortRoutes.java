package org.spanroom.plain;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.SplittableRandom;

/**
 * Writes an invented plant of short routes, as networks drawn duct by duct have it: five vertices and ten attributes a route, a grid of
 * vaults about 120 m apart, 2.65 spans a route. The same size and seed give the same bytes.
 *
 * <p>Usage: {@code ShortRoutes FOLDER ROUTES [SEED]}.
 */
public final class ShortRoutes {
    private static final double SPACING_M = 120;
    private static final double JITTER_M = 12;
    private static final double DUCT_APART_M = 0.15;
    private static final double M_PER_DEG = 111_320;
    private static final double WEST_DEG = -127.5;
    private static final double SOUTH_DEG = 38.9;
    private static final double COS_SOUTH = Math.cos(Math.toRadians(SOUTH_DEG));
    private static final int VERTICES = 5;
    private static final int MOST_SPANS = VERTICES - 1;
    private static final int[] SPANS_OF_100 = {15, 45, 75, 100};
    /** Bore, innerducts and their outside diameter that go together, in. */
    private static final double[][] FILLS = {
        {4.026, 3, 1.315}, {4.026, 4, 1.315}, {4.026, 3, 1.66}, {4.05, 4, 1.315}, {5.047, 4, 1.66}, {3.068, 2, 1.315}
    };

    private static final String[] MATERIALS = {"PVC", "steel", "clay", "fiberglass"};

    private final SplittableRandom random;
    private final int side;
    private final double[] eastM;
    private final double[] northM;

    private ShortRoutes(int routes, long seed) {
        random = new SplittableRandom(seed);
        side = Math.max(MOST_SPANS + 1, (int) Math.round(Math.sqrt(0.613 * routes)));
        eastM = new double[side * side];
        northM = new double[side * side];
        for (int vault = 0; vault < side * side; vault++) {
            eastM[vault] = vault % side * SPACING_M + random.nextDouble(-JITTER_M, JITTER_M);
            int row = vault / side;
            northM[vault] = row * SPACING_M + random.nextDouble(-JITTER_M, JITTER_M);
        }
    }

    public static void main(String[] args) throws IOException {
        Path folder = Files.createDirectories(Path.of(args[0]));
        int routes = Integer.parseInt(args[1]);
        var plant = new ShortRoutes(routes, args.length > 2 ? Long.parseLong(args[2]) : 1);
        Files.writeString(folder.resolve("spanroom.yaml"), CONFIG);
        plant.writeVaults(folder.resolve("vaults.geojson"));
        int spans = plant.writeRoutes(folder.resolve("ducts.geojson"), routes);
        System.out.println(routes + " routes, " + plant.eastM.length + " vaults, " + spans + " spans");
    }

    private void writeVaults(Path file) {
        write(file, out -> {
            for (int vault = 0; vault < eastM.length; vault++) {
                out.append(vault == 0 ? "" : ",\n")
                        .append("{\"type\":\"Feature\",\"properties\":{\"vault_id\":\"V")
                        .append(Integer.toString(vault))
                        .append("\"},\"geometry\":{\"type\":\"Point\",\"coordinates\":");
                append(out, eastM[vault], northM[vault]);
                out.append("}}");
            }
        });
    }

    private int writeRoutes(Path file, int routes) {
        int[] spans = {0};
        write(file, out -> {
            for (int route = 0; route < routes; route++) {
                out.append(route == 0 ? "" : ",\n");
                spans[0] += writeRoute(out, route);
            }
        });
        return spans[0];
    }

    private int writeRoute(Appendable out, int route) throws IOException {
        int draw = random.nextInt(100);
        int spans = 1;
        while (draw >= SPANS_OF_100[spans - 1]) {
            spans++;
        }
        boolean along = random.nextBoolean();
        int first = random.nextInt(side - spans);
        int across = random.nextInt(side);
        int start = along ? across * side + first : first * side + across;
        int step = along ? 1 : side;
        double besideM = DUCT_APART_M * random.nextInt(-2, 3);
        out.append("{\"type\":\"Feature\",\"properties\":{").append(attributes(route, start, along));
        out.append("},\"geometry\":{\"type\":\"LineString\",\"coordinates\":[");
        int between = VERTICES - 1 - spans;
        for (int block = 0; block <= spans; block++) {
            int vault = start + block * step;
            out.append(block == 0 ? "" : ",");
            append(out, eastM[vault] + (along ? 0 : besideM), northM[vault] + (along ? besideM : 0));
            // What is left of the five vertices makes a jog in each of the first blocks, in a route of one span all of
            // them.
            int jogs = spans == 1 ? (block == 0 ? between : 0) : block < between ? 1 : 0;
            for (int jog = 1; jog <= jogs; jog++) {
                out.append(",");
                appendJog(out, vault, vault + step, (double) jog / (jogs + 1), along);
            }
        }
        out.append("]}}");
        return spans;
    }

    private void appendJog(Appendable out, int from, int to, double share, boolean along) throws IOException {
        double asideM = random.nextDouble(-2, 2);
        double east = eastM[from] + share * (eastM[to] - eastM[from]);
        double north = northM[from] + share * (northM[to] - northM[from]);
        append(out, east + (along ? 0 : asideM), north + (along ? asideM : 0));
    }

    private String attributes(int route, int start, boolean along) {
        double[] fill = FILLS[random.nextInt(FILLS.length)];
        int cables = random.nextInt((int) fill[1] + 1);
        return String.format(
                Locale.ROOT,
                "\"route_id\":\"R%d\",\"duct_id\":\"D%d\",\"bank_id\":\"B%d%s\",\"bore_in\":%.3f,\"material\":\"%s\","
                        + "\"innerducts\":%d,\"innerduct_od_in\":%.3f,\"cables\":%d,\"cable_od_in\":%.2f,\"in_service\":\"LIVE\"",
                route,
                route,
                start,
                along ? "E" : "N",
                fill[0],
                MATERIALS[random.nextInt(MATERIALS.length)],
                (int) fill[1],
                fill[2],
                cables,
                0.4 + 0.05 * random.nextInt(8));
    }

    private static void append(Appendable out, double eastM, double northM) throws IOException {
        out.append(String.format(
                Locale.ROOT,
                "[%.7f,%.7f]",
                WEST_DEG + eastM / (M_PER_DEG * COS_SOUTH),
                SOUTH_DEG + northM / M_PER_DEG));
    }

    private interface Body {
        void write(BufferedWriter out) throws IOException;
    }

    private static void write(Path file, Body body) {
        try (BufferedWriter out = Files.newBufferedWriter(file)) {
            out.append("{\"type\":\"FeatureCollection\",\"features\":[\n");
            body.write(out);
            out.append("\n]}\n");
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
    }

    private static final String CONFIG = """
            inputs:
              routes:
                file: ducts.geojson
                fields:
                  route: route_id
                  duct: duct_id
                  duct_bank: bank_id
                  inside_diameter: {field: bore_in, unit: in}
                  duct_material: material
                  innerduct_count: innerducts
                  innerduct_outside_diameter: {field: innerduct_od_in, unit: in}
                  cable_count: cables
                  cable_outside_diameter: {field: cable_od_in, unit: in}
                  in_service: in_service
              vaults:
                file: vaults.geojson
                fields:
                  vault: vault_id
            """;
}
