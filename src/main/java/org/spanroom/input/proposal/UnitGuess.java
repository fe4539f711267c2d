package org.spanroom.input.proposal;

import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.spanroom.config.PlausibleRanges;
import org.spanroom.input.fields.TermNumbers;
import org.spanroom.model.Term;
import org.spanroom.model.Unit;

/**
 * The unit of cross-sections, masses and volumes, by the field's name and the range and steps of its values.
 *
 * <p>Pipes are made in steps: whole and half inches, or whole millimeters. Meters show by 0.1524 (6 in) or 0.15, feet by 0.3333 or 0.5; a
 * value that is a step in both, as 0.5, decides nothing. Common practice, no source.
 */
record UnitGuess(Optional<Unit> unit, Doubt doubt) {
    static final UnitGuess NONE = new UnitGuess(Optional.empty(), Doubt.NONE);

    private static final double MOST_SHARE = 0.8;
    private static final double FEW_SHARE = 0.5;
    private static final double BELOW_ONE = 1.05;
    private static final double INCHES_ONLY_BELOW_MM = 20;
    private static final double MM_ONLY_FROM = 97;
    private static final double STEP_TOLERANCE = 0.012;

    /** Nominal sizes from 20 to 97 in inches and in millimeters; from memory. */
    private static final List<Integer> INCH_SIZES =
            List.of(20, 21, 24, 27, 30, 33, 36, 39, 42, 48, 54, 60, 66, 72, 78, 84, 90, 96);

    private static final List<Integer> MM_SIZES = List.of(20, 25, 28, 32, 34, 40, 44, 50, 54, 56, 63, 65, 75, 80, 90);

    static UnitGuess sure(Unit unit) {
        return new UnitGuess(Optional.of(unit), Doubt.NONE);
    }

    private static UnitGuess unsure(Unit unit, String reason) {
        return new UnitGuess(Optional.of(unit), new Doubt(reason));
    }

    /** Guesses for a term that is neither of ground length nor without a unit. */
    static UnitGuess of(Term term, SeenField field, PlausibleRanges ranges) {
        Optional<Unit> named = field.unit();
        if (named.isPresent()) {
            double plausible = field.sizeShare(size -> isPlausible(term, size, named.get(), ranges));
            return new UnitGuess(
                    named,
                    Doubt.when(plausible < FEW_SHARE, "most values are not plausible in the unit that the name gives"));
        }
        return term.kind() == Term.Kind.DIAMETER ? ofDiameter(term, field, ranges) : first(term, field, ranges);
    }

    private static boolean isPlausible(Term term, double size, Unit unit, PlausibleRanges ranges) {
        return ranges.contains(term, TermNumbers.kept(term, size, Optional.of(unit)));
    }

    private static UnitGuess first(Term term, SeenField field, PlausibleRanges ranges) {
        Unit.Dimension dimension =
                term.kind() == Term.Kind.VOLUME ? Unit.Dimension.VOLUME : Unit.Dimension.MASS_PER_LENGTH;
        List<Unit> fitting = fitting(term, dimension, field, ranges);
        if (fitting.isEmpty()) {
            return NONE;
        }
        return unsure(
                fitting.get(0),
                fitting.size() > 1 ? "the unit is not recorded; " + also(fitting) : "the unit is not recorded");
    }

    private static List<Unit> fitting(Term term, Unit.Dimension dimension, SeenField field, PlausibleRanges ranges) {
        double median = field.medianSize().orElse(Double.NaN);
        return TermNumbers.BY_HABIT.stream()
                .filter(unit -> unit.dimension() == dimension && isPlausible(term, median, unit, ranges))
                .toList();
    }

    private static String also(List<Unit> fitting) {
        return String.join(" or ", fitting.stream().skip(1).map(Unit::symbol).toList()) + " is plausible too";
    }

    private static UnitGuess ofDiameter(Term term, SeenField field, PlausibleRanges ranges) {
        double median = field.medianSize().orElse(Double.NaN);
        if (Double.isNaN(median)) {
            return NONE;
        }
        if (term != Term.INSIDE_DIAMETER) {
            return ofSmall(term, field, ranges);
        }
        if (median >= MM_ONLY_FROM) {
            return sure(Unit.MM);
        }
        if (median >= INCHES_ONLY_BELOW_MM) {
            return inchesOrMm(field);
        }
        return median < BELOW_ONE ? belowOne(field) : inchesOrCm(field);
    }

    private static UnitGuess belowOne(SeenField field) {
        double metres =
                field.sizeShare(size -> isStep(size * 1000 / 25) || isStep(size / 0.0254) || isStep(size * 100));
        double feet = field.sizeShare(size -> isStep(size * 12) || isStep(size * 8));
        if (metres >= MOST_SHARE && feet < FEW_SHARE) {
            return sure(Unit.M);
        }
        if (feet >= MOST_SHARE && metres < FEW_SHARE) {
            return sure(Unit.FT);
        }
        return unsure(metres >= feet ? Unit.M : Unit.FT, "meters and feet are both plausible");
    }

    private static boolean isStep(double value) {
        return value > FEW_SHARE && Math.abs(value - Math.rint(value)) <= STEP_TOLERANCE;
    }

    /** Between 1 and 20 inches are usual; whole tens and fives alone may be centimeters. */
    private static UnitGuess inchesOrCm(SeenField field) {
        double fives = field.sizeShare(size -> size >= 10 && size % 5 == 0);
        return fives >= MOST_SHARE ? unsure(Unit.IN, "inches and centimeters are both plausible") : sure(Unit.IN);
    }

    private static UnitGuess inchesOrMm(SeenField field) {
        Predicate<Double> inch = size -> (size < INCHES_ONLY_BELOW_MM && isStep(size * 2)) || isIn(INCH_SIZES, size);
        Predicate<Double> mm = size -> size >= MM_ONLY_FROM || isIn(MM_SIZES, size) || size != Math.rint(size * 2) / 2;
        double inches = field.sizeShare(inch);
        double millimetres = field.sizeShare(mm);
        if (millimetres >= MOST_SHARE && inches < MOST_SHARE) {
            return sure(Unit.MM);
        }
        if (inches >= MOST_SHARE && millimetres < FEW_SHARE) {
            return sure(Unit.IN);
        }
        return unsure(millimetres >= inches ? Unit.MM : Unit.IN, "inches and millimeters are both plausible");
    }

    private static boolean isIn(List<Integer> sizes, double size) {
        return size == Math.rint(size) && sizes.contains((int) size);
    }

    /** Innerducts, walls and cables: the first plausible unit, in doubt where centimeters would make a likelier size. */
    private static UnitGuess ofSmall(Term term, SeenField field, PlausibleRanges ranges) {
        List<Unit> fitting = fitting(term, Unit.Dimension.LENGTH, field, ranges);
        if (fitting.isEmpty()) {
            return NONE;
        }
        double largestUsualIn =
                term == Term.INNERDUCT_OUTSIDE_DIAMETER ? 2.4 : term == Term.INNERDUCT_WALL ? 0.25 : 1.1;
        boolean large = fitting.get(0) == Unit.IN && field.medianSize().orElse(0.0) > largestUsualIn;
        boolean others = Stream.of(Unit.MM, Unit.CM).anyMatch(fitting::contains);
        boolean odd = fitting.get(0) != Unit.IN && fitting.get(0) != Unit.MM;
        return (large && others) || odd
                ? unsure(fitting.get(0), "the unit is not recorded" + (fitting.size() > 1 ? "; " + also(fitting) : ""))
                : sure(fitting.get(0));
    }
}
