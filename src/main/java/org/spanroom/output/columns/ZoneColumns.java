package org.spanroom.output.columns;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import org.spanroom.model.Line;
import org.spanroom.model.permit.Zone;
import org.spanroom.model.permit.ZoneKind;
import org.spanroom.model.permit.ZoneRule;
import org.spanroom.model.permit.ZoneUse;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.GeometryKind;
import org.spanroom.output.table.Shape;
import org.spanroom.output.table.Table;

/** The columns of the permit zones. */
public final class ZoneColumns {
    public static final Table<ZoneUse> TABLE = Table.layer(
            "zones",
            "One row for each permit zone that was read, in the order of reading, with its outline as used, so after any "
                    + "repair.",
            GeometryKind.MULTIPOLYGON,
            ZoneColumns::shape,
            columns());

    private ZoneColumns() {}

    private static Shape shape(ZoneUse use) {
        List<List<Line>> polygons = use.zone().outlines().stream()
                .map(outline -> Stream.concat(Stream.of(outline.shell()), outline.holes().stream())
                        .toList())
                .toList();
        return Shape.polygons(polygons);
    }

    private static List<Column<ZoneUse>> columns() {
        var columns = new ArrayList<>(identity());
        columns.addAll(met());
        for (ZoneRule rule : ZoneRule.values()) {
            columns.add(Column.flag(
                    rule.key(),
                    rule.key(),
                    rule.shown().zoneMeaning(),
                    row -> row.rule().rules().contains(rule)));
        }
        columns.addAll(needs());
        columns.addAll(source());
        return columns;
    }

    private static List<Column<ZoneUse>> identity() {
        return List.of(
                Column.text("zone_id", "zone_id", "The owner's name of the zone.", zone(Zone::id)),
                Column.text(
                        "kind",
                        "kind",
                        "Kind of the zone, a key of permit.kinds; other where its kind is not known.",
                        zone(Zone::kind)),
                Column.text("name", "name", "Common name of the zone.", zone(Zone::name)),
                Column.text(
                        "first_day",
                        "first_day",
                        "First day on which its rule applies; empty where it has always applied.",
                        zone(zone -> zone.from().map(LocalDate::toString))),
                Column.text(
                        "until",
                        "until",
                        "Last day on which its rule applies; empty where it has no end.",
                        zone(zone -> zone.until().map(LocalDate::toString))),
                Column.flag(
                        "applies",
                        "applies",
                        "Whether the zone counts on the run date; false where it is over or has not begun, unless the "
                                + "config counts such zones.",
                        ZoneUse::applies));
    }

    private static List<Column<ZoneUse>> met() {
        return List.of(
                Column.integer(
                        "spans",
                        "spans",
                        "How many spans touch the zone or have a vault in it, of all spans of the run; 0 where the zone is over.",
                        ZoneUse::spans),
                Column.real(
                        "spans_length_m",
                        "spans_m",
                        3,
                        "Total length of these spans inside the zone.",
                        ZoneUse::lengthM));
    }

    private static List<Column<ZoneUse>> needs() {
        return List.of(
                Column.text(
                        "recovery_needs",
                        "recov_need",
                        "Permits that recovery needs where a vault of the span is in the zone, joined by ;.",
                        rule(kind -> String.join(";", kind.recoveryAtVault()))),
                Column.text(
                        "recovery_needs_along",
                        "recov_alng",
                        "Permits that recovery needs where the span runs through the zone, joined by ;.",
                        rule(kind -> String.join(";", kind.recoveryAlong()))),
                Column.integer(
                        "recovery_lead_days",
                        "lead_recov",
                        "Days until the permits of recovery are issued.",
                        rule(ZoneKind::recoveryLeadDays)),
                Column.text(
                        "new_build_needs",
                        "build_need",
                        "Permits that a new build needs in the zone, joined by ;.",
                        rule(kind -> String.join(";", kind.newBuild()))),
                Column.integer(
                        "new_build_lead_days",
                        "lead_build",
                        "Days until the permits of a new build are issued.",
                        rule(ZoneKind::newBuildLeadDays)));
    }

    private static List<Column<ZoneUse>> source() {
        return List.of(
                Column.text("source", "source", "File, or file and layer, that the zone came from.", ZoneUse::source),
                Column.integer(
                        "source_row", "source_row", "Number of its feature there, from 1.", zone(Zone::sourceRow)));
    }

    private static Function<ZoneUse, Object> zone(Function<Zone, Object> cell) {
        return row -> cell.apply(row.zone());
    }

    private static Function<ZoneUse, Object> rule(Function<ZoneKind, Object> cell) {
        return row -> cell.apply(row.rule());
    }
}
