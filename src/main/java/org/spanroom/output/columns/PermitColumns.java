package org.spanroom.output.columns;

import static java.util.stream.Collectors.joining;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import org.spanroom.model.network.VaultUse;
import org.spanroom.model.permit.Permits;
import org.spanroom.model.permit.RuledPart;
import org.spanroom.model.permit.Zone;
import org.spanroom.model.permit.ZoneRule;
import org.spanroom.model.permit.ZoneTouch;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.output.table.CellRange;
import org.spanroom.output.table.Column;

/** The columns of spans and vaults about the permit zones they lie in, and which permits follow. */
public final class PermitColumns {
    /** In place of a day that a zone does not have, as ISO 8601-2 writes an open interval. */
    public static final String OPEN_END = "..";

    /** The only one of its form that later commands read back. */
    public static final Column<RankedSpan> ZONE_DATES = Column.text(
            "zone_dates",
            "zone_dates",
            new CellRange.Texts("zones, each as kind first/last day, joined by ;", PermitColumns::isZoneDates),
            "Zones with a first or last day that a vault of the span is in, also those that have not "
                    + "begun: kind, first day, last day, e.g. event 2027-05-01/2027-05-09; joined by ;. An open "
                    + "end is ..",
            zoned(p -> Stream.concat(p.touches().stream(), p.toCome().stream())
                    .filter(ZoneTouch::atVault)
                    .map(ZoneTouch::zone)
                    .filter(zone -> zone.from().isPresent() || zone.until().isPresent())
                    .map(PermitColumns::dates)
                    .distinct()
                    .collect(joining(";"))));

    private static final String FOR_GOOD = "for_good";
    private static final CellRange LAST_DAY = new CellRange.Texts(
            CellRange.DAY.expected() + ", or " + FOR_GOOD, text -> text.equals(FOR_GOOD) || CellRange.isDay(text));

    private PermitColumns() {}

    /** Returns whether a text is what {@link #ZONE_DATES} has. */
    private static boolean isZoneDates(String text) {
        for (String zone : text.split(";", -1)) {
            int space = zone.lastIndexOf(' ');
            int slash = zone.indexOf('/', space + 1);
            if (space < 1
                    || slash < 0
                    || !isEnd(zone.substring(space + 1, slash))
                    || !isEnd(zone.substring(slash + 1))) {
                return false;
            }
        }
        return true;
    }

    private static boolean isEnd(String day) {
        return day.equals(OPEN_END) || CellRange.isDay(day);
    }

    static List<Column<RankedSpan>> all() {
        var columns = new ArrayList<>(zones());
        columns.addAll(needs());
        ZoneRule.vaultsFirst().forEach(rule -> columns.addAll(under(rule)));
        return columns;
    }

    private static List<Column<RankedSpan>> zones() {
        return List.of(
                Column.text(
                        "zones",
                        "zones",
                        "Permit zones that the span or one of its vaults touches, joined by ;.",
                        zoned(p -> p.touches().stream()
                                .map(touch -> touch.zone().id())
                                .collect(joining(";")))),
                Column.text(
                        "zone_kinds",
                        "zone_kinds",
                        "Their kinds, each once, joined by ;.",
                        zoned(p -> p.touches().stream()
                                .map(touch -> touch.zone().kind())
                                .distinct()
                                .collect(joining(";")))),
                Column.text(
                        "zones_to_come",
                        "zones_next",
                        "Permit zones that the span touches but that start after the run date, each with its "
                                + "first day, joined by ;. No other column counts them.",
                        zoned(p ->
                                p.toCome().stream().map(PermitColumns::toCome).collect(joining(";")))),
                ZONE_DATES,
                Column.real(
                        "zone_any_m",
                        "z_any_m",
                        3,
                        CellRange.AMOUNT,
                        "Meters of the span inside any zone; where zones overlap they count once.",
                        permits(Permits::lengthM)));
    }

    /** Returns the kind of a zone and its days. */
    private static String dates(Zone zone) {
        return zone.kind() + " " + zone.from().map(LocalDate::toString).orElse(OPEN_END) + "/"
                + zone.until().map(LocalDate::toString).orElse(OPEN_END);
    }

    /** Returns a zone that has not begun, with its first day. */
    private static String toCome(ZoneTouch touch) {
        Zone zone = touch.zone();
        return zone.id() + zone.from().map(day -> " from " + day).orElse("");
    }

    private static List<Column<RankedSpan>> needs() {
        return List.of(
                Column.text(
                        "recovery_needs",
                        "recov_need",
                        "Permits that recovery needs in addition to permit.everywhere.recovery of the config, which "
                                + "every recovery needs; joined by ;. Empty where it needs no others, where no zones "
                                + "were read, and, as is recovery_lead_days, where no innerduct comes out.",
                        recovery(p -> String.join(";", p.recoveryNeedsHere()))),
                Column.text(
                        "permits_avoided",
                        "avoided",
                        "Additional permits that a new build on the same path would need, joined by ;.",
                        permits(p -> String.join(";", p.avoided()))),
                Column.integer(
                        "permits_avoided_count",
                        "avoided_n",
                        CellRange.COUNT,
                        "How many these are.",
                        permits(p -> p.avoided().size())),
                Column.integer(
                        "recovery_lead_days",
                        "lead_recov",
                        CellRange.COUNT,
                        "Days until the permits that recovery needs are issued, if all are applied for on the "
                                + "same day.",
                        recovery(Permits::recoveryLeadDays)),
                Column.integer(
                        "new_build_lead_days",
                        "lead_build",
                        CellRange.COUNT,
                        "The same for a new build, without waiting for the end of a ban on cutting.",
                        permits(Permits::newBuildLeadDays)),
                Column.integer(
                        "lead_avoided_days",
                        "lead_days",
                        CellRange.WHOLE,
                        "How many days earlier the permits for recovery are issued than those for new build.",
                        EffortColumns.effort(effort -> effort.quantities().leadDaysAvoided())));
    }

    private static List<Column<RankedSpan>> under(ZoneRule rule) {
        if (rule.reach() == ZoneRule.Reach.AT_VAULTS) {
            return List.of(Column.flag(
                    rule.shown().column(),
                    rule.shown().shortColumn(),
                    rule.shown().spanMeaning(),
                    permits(p -> p.isUnder(rule))));
        }
        return List.of(
                Column.real(
                        rule.shown().column() + "_m",
                        rule.shown().shortColumn() + "_m",
                        3,
                        CellRange.AMOUNT,
                        rule.shown().spanMeaning(),
                        permits(p -> meters(p, rule))),
                Column.text(
                        rule.shown().column() + "_until",
                        rule.shown().shortColumn() + "_to",
                        LAST_DAY,
                        "Last day of the ban that ends last; for_good where a ban has no last day.",
                        permits(p -> until(p, rule))));
    }

    /** Returns the columns of the vaults. */
    static List<Column<VaultUse>> ofVaults() {
        return List.of(
                Column.text(
                        "zones",
                        "zones",
                        "Permit zones that the vault is in, joined by ;.",
                        vault -> vault.zones().stream().map(Zone::id).collect(joining(";"))),
                Column.text(
                        "zone_kinds",
                        "zone_kinds",
                        "Their kinds, each once, joined by ;.",
                        vault -> vault.zones().stream()
                                .map(Zone::kind)
                                .distinct()
                                .collect(joining(";"))));
    }

    public static double meters(Permits permits, ZoneRule rule) {
        return permits.findPart(rule).map(RuledPart::lengthM).orElse(0.0);
    }

    /** Returns the last day of a rule on the span, as a column has it. */
    public static String until(Permits permits, ZoneRule rule) {
        return permits.findPart(rule)
                .map(part -> part.until().map(LocalDate::toString).orElse(FOR_GOOD))
                .orElse("");
    }

    private static Function<RankedSpan, Object> recovery(Function<Permits, Object> cell) {
        return row -> row.assessment().effort().isPresent()
                ? cell.apply(row.assessment().permits())
                : Optional.empty();
    }

    private static Function<RankedSpan, Object> permits(Function<Permits, Object> cell) {
        return row -> cell.apply(row.assessment().permits());
    }

    /** A text about zones; most spans are in none and will be in none. */
    private static Function<RankedSpan, Object> zoned(Function<Permits, String> text) {
        return permits(p -> p.touches().isEmpty() && p.toCome().isEmpty() ? "" : text.apply(p));
    }
}
