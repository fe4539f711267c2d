package org.spanroom.program.design;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/** A Steiner tree instance of SteinLib's set B as a design problem: one root, one cable to each other terminal, bins without end. */
final class SteinlibInstance {
    private static final int NO_END = 1000;

    private SteinlibInstance() {}

    static DesignProblem read(String name) {
        var pieces = new ArrayList<Piece>();
        var terminals = new ArrayList<Integer>();
        int nodes = 0;
        for (String line : lines(name + ".stp")) {
            String[] words = line.trim().split("\\s+");
            switch (words[0]) {
                case "Nodes" -> nodes = Integer.parseInt(words[1]);
                case "E" -> pieces.add(edge(words));
                case "T" -> terminals.add(Integer.parseInt(words[1]) - 1);
                default -> {}
            }
        }
        List<Demand> demands = terminals.stream()
                .skip(1)
                .map(terminal -> new Demand(terminals.get(0), terminal, 1, Double.POSITIVE_INFINITY))
                .toList();
        return new DesignProblem(nodes, pieces, demands);
    }

    private static Piece edge(String[] words) {
        double weight = Double.parseDouble(words[3]);
        return new Piece(
                Integer.parseInt(words[1]) - 1,
                Integer.parseInt(words[2]) - 1,
                weight,
                List.of(new Bin(0, NO_END, weight)),
                NewDucts.NONE);
    }

    static double optimum(String name) {
        return lines("optima.csv").stream()
                .map(line -> line.split(","))
                .filter(cells -> cells[1].equals(name + ".stp"))
                .mapToDouble(cells -> Double.parseDouble(cells[5]))
                .findFirst()
                .orElseThrow();
    }

    private static List<String> lines(String file) {
        try (InputStream in = SteinlibInstance.class.getResourceAsStream("/steinlib-b/" + file)) {
            return new String(Objects.requireNonNull(in, file).readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
