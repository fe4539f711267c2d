package org.spanroom.output.columns;

import static java.util.stream.Collectors.joining;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import org.spanroom.model.ColumnGroup;
import org.spanroom.model.Term;
import org.spanroom.model.bore.Room;
import org.spanroom.model.network.ContentsSource;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Span;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.model.rank.SpanOffer;
import org.spanroom.output.table.CellRange;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.GeometryKind;
import org.spanroom.output.table.Shape;
import org.spanroom.output.table.Table;

/**
 * The columns of the spans, the one place that layers, CSV, the file of all columns and the data dictionary have them from. A user gets the
 * core columns, and those of the groups that are asked for.
 */
public final class SpanColumns {
    public static final String NAME = "spans";

    /** What the table of all spans that later commands read is called. */
    public static final String RUN_NAME = "run_spans";

    /** The length that counts. */
    public static final Column<RankedSpan> LENGTH = Column.real(
            "length_m",
            "length_m",
            3,
            CellRange.AMOUNT,
            "Length used in the calculation: drawn, or recorded where the config says so.",
            span(Span::lengthM));

    public static final Column<RankedSpan> DRAWN_LENGTH = Column.real(
            "drawn_length_m",
            "drawn_m",
            3,
            CellRange.AMOUNT,
            "Length of the drawn line on the ground.",
            span(Span::drawnLengthM));

    public static final Column<RankedSpan> POSITIONS_NOW = Column.integer(
            "positions_now",
            "pos_now",
            CellRange.COUNT,
            "Design cables that the duct can take today with all contents left in place: in empty innerducts, "
                    + "in free cells of existing sleeves, and beside the contents. Reserved positions do not "
                    + "count; empty where the contents are unknown.",
            room(Room::positionsNow));

    public static final Column<RankedSpan> POSITIONS_GAINED = Column.integer(
            "positions_gained",
            "pos_gain",
            CellRange.WHOLE,
            "Positions that recovery adds: positions_after minus positions_now.",
            room(Room::positionsGained));

    public static final Column<RankedSpan> DUCT =
            Column.text("duct", "duct", "The owner's name of the duct.", duct(Duct::id));

    public static final Column<RankedSpan> BANK =
            Column.text("duct_bank", "duct_bank", "The bank that the duct belongs to.", duct(Duct::bankId));

    public static final Column<RankedSpan> VAULT_A = Column.text(
            "vault_a",
            "vault_a",
            "The vault where the span's line begins.",
            span(s -> s.from().id()));

    public static final Column<RankedSpan> VAULT_B =
            Column.text("vault_b", "vault_b", "The vault where the span's line ends.", span(s -> s.to().id()));

    public static final Column<RankedSpan> SPARE = Column.flag(
            "spare",
            "spare",
            "Whether the duct is spare: recorded as empty and sound, and not refused by its owner. It takes "
                    + "cables without recovery.",
            duct(Duct::isSpare));

    public static final Column<RankedSpan> POSITIONS_AFTER = Column.integer(
            "positions_after",
            "pos_after",
            CellRange.COUNT,
            "The same count after the proposed innerducts are removed; equal to positions_now where none can be "
                    + "removed.",
            room(Room::positionsAfter));

    /** Where it is known from what lies in the duct. */
    public static final Column<RankedSpan> CONTENTS_SOURCE = Column.text(
            "contents_source",
            "cont_src",
            CellRange.oneOf(Stream.of(ContentsSource.values()).map(ContentsSource::key)),
            "Source of the duct contents: recorded, assumed (the number of innerducts or cables comes from the "
                    + "config, so every result that depends on it is an assumption) or unknown.",
            duct(d -> d.contentsSource().key()));

    public static final Column<RankedSpan> ASSUMED = Column.text(
            "assumed",
            "assumed",
            CellRange.listOf(Stream.of(Term.values()).map(Term::key)),
            "Terms that were not recorded, or whose recorded value was rejected, so that the configured default "
                    + "was used, joined by ;.",
            duct(d -> terms(d.assumed())));

    /** The core columns in the order in which they are written; the owner's own fields follow. */
    private static final List<String> CORE = List.of(
            "span_id",
            "rank",
            "score_points",
            "exclusion",
            "cautions",
            "work_status",
            "duct",
            "duct_bank",
            "bank_place",
            "routes",
            "vault_a",
            "vault_b",
            "length_m",
            "owner",
            "condition",
            "flooded",
            "surface",
            "year_installed",
            "inside_diameter_mm",
            "bend_total_deg",
            "fill_now_pct",
            "fill_removed_pct",
            "fill_final_pct",
            "innerducts_out",
            "positions_now",
            "positions_after",
            "positions_gained",
            "binding_rule",
            "pull_outcome",
            "pull_better_vault",
            "pull_utilization_pct",
            "pull_tightest_limit",
            "feasible_chance_pct",
            "top_chance_pct",
            "knowledge_pct",
            "zone_kinds",
            "recovery_needs",
            "recovery_lead_days",
            "cut_banned_until",
            "site_hours",
            "shifts",
            "recovery_money",
            "build_money",
            "saving_money");

    /** What later commands need of every span in addition to the core columns. */
    private static final List<String> FOR_LATER = List.of(
            "score_low_points",
            "score_high_points",
            "spare",
            "positions_gained_few",
            "positions_gained_many",
            "permits_avoided_count",
            "saving_ratio",
            "recovery_low_money",
            "recovery_likely_money",
            "recovery_high_money",
            "build_low_money",
            "build_likely_money",
            "build_high_money",
            "saving_low_money",
            "saving_likely_money",
            "saving_high_money",
            "drawn_length_m",
            "contents_source",
            "assumed",
            "new_duct_positions",
            "new_duct_money",
            "build_ducts",
            "further_duct_money",
            "new_build_lead_days",
            "embargo_until",
            "nights",
            "shared_a_hours",
            "shared_b_hours",
            "site_hour_money",
            "innerduct_out_kg",
            "trench_avoided_m",
            "bore_avoided_m",
            "co2e_ice_kg",
            "co2e_dig_kg",
            "circuits_at_risk",
            "zone_dates",
            "work_status_day",
            "blocked_at_m",
            "field_entries");

    /** Only in the table for later commands. */
    public static final Column<RankedSpan> FEASIBLE_DRAWS = Column.text(
            "feasible_draws",
            "feas_draws",
            CellRange.HEXADECIMAL,
            "In which of the first 64 samples of the simulation recovery works, as a hexadecimal number: bit 0 is the first "
                    + "sample; empty if in none. Of spans that are excluded for now only, too.",
            row -> row.offer()
                    .map(SpanOffer::feasibleDraws)
                    .filter(draws -> draws != 0)
                    .map(Long::toHexString));

    private SpanColumns() {}

    /** Returns the layer that users open: the core columns, the owner's own fields, and the columns of the groups that are asked for. */
    public static Table<RankedSpan> table(SpanLayout run) {
        List<Column<RankedSpan>> columns = core(run);
        byGroup(run).forEach((group, all) -> {
            if (run.groups().contains(group)) {
                all.stream().filter(column -> !isCore(column)).forEach(columns::add);
            }
        });
        return layer(NAME, "One row for each duct between two consecutive vaults, the best first.", columns, run);
    }

    /** Returns the table that later commands read: the columns of {@link #table}, and what only they need. */
    public static Table<RankedSpan> forLater(SpanLayout run) {
        List<Column<RankedSpan>> columns = new ArrayList<>(table(run).columns());
        all(run).columns().stream()
                .filter(column -> FOR_LATER.contains(column.name()) || isQuantity(column, run))
                .filter(column ->
                        columns.stream().noneMatch(there -> there.name().equals(column.name())))
                .forEach(columns::add);
        columns.add(FEASIBLE_DRAWS);
        columns.add(StandingColumns.REASONS.narrowed());
        return layer(
                RUN_NAME,
                "Every span, also those that `--where` or `--within` left out: what later commands read.",
                columns,
                run);
    }

    /** Another scoring starts from the quantities of every criterion. */
    private static boolean isQuantity(Column<?> column, SpanLayout run) {
        return run.criteria().stream()
                .anyMatch(criterion -> criterion.quantityColumn().equals(column.name()));
    }

    /** Returns every column that users may have, whatever groups are asked for: conditions may name them all. */
    public static Table<RankedSpan> all(SpanLayout run) {
        return table(
                new SpanLayout(run.criteria(), run.hasElevations(), run.kept(), ColumnGroup.all(), run.hasFieldBook()));
    }

    private static Table<RankedSpan> layer(
            String name, String meaning, List<Column<RankedSpan>> columns, SpanLayout run) {
        Table<RankedSpan> plane = Table.layer(
                name, meaning, GeometryKind.LINE, row -> Shape.line(row.span().lonLat()), columns);
        return run.hasElevations() ? plane.withZ() : plane;
    }

    /** Returns whether a column is written whatever groups are asked for. */
    public static boolean isCore(Column<?> column) {
        return CORE.contains(column.name());
    }

    /** In the order of the list; one whose criterion has no weight is left out. */
    private static List<Column<RankedSpan>> core(SpanLayout run) {
        var columns = new ArrayList<Column<RankedSpan>>();
        columns.addAll(identity());
        byGroup(run).values().forEach(columns::addAll);
        columns.removeIf(column -> !isCore(column));
        columns.sort(Comparator.comparingInt(column -> CORE.indexOf(column.name())));
        columns.addAll(KeptColumns.all(run.kept()));
        return columns;
    }

    /** Returns the columns that say which span a row is; all of them are core columns. */
    public static List<Column<RankedSpan>> identity() {
        var columns = new ArrayList<Column<RankedSpan>>();
        columns.add(StandingColumns.SPAN_ID.narrowed());
        columns.addAll(IdentityColumns.all());
        return columns;
    }

    /** Returns the columns of each group, core columns among them, in the order of the groups. */
    public static Map<ColumnGroup, List<Column<RankedSpan>>> byGroup(SpanLayout run) {
        var groups = new EnumMap<ColumnGroup, List<Column<RankedSpan>>>(ColumnGroup.class);
        groups.put(ColumnGroup.SCORE, score(run));
        groups.put(ColumnGroup.ROOM, RoomColumns.all());
        groups.put(ColumnGroup.PULL, pull());
        groups.put(ColumnGroup.PERMITS, PermitColumns.all());
        groups.put(ColumnGroup.EFFORT, EffortColumns.all());
        groups.put(ColumnGroup.MONEY, MoneyColumns.all());
        groups.put(ColumnGroup.CARBON, CarbonColumns.all());
        groups.put(ColumnGroup.PROVENANCE, ProvenanceColumns.all(run.hasFieldBook()));
        return groups;
    }

    private static List<Column<RankedSpan>> pull() {
        var columns = new ArrayList<>(WayColumns.all());
        columns.addAll(PullColumns.all());
        return columns;
    }

    private static List<Column<RankedSpan>> score(SpanLayout run) {
        var columns = new ArrayList<Column<RankedSpan>>();
        StandingColumns.VERDICT.forEach(column -> columns.add(column.narrowed()));
        ScoreColumns.quantities(run.criteria()).forEach(column -> columns.add(column.narrowed()));
        columns.addAll(RankConfidenceColumns.all());
        return columns;
    }

    private static Function<RankedSpan, Object> span(Function<Span, Object> cell) {
        return row -> cell.apply(row.span());
    }

    private static Function<RankedSpan, Object> duct(Function<Duct, Object> cell) {
        return row -> cell.apply(row.span().duct());
    }

    private static Function<RankedSpan, Object> room(Function<Room, Object> cell) {
        return row -> cell.apply(row.assessment().room());
    }

    private static String terms(Set<Term> assumed) {
        return assumed.isEmpty()
                ? ""
                : EnumSet.copyOf(assumed).stream().map(Term::key).collect(joining(";"));
    }
}
