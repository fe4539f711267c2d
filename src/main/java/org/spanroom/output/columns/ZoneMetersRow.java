package org.spanroom.output.columns;

import java.util.List;
import org.spanroom.model.permit.Permits;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.Table;

/** How much of one span lies in zones of one kind, as a row. */
public record ZoneMetersRow(String spanId, String kind, double lengthM) {
    public static final Table<ZoneMetersRow> TABLE = Table.plain(
            "zone_meters",
            "One row for each kind of permit zone that a span or one of its vaults touches, span by span in the order of the ranking.",
            List.of(
                    Column.text("span_id", "span_id", "The span.", ZoneMetersRow::spanId),
                    Column.text(
                            "zone_kind", "zone_kind", "Kind of the zones, a key of permit.kinds.", ZoneMetersRow::kind),
                    Column.real(
                            "length_m",
                            "length_m",
                            3,
                            "Meters of the span inside such zones; where they overlap they count once.",
                            ZoneMetersRow::lengthM)));

    /** Returns a span's rows in the order in which it touches the kinds. */
    public static List<ZoneMetersRow> of(RankedSpan span) {
        Permits permits = span.assessment().permits();
        return permits.touches().stream()
                .map(touch -> touch.zone().kind())
                .distinct()
                .map(kind -> new ZoneMetersRow(span.spanId(), kind, permits.lengthM(kind)))
                .toList();
    }
}
