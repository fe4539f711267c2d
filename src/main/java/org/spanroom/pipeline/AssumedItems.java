package org.spanroom.pipeline;

import java.util.List;
import java.util.Optional;
import org.spanroom.config.AssumedValues;
import org.spanroom.model.Term;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.Service;
import org.spanroom.model.network.UsualItems;

/** The innerduct and the cable that the config assumes where the data has no sizes. */
final class AssumedItems {
    private AssumedItems() {}

    static UsualItems of(AssumedValues assumed) {
        return new UsualItems(innerduct(assumed), cable(assumed));
    }

    private static Optional<Innerduct> innerduct(AssumedValues assumed) {
        double outsideMm = assumed.findNumber(Term.INNERDUCT_OUTSIDE_DIAMETER).orElse(0);
        double wallMm = assumed.findNumber(Term.INNERDUCT_WALL)
                .orElse(outsideMm / assumed.findNumber(Term.INNERDUCT_SDR).orElse(Double.POSITIVE_INFINITY));
        return outsideMm > 0 && wallMm > 0 && 2 * wallMm < outsideMm
                ? Optional.of(new Innerduct("innerduct", outsideMm, wallMm, List.of()))
                : Optional.empty();
    }

    /** Whether it is live is not known, unless the config says so of all. */
    private static Optional<Cable> cable(AssumedValues assumed) {
        double outsideMm = assumed.findNumber(Term.CABLE_OUTSIDE_DIAMETER).orElse(0);
        Service service = assumed.findWord(Term.IN_SERVICE)
                .map(word -> word.equals("live") ? Service.LIVE : word.equals("dead") ? Service.DEAD : Service.UNKNOWN)
                .orElse(Service.UNKNOWN);
        return outsideMm > 0 && assumed.findNumber(Term.CABLE_MASS).isPresent()
                ? Optional.of(new Cable(
                        "cable", outsideMm, assumed.findNumber(Term.CABLE_MASS).getAsDouble(), service))
                : Optional.empty();
    }
}
