package org.spanroom.rank;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import org.spanroom.model.bore.Room;
import org.spanroom.model.effort.Effort;
import org.spanroom.model.rank.Assessment;
import org.spanroom.model.rank.CriterionInfo;

/**
 * An absolute quantity of a span that its score judges: its unit, the column that shows it, and how it is found. The lower-case name
 * is the key in the config and in columns. Quantities are shown in the spans' table in any case; one that has no column there
 * elsewhere is given one of its own.
 */
@SuppressWarnings("ImmutableEnumChecker") // Its records are immutable and its functions have no state.
enum Criterion {
    /** Positions that recovery adds to those that the duct has today; unknown where the contents are. */
    ROOM_GAINED(
            "positions",
            0,
            "room",
            "positions_gained",
            (span, by) -> number(span.room().positionsGained())),
    /** How short of space the span is now: positions that cables could take today; the fewer the shorter. */
    SHORTAGE(
            "positions",
            0,
            "short",
            "positions_now",
            (span, by) -> number(span.room().positionsNow())),
    EASE_PULL(
            "percent used",
            2,
            "epull",
            "ease_pull_pct",
            own(
                    Double.MAX_VALUE,
                    "epull_pct",
                    "Utilization of the tightest pull limit at the better end; above 100 the pull fails."),
            (span, by) -> ifKnown(span, WorkingEnd.utilizationPercent(span))),
    /** All turning between the vaults, which makes every pull harder, that of the new cables too. */
    EASE_BENDS(
            "degrees",
            2,
            "ebend",
            "bend_total_deg",
            (span, by) -> span.bends().total().deg()),
    EASE_WATER(
            "wet places",
            0,
            "ewat",
            "ease_water_places",
            own(3, "ewat_n", "How many of three places have water: the duct and its two vaults."),
            (span, by) -> Quantities.wetPlaces(span.span())),
    EASE_ACCESS(
            "drawbacks",
            0,
            "eacc",
            "ease_access_drawbacks",
            own(
                    4,
                    "eacc_n",
                    "How many access drawbacks the two vaults have: a kind and a surface that are hard to "
                            + "work at count at each end."),
            (span, by) ->
                    by.drawbacks(span.span().from()) + by.drawbacks(span.span().to())),
    /** Money saved over new build on the same path for each unit of money spent on recovering. */
    SAVING(
            "saving-to-cost ratio",
            3,
            "save",
            "saving_ratio",
            (span, by) -> ifKnown(span, span.effort().map(Effort::savingRatio).orElse(0.0))),
    /** Permits that a new build on the same path would need and recovering does not. */
    PERMITS_AVOIDED(
            "permits",
            0,
            "pavo",
            "permits_avoided_count",
            (span, by) -> span.permits().avoided().size()),
    KNOWLEDGE(
            "percent",
            2,
            "know",
            "knowledge_pct",
            own(100, "know_pct", "Weighted share of the relevant values that is recorded, not assumed."),
            (span, by) -> by.knowledgePercent(span.span())),
    /** Meters that one set-up at two vaults gives room on. */
    LENGTH("m", 3, "len", "length_m", (span, by) -> span.span().lengthM());

    private final CriterionInfo info;
    private final Quantity quantity;
    private final double scale;

    /** Finds the quantity of a span, by what the settings say of vaults and records. */
    private interface Quantity {
        double of(Assessment span, Quantities by);
    }

    /** A criterion whose quantity the spans' table shows in any case. */
    Criterion(String unit, int decimals, String stem, String column, Quantity quantity) {
        this(unit, decimals, stem, column, Optional.empty(), quantity);
    }

    /** @param own the column of the quantity, where no other part of the spans' table has it */
    Criterion(
            String unit,
            int decimals,
            String stem,
            String column,
            Optional<CriterionInfo.OwnColumn> own,
            Quantity quantity) {
        this.info = new CriterionInfo(name().toLowerCase(Locale.ROOT), unit, decimals, stem, column, own);
        this.quantity = quantity;
        scale = Math.pow(10, decimals);
    }

    private static Optional<CriterionInfo.OwnColumn> own(double mostInUnit, String shortName, String meaning) {
        return Optional.of(new CriterionInfo.OwnColumn(shortName, meaning, mostInUnit));
    }

    private static double number(OptionalInt count) {
        return count.isPresent() ? count.getAsInt() : Double.NaN;
    }

    /** What is pulled and what it costs are as unknown as the contents. */
    private static double ifKnown(Assessment span, double quantity) {
        return span.span().duct().contents().known() ? quantity : Double.NaN;
    }

    CriterionInfo info() {
        return info;
    }

    String key() {
        return info.key();
    }

    /**
     * Returns the quantity of a span as its column shows it, so that a score calculated from the columns is the same; not a number where
     * it is unknown.
     */
    double quantity(Assessment span, Quantities by) {
        return rounded(quantity.of(span, by));
    }

    /**
     * Returns the quantity of a span that has other room, and therefore another saving, and is as assessed in all else.
     *
     * @param taken the quantity as assessed
     */
    double quantity(Assessment span, double taken, Room room, double savingRatio) {
        return switch (this) {
            case ROOM_GAINED -> rounded(number(room.positionsGained()));
            case SHORTAGE -> rounded(number(room.positionsNow()));
            case SAVING -> rounded(ifKnown(span, savingRatio));
            default -> taken;
        };
    }

    private double rounded(double exact) {
        if (Double.isNaN(exact)) {
            return exact;
        }
        double rounded = Math.round(Math.abs(exact) * scale) / scale;
        return exact < 0 ? 0.0 - rounded : rounded;
    }
}
