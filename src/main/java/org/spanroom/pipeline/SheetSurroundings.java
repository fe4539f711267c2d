package org.spanroom.pipeline;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.locationtech.jts.geom.Envelope;
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
        var reach = new Envelope();
        section.forEach(span -> reach.expandToInclude(around(spans.lonLat(span.number()))));
        reach.expandBy(Math.max(LEAST_REACH_DEG, 2 * Math.max(reach.getWidth(), reach.getHeight())));
        var near = new ArrayList<Street>();
        for (Street street : streets) {
            List<Line> lines = street.lonLat().stream()
                    .filter(line -> reach.intersects(around(line)))
                    .toList();
            if (!lines.isEmpty()) {
                near.add(new Street(street.name(), lines));
            }
        }
        return near;
    }

    private static Envelope around(Line lonLat) {
        var around = new Envelope();
        for (int vertex = 0; vertex < lonLat.size(); vertex++) {
            around.expandToInclude(lonLat.x(vertex), lonLat.y(vertex));
        }
        return around;
    }
}
