package org.spanroom.network;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import org.spanroom.finding.FindingCode;
import org.spanroom.model.Unit;
import org.spanroom.model.network.Route;

/**
 * Whether the recorded lengths of whole files are in another unit than the config says. That is doubtful where at least half of the recorded
 * lengths, and at least five, are the drawn ones times the factor between the configured unit and another, within 3 %. Common practice,
 * no source. For one thread.
 */
final class LengthUnits {
    private static final int LEAST = 5;
    private static final double TOLERANCE_RATIO = 0.03;

    /** Units that a length may be in; no drawing distinguishes the US survey foot from the foot. */
    private static final Set<Unit> KNOWN = EnumSet.of(Unit.M, Unit.FT, Unit.KM, Unit.IN, Unit.CM, Unit.MM);

    private final RecordedField field;
    private final Map<Unit, Double> factors = new EnumMap<>(Unit.class);
    private final Map<String, Seen> bySource = new TreeMap<>();

    LengthUnits(RecordedField field) {
        this.field = field;
        for (Unit other : KNOWN) {
            double factor = field.unit().toSi(1) / other.toSi(1);
            if (!isNear(factor, 1)) {
                factors.put(other, factor);
            }
        }
    }

    /** The routes of one file. */
    private static final class Seen {
        private final Map<Unit, Long> agreeing = new EnumMap<>(Unit.class);
        private long recorded;
    }

    private static boolean isNear(double ratio, double factor) {
        return Math.abs(ratio - factor) <= TOLERANCE_RATIO * factor;
    }

    /** Counts a route by its two lengths, if it has both. */
    void see(Route route, double drawnM, NetworkFindings findings) {
        double recordedM = route.recordedLengthM().orElse(0);
        if (!(recordedM > 0 && drawnM > 0)) {
            return;
        }
        Seen seen = bySource.computeIfAbsent(findings.source(route), key -> new Seen());
        seen.recorded++;
        double ratio = recordedM / drawnM;
        if (isNear(ratio, 1)) {
            return;
        }
        factors.forEach((unit, factor) -> {
            if (isNear(ratio, factor)) {
                seen.agreeing.merge(unit, 1L, Long::sum);
            }
        });
    }

    /** Reports each file whose unit is doubtful; at most one unit can have half of the routes, but for an even split. */
    void report(NetworkFindings findings) {
        bySource.forEach((source, seen) -> seen.agreeing.entrySet().stream()
                .filter(unit -> unit.getValue() >= LEAST && 2 * unit.getValue() >= seen.recorded)
                .findFirst()
                .ifPresent(unit -> findings.layer(
                        FindingCode.UNIT_DOUBTFUL,
                        source,
                        field.name(),
                        detail(unit.getKey(), unit.getValue(), seen.recorded))));
    }

    private String detail(Unit likely, long agreeing, long recorded) {
        BigDecimal factor =
                new BigDecimal(Objects.requireNonNull(factors.get(likely)), new MathContext(4)).stripTrailingZeros();
        return String.format(
                Locale.ROOT,
                "check the unit of %s in the config: %,d of %,d recorded lengths are %s times the drawn ones, as if"
                        + " they were in %s, not in %s",
                field.name(),
                agreeing,
                recorded,
                factor.toPlainString(),
                likely.inWords(),
                field.unit().inWords());
    }
}
