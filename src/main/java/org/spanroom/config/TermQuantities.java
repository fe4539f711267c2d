package org.spanroom.config;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.spanroom.model.Term;
import org.spanroom.model.Unit;

/** Values of terms as a config writes them: "4 in", "13.5", "live"; and as we keep them. */
final class TermQuantities {
    private static final Pattern QUANTITY = Pattern.compile("\\s*([-+]?[0-9.]+(?:[eE][-+]?[0-9]+)?)\\s*(\\S.*)?");

    /** Terms whose assumed values are words of ours. */
    private static final Map<Term, List<String>> WORDS = Map.of(
            Term.BORE_SHAPE, List.of("round", "square"),
            Term.IN_SERVICE, List.of("live", "dead", "unknown"),
            Term.CONDITION, List.of("sound", "oval", "collapsed", "blocked", "unknown"));

    private static final List<String> YES_OR_NO = List.of("yes", "no");

    /** So that 1.66 in is kept as 42.164 mm and not as 42.163999999999994. */
    private static final MathContext WITHOUT_NOISE = new MathContext(14);

    private TermQuantities() {}

    static boolean isNumber(Term term) {
        return term.kind() != Term.Kind.TEXT && term.kind() != Term.Kind.FLAG;
    }

    /** Returns what a term's units measure; empty for a term without units. */
    static Optional<Unit.Dimension> dimension(Term term) {
        return switch (term.kind()) {
            case DIAMETER, LENGTH -> Optional.of(Unit.Dimension.LENGTH);
            case MASS_PER_LENGTH -> Optional.of(Unit.Dimension.MASS_PER_LENGTH);
            case VOLUME -> Optional.of(Unit.Dimension.VOLUME);
            default -> Optional.empty();
        };
    }

    /** Returns the unit that a term is kept in, which is also the one that a field without a stated unit is read in. */
    static Optional<Unit> keptUnit(Term term) {
        return switch (term.kind()) {
            case DIAMETER -> Optional.of(Unit.MM);
            case LENGTH -> Optional.of(Unit.M);
            case MASS_PER_LENGTH -> Optional.of(Unit.KG_PER_M);
            case VOLUME -> Optional.of(Unit.M3);
            default -> Optional.empty();
        };
    }

    static Unit readUnit(ConfigNode.Scalar node, Unit.Dimension dimension, String what) {
        List<String> possible = List.of(Unit.values()).stream()
                .filter(unit -> unit.dimension() == dimension)
                .map(Unit::symbol)
                .toList();
        Unit unit = Unit.findBySymbol(node.text())
                .orElseThrow(() -> new ConfigProblem(
                        node.line(),
                        "'" + node.text() + "' is not a known unit",
                        "Possible for " + what + ": " + String.join(", ", possible) + "."));
        if (unit.dimension() != dimension) {
            throw new ConfigProblem(
                    node.line(),
                    "'" + unit.symbol() + "' is not a unit of " + what,
                    "Possible: " + String.join(", ", possible) + ".");
        }
        return unit;
    }

    /** Returns a number with its unit, in the unit that is kept. */
    static double readNumber(Term term, ConfigNode node) {
        ConfigNode.Scalar scalar = Binder.scalar(node, term.key());
        Matcher quantity = QUANTITY.matcher(scalar.text());
        if (!quantity.matches() || DecimalComma.isIn(scalar.text())) {
            throw new ConfigProblem(
                    node.line(),
                    term.key() + " must be " + wanted(term) + ", is " + node.kind(),
                    DecimalComma.remedy(scalar.text()));
        }
        double number = parse(term, scalar, quantity.group(1));
        Optional<Unit.Dimension> dimension = dimension(term);
        String unit = quantity.group(2);
        if (dimension.isEmpty() != (unit == null)) {
            throw new ConfigProblem(node.line(), term.key() + " must be " + wanted(term) + ", is " + node.kind(), "");
        }
        if (unit == null) {
            return inRange(term, number, scalar);
        }
        Unit read =
                readUnit(new ConfigNode.Scalar(unit.strip(), false, node.line()), dimension.orElseThrow(), term.key());
        double kept = term.kind() == Term.Kind.DIAMETER ? read.toMm(number) : read.toSi(number);
        // A decimal number has no negative zero, which the range does not have either.
        boolean hasNoise = Double.isFinite(kept) && kept != 0;
        return inRange(term, hasNoise ? new BigDecimal(kept, WITHOUT_NOISE).doubleValue() : kept, scalar);
    }

    /** The range is one of the unit that is kept. */
    private static double inRange(Term term, double kept, ConfigNode.Scalar scalar) {
        NumberRange range = NumberRanges.of(term);
        if (!range.contains(kept)) {
            String words = term.kind() == Term.Kind.COUNT ? range.wholeWords() : range.words();
            String unit = keptUnit(term).map(one -> " " + one.symbol()).orElse("");
            throw ScalarValues.outside(scalar, term.key(), words + unit, range);
        }
        return kept == 0 ? 0 : kept;
    }

    private static double parse(Term term, ConfigNode.Scalar scalar, String digits) {
        try {
            double number = Double.parseDouble(digits);
            if (term.kind() != Term.Kind.COUNT || number == Math.rint(number)) {
                return number;
            }
        } catch (NumberFormatException e) {
            // Falls through to the message below.
        }
        throw new ConfigProblem(scalar.line(), term.key() + " must be " + wanted(term) + ", is " + scalar.kind(), "");
    }

    static String readWord(Term term, ConfigNode node) {
        String text = Binder.scalar(node, term.key()).text().strip();
        List<String> possible = term.kind() == Term.Kind.FLAG ? YES_OR_NO : WORDS.getOrDefault(term, List.of());
        if (possible.isEmpty()) {
            return text;
        }
        String word = text.toLowerCase(Locale.ROOT);
        word = word.equals("true") ? "yes" : word.equals("false") ? "no" : word;
        if (!possible.contains(word)) {
            throw new ConfigProblem(
                    node.line(),
                    "'" + text + "' is not a valid value for " + term.key(),
                    "Possible: " + String.join(", ", possible) + ".");
        }
        return word;
    }

    private static String wanted(Term term) {
        return switch (term.kind()) {
            case DIAMETER -> "a number with a unit, such as 4 in or 100 mm";
            case LENGTH -> "a number with a unit, such as 30 m or 100 ft";
            case MASS_PER_LENGTH -> "a number with a unit, such as 0.25 kg/m or 170 lb/1000ft";
            case VOLUME -> "a number with a unit, such as 13 m3 or 480 ft3";
            case COUNT -> "a whole number";
            default -> "a number";
        };
    }
}
