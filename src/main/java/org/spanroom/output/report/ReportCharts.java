package org.spanroom.output.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Optional;

/**
 * Figures for the page's charts, of the whole run, not only of the spans that the page shows.
 *
 * @param district the column that groups are made by; "" where there is none
 * @param groups sums over ranked spans by its values, those that gain most first
 * @param points cost and positions of the ranked spans that the page shows
 * @param exclusions spans by the first reason of exclusion, the most first
 * @param uncertainty what is not known, by its share in what field checks would change; the largest first
 * @param moneyRanges how far the low and the high value of a sum are from its likely one
 * @param bands score bands, where they were calculated
 */
public record ReportCharts(
        String district,
        List<Group> groups,
        List<Frontier.Point> points,
        List<Reason> exclusions,
        List<Share> uncertainty,
        List<Spread> moneyRanges,
        Optional<ReportBands> bands) {
    private static final int MOST_BUDGETS = 200;
    private static final double CENTS = 100;

    public ReportCharts {
        groups = List.copyOf(groups);
        points = List.copyOf(points);
        exclusions = List.copyOf(exclusions);
        uncertainty = List.copyOf(uncertainty);
        moneyRanges = List.copyOf(moneyRanges);
    }

    /** Sums over the ranked spans of one district or owner. */
    public record Group(String name, long positions, long spans, double recoveryMoney) {}

    /** Spans that one reason excludes. */
    public record Reason(String key, long spans, String text) {}

    /** What is not known, and its share of all that field checks are expected to change. */
    public record Share(String what, double sharePercent) {}

    /** How far the low and the high value of a sum are from its likely one; low is negative. */
    public record Spread(String what, double lowPercent, double highPercent) {}

    void write(JsonGenerator json) throws IOException {
        json.writeStartObject();
        groups(json);
        frontier(json);
        json.writeArrayFieldStart("exclusions");
        for (Reason reason : exclusions) {
            json.writeStartArray();
            json.writeString(reason.key());
            json.writeNumber(reason.spans());
            json.writeString(reason.text());
            json.writeEndArray();
        }
        json.writeEndArray();
        json.writeArrayFieldStart("uncertainty");
        for (Share share : uncertainty) {
            json.writeStartArray();
            json.writeString(share.what());
            PayloadColumn.writeNumber(json, share.sharePercent());
            json.writeEndArray();
        }
        json.writeEndArray();
        json.writeArrayFieldStart("money_ranges");
        for (Spread spread : moneyRanges) {
            json.writeStartArray();
            json.writeString(spread.what());
            PayloadColumn.writeNumber(json, spread.lowPercent());
            PayloadColumn.writeNumber(json, spread.highPercent());
            json.writeEndArray();
        }
        json.writeEndArray();
        if (bands.isPresent()) {
            json.writeFieldName("bands");
            bands.get().write(json);
        } else {
            json.writeNullField("bands");
        }
        json.writeEndObject();
    }

    private void groups(JsonGenerator json) throws IOException {
        json.writeObjectFieldStart("by_district");
        json.writeStringField("field", district);
        json.writeArrayFieldStart("rows");
        for (Group group : groups) {
            json.writeStartArray();
            json.writeString(group.name());
            json.writeNumber(group.positions());
            json.writeNumber(group.spans());
            PayloadColumn.writeNumber(json, cents(group.recoveryMoney()));
            json.writeEndArray();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private void frontier(JsonGenerator json) throws IOException {
        json.writeObjectFieldStart("frontier");
        json.writeArrayFieldStart("points");
        for (Frontier.Point point : points) {
            json.writeStartArray();
            PayloadColumn.writeNumber(json, point.money());
            PayloadColumn.writeNumber(json, point.positions());
            json.writeNumber(point.row());
            json.writeEndArray();
        }
        json.writeEndArray();
        RowLists.writeRows(json, "hull", Frontier.hull(points));
        json.writeArrayFieldStart("cumulative");
        for (Frontier.Bought bought : Frontier.cumulative(points, MOST_BUDGETS)) {
            json.writeStartArray();
            PayloadColumn.writeNumber(json, cents(bought.money()));
            PayloadColumn.writeNumber(json, bought.positions());
            json.writeNumber(bought.spans());
            json.writeEndArray();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private static double cents(double money) {
        return Math.round(money * CENTS) / CENTS;
    }
}
