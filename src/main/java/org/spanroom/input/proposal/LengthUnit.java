package org.spanroom.input.proposal;

import java.util.List;
import java.util.Optional;
import org.spanroom.config.PlausibleRanges;
import org.spanroom.model.Term;
import org.spanroom.model.Unit;

/** The unit of recorded lengths, by the lengths that the lines are drawn with: the one in which most agree. */
final class LengthUnit {
    private static final double TOLERANCE_RATIO = 0.05;
    private static final double AGREEING_SHARE = 0.6;
    private static final int LEAST = 3;
    private static final double SURVEY_TOLERANCE = 1e-7;

    /** Kilometers and centimeters are rare but unlike all others. */
    private static final List<Unit> UNITS = List.of(Unit.M, Unit.FT, Unit.KM, Unit.IN, Unit.CM, Unit.MM);

    private LengthUnit() {}

    static UnitGuess of(LayerSample routes, int field) {
        Optional<Unit> named = routes.fields().get(field).unit();
        Optional<Unit> drawn = drawn(routes, field);
        if (drawn.isEmpty()) {
            return new UnitGuess(
                    Optional.of(named.orElse(Unit.M)),
                    new Doubt("no unit makes the values agree with the drawn lengths, or too few can be compared"));
        }
        if (named.isEmpty()) {
            return UnitGuess.sure(drawn.get());
        }
        boolean alike = named.get() == drawn.get() || (isFoot(named.get()) && isFoot(drawn.get()));
        return alike
                ? UnitGuess.sure(named.get())
                : new UnitGuess(
                        drawn,
                        new Doubt("the name says " + named.get().symbol() + ", the drawn lengths say "
                                + drawn.get().symbol()));
    }

    private static boolean isFoot(Unit unit) {
        return unit == Unit.FT || unit == Unit.FT_US;
    }

    /** Both feet differ by less than lines are drawn exactly; the layer's own foot is the one that lengths are taken in. */
    private static Optional<Unit> drawn(LayerSample routes, int field) {
        Optional<Unit> unit =
                UNITS.stream().filter(each -> agrees(routes, field, each)).findFirst();
        boolean survey = routes.crsUnitM().isPresent()
                && Math.abs(routes.crsUnitM().getAsDouble() - Unit.FT_US.toSi(1)) < SURVEY_TOLERANCE;
        return unit.map(found -> found == Unit.FT && survey ? Unit.FT_US : found);
    }

    private static boolean agrees(LayerSample routes, int field, Unit unit) {
        int compared = 0;
        int agreeing = 0;
        for (int line = 0; line < routes.lineCount(); line++) {
            double drawnM = routes.ends(line).drawnM();
            double recordedM =
                    Numbers.of(routes.text(line, field)).map(unit::toSi).orElse(Double.NaN);
            if (drawnM > 0 && recordedM > 0) {
                compared++;
                agreeing += Math.abs(recordedM - drawnM) <= TOLERANCE_RATIO * drawnM + Numbers.ROUNDING_M ? 1 : 0;
            }
        }
        return compared >= LEAST && agreeing >= AGREEING_SHARE * compared;
    }

    /**
     * Guesses the unit of elevations by the system that the lines are measured in: metric where their lengths or their cross-sections are
     * metric, feet where their lengths are in feet. Inches alone say nothing: metric cities have 4-inch ducts too.
     */
    static UnitGuess ofElevation(
            SeenField field, Optional<Unit> lengths, Optional<Unit> diameters, PlausibleRanges ranges) {
        Optional<Unit> named = field.unit();
        Unit unit = named.or(() -> lengths)
                .orElse(diameters
                        .filter(each -> each == Unit.MM)
                        .map(each -> Unit.M)
                        .orElse(Unit.M));
        boolean known = named.isPresent() || lengths.isPresent() || diameters.equals(Optional.of(Unit.MM));
        boolean plausible = field.numberShare(value -> ranges.contains(Term.VAULT_ELEVATION, unit.toSi(value))) > 0.5;
        Doubt doubt = Doubt.when(!known, "the unit is not recorded; ft is plausible too")
                .or(Doubt.when(!plausible, "most values are not plausible as elevations"));
        return new UnitGuess(Optional.of(unit), doubt);
    }
}
