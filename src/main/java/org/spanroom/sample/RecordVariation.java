package org.spanroom.sample;

import java.util.List;
import java.util.Map;

/**
 * Writes some records in other words, as the hands that kept them would: sizes by the name of a catalog's row, and other words
 * for the same. Draws from a source of chance of its own.
 */
final class RecordVariation {
    private static final int PURPOSE = 8;
    private static final Map<String, List<String>> SERVICE = Map.of(
            "live", List.of("In service", "active", "LIVE"),
            "dead", List.of("abandoned", "out of service"),
            "unknown", List.of("unk"));
    private static final Map<String, List<String>> FLOODED =
            Map.of("yes", List.of("Y", "wet", "full of water"), "no", List.of("N", "dry"));
    private static final Map<String, List<String>> CONDITION = Map.of(
            "sound", List.of("good", "OK"),
            "oval", List.of("deformed"),
            "collapsed", List.of("crushed"),
            "blocked", List.of("obstructed"));

    private final Chance chance;

    RecordVariation(District district) {
        this.chance = district.chance(PURPOSE);
    }

    /** Rewrites a record, or leaves it; always draws the same number. */
    void rewrite(Draft draft) {
        Attributes attributes = draft.attributes();
        reword(attributes, RouteField.IN_SERVICE, SERVICE);
        reword(attributes, RouteField.FLOODED, FLOODED);
        reword(attributes, RouteField.CONDITION, CONDITION);
        boolean byName = chance.happens(0.08);
        boolean besides = chance.happens(0.06);
        int way = chance.below(4);
        if (byName || besides) {
            name(draft, way, byName);
        }
        if (chance.happens(0.08)) {
            draft.filling()
                    .innerduct()
                    .ifPresent(size -> attributes
                            .with(RouteField.INNERDUCT_SIZE, size.catalogName())
                            .without(RouteField.INNERDUCT_OD_IN)
                            .without(RouteField.INNERDUCT_SDR));
        }
    }

    private static void name(Draft draft, int way, boolean insteadOfBore) {
        List<String> names = draft.bank().direct()
                ? List.of()
                : draft.bank().type().catalogNames(draft.bank().bore());
        if (names.isEmpty()) {
            return;
        }
        draft.attributes().with(RouteField.DUCT_SIZE, names.get(way));
        if (insteadOfBore) {
            draft.attributes().without(RouteField.BORE_IN);
        }
    }

    private void reword(Attributes attributes, RouteField field, Map<String, List<String>> otherWords) {
        boolean other = chance.happens(0.1);
        int place = chance.below(6);
        if (!other) {
            return;
        }
        List<String> words = otherWords.getOrDefault(attributes.text(field), List.of());
        if (!words.isEmpty()) {
            attributes.with(field, words.get(place % words.size()));
        }
    }
}
