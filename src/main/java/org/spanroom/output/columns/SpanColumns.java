package org.spanroom.output.columns;

import static java.util.stream.Collectors.joining;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Function;
import org.spanroom.model.Angle;
import org.spanroom.model.Term;
import org.spanroom.model.bend.Bend;
import org.spanroom.model.bend.Bends;
import org.spanroom.model.bore.Positions;
import org.spanroom.model.bore.PullChoice;
import org.spanroom.model.bore.Room;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.RejectedValue;
import org.spanroom.model.network.SectionKey;
import org.spanroom.model.network.Sleeve;
import org.spanroom.model.network.Span;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.model.rank.ScenarioGains;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.GeometryKind;
import org.spanroom.output.table.Shape;
import org.spanroom.output.table.Table;

/** The columns of the spans: one line each, the one place that layers, CSV and data dictionary have them from. */
public final class SpanColumns {
    public static final String NAME = "spans";

    /** The length that counts. */
    public static final Column<RankedSpan> LENGTH = Column.real(
            "length_m",
            "length_m",
            3,
            "The length that counts: drawn, or recorded where the config says so.",
            span(Span::lengthM));

    public static final Column<RankedSpan> DRAWN_LENGTH = Column.real(
            "drawn_length_m", "drawn_m", 3, "Length of the drawn line on the ground.", span(Span::drawnLengthM));

    public static final Column<RankedSpan> POSITIONS_NOW = Column.integer(
            "positions_now",
            "pos_now",
            "Design cables that the duct can take today, everything left in: in empty innerducts, in cells of sleeves already "
                    + "in, and beside them. Reserved positions are left out; empty where the contents are unknown.",
            room(Room::positionsNow));

    public static final Column<RankedSpan> POSITIONS_GAINED = Column.integer(
            "positions_gained",
            "pos_gain",
            "Positions that recovery adds: positions_after less positions_now.",
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
            "Whether the duct is spare: recorded as empty and sound, not refused by its owner, so that it takes cables as it is.",
            duct(Duct::isSpare));

    public static final Column<RankedSpan> POSITIONS_AFTER = Column.integer(
            "positions_after",
            "pos_after",
            "The same as positions_now once the proposed innerducts are out; as now where none can come out.",
            room(Room::positionsAfter));

    /** Where it is known from what lies in the duct. */
    public static final Column<RankedSpan> CONTENTS_SOURCE = Column.text(
            "contents_source",
            "cont_src",
            "Where it is known from what lies in the duct: recorded, assumed (the number of innerducts or cables is the config's, so that "
                    + "all that follows from it is an assumption) or unknown.",
            duct(d -> d.contentsSource().key()));

    public static final Column<RankedSpan> ASSUMED = Column.text(
            "assumed",
            "assumed",
            "Terms that were not recorded, or whose recorded value was rejected, so that a configured default "
                    + "stands for them, joined by ;.",
            duct(d -> terms(d.assumed())));

    private SpanColumns() {}

    /** Returns the layer of a run, with columns for each criterion. */
    public static Table<RankedSpan> table(SpanLayout run) {
        Table<RankedSpan> plane = Table.layer(
                NAME,
                "One row for each duct between two consecutive vaults, the best first.",
                GeometryKind.LINE,
                row -> Shape.line(row.span().lonLat()),
                all(run));
        return run.hasElevations() ? plane.withZ() : plane;
    }

    private static List<Column<RankedSpan>> all(SpanLayout run) {
        var columns = new ArrayList<Column<RankedSpan>>();
        StandingColumns.VERDICT.forEach(column -> columns.add(column.narrowed()));
        columns.addAll(CircumstanceColumns.all());
        ScoreColumns.all(run.criteria()).forEach(column -> columns.add(column.narrowed()));
        columns.addAll(RankConfidenceColumns.all());
        columns.addAll(ends());
        columns.addAll(way());
        columns.addAll(bore());
        columns.addAll(SizeColumns.all());
        columns.addAll(gain());
        columns.addAll(positionsAfter());
        columns.addAll(PackingColumns.all());
        columns.addAll(PullColumns.all());
        columns.addAll(PermitColumns.all());
        columns.addAll(EffortColumns.all());
        columns.addAll(record());
        columns.addAll(KeptColumns.all(run.kept()));
        return columns;
    }

    private static List<Column<RankedSpan>> ends() {
        return List.of(
                DUCT,
                BANK,
                Column.text(
                        "routes",
                        "routes",
                        "The drawn routes that the span is made of, in order, joined by ;.",
                        span(s -> String.join(";", s.routeIds()))),
                VAULT_A,
                VAULT_B,
                Column.text(
                        "section_id",
                        "section_id",
                        "The section that the span is in: the spans of its bank between the same two vaults.",
                        span(s -> SectionKey.of(s).id())));
    }

    private static List<Column<RankedSpan>> way() {
        return List.of(
                LENGTH,
                DRAWN_LENGTH,
                Column.real(
                        "bend_total_deg",
                        "bend_total",
                        2,
                        "Sum of all turning between the vaults, left and right alike.",
                        bends(b -> b.total().deg())),
                Column.integer(
                        "bend_count",
                        "bend_count",
                        "How many bends the line has.",
                        bends(b -> b.list().size())),
                Column.real(
                        "largest_bend_deg",
                        "bend_max",
                        2,
                        "Turning of the largest bend.",
                        bends(b -> b.findLargest().map(Bend::deflection).map(Angle::deg))),
                Column.real(
                        "smallest_radius_m",
                        "radius_min",
                        2,
                        "Radius of the tightest bend.",
                        bends(b -> b.findTightest().map(Bend::radiusM))),
                Column.flag(
                        "radius_assumed",
                        "rad_assume",
                        "Whether the tightest bend's radius is the configured sweep for want of a drawn arc.",
                        bends(b -> b.findTightest().map(Bend::radiusAssumed))));
    }

    private static List<Column<RankedSpan>> bore() {
        return List.of(
                Column.text(
                        "bore_shape",
                        "bore_shape",
                        "Shape of the bore: round or square.",
                        duct(d -> word(d.boreShape()))),
                Column.real(
                        "inside_diameter_mm",
                        "inside_mm",
                        2,
                        "Inside diameter of a round bore, side of a square one.",
                        duct(Duct::insideDiameterMm)),
                Column.real("bore_area_mm2", "bore_mm2", 1, "Area of the bore.", room(Room::boreAreaMm2)),
                Column.real(
                        "fill_now_pct",
                        "fill_now",
                        2,
                        "Share of the bore that innerducts, taken as solid, and the cables beside them close off now.",
                        room(r -> percent(r.fillNowRatio()))),
                Column.real(
                        "fill_removed_pct",
                        "fill_remov",
                        2,
                        "Share of the bore that innerducts left and the cables that stay close off once the others are out.",
                        room(r -> percent(r.fillAfterRemovalRatio()))),
                Column.real(
                        "fill_final_pct",
                        "fill_new",
                        2,
                        "The same with a design cable in every cell that is a position.",
                        room(r -> percent(r.fillWithNewRatio()))),
                Column.real(
                        "free_after_removal_pct",
                        "free_remov",
                        2,
                        "Share of the bore that is free once the innerducts are out.",
                        room(r -> r.then().map(choice -> 100 * (1 - choice.fillRatio())))));
    }

    private static List<Column<RankedSpan>> gain() {
        return List.of(
                Column.real(
                        "recoverable_mm2",
                        "recov_mm2",
                        1,
                        "Outside areas of the innerducts that come out less the areas of the cables in them that stay.",
                        then(PullChoice::recoverableMm2)),
                Column.integer(
                        "innerducts_out",
                        "innerd_out",
                        "How many rigid innerducts come out.",
                        then(PullChoice::innerductsOut)),
                POSITIONS_NOW,
                Column.integer(
                        "positions_now_innerducts",
                        "now_innerd",
                        "Of these, empty innerducts that can take the design cable.",
                        now(positions -> positions.inInnerducts())),
                Column.integer(
                        "positions_now_sleeves",
                        "now_sleeve",
                        "Of these, cells of sleeves already in that hold no cable and are not reserved.",
                        now(positions -> positions.inSleeves())),
                Column.integer(
                        "positions_now_beside",
                        "now_beside",
                        "Of these, cells of new sleeves that fit beside whatever lies in the duct.",
                        now(positions -> positions.beside())),
                Column.integer(
                        "positions_reserved",
                        "pos_reserv",
                        "Positions of the duct that are promised, as recorded: left out of positions_now and positions_after.",
                        duct(d -> d.circumstances().positionsReserved())),
                Column.integer(
                        "cells_reserved",
                        "cell_rsrv",
                        "Cells of sleeves already in that are promised and hold no cable: no positions.",
                        duct(d -> reservedCells(d.contents()))));
    }

    private static List<Column<RankedSpan>> positionsAfter() {
        return List.of(
                POSITIONS_AFTER,
                Column.integer(
                        "sleeves",
                        "sleeves",
                        "Whole fabric sleeves that go in after recovery.",
                        room(r -> r.now().map(any -> r.sleeves()))),
                Column.integer(
                        "new_cables",
                        "new_cables",
                        "Design cables that find a cell in those sleeves.",
                        room(r -> r.now().map(any -> r.newCables()))),
                POSITIONS_GAINED,
                Column.integer(
                        "positions_gained_few",
                        "gain_few",
                        "The same if a duct of unrecorded contents holds few items, by the config's scenarios; where they are recorded what "
                                + "recovery adds anyway, empty where they are unknown.",
                        row -> row.scenarios().map(ScenarioGains::few)),
                Column.integer(
                        "positions_gained_many",
                        "gain_many",
                        "The same if it holds many.",
                        row -> row.scenarios().map(ScenarioGains::many)),
                Column.text(
                        "binding_rule", "binding", "The rule that allows no further sleeve.", room(Room::bindingRule)));
    }

    private static List<Column<RankedSpan>> record() {
        return List.of(
                Column.flag("flooded", "flooded", "Whether the duct is recorded as flooded.", duct(Duct::flooded)),
                Column.text(
                        "condition",
                        "condition",
                        "Recorded state of the bore: sound, oval, collapsed, blocked or unknown.",
                        duct(d -> word(d.condition()))),
                SPARE,
                Column.text("surface", "surface", "What lies above, as recorded.", duct(Duct::surface)),
                Column.text("owner", "owner", "The owner, as recorded.", duct(Duct::owner)),
                Column.integer(
                        "year_installed",
                        "year_inst",
                        "Year in which the duct was laid, as recorded.",
                        duct(Duct::installedYear)),
                Column.text(
                        "position_quality",
                        "pos_qual",
                        "How well the position is known, as recorded.",
                        span(Span::positionQuality)),
                CONTENTS_SOURCE,
                ASSUMED,
                Column.text(
                        "rejected",
                        "rejected",
                        "What was recorded and could not be used, as terms joined by ;. The findings say why.",
                        duct(d -> d.rejected().stream()
                                .map(RejectedValue::name)
                                .distinct()
                                .collect(joining(";")))));
    }

    private static Function<RankedSpan, Object> span(Function<Span, Object> cell) {
        return row -> cell.apply(row.span());
    }

    private static Function<RankedSpan, Object> duct(Function<Duct, Object> cell) {
        return row -> cell.apply(row.span().duct());
    }

    private static Function<RankedSpan, Object> bends(Function<Bends, Object> cell) {
        return row -> cell.apply(row.assessment().bends());
    }

    private static Function<RankedSpan, Object> room(Function<Room, Object> cell) {
        return row -> cell.apply(row.assessment().room());
    }

    private static Function<RankedSpan, Object> then(Function<PullChoice, Object> cell) {
        return room(r -> r.then().map(cell));
    }

    private static Function<RankedSpan, Object> now(Function<Positions, Object> cell) {
        return room(r -> r.now().map(PullChoice::positions).map(cell));
    }

    private static OptionalDouble percent(OptionalDouble ratio) {
        return ratio.isPresent() ? OptionalDouble.of(100 * ratio.getAsDouble()) : ratio;
    }

    private static OptionalInt reservedCells(Contents contents) {
        return contents.known()
                ? OptionalInt.of(contents.sleeves().stream()
                        .mapToInt(Sleeve::promisedCells)
                        .sum())
                : OptionalInt.empty();
    }

    private static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT);
    }

    private static String terms(Set<Term> assumed) {
        return assumed.isEmpty()
                ? ""
                : EnumSet.copyOf(assumed).stream().map(Term::key).collect(joining(";"));
    }
}
