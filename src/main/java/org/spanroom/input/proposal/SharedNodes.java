package org.spanroom.input.proposal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.spanroom.model.Term;

/**
 * Finds from and to among the lines alone: where one line's last node is another's first, both ends are drawn at one place.
 *
 * <p>Of a pair of fields all values are looked at that are in both. Levels of the bottom of pipes agree in the same way, so values with
 * decimals are none.
 */
final class SharedNodes {
    private static final int MOST_FIELDS = 16;
    private static final double LEAST_DISTINCT_SHARE = 0.3;
    private static final int LEAST_SHARED = 3;
    private static final int MOST_PLACES = 20;
    private static final double AGREEING_SHARE = 0.8;

    private final LayerSample routes;

    SharedNodes(LayerSample routes) {
        this.routes = routes;
    }

    /**
     * Two fields that name the nodes at the first and the last vertex.
     *
     * @param shared lines' ends whose value another line's other end has
     * @param agreeing those of them that are drawn at that end's place
     */
    record Pair(int from, int to, int shared, int agreeing) {}

    Optional<Pair> find() {
        var fields = new ArrayList<Integer>();
        for (int i = 0; i < routes.fields().size(); i++) {
            SeenField field = routes.fields().get(i);
            if (field.mayNameThings() && field.distinctShare() >= LEAST_DISTINCT_SHARE) {
                fields.add(i);
            }
        }
        fields.sort(
                Comparator.comparingDouble((Integer field) -> -nameScore(field)).thenComparing(field -> field));
        List<Integer> likely = fields.subList(0, Math.min(MOST_FIELDS, fields.size()));
        var pairs = new ArrayList<Pair>();
        for (int from : likely) {
            Map<String, List<LineEnds.Place>> begins = firstPlaces(from);
            likely.stream().filter(to -> to != from).forEach(to -> pairs.add(pair(from, to, begins)));
        }
        return pairs.stream()
                .filter(pair -> pair.shared >= LEAST_SHARED && pair.agreeing >= AGREEING_SHARE * pair.shared)
                .max(Comparator.comparingInt(Pair::agreeing)
                        .thenComparingDouble(pair -> nameScore(pair.from) + nameScore(pair.to)));
    }

    private double nameScore(int field) {
        FieldName name = routes.fields().get(field).name();
        return Math.max(TermPhrases.score(name, Term.VAULT_A), TermPhrases.score(name, Term.VAULT_B));
    }

    private Map<String, List<LineEnds.Place>> firstPlaces(int field) {
        var places = new HashMap<String, List<LineEnds.Place>>();
        for (int line = 0; line < routes.lineCount(); line++) {
            String text = routes.text(line, field);
            if (!text.isEmpty()) {
                List<LineEnds.Place> known = places.computeIfAbsent(text, key -> new ArrayList<>(1));
                if (known.size() < MOST_PLACES) {
                    known.add(routes.ends(line).first());
                }
            }
        }
        return places;
    }

    private Pair pair(int from, int to, Map<String, List<LineEnds.Place>> begins) {
        int shared = 0;
        int agreeing = 0;
        for (int line = 0; line < routes.lineCount(); line++) {
            List<LineEnds.Place> places = begins.get(routes.text(line, to));
            if (places != null && !routes.text(line, to).equals(routes.text(line, from))) {
                shared++;
                LineEnds ends = routes.ends(line);
                boolean agrees = places.stream().anyMatch(place -> ends.isNear(place) && !ends.isNearerFirst(place));
                agreeing += agrees ? 1 : 0;
            }
        }
        return new Pair(from, to, shared, agreeing);
    }
}
