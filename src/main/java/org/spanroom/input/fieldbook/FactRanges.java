package org.spanroom.input.fieldbook;

import java.util.Optional;
import org.spanroom.config.PlausibleRanges;
import org.spanroom.input.layer.SourceNumber;
import org.spanroom.model.Term;
import org.spanroom.model.fieldwork.FactKind;
import org.spanroom.model.fieldwork.FactUnit;
import org.spanroom.model.fieldwork.FactUse;
import org.spanroom.model.fieldwork.FieldFact;

/**
 * The range in which each fact is believed: that of the term of the records that it replaces, where the config has one; else one that
 * no work on a span or vault goes beyond (common practice, no source).
 */
final class FactRanges {
    private final PlausibleRanges terms;

    FactRanges(PlausibleRanges terms) {
        this.terms = terms;
    }

    /** A range in the unit that is kept. */
    record Range(double least, double most) {
        boolean contains(double kept) {
            return kept >= least && kept <= most;
        }

        /** Returns both limits in a unit, for people. */
        String words(FactUnit unit) {
            String symbol = unit == FactUnit.NONE ? "" : " " + unit.symbol();
            return shown(unit.of(least)) + " to " + shown(unit.of(most)) + symbol;
        }

        private static String shown(double number) {
            return SourceNumber.canonical(Math.rint(number * 1000) / 1000);
        }
    }

    Range of(FieldFact fact) {
        return term(fact)
                .map(term -> new Range(
                        Math.max(ofKind(fact).least(), terms.least().getOrDefault(term, 0.0)),
                        terms.most().getOrDefault(term, ofKind(fact).most())))
                .orElseGet(() -> ofKind(fact));
    }

    /** Returns the term of the records that a fact replaces. */
    private static Optional<Term> term(FieldFact fact) {
        return switch (fact) {
            case BORE_DIAMETER -> Optional.of(Term.INSIDE_DIAMETER);
            case INNERDUCTS_FOUND -> Optional.of(Term.INNERDUCT_COUNT);
            case CABLES_FOUND -> Optional.of(Term.CABLE_COUNT);
            case INNERDUCT_DIAMETER -> Optional.of(Term.INNERDUCT_OUTSIDE_DIAMETER);
            case INNERDUCT_WALL -> Optional.of(Term.INNERDUCT_WALL);
            case CABLE_DIAMETER -> Optional.of(Term.CABLE_OUTSIDE_DIAMETER);
            case SLEEVE_CELLS -> Optional.of(Term.SLEEVE_CELLS);
            case VAULT_VOLUME -> Optional.of(Term.VAULT_VOLUME);
            case VAULT_DEPTH -> Optional.of(Term.VAULT_DEPTH);
            case VAULT_LENGTH -> Optional.of(Term.VAULT_LENGTH);
            case VAULT_WIDTH -> Optional.of(Term.VAULT_WIDTH);
            case VAULT_HEIGHT -> Optional.of(Term.VAULT_HEIGHT);
            case COVER_SIZE -> Optional.of(Term.COVER_SIZE);
            case CABLE_SLACK, CABLE_SLACK_FOUND -> Optional.of(Term.CABLE_SLACK);
            default -> Optional.empty();
        };
    }

    private static Range ofKind(FieldFact fact) {
        return switch (fact.kind()) {
            case COUNT -> count(fact);
            case DIAMETER -> new Range(0.1, 5000);
            case LENGTH -> new Range(fact.use() == FactUse.VAULT && fact != FieldFact.CABLE_SLACK ? 0.1 : 0, 10_000);
            case FORCE -> new Range(0, 200_000);
            case MASS -> new Range(0, 100_000);
            case LIQUID -> new Range(0, 20_000);
            case AIR_VOLUME -> new Range(0.05, 5000);
            case HOURS -> new Range(0, 500);
            case MINUTES -> new Range(0, 5000);
            case PERCENT -> new Range(0, 100);
            case LIGHT -> new Range(-90, 40);
            case MONEY -> new Range(0, 1e9);
            default -> new Range(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
        };
    }

    private static Range count(FieldFact fact) {
        return switch (fact) {
            case SLEEVE_CELLS -> new Range(1, 100);
            case BAGS, LOADS, SEALS_USED -> new Range(0, 10_000);
            default -> new Range(0, 100);
        };
    }

    /** Returns whether values of a kind are whole. */
    static boolean isWhole(FactKind kind) {
        return kind == FactKind.COUNT;
    }
}
