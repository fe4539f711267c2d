package org.spanroom.network;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.spanroom.model.Line;
import org.spanroom.model.network.Route;
import org.spanroom.model.network.Vault;

/** A random network with every fault that real layers have, on a street grid in the open ocean. */
final class FaultyCity {
    private static final double BLOCK_M = 70;

    final List<Route> routes = new ArrayList<>();
    final List<Vault> vaults = new ArrayList<>();
    private final Random random;
    private final int size;
    private final double lonDeg;
    private final double latDeg;

    FaultyCity(long seed, int size, int ducts) {
        random = new Random(seed);
        this.size = size;
        lonDeg = seed % 4 == 0 ? 179.999 : -35;
        latDeg = -60 + random.nextInt(120);
        placeVaults();
        for (int duct = 0; duct < ducts; duct++) {
            drawDuct(duct);
        }
    }

    private boolean chance(double share) {
        return random.nextDouble() < share;
    }

    private double jitter(double meters) {
        return meters * (2 * random.nextDouble() - 1);
    }

    private void placeVaults() {
        for (int i = 0; i < size * size; i++) {
            int row = i / size;
            double x = (i - row * size) * BLOCK_M;
            double y = row * BLOCK_M;
            if (chance(0.15)) {
                continue;
            }
            if (chance(0.15)) {
                addFootprint("F" + i, x + jitter(0.5), y + jitter(0.5), 1 + random.nextDouble());
            } else {
                addPoint("V" + i, x + jitter(0.6), y + jitter(0.6));
            }
            if (chance(0.1)) {
                double nearM = chance(0.5) ? 0.1 : 1.2;
                addPoint("W" + i, x + jitter(nearM), y + jitter(nearM));
            }
        }
    }

    private void addPoint(String id, double x, double y) {
        double[] place = Sketch.degrees(lonDeg, latDeg, x, y);
        vaults.add(new Vault(vaults.size(), id, place[0], place[1], List.of(), OptionalDouble.empty(), ""));
    }

    private void addFootprint(String id, double x, double y, double halfM) {
        double[] corners = {-1, -1, 1, -1, 1, 1, -1, 1, -1, -1};
        double[] ring = new double[10];
        for (int i = 0; i < 10; i += 2) {
            double[] corner = Sketch.degrees(lonDeg, latDeg, x + halfM * corners[i], y + halfM * corners[i + 1]);
            ring[i] = corner[0];
            ring[i + 1] = corner[1];
        }
        double[] place = Sketch.degrees(lonDeg, latDeg, x, y);
        List<Line> rings = List.of(Line.wrap(ring, false));
        vaults.add(new Vault(vaults.size(), id, place[0], place[1], rings, OptionalDouble.empty(), ""));
    }

    /** A walk over the grid, sometimes closed, broken into pieces, drawn once or as a bank of several ducts. */
    private void drawDuct(int duct) {
        List<double[]> walk = new ArrayList<>();
        int column = random.nextInt(size);
        int row = random.nextInt(size);
        int steps = 1 + random.nextInt(7);
        for (int step = 0; step <= steps; step++) {
            walk.add(new double[] {column * BLOCK_M + jitter(0.3), row * BLOCK_M + jitter(0.3)});
            if (chance(0.5)) {
                walk.add(new double[] {column * BLOCK_M + 20 + jitter(10), row * BLOCK_M + 30 + jitter(10)});
            }
            if (chance(0.1)) {
                walk.add(walk.get(walk.size() - 1).clone());
            }
            column = Math.floorMod(column + random.nextInt(3) - 1, size);
            row = Math.floorMod(row + random.nextInt(3) - 1, size);
        }
        if (chance(0.1)) {
            walk.add(walk.get(0).clone());
        }
        int bank = chance(0.2) ? 3 : 1;
        for (int copy = 0; copy < bank; copy++) {
            drawPieces("D" + duct + "." + copy, walk);
        }
    }

    private void drawPieces(String duct, List<double[]> walk) {
        boolean named = chance(0.9);
        List<double[]> piece = new ArrayList<>();
        for (int i = 0; i < walk.size(); i++) {
            piece.add(walk.get(i));
            boolean breaks = piece.size() > 1 && i + 1 < walk.size() && chance(0.3);
            if (breaks) {
                draw(duct, named, piece);
                double gapM = chance(0.6) ? 0 : chance(0.6) ? 0.2 : 2;
                piece = new ArrayList<>();
                piece.add(new double[] {walk.get(i)[0] + jitter(gapM), walk.get(i)[1] + jitter(gapM)});
            }
        }
        draw(duct, named, piece);
    }

    private void draw(String duct, boolean named, List<double[]> points) {
        List<double[]> drawn = new ArrayList<>(points);
        if (drawn.size() < 2) {
            drawn.add(drawn.get(0).clone());
        }
        double[] lonLat = new double[2 * drawn.size()];
        for (int i = 0; i < drawn.size(); i++) {
            double[] place = Sketch.degrees(lonDeg, latDeg, drawn.get(i)[0], drawn.get(i)[1]);
            lonLat[2 * i] = place[0];
            lonLat[2 * i + 1] = place[1];
        }
        String id = "R" + routes.size();
        routes.add(new Route(
                routes.size(),
                id,
                Sketch.duct(named ? duct : id, chance(0.9) ? "HDPE" : "PVC", !named),
                Line.wrap(lonLat, false),
                chance(0.3) ? OptionalDouble.of(50 + 400 * random.nextDouble()) : OptionalDouble.empty(),
                chance(0.3) ? Optional.of("V" + random.nextInt(size * size)) : Optional.empty(),
                chance(0.3) ? Optional.of("V" + random.nextInt(size * size)) : Optional.empty(),
                ""));
    }

    /** Returns the same routes numbered in another order, some drawn from their other ends. */
    List<Route> redrawn(long seed) {
        var other = new Random(seed);
        List<Route> shuffled = new ArrayList<>(routes);
        Collections.shuffle(shuffled, other);
        List<Route> redrawn = new ArrayList<>();
        for (Route route : shuffled) {
            boolean back = other.nextBoolean();
            redrawn.add(new Route(
                    redrawn.size(),
                    route.id(),
                    route.duct(),
                    back ? route.lonLat().reversed() : route.lonLat(),
                    route.recordedLengthM(),
                    back ? route.toVaultId() : route.fromVaultId(),
                    back ? route.fromVaultId() : route.toVaultId(),
                    route.positionQuality()));
        }
        return redrawn;
    }
}
