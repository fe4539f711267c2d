package org.spanroom.output.columns;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.spanroom.model.learn.ChanceChange;
import org.spanroom.model.learn.FrictionChange;
import org.spanroom.model.learn.LeftOut;
import org.spanroom.model.learn.RatioEstimate;
import org.spanroom.model.pull.Friction;
import org.spanroom.model.pull.FrictionSet;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.Table;

/** The columns of what reports say of friction and of chances, and of the reports that nothing is learned from. */
public final class LearnedColumns {
    private static final int RATIO_DECIMALS = 4;
    private static final int COEFFICIENT_DECIMALS = 6;

    /** One state of friction of one stratum. */
    public record FrictionRow(FrictionChange change, Friction state) {
        /** Returns the rows of changes, one for each state. */
        public static List<FrictionRow> of(List<FrictionChange> changes) {
            var rows = new ArrayList<FrictionRow>();
            for (FrictionChange change : changes) {
                for (Friction state : Friction.values()) {
                    rows.add(new FrictionRow(change, state));
                }
            }
            return rows;
        }
    }

    public static final Table<FrictionRow> FRICTION = Table.plain(
            "friction_changes",
            "One row for each state of friction, of all ducts and of those of one type and decade, that measured pulls say something of.",
            List.of(
                    Column.text(
                            "stratum",
                            "stratum",
                            "Decade and type of the ducts; empty: all ducts.",
                            row -> row.change().stratum()),
                    Column.text(
                            "state",
                            "state",
                            "State of friction.",
                            row -> row.state().key()),
                    Column.integer(
                            "pulls",
                            "pulls",
                            "How many pulls were measured.",
                            row -> row.change().pulls()),
                    Column.integer(
                            "spans",
                            "spans",
                            "Of how many spans; each counts once, with the median of its pulls.",
                            row -> row.change().spans()),
                    factor(
                            "median_ratio",
                            "med_ratio",
                            "Median of the factor on the shipped dry coefficients that gives the measured forces.",
                            RatioEstimate::medianRatio),
                    factor(
                            "median_low_ratio",
                            "med_low",
                            "Lower end of the 90 % bootstrap interval of the median.",
                            RatioEstimate::lowRatio),
                    factor("median_high_ratio", "med_high", "Upper end of it.", RatioEstimate::highRatio),
                    factor("weight_ratio", "weight", "How far the median is followed.", RatioEstimate::weightRatio),
                    before("duct_before_ratio", "duct_bef", "Shipped, innerduct on duct.", FrictionSet::ductRatio),
                    after("duct_after_ratio", "duct_aft", "Proposed, innerduct on duct.", FrictionSet::ductRatio),
                    before("jacket_before_ratio", "jack_bef", "Shipped, cable in innerduct.", FrictionSet::jacketRatio),
                    after("jacket_after_ratio", "jack_aft", "Proposed, cable in innerduct.", FrictionSet::jacketRatio),
                    before(
                            "neighbor_before_ratio",
                            "neigh_bef",
                            "Shipped, innerduct on its neighbor.",
                            FrictionSet::neighborRatio),
                    after(
                            "neighbor_after_ratio",
                            "neigh_aft",
                            "Proposed, innerduct on its neighbor.",
                            FrictionSet::neighborRatio)));

    public static final Table<ChanceChange> CHANCES = Table.plain(
            "chance_changes",
            "One row for each chance that opened ducts say something of, first in all ducts, then in each stratum.",
            List.of(
                    Column.text(
                            "chance",
                            "chance",
                            "other_size: an assumed size is wrong; more_cable, more_cable_assumed: one cable more than recorded, than "
                                    + "assumed; blocked, blocked_unknown: blocked where the condition is recorded, is not; contents_few, "
                                    + "contents_typical, contents_many: counts nearest to that scenario.",
                            ChanceChange::chance),
                    Column.text(
                            "stratum",
                            "stratum",
                            "Decade, type and owner, as in `vault_survey`; empty: all ducts.",
                            ChanceChange::stratum),
                    Column.integer(
                            "looked", "looked", "How many opened ducts showed whether it is so.", ChanceChange::looked),
                    Column.integer("events", "events", "In how many it was so.", ChanceChange::events),
                    Column.real(
                            "before_ratio",
                            "before",
                            RATIO_DECIMALS,
                            "Chance before: of the config or, in a stratum, of all ducts.",
                            ChanceChange::beforeRatio),
                    Column.real("after_ratio", "after", RATIO_DECIMALS, "Chance after.", ChanceChange::afterRatio)));

    public static final Table<LeftOut> LEFT_OUT = Table.plain(
            "left_out",
            "One row for each report that nothing is learned from.",
            List.of(
                    Column.integer("entry", "entry", "Number of the entry of the field book.", LeftOut::entry),
                    Column.text("span_id", "span_id", "The span that it is about.", LeftOut::subject),
                    Column.text("fact", "fact", "What was reported.", LeftOut::fact),
                    Column.text("item", "item", "Of which innerduct or step.", LeftOut::item),
                    Column.text("why", "why", "Why it is left out.", LeftOut::why)));

    private LearnedColumns() {}

    private static Column<FrictionRow> factor(
            String name, String shortName, String meaning, ToDoubleFunction<RatioEstimate> value) {
        return Column.real(
                name,
                shortName,
                RATIO_DECIMALS,
                meaning,
                row -> row.change().estimate().map(value::applyAsDouble));
    }

    private static Column<FrictionRow> before(
            String name, String shortName, String meaning, ToDoubleFunction<FrictionSet> value) {
        return coefficient(
                name,
                shortName,
                meaning,
                row -> Optional.of(row.change().before().of(row.state())),
                value);
    }

    private static Column<FrictionRow> after(
            String name, String shortName, String meaning, ToDoubleFunction<FrictionSet> value) {
        return coefficient(
                name, shortName, meaning, row -> row.change().after().map(sets -> sets.of(row.state())), value);
    }

    private static Column<FrictionRow> coefficient(
            String name,
            String shortName,
            String meaning,
            Function<FrictionRow, Optional<FrictionSet>> set,
            ToDoubleFunction<FrictionSet> value) {
        return Column.real(
                name,
                shortName,
                COEFFICIENT_DECIMALS,
                meaning,
                row -> set.apply(row).map(value::applyAsDouble));
    }
}
