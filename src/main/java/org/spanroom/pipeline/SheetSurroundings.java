package org.spanroom.pipeline;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.spanroom.model.Line;
import org.spanroom.model.network.Network;
import org.spanroom.model.network.SpanList;
import org.spanroom.model.network.Street;
import org.spanroom.output.sheet.SectionWork;

/** Finds what a sketch map shows around a section: other spans that end at its vaults, and streets near by. */
final class SheetSurroundings {
    private static final int MOST_SPANS = 60;
    /** A map shows about as much again to each side, and of a short section this much, some 100 m. */
    private static final double LEAST_REACH_DEG = 0.001;

    private final SpanList spans;
    private final List<Street> streets;
    private final Map<Integer, List<Integer>> spansByVault = new HashMap<>();

    SheetSurroundings(Network network, List<Street> streets) {
        this.spans = network.spans();
        this.streets = streets;
        for (int number = 0; number < spans.size(); number++) {
            spansByVault
                    .computeIfAbsent(spans.fromVault(number), none -> new ArrayList<>())
                    .add(number);
            spansByVault
                    .computeIfAbsent(spans.toVault(number), none -> new ArrayList<>())
                    .add(number);
        }
    }

    SectionWork.Around of(List<SheetSpans.Found> section) {
        Set<Integer> near = new TreeSet<>();
        for (SheetSpans.Found span : section) {
            near.addAll(spansByVault.getOrDefault(spans.fromVault(span.number()), List.of()));
            near.addAll(spansByVault.getOrDefault(spans.toVault(span.number()), List.of()));
        }
        section.forEach(span -> near.remove(span.number()));
        List<Line> lines = near.stream()
                .limit(MOST_SPANS)
                .map(number -> spans.get(number).lonLat())
                .distinct()
                .toList();
        return new SectionWork.Around(lines, streets(section));
    }

    private List<Street> streets(List<SheetSpans.Found> section) {
        var reach = new Reach();
        section.forEach(span -> reach.take(spans.get(span.number()).lonLat()));
        double asideDeg =
                Math.max(LEAST_REACH_DEG, 2 * Math.max(reach.eastDeg - reach.westDeg, reach.northDeg - reach.southDeg));
        var near = new ArrayList<Street>();
        for (Street street : streets) {
            List<Line> lines = street.lonLat().stream()
                    .filter(line -> reach.isNear(line, asideDeg))
                    .toList();
            if (!lines.isEmpty()) {
                near.add(new Street(street.name(), lines));
            }
        }
        return near;
    }

    /** A rectangle in degrees. */
    private static final class Reach {
        private double westDeg = Double.MAX_VALUE;
        private double eastDeg = -Double.MAX_VALUE;
        private double southDeg = Double.MAX_VALUE;
        private double northDeg = -Double.MAX_VALUE;

        void take(Line line) {
            for (int vertex = 0; vertex < line.size(); vertex++) {
                westDeg = Math.min(westDeg, line.x(vertex));
                eastDeg = Math.max(eastDeg, line.x(vertex));
                southDeg = Math.min(southDeg, line.y(vertex));
                northDeg = Math.max(northDeg, line.y(vertex));
            }
        }

        boolean isNear(Line line, double asideDeg) {
            var other = new Reach();
            other.take(line);
            return other.westDeg <= eastDeg + asideDeg
                    && other.eastDeg >= westDeg - asideDeg
                    && other.southDeg <= northDeg + asideDeg
                    && other.northDeg >= southDeg - asideDeg;
        }
    }
}
