package org.spanroom.output.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;

/**
 * Groups of spans that the draws of the simulation cannot tell apart.
 *
 * @param draws how many draws they are made of
 * @param shareRatio in what share of the draws a span must be better to be in a better band
 * @param bands the best first
 */
public record ReportBands(int draws, double shareRatio, List<Band> bands) {
    public ReportBands {
        bands = List.copyOf(bands);
    }

    /**
     * One band.
     *
     * @param number from 1
     * @param bestRow row of its best span; -1 where the page does not show it
     */
    public record Band(int number, int spans, int bestRow) {}

    void write(JsonGenerator json) throws IOException {
        json.writeStartObject();
        json.writeNumberField("draws", draws);
        PayloadColumn.writeNumber(json, "share", shareRatio);
        json.writeArrayFieldStart("rows");
        for (Band band : bands) {
            json.writeStartArray();
            json.writeNumber(band.number());
            json.writeNumber(band.spans());
            if (band.bestRow() < 0) {
                json.writeNull();
            } else {
                json.writeNumber(band.bestRow());
            }
            json.writeEndArray();
        }
        json.writeEndArray();
        json.writeEndObject();
    }
}
