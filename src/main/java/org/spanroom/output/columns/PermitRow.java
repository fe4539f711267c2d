package org.spanroom.output.columns;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.spanroom.model.Line;
import org.spanroom.model.network.Span;
import org.spanroom.model.permit.Stretch;
import org.spanroom.model.permit.Zone;
import org.spanroom.model.permit.ZoneRule;
import org.spanroom.model.permit.ZoneTouch;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.GeometryKind;
import org.spanroom.output.table.Shape;
import org.spanroom.output.table.Table;

/**
 * One stretch of a span inside one zone, as a row.
 *
 * @param stretch empty where only a vault lies in the zone
 * @param piece its place among the span's stretches in the zone, from 1
 */
public record PermitRow(Span span, ZoneTouch touch, Optional<Stretch> stretch, int piece) {
    public static final Table<PermitRow> TABLE = Table.layer(
            "permits",
            "One row for each stretch of a span inside a permit zone, span by span in the order of the ranking; "
                    + "where only a"
                    + " vault lies in the zone, one row without geometry and with 0 m. Zones that overlap have "
                    + "a row each.",
            GeometryKind.LINE,
            PermitRow::shape,
            columns());

    /** Returns a span's rows, zone by zone and along the span. */
    public static List<PermitRow> of(RankedSpan row) {
        var rows = new ArrayList<PermitRow>();
        for (ZoneTouch touch : row.assessment().permits().touches()) {
            if (touch.stretches().isEmpty()) {
                rows.add(new PermitRow(row.span(), touch, Optional.empty(), 1));
            }
            for (int i = 0; i < touch.stretches().size(); i++) {
                rows.add(new PermitRow(
                        row.span(), touch, Optional.of(touch.stretches().get(i)), i + 1));
            }
        }
        return rows;
    }

    private Shape shape() {
        return stretch.map(part -> Shape.line(cut(part))).orElse(Shape.EMPTY);
    }

    /** Returns the drawn line between two distances: by ground distance to the steps they lie on, then by share of these. */
    private Line cut(Stretch part) {
        Line ground = span.ground();
        Line line = span.lonLat();
        double scaleRatio = ground.planeLength() / span.lengthM();
        double fromM = part.fromM() * scaleRatio;
        double toM = part.toM() * scaleRatio;
        double[] xy = new double[2 * line.size() + 2];
        int at = 0;
        double alongM = 0;
        for (int i = 0; i + 1 < line.size() && alongM < toM; i++) {
            double stepM = ground.stepLength(i);
            if (alongM + stepM > fromM) {
                if (at == 0) {
                    at = put(xy, at, line, i, share(fromM - alongM, stepM));
                }
                at = put(xy, at, line, i, share(toM - alongM, stepM));
            }
            alongM += stepM;
        }
        return Line.ofXy(Arrays.copyOf(xy, at));
    }

    private static double share(double meters, double stepM) {
        return Math.max(0, Math.min(1, meters / stepM));
    }

    private static int put(double[] xy, int at, Line line, int step, double share) {
        xy[at] = share == 1 ? line.x(step + 1) : line.x(step) + share * (line.x(step + 1) - line.x(step));
        xy[at + 1] = share == 1 ? line.y(step + 1) : line.y(step) + share * (line.y(step + 1) - line.y(step));
        return at + 2;
    }

    private static List<Column<PermitRow>> columns() {
        var columns = new ArrayList<>(place());
        columns.add(vaults());
        for (ZoneRule rule : ZoneRule.values()) {
            columns.add(under(rule));
        }
        columns.addAll(needs());
        return columns;
    }

    private static List<Column<PermitRow>> place() {
        return List.of(
                Column.text(
                        "span_id",
                        "span_id",
                        "The span that touches the zone.",
                        row -> row.span().id()),
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
                        "Last day on which its rule applies; empty where it applies for good.",
                        zone(zone -> zone.until().map(LocalDate::toString))),
                Column.integer("piece", "piece", "Place along the span, from 1 in each zone.", PermitRow::piece),
                Column.real(
                        "from_m",
                        "from_m",
                        3,
                        "Where the stretch begins, as distance along the span from vault_a.",
                        row -> row.stretch().map(Stretch::fromM)),
                Column.real(
                        "to_m",
                        "to_m",
                        3,
                        "Where it ends.",
                        row -> row.stretch().map(Stretch::toM)),
                Column.real(
                        "length_m",
                        "length_m",
                        3,
                        "Meters inside: the stretch's part of the length that counts.",
                        row -> row.stretch().map(Stretch::lengthM).orElse(0.0)));
    }

    private static Column<PermitRow> vaults() {
        return Column.text(
                "at_vault",
                "at_vault",
                "Which of the span's vaults lie in the zone: a (vault_a), b (vault_b) or a;b.",
                row -> vaults(row.touch()));
    }

    private static Column<PermitRow> under(ZoneRule rule) {
        return Column.flag(
                rule.key(),
                rule.key(),
                rule.shown().zoneMeaning(),
                row -> row.touch().rule().rules().contains(rule));
    }

    private static List<Column<PermitRow>> needs() {
        return List.of(
                Column.text(
                        "recovery_needs",
                        "recov_need",
                        "Permits that recovering needs because of the zone, joined by ;.",
                        row -> String.join(";", row.touch().recoveryNeeds())),
                Column.text(
                        "new_build_needs",
                        "build_need",
                        "Permits that a new build on the same path needs because of the zone, joined by ;.",
                        row -> String.join(";", row.touch().rule().newBuild())));
    }

    /** Returns the ends whose vaults lie in a zone. */
    public static String vaults(ZoneTouch touch) {
        return (touch.atFrom() ? "a" : "") + (touch.atFrom() && touch.atTo() ? ";" : "") + (touch.atTo() ? "b" : "");
    }

    private static Function<PermitRow, Object> zone(Function<Zone, Object> cell) {
        return row -> cell.apply(row.touch().zone());
    }
}
