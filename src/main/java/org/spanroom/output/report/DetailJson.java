package org.spanroom.output.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import org.spanroom.model.UnitSystem;
import org.spanroom.output.explain.ExplanationReading;

/** Writes details of spans as JSON for the page: an array of one object for each, numbers in the units that people are shown. */
public final class DetailJson {
    private static final int FORCE_DECIMALS = 1;
    private static final int LENGTH_DECIMALS = 2;
    private static final int MONEY_DECIMALS = 2;

    private final JsonGenerator json;
    private final UnitSystem units;

    private DetailJson(JsonGenerator json, UnitSystem units) {
        this.json = json;
        this.units = units;
    }

    /**
     * Writes details of spans.
     *
     * @param rows of the spans in the page's table, one for each detail
     * @param units that forces and lengths are shown in; those of the trees and of the words of money
     * @throws IllegalArgumentException if there are not as many rows as details
     */
    public static void write(List<SpanDetail> details, List<Integer> rows, UnitSystem units, JsonGenerator json)
            throws IOException {
        if (details.size() != rows.size()) {
            throw new IllegalArgumentException(details.size() + " details have " + rows.size() + " rows");
        }
        var writer = new DetailJson(json, units);
        json.writeStartArray();
        for (int i = 0; i < details.size(); i++) {
            writer.detail(details.get(i), rows.get(i));
        }
        json.writeEndArray();
    }

    private void detail(SpanDetail detail, int row) throws IOException {
        json.writeStartObject();
        json.writeNumberField("row", row);
        json.writeFieldName("tree");
        part(ExplanationReading.of(detail.tree()));
        json.writeArrayFieldStart("drawings");
        for (SpanDetail.Drawing drawing : detail.drawings()) {
            json.writeStartObject();
            json.writeStringField("label", drawing.label());
            json.writeStringField("svg", drawing.svg());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeArrayFieldStart("pulls");
        for (SpanDetail.PullCurve pull : detail.pulls()) {
            pull(pull);
        }
        json.writeEndArray();
        json.writeArrayFieldStart("money");
        for (SpanDetail.MoneyLine line : detail.money()) {
            money(line);
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private void part(ExplanationReading part) throws IOException {
        json.writeStartArray();
        if (part instanceof ExplanationReading.Section section) {
            strings("s", section.title());
            json.writeStartArray();
            for (ExplanationReading inner : section.parts()) {
                part(inner);
            }
            json.writeEndArray();
        } else if (part instanceof ExplanationReading.Item item) {
            strings("i", item.label(), item.words());
        } else if (part instanceof ExplanationReading.Sentence sentence) {
            strings("p", sentence.text());
        } else if (part instanceof ExplanationReading.Table table) {
            strings("t", table.title());
            table(table);
        }
        json.writeEndArray();
    }

    private void table(ExplanationReading.Table table) throws IOException {
        json.writeStartArray();
        for (ExplanationReading.Column column : table.columns()) {
            strings(column.unit().isEmpty() ? column.label() : column.label() + " " + column.unit());
        }
        json.writeEndArray();
        json.writeStartArray();
        for (int row = 0; row < table.rows(); row++) {
            json.writeStartArray();
            for (ExplanationReading.Column column : table.columns()) {
                strings(column.cells().get(row));
            }
            json.writeEndArray();
        }
        json.writeEndArray();
    }

    private void pull(SpanDetail.PullCurve pull) throws IOException {
        json.writeStartObject();
        json.writeFieldName("innerduct");
        strings(pull.innerduct());
        json.writeFieldName("pulling_vault");
        strings(pull.pullingVault());
        json.writeBooleanField("better", pull.isBetterEnd());
        numbers("at", pull.atM(), LENGTH_DECIMALS, "m");
        numbers("pull", pull.pullN(), FORCE_DECIMALS, "N");
        numbers("hold", pull.holdN(), FORCE_DECIMALS, "N");
        json.writeFieldName("allowed_pull");
        number(pull.allowedPullN(), FORCE_DECIMALS, "N");
        json.writeFieldName("allowed_hold");
        number(pull.allowedHoldN(), FORCE_DECIMALS, "N");
        json.writeEndObject();
    }

    private void money(SpanDetail.MoneyLine line) throws IOException {
        json.writeStartArray();
        strings(line.part(), line.place(), line.quantity(), line.rate());
        number(line.amountMoney(), MONEY_DECIMALS, "");
        strings(line.source());
        json.writeEndArray();
    }

    private void numbers(String name, List<Double> values, int decimals, String unit) throws IOException {
        json.writeArrayFieldStart(name);
        for (double value : values) {
            number(value, decimals, unit);
        }
        json.writeEndArray();
    }

    /** Writes a number in the units shown, without zeros at its end; null where there is none. */
    private void number(double metric, int decimals, String unit) throws IOException {
        if (!Double.isFinite(metric)) {
            json.writeNull();
            return;
        }
        BigDecimal rounded = BigDecimal.valueOf(units.value(metric, unit))
                .setScale(units.decimals(decimals, unit), RoundingMode.HALF_UP)
                .stripTrailingZeros();
        json.writeNumber(rounded.toPlainString());
    }

    private void strings(String... texts) throws IOException {
        for (String text : texts) {
            json.writeString(ExplanationReading.printable(text));
        }
    }
}
