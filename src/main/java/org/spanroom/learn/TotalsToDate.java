package org.spanroom.learn;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.spanroom.model.effort.AvoidedDig;
import org.spanroom.model.fieldwork.FieldBook;
import org.spanroom.model.fieldwork.FieldEntry;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.model.fieldwork.WorkStatus;
import org.spanroom.model.learn.Reported;
import org.spanroom.model.learn.TotalsRow;

/** Sums what was done and reported, year by year. */
public final class TotalsToDate {
    /** The row over all years. */
    public static final String ALL = "all";

    private final FieldBook book;
    private final PlannedFigures figures;

    private TotalsToDate(FieldBook book, PlannedFigures figures) {
        this.book = book;
        this.figures = figures;
    }

    /** Returns a row for each year in which work was reported as done, and one for all; no row where none was. */
    public static List<TotalsRow> of(FieldBook book, PlannedFigures figures) {
        var totals = new TotalsToDate(book, figures);
        Map<String, List<String>> byYear = new TreeMap<>();
        var all = new ArrayList<String>();
        for (String span : book.spans()) {
            FieldBook.find(book.ofSpan(span), FieldFact.STATUS, "")
                    .filter(entry -> entry.value().text().equals(WorkStatus.DONE.key()))
                    .ifPresent(entry -> {
                        String year = Integer.toString(entry.day().getYear());
                        byYear.computeIfAbsent(year, key -> new ArrayList<>()).add(span);
                        all.add(span);
                    });
        }
        var rows = new ArrayList<TotalsRow>();
        byYear.forEach((year, spans) -> rows.add(totals.row(year, spans)));
        if (!all.isEmpty()) {
            rows.add(totals.row(ALL, all));
        }
        return rows;
    }

    private TotalsRow row(String year, List<String> spans) {
        AvoidedDig dig = dig(spans);
        return new TotalsRow(
                year,
                spans.size(),
                planned(spans, PlannedWork::lengthM),
                planned(spans, PlannedWork::positionsGained),
                sum(spans, this::cells),
                sum(spans, span -> reported(span, FieldFact.INNERDUCT_MASS)),
                sum(spans, span -> reported(span, FieldFact.RECYCLED_MASS)),
                sum(spans, span -> reported(span, FieldFact.BAGS)),
                sum(spans, span -> reported(span, FieldFact.LOADS)),
                ofRun(spans, dig.trenchM()),
                ofRun(spans, dig.boreM()),
                ofRun(spans, dig.co2eKg()),
                sum(spans, this::warmKg),
                sum(spans, span -> compared(span, FieldFact.COST).map(Pair::doneInUnit)),
                sum(spans, span -> compared(span, FieldFact.COST).map(Pair::plannedInUnit)),
                sum(spans, span -> compared(span, FieldFact.STEP_HOURS).map(Pair::doneInUnit)),
                sum(spans, span -> compared(span, FieldFact.STEP_HOURS).map(Pair::plannedInUnit)));
    }

    /** What was done beside what was planned, in one unit. */
    private record Pair(double doneInUnit, double plannedInUnit) {
        Pair plus(Pair other) {
            return new Pair(doneInUnit + other.doneInUnit, plannedInUnit + other.plannedInUnit);
        }
    }

    private static Reported sum(List<String> spans, Function<String, Optional<Double>> ofSpan) {
        Reported sum = Reported.NONE;
        for (String span : spans) {
            Optional<Double> value = ofSpan.apply(span);
            sum = sum.and(value.isPresent() ? OptionalDouble.of(value.get()) : OptionalDouble.empty());
        }
        return sum;
    }

    private Reported planned(List<String> spans, ToDoubleFunction<PlannedWork> figure) {
        return sum(spans, span -> figures.work(span).map(figure::applyAsDouble));
    }

    private AvoidedDig dig(List<String> spans) {
        var dig = new AvoidedDig();
        for (String span : spans) {
            figures.work(span)
                    .ifPresent(work -> dig.add(
                            work.sectionId(), work.trenchM(), work.boreM(), work.co2eIceKg(), work.co2eDigKg()));
        }
        return dig;
    }

    /** Returns a sum over the spans that the run has, with how many it does not have. */
    private Reported ofRun(List<String> spans, double sumInUnit) {
        Reported counted = planned(spans, PlannedWork::lengthM);
        return new Reported(
                counted.sumInUnit().isPresent() ? OptionalDouble.of(sumInUnit) : OptionalDouble.empty(),
                counted.missing());
    }

    private Optional<Double> reported(String span, FieldFact fact) {
        return FieldBook.find(book.ofSpan(span), fact, "").flatMap(TotalsToDate::value);
    }

    private static Optional<Double> value(FieldEntry entry) {
        OptionalDouble kept = entry.value().keptInUnit();
        return kept.isPresent() && kept.getAsDouble() >= 0 ? Optional.of(kept.getAsDouble()) : Optional.empty();
    }

    /** Sleeves have names of the crew's; of each the last report counts. */
    private Optional<Double> cells(String span) {
        return inForce(span, FieldFact.SLEEVE_CELLS).stream()
                .flatMap(entry -> value(entry).stream())
                .reduce(Double::sum);
    }

    private Optional<Double> warmKg(String span) {
        return figures.work(span)
                .flatMap(work -> reported(span, FieldFact.RECYCLED_MASS).map(kg -> kg * work.warmKgPerKg()));
    }

    /** Returns the reports of a fact that say what was done and have a plan to compare with, added up. */
    private Optional<Pair> compared(String span, FieldFact fact) {
        return inForce(span, fact).stream()
                .flatMap(entry -> pair(entry).stream())
                .reduce(Pair::plus);
    }

    private Optional<Pair> pair(FieldEntry entry) {
        OptionalDouble ofSheet =
                entry.planned().isPresent() ? entry.planned().get().keptInUnit() : OptionalDouble.empty();
        OptionalDouble planned =
                ofSheet.isPresent() ? ofSheet : figures.find(entry.subject(), entry.fact(), entry.item());
        return planned.isPresent() ? value(entry).map(done -> new Pair(done, planned.getAsDouble())) : Optional.empty();
    }

    private List<FieldEntry> inForce(String span, FieldFact fact) {
        Map<String, FieldEntry> byItem = new LinkedHashMap<>();
        for (FieldEntry entry : book.ofSpan(span)) {
            if (entry.fact() == fact) {
                byItem.put(entry.item(), entry);
            }
        }
        return List.copyOf(byItem.values());
    }
}
