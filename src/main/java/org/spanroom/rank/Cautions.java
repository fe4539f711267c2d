package org.spanroom.rank;

import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.spanroom.model.Answer;
import org.spanroom.model.Assessment;
import org.spanroom.model.Caution;
import org.spanroom.model.Circumstances;
import org.spanroom.model.CrossSection;
import org.spanroom.model.Duct;
import org.spanroom.model.InnerductPull;
import org.spanroom.model.LimitKind;
import org.spanroom.model.PullAssessment;
import org.spanroom.model.Span;
import org.spanroom.model.SpanEnd;
import org.spanroom.model.Term;

/** Finds what to bear in mind before work on a span, though it excludes nothing. */
final class Cautions {
    private static final List<Term> COUNTS = List.of(Term.INNERDUCT_COUNT, Term.CABLE_COUNT, Term.IN_SERVICE);
    private static final List<Term> SIZES = List.of(
            Term.INSIDE_DIAMETER,
            Term.INNERDUCT_OUTSIDE_DIAMETER,
            Term.INNERDUCT_SDR,
            Term.CABLE_OUTSIDE_DIAMETER,
            Term.CABLE_MASS);

    /** The day that the run is made for; empty where none is given, so that no embargo counts as past. */
    private final Optional<LocalDate> onDate;

    Cautions(Optional<LocalDate> onDate) {
        this.onDate = onDate;
    }

    Set<Caution> of(Assessment assessment, EmptyDucts emptyDucts) {
        var cautions = EnumSet.noneOf(Caution.class);
        ofRecords(assessment.span(), cautions);
        ofCrossSection(assessment, cautions);
        ofPull(assessment, cautions);
        when(assessment.permits().nightOnly(), Caution.NIGHT_ONLY, cautions);
        when(emptyDucts.findUnproved(assessment.span()).isPresent(), Caution.EMPTY_DUCT_UNPROVED, cautions);
        return cautions;
    }

    private void ofRecords(Span span, Set<Caution> cautions) {
        Duct duct = span.duct();
        Circumstances recorded = duct.circumstances();
        when(recorded.embargoUntil().filter(this::isToCome).isPresent(), Caution.EMBARGO, cautions);
        when(recorded.circuitsAtRisk().orElse(0) > 0, Caution.CIRCUITS_AT_RISK, cautions);
        when(!recorded.jointOwners().isBlank(), Caution.JOINT_OWNERS, cautions);
        boolean wet = duct.flooded()
                || span.from().site().water() == Answer.YES
                || span.to().site().water() == Answer.YES;
        when(wet, Caution.WATER, cautions);
        when(isAnyAssumed(duct, COUNTS), Caution.CONTENTS_ASSUMED, cautions);
        when(isAnyAssumed(duct, SIZES), Caution.SIZES_ASSUMED, cautions);
    }

    private static void ofCrossSection(Assessment assessment, Set<Caution> cautions) {
        Optional<CrossSection> section = assessment.room().crossSection();
        when(section.filter(CrossSection::mayJam).isPresent(), Caution.MAY_JAM, cautions);
        when(assessment.room().findContradiction().isPresent(), Caution.CONTENTS_CANNOT_FIT, cautions);
    }

    private static void ofPull(Assessment assessment, Set<Caution> cautions) {
        PullAssessment pull = assessment.pull();
        when(WorkingEnd.isOther(assessment), Caution.PULL_FROM_OTHER_END, cautions);
        when(pull.warnings().contains(LimitKind.TOTAL_BENDS), Caution.MANY_BENDS, cautions);
        when(pull.warnings().contains(LimitKind.SECTION_LENGTH), Caution.LONG_SECTION, cautions);
        boolean stops = pull.outcome().isPossible()
                && WorkingEnd.find(assessment)
                        .filter(end -> badFrictionStops(pull, end))
                        .isPresent();
        when(stops, Caution.BAD_FRICTION, cautions);
    }

    private static boolean badFrictionStops(PullAssessment pull, SpanEnd end) {
        for (InnerductPull one : pull.pulls()) {
            if (one.from(end).use().badRatio() > 1) {
                return true;
            }
        }
        return false;
    }

    private boolean isToCome(LocalDate until) {
        return onDate.isEmpty() || !until.isBefore(onDate.get());
    }

    private static boolean isAnyAssumed(Duct duct, List<Term> terms) {
        for (Term term : terms) {
            if (duct.assumed().contains(term)) {
                return true;
            }
        }
        return false;
    }

    private static void when(boolean holds, Caution caution, Set<Caution> cautions) {
        if (holds) {
            cautions.add(caution);
        }
    }
}
