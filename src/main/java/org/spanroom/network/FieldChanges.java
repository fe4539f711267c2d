package org.spanroom.network;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.spanroom.model.Term;
import org.spanroom.model.fieldwork.FactUse;
import org.spanroom.model.fieldwork.FactValue;
import org.spanroom.model.fieldwork.FieldEntry;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.model.fieldwork.WorkStatus;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.CatalogUse;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.EndFacts;
import org.spanroom.model.network.FieldRecord;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.RejectedValue;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.network.UsualItems;

/**
 * What the entries of the field book change of the duct of a span: the values that crews found replace the recorded ones, and what is
 * known now is no longer assumed. Pure; safe for use by several threads.
 */
public final class FieldChanges {
    /** A measured distance may exceed the drawn length by so much. */
    private static final double MOST_OF_LENGTH_RATIO = 1.1;

    private final UsualItems usual;

    /** @param usual the sizes that are taken where none is recorded */
    public FieldChanges(UsualItems usual) {
        this.usual = usual;
    }

    /**
     * A duct after its entries.
     *
     * @param fromFacts what is known of it at the vault where the span begins
     * @param toFacts what is known of it at the vault where the span ends
     * @param problems of entries that took no effect, or not all of it
     */
    public record Applied(Duct duct, EndFacts fromFacts, EndFacts toFacts, List<FieldProblem> problems) {
        public Applied {
            problems = List.copyOf(problems);
        }
    }

    /**
     * Applies entries.
     *
     * @param entries of the span that count, in the order of days
     */
    public Applied apply(Span span, List<FieldEntry> entries) {
        List<FieldEntry> used = entries.stream()
                .filter(entry ->
                        entry.fact().use() == FactUse.STATUS || entry.fact().use() == FactUse.DUCT)
                .toList();
        if (used.isEmpty()) {
            return new Applied(span.duct(), span.fromFacts(), span.toFacts(), List.of());
        }
        Duct recorded = span.duct();
        var problems = new ArrayList<FieldProblem>();
        var facts = new FactsInForce(used);
        Set<Term> found = EnumSet.noneOf(Term.class);
        double insideMm = facts.find(FieldFact.BORE_DIAMETER)
                .map(entry -> number(entry, Term.INSIDE_DIAMETER, found))
                .orElse(recorded.insideDiameterMm());
        boolean flooded = facts.find(FieldFact.DUCT_FLOODED)
                .map(entry -> found.add(Term.FLOODED) && FactsInForce.isYes(entry))
                .orElse(recorded.flooded());
        Blocking blocking = blocking(span, used, problems);
        Condition condition = blocking.condition().orElse(recorded.condition());
        blocking.condition().ifPresent(known -> found.add(Term.CONDITION));
        var context = new FoundContext(recorded.withSizes(insideMm, recorded.contents()), facts, usual, problems);
        Contents contents = FoundContents.of(context);
        found.addAll(context.found());
        Duct applied = replaced(
                context.duct(), contents, flooded, condition, found, context.assumed(), record(facts, used, blocking));
        reportOverfill(applied, facts, problems);
        reportDoneWithoutContents(applied, facts, problems);
        return new Applied(applied, facts(span, SpanEnd.A, facts), facts(span, SpanEnd.B, facts), problems);
    }

    private static EndFacts facts(Span span, SpanEnd end, FactsInForce found) {
        EndFacts recorded = span.factsAt(end);
        String hole = found.find(FieldFact.DUCT_HOLE, end.key())
                .map(entry -> entry.value().text())
                .orElse(recorded.hole());
        OptionalDouble slackM = found.find(FieldFact.CABLE_SLACK_FOUND, end.key())
                .map(entry -> entry.value().keptInUnit())
                .orElse(recorded.slackM());
        return new EndFacts(hole, slackM);
    }

    private static double number(FieldEntry entry, Term term, Set<Term> found) {
        found.add(term);
        return entry.value().keptInUnit().orElseThrow();
    }

    /**
     * What is known of the bore.
     *
     * @param condition empty where nothing is reported
     * @param from the vault that the distance of the obstruction is measured from, or empty
     */
    private record Blocking(Optional<Condition> condition, OptionalDouble atM, String from) {}

    /** The last entry counts: an obstruction that was found later closes a duct that was sound, and the other way around. */
    private static Blocking blocking(Span span, List<FieldEntry> entries, List<FieldProblem> problems) {
        var last = new Blocking(Optional.empty(), OptionalDouble.empty(), "");
        for (FieldEntry entry : entries) {
            if (entry.fact() == FieldFact.DUCT_CONDITION) {
                Condition condition = Condition.valueOf(entry.value().text().toUpperCase(Locale.ROOT));
                boolean stays = condition == Condition.BLOCKED;
                last = new Blocking(
                        Optional.of(condition), stays ? last.atM() : OptionalDouble.empty(), stays ? last.from() : "");
            } else if (entry.fact() == FieldFact.BLOCKED_AT) {
                double atM = entry.value().keptInUnit().orElseThrow();
                SpanEnd end = entry.item().equals(SpanEnd.B.key()) ? SpanEnd.B : SpanEnd.A;
                boolean inside = atM <= MOST_OF_LENGTH_RATIO * span.lengthM();
                if (!inside) {
                    problems.add(FieldProblem.contradiction(
                            entry, "the span is shorter than that; it counts as blocked at an unknown place"));
                }
                last = new Blocking(
                        Optional.of(Condition.BLOCKED),
                        inside ? OptionalDouble.of(atM) : OptionalDouble.empty(),
                        inside ? end.vaultOf(span).id() : "");
            }
        }
        return last;
    }

    private static FieldRecord record(FactsInForce facts, List<FieldEntry> used, Blocking blocking) {
        Optional<FieldEntry> status = facts.find(FieldFact.STATUS);
        return new FieldRecord(
                status.map(FieldEntry::value).map(FactValue::text).flatMap(WorkStatus::find),
                status.map(FieldEntry::day),
                facts.find(FieldFact.STATUS_REASON)
                        .map(entry -> entry.value().text())
                        .orElse(""),
                blocking.atM(),
                blocking.from(),
                used.stream().map(FieldEntry::number).sorted().toList());
    }

    private static Duct replaced(
            Duct duct,
            Contents contents,
            boolean flooded,
            Condition condition,
            Set<Term> found,
            Set<Term> newlyAssumed,
            FieldRecord record) {
        Set<Term> assumed = EnumSet.noneOf(Term.class);
        assumed.addAll(duct.assumed());
        assumed.addAll(newlyAssumed);
        assumed.removeAll(found);
        Set<Term> ofCatalog = EnumSet.noneOf(Term.class);
        ofCatalog.addAll(duct.catalogUse().terms());
        ofCatalog.removeAll(found);
        boolean counted = found.contains(Term.INNERDUCT_COUNT) && found.contains(Term.CABLE_COUNT);
        List<RejectedValue> rejected = duct.rejected().stream()
                .filter(value -> found.stream().noneMatch(term -> term.key().equals(value.name())))
                .filter(value -> !(counted && value.isContents()))
                .toList();
        return new Duct(
                duct.id(),
                duct.bankId(),
                duct.boreShape(),
                duct.insideDiameterMm(),
                duct.type(),
                duct.material(),
                duct.directBuried(),
                contents,
                flooded,
                condition,
                duct.surface(),
                duct.owner(),
                duct.installedYear(),
                duct.circumstances(),
                assumed,
                new CatalogUse(ofCatalog, duct.catalogUse().rows()),
                rejected,
                duct.kept(),
                record);
    }

    /** Contents that take more than the bore prove one of the entries wrong, or a record. */
    private static void reportOverfill(Duct duct, FactsInForce facts, List<FieldProblem> problems) {
        double areaMm2 = duct.contents().innerducts().stream()
                        .mapToDouble(Innerduct::areaMm2)
                        .sum()
                + duct.contents().cablesBeside().stream()
                        .mapToDouble(Cable::areaMm2)
                        .sum();
        if (areaMm2 > duct.boreAreaMm2()) {
            facts.find(FieldFact.BORE_DIAMETER)
                    .or(() -> facts.find(FieldFact.INNERDUCTS_FOUND))
                    .or(() -> facts.find(FieldFact.CABLES_FOUND))
                    .or(() -> facts.all(FieldFact.INNERDUCT_DIAMETER).stream().findFirst())
                    .or(() -> facts.all(FieldFact.CABLE_DIAMETER).stream().findFirst())
                    .or(() -> facts.all(FieldFact.SLEEVE_CELLS).stream().findFirst())
                    .ifPresent(entry -> problems.add(FieldProblem.contradiction(
                            entry,
                            "contents of " + Math.round(areaMm2) + " mm2 would be in a bore of "
                                    + Math.round(duct.boreAreaMm2()) + " mm2; it was used all the same")));
        }
    }

    /** Work that is done leaves its positions only where crews say what they took out. */
    private static void reportDoneWithoutContents(Duct duct, FactsInForce facts, List<FieldProblem> problems) {
        boolean said = !facts.all(FieldFact.INNERDUCT_OUT).isEmpty()
                || !facts.all(FieldFact.SLEEVE_CELLS).isEmpty();
        if (duct.fieldRecord().is(WorkStatus.DONE) && !said) {
            problems.add(
                    FieldProblem.incomplete(
                            facts.find(FieldFact.STATUS).orElseThrow(),
                            "no entry says which innerducts came out and which sleeves went in, so the duct's positions are those of its records; report innerduct_out and sleeve_cells"));
        }
    }
}
