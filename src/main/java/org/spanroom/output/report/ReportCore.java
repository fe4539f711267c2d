package org.spanroom.output.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import org.spanroom.model.Line;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.network.Street;

/**
 * The data of the page that it shows at once; details of spans are in chunks of their own.
 *
 * @param counts of the run: spans, ranked, sections, shownSpans
 * @param corridors the corridors that one cable has; {@code corridorSections} are rows of their sections
 * @param words texts by key, by the column whose keys they are
 */
public record ReportCore(
        String currency,
        UnitSystem units,
        Map<String, Long> counts,
        ReportSpans spans,
        ReportSections sections,
        ReportLayer vaults,
        ReportLayer findings,
        ReportLayer fieldChecks,
        ReportLayer zones,
        PayloadTable<?> corridors,
        List<List<Integer>> corridorSections,
        List<Street> streets,
        Optional<ReportProgram> program,
        SortedMap<String, SortedMap<String, String>> words,
        ReportScore score,
        ReportCharts charts) {
    /** The id of the chunk. */
    public static final String ID = "data-core";

    private static final int FORMAT = 1;

    public ReportCore {
        streets = List.copyOf(streets);
        corridorSections = corridorSections.stream().map(List::copyOf).toList();
    }

    /** Packs the data. */
    public Chunk chunk() {
        return Chunk.of(ID, this::write);
    }

    void write(JsonGenerator json) throws IOException {
        json.writeStartObject();
        json.writeNumberField("format", FORMAT);
        json.writeStringField("currency", currency);
        json.writeStringField("lengthUnit", units.unit("m"));
        json.writeStringField("forceUnit", units.unit("N"));
        json.writeObjectFieldStart("counts");
        for (Map.Entry<String, Long> count : counts.entrySet()) {
            json.writeNumberField(count.getKey(), count.getValue());
        }
        json.writeEndObject();
        json.writeFieldName("spans");
        spans.write(json);
        json.writeFieldName("sections");
        sections.write(json);
        write(json, "vaults", vaults);
        write(json, "findings", findings);
        write(json, "field_checks", fieldChecks);
        write(json, "zones", zones);
        json.writeObjectFieldStart("corridors");
        corridors.write(json);
        RowLists.write(json, "sections", corridorSections);
        json.writeEndObject();
        streets(json);
        json.writeFieldName("program");
        if (program.isPresent()) {
            program.get().write(json);
        } else {
            json.writeNull();
        }
        words(json);
        json.writeFieldName("score");
        score.write(json);
        json.writeFieldName("charts");
        charts.write(json);
        json.writeEndObject();
    }

    private static void write(JsonGenerator json, String name, ReportLayer layer) throws IOException {
        json.writeFieldName(name);
        layer.write(json);
    }

    private void streets(JsonGenerator json) throws IOException {
        json.writeFieldName("streets");
        if (streets.isEmpty()) {
            json.writeNull();
            return;
        }
        json.writeStartObject();
        json.writeArrayFieldStart("names");
        for (Street street : streets) {
            json.writeString(street.name());
        }
        json.writeEndArray();
        json.writeArrayFieldStart("lines");
        for (Street street : streets) {
            json.writeStartArray();
            for (Line line : street.lonLat()) {
                PackedShapes.writeLine(json, line);
            }
            json.writeEndArray();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private void words(JsonGenerator json) throws IOException {
        json.writeObjectFieldStart("words");
        for (Map.Entry<String, SortedMap<String, String>> column : words.entrySet()) {
            json.writeObjectFieldStart(column.getKey());
            for (Map.Entry<String, String> word : column.getValue().entrySet()) {
                json.writeStringField(word.getKey(), word.getValue());
            }
            json.writeEndObject();
        }
        json.writeEndObject();
    }
}
