package org.spanroom.output.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;

/**
 * What the page ranks again with: the value of each criterion for each span, so that only weights are to be multiplied.
 *
 * @param criteria in the order in which a score adds its parts
 */
public record ReportScore(List<Criterion> criteria) {
    public ReportScore {
        criteria = List.copyOf(criteria);
    }

    /**
     * One criterion.
     *
     * @param key the word in config and columns
     * @param unit what its quantity is counted in
     * @param weightRatio its weight as the run has it; weights are relative to their sum
     * @param curve quantity to value
     * @param valueRatios how good each span's quantity is, 0 to 1; not a number where it is unknown
     */
    @SuppressWarnings("ArrayRecordComponent") // A hundred thousand numbers; never changed or compared.
    public record Criterion(
            String key, String unit, double weightRatio, SortedMap<Double, Double> curve, double[] valueRatios) {}

    void write(JsonGenerator json) throws IOException {
        json.writeStartObject();
        json.writeArrayFieldStart("criteria");
        for (Criterion criterion : criteria) {
            json.writeStartObject();
            json.writeStringField("key", criterion.key());
            json.writeStringField("label", criterion.key().replace('_', ' '));
            json.writeStringField("unit", criterion.unit());
            PayloadColumn.writeNumber(json, "weight", criterion.weightRatio());
            json.writeArrayFieldStart("curve");
            for (Map.Entry<Double, Double> point : criterion.curve().entrySet()) {
                json.writeStartArray();
                PayloadColumn.writeNumber(json, point.getKey());
                PayloadColumn.writeNumber(json, point.getValue());
                json.writeEndArray();
            }
            json.writeEndArray();
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeArrayFieldStart("values");
        for (Criterion criterion : criteria) {
            json.writeString(base64(criterion.valueRatios()));
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    /** Every bit of a value counts: the order of equal scores is that of ids, here and in the page. */
    private static String base64(double[] valueRatios) {
        ByteBuffer bytes =
                ByteBuffer.allocate(valueRatios.length * Double.BYTES).order(ByteOrder.LITTLE_ENDIAN);
        for (double ratio : valueRatios) {
            bytes.putDouble(ratio);
        }
        return Base64.getEncoder().encodeToString(bytes.array());
    }
}
