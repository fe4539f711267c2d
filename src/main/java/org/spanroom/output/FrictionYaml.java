package org.spanroom.output;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.spanroom.model.learn.FrictionChange;
import org.spanroom.model.learn.LearnResults;
import org.spanroom.model.pull.Friction;
import org.spanroom.model.pull.FrictionSet;
import org.spanroom.model.pull.FrictionSets;

/** Writes proposed coefficients of friction as a part of a config. */
final class FrictionYaml {
    private static final int DECADE = 10;

    private FrictionYaml() {}

    /** Returns the text; empty where nothing is proposed. */
    static Optional<String> text(LearnResults results) {
        List<FrictionChange> proposed = results.frictionChanges().stream()
                .filter(change -> change.after().isPresent())
                .toList();
        if (proposed.isEmpty()) {
            return Optional.empty();
        }
        var lines = new ArrayList<String>();
        lines.add(
                "# Proposed friction, from measured pulls. Check it, then copy it to the section 'pull' of the config. It starts from the");
        lines.add("# shipped coefficients each time: learning again with it does not count reports twice.");
        lines.add("pull:");
        for (FrictionChange change : proposed) {
            if (change.stratum().isEmpty()) {
                lines.add("  # factor on the dry coefficients: " + words(change));
                lines.add("  friction:");
                for (Friction state : Friction.values()) {
                    lines.add("    " + state.key() + ": " + set(sets(change).of(state)));
                }
            }
        }
        List<FrictionChange> byType = proposed.stream()
                .filter(change ->
                        !change.ductType().isEmpty() && change.fromYear().isPresent())
                .toList();
        if (!byType.isEmpty()) {
            lines.add("  friction_by_type:");
            byType.forEach(change -> {
                lines.add("    # " + words(change));
                lines.add("    - " + byType(change));
            });
        }
        return Optional.of(String.join("\n", lines) + "\n");
    }

    private static String words(FrictionChange change) {
        return change.estimate().map(RatesYaml::words).orElse("");
    }

    private static FrictionSets sets(FrictionChange change) {
        return change.after().orElse(change.before());
    }

    private static String byType(FrictionChange change) {
        int from = change.fromYear().orElse(0);
        FrictionSets sets = sets(change);
        return "{duct_type: " + RatesYaml.quoted(change.ductType()) + ", from_year: " + from + ", to_year: "
                + (from + DECADE - 1) + ", friction: {lubricated: " + set(sets.lubricated()) + ", dry: "
                + set(sets.dry()) + ", bad: " + set(sets.bad()) + "}}";
    }

    private static String set(FrictionSet set) {
        return "{duct_ratio: " + RatesYaml.number(set.ductRatio()) + ", jacket_ratio: "
                + RatesYaml.number(set.jacketRatio()) + ", neighbor_ratio: " + RatesYaml.number(set.neighborRatio())
                + "}";
    }
}
