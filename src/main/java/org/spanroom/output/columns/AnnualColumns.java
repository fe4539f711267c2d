package org.spanroom.output.columns;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.spanroom.model.effort.MoneyRange;
import org.spanroom.model.program.Costs;
import org.spanroom.model.program.ProgramItem;
import org.spanroom.model.program.SpanFacts;
import org.spanroom.model.program.WorkCalendar;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.GeometryKind;
import org.spanroom.output.table.Shape;
import org.spanroom.output.table.Table;

/** The columns of the spans of an annual program: when each is recovered, by whom, at what cost and why. */
public final class AnnualColumns {
    /** By which an earlier program is read back. */
    public static final String SPAN_ID = "span_id";

    public static final String YEAR = "year";
    public static final String WEEK = "week";
    public static final String CREW = "crew";
    public static final String ORDER = "order";
    public static final String SECTION = "section";
    public static final String FIRST_DAY = "first_day";
    public static final String LAST_DAY = "last_day";
    public static final String SITE_HOURS = "site_hours";
    public static final String SHARED_HOURS = "shared_hours";
    public static final String COST_MONEY = "cost_money";
    public static final String BUDGET_MONEY = "budget_money";
    public static final String APPLY_BY = "apply_by";
    public static final String CONNECTIONS = "connections";
    public static final String WHY = "why";

    /** One row for each span of the program. */
    public static final Table<ProgramItem> PROGRAM = Table.layer(
            "program",
            "One row for each span that the program recovers, in the order of the calendar.",
            GeometryKind.LINE,
            item -> item.span().facts().lonLat().map(Shape::line).orElse(Shape.EMPTY),
            Stream.of(
                            place(),
                            times(),
                            costs(ProgramItem::costs, "less what it shares with the work before it"),
                            worth(),
                            needs())
                    .flatMap(List::stream)
                    .toList());

    private static final String LIST_END = ", joined by ;.";

    private AnnualColumns() {}

    private static List<Column<ProgramItem>> place() {
        return List.of(
                Column.integer(
                        YEAR, "year", "Year of the program in which it is recovered, from 1.", item -> item.year() + 1),
                Column.text(
                        WEEK,
                        "week",
                        "Monday of the week in which the work begins, as year-month-day.",
                        entry(WorkCalendar.Entry::week)),
                Column.text(CREW, "crew", "Crew that does the work.", entry(WorkCalendar.Entry::crew)),
                Column.integer(
                        "group",
                        "group",
                        "Number of the run of work without a break that shares set-ups, from 1; its spans follow one another.",
                        entry(WorkCalendar.Entry::group)),
                Column.integer(
                        ORDER, "order", "Place in the week of this crew, from 1.", entry(WorkCalendar.Entry::place)),
                Column.text(SECTION, "section", "Name of its section.", ProgramItem::sectionId),
                Column.text(SPAN_ID, "span_id", "Name of the span.", facts(SpanFacts::spanId)),
                Column.integer(
                        "rank",
                        "rank",
                        "Rank of the span in the run; empty for an excluded one.",
                        facts(SpanFacts::rank)));
    }

    private static List<Column<ProgramItem>> times() {
        return List.of(
                Column.text(FIRST_DAY, "first_day", "Day of its first shift.", entry(AnnualColumns::firstDay)),
                Column.text(LAST_DAY, "last_day", "Day of its last shift.", entry(AnnualColumns::lastDay)),
                Column.real(
                        "start_hours",
                        "start_h",
                        2,
                        "Hours of the first shift that are used before its work begins.",
                        entry(WorkCalendar.Entry::startHours)),
                Column.real(
                        SITE_HOURS,
                        "site_hours",
                        2,
                        "Hours on site, less those that it shares with the work before it.",
                        entry(WorkCalendar.Entry::siteHours)),
                Column.real(
                        SHARED_HOURS,
                        "shared_h",
                        2,
                        "Hours of set-up that it shares with the work before it.",
                        entry(WorkCalendar.Entry::sharedHours)),
                Column.flag(
                        "night",
                        "night",
                        "Whether it is done by night.",
                        item -> item.entry().order().night()),
                Column.text("vault_a", "vault_a", "Vault where the line of the span begins.", facts(SpanFacts::vaultA)),
                Column.text("vault_b", "vault_b", "Vault where it ends.", facts(SpanFacts::vaultB)));
    }

    private static List<Column<ProgramItem>> worth() {
        return List.of(
                Column.real(
                        BUDGET_MONEY,
                        "budget",
                        2,
                        "The part of its cost that counts against the budget of its year.",
                        ProgramItem::budgetMoney),
                Column.integer(
                        "positions",
                        "positions",
                        "Positions that its recovery adds.",
                        facts(SpanFacts::positionsGained)),
                Column.real(
                        "chance_pct",
                        "chance_pct",
                        1,
                        "Chance that its recovery works, by the simulation of the run; empty where that was not simulated.",
                        item -> percent(item.chanceRatio())),
                Column.real(
                        "chosen_chance_pct",
                        "chosen_pct",
                        1,
                        "Share of the draws of the run in which it is in the program; empty where that was not calculated.",
                        item -> percent(item.chosenRatio())),
                Column.text(
                        CONNECTIONS,
                        "connects",
                        "Connections that need it" + LIST_END,
                        item -> String.join(";", item.connections())));
    }

    private static List<Column<ProgramItem>> needs() {
        return List.of(
                Column.text(
                        "permits",
                        "permits",
                        "Permits to apply for in addition to those that recovery needs everywhere" + LIST_END,
                        facts(facts -> String.join(";", facts.permits()))),
                Column.text(
                        "crew_permits",
                        "crew_perm",
                        "Permits that the crew's own entry supervisor issues on the day of work, by permit.issued_by_crew of the run's config; not applied for"
                                + LIST_END,
                        facts(facts -> String.join(";", facts.crewPermits()))),
                Column.text(
                        APPLY_BY,
                        "apply_by",
                        "Last day to apply for its permits, or to give notice of the work.",
                        entry(WorkCalendar.Entry::applyBy)),
                Column.text(
                        "field_check",
                        "field_chk",
                        "What to look at before the work; empty where no check is listed.",
                        facts(SpanFacts::fieldCheck)),
                Column.text(
                        "check_by",
                        "check_by",
                        "Last day for that check; empty where none is listed.",
                        item -> isChecked(item) ? Optional.of(item.entry().checkBy()) : Optional.empty()),
                Column.text(
                        "district",
                        "district",
                        "Its district; empty where none is asked for or recorded.",
                        facts(SpanFacts::district)),
                Column.text(WHY, "why", "Why it is in the program.", ProgramItem::why));
    }

    /** Returns the columns of a cost and its range. */
    static <R> List<Column<R>> costs(Function<R, Costs> costs, String what) {
        return List.of(
                Column.real(
                        COST_MONEY,
                        "cost_money",
                        2,
                        "Cost with all rates at their values, " + what + ".",
                        row -> costs.apply(row).money()),
                cost(
                        "cost_low_money",
                        "cost_low",
                        "Its low value, over the draws of the rates.",
                        costs,
                        MoneyRange::lowMoney),
                cost(
                        "cost_likely_money",
                        "cost_like",
                        "Its likely value, the same way.",
                        costs,
                        MoneyRange::likelyMoney),
                cost("cost_high_money", "cost_high", "Its high value, the same way.", costs, MoneyRange::highMoney));
    }

    private static <R> Column<R> cost(
            String name,
            String shortName,
            String meaning,
            Function<R, Costs> costs,
            ToDoubleFunction<MoneyRange> part) {
        return Column.real(
                name,
                shortName,
                2,
                meaning,
                row -> part.applyAsDouble(costs.apply(row).range()));
    }

    /** Returns a ratio in percent, where there is one. */
    static OptionalDouble percent(OptionalDouble ratio) {
        return ratio.isPresent() ? OptionalDouble.of(100 * ratio.getAsDouble()) : ratio;
    }

    /** Returns whether a field check comes before the work. */
    public static boolean isChecked(ProgramItem item) {
        return !item.span().facts().fieldCheck().isBlank();
    }

    /** Returns the day of the first shift. */
    public static LocalDate firstDay(WorkCalendar.Entry entry) {
        return entry.days().get(0);
    }

    /** Returns the day of the last shift. */
    public static LocalDate lastDay(WorkCalendar.Entry entry) {
        return entry.days().get(entry.days().size() - 1);
    }

    private static Function<ProgramItem, Object> entry(Function<WorkCalendar.Entry, Object> cell) {
        return item -> cell.apply(item.entry());
    }

    private static Function<ProgramItem, Object> facts(Function<SpanFacts, Object> cell) {
        return item -> cell.apply(item.span().facts());
    }
}
