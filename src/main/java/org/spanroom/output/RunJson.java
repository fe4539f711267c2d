package org.spanroom.output;

import com.fasterxml.jackson.core.JsonEncoding;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.model.Network;
import org.spanroom.model.RankTotals;

/** The record of a run, {@code run.json}: what went in, how, and what came out, in an order that never changes. */
final class RunJson {
    private static final ObjectMapper MAPPER = new ObjectMapper()
            .enable(SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS)
            .disable(SerializationFeature.FLUSH_AFTER_WRITE_VALUE);

    private final JsonGenerator json;

    private RunJson(JsonGenerator json) {
        this.json = json;
    }

    static void write(Path file, Results results, RankTotals totals, OutputSettings settings, List<String> notes) {
        var indenter = new DefaultIndenter("  ", "\n");
        var printer = new DefaultPrettyPrinter().withObjectIndenter(indenter).withArrayIndenter(indenter);
        try (JsonGenerator json = new JsonFactory(MAPPER).createGenerator(file.toFile(), JsonEncoding.UTF8)) {
            json.setPrettyPrinter(printer);
            new RunJson(json).all(results, totals, settings, notes);
            json.writeRaw('\n');
        } catch (IOException failure) {
            throw OutputException.of(file, failure);
        }
    }

    private void all(Results results, RankTotals totals, OutputSettings settings, List<String> notes)
            throws IOException {
        json.writeStartObject();
        json.writeStringField("program", "Spanroom");
        json.writeStringField("version", results.run().version());
        json.writeStringField("started_at", results.run().startedAt().toString());
        inputs(results.run().inputs());
        spans(totals);
        lengths(results.network(), totals);
        json.writeNumberField("vaults", results.network().vaults().size());
        findings(results.findings());
        json.writeStringField("output_crs", settings.crs().name());
        json.writeArrayFieldStart("notes");
        for (String note : notes) {
            json.writeString(note);
        }
        json.writeEndArray();
        json.writeFieldName("config");
        MAPPER.writeValue(json, results.run().config());
        json.writeEndObject();
    }

    private void inputs(List<RunRecord.Input> inputs) throws IOException {
        json.writeArrayFieldStart("inputs");
        for (RunRecord.Input input : inputs) {
            json.writeStartObject();
            json.writeStringField("role", input.role());
            json.writeStringField("file", input.file());
            json.writeStringField("layer", input.layer());
            json.writeStringField("crs", input.crs());
            json.writeStringField("sha256", input.sha256());
            parts(input.parts());
            json.writeNumberField("features_read", input.featuresRead());
            json.writeNumberField("features_used", input.featuresUsed());
            json.writeNumberField("features_rejected", input.featuresRejected());
            counts("rejected_by_code", new TreeMap<>(input.rejectedByCode()));
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private void parts(List<RunRecord.Part> parts) throws IOException {
        json.writeArrayFieldStart("parts");
        for (RunRecord.Part part : parts) {
            json.writeStartObject();
            json.writeStringField("file", part.file());
            json.writeStringField("sha256", part.sha256());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private void spans(RankTotals totals) throws IOException {
        json.writeNumberField("spans", totals.spans());
        json.writeNumberField("spans_ranked", totals.ranked());
        var byKey = new TreeMap<String, Long>();
        totals.excluded().forEach((why, count) -> byKey.put(why.key(), count));
        counts("spans_excluded", byKey);
        json.writeNumberField("bends", totals.bends());
    }

    private void lengths(Network network, RankTotals totals) throws IOException {
        json.writeObjectFieldStart("lengths_m");
        metres("routes", network.routeLengthM());
        metres("spans", network.spanLengthM());
        metres("remainders", network.remainderLengthM());
        metres("spans_ranked", totals.rankedDrawnLengthM());
        json.writeEndObject();
    }

    private void findings(List<Finding> findings) throws IOException {
        var byCode = new EnumMap<FindingCode, Long>(FindingCode.class);
        var bySeverity = new TreeMap<String, Long>();
        for (Finding finding : findings) {
            byCode.merge(finding.code(), finding.count(), Long::sum);
            bySeverity.merge(finding.code().severity().name().toLowerCase(Locale.ROOT), finding.count(), Long::sum);
        }
        var byKey = new TreeMap<String, Long>();
        byCode.forEach((code, count) -> byKey.put(code.key(), count));
        json.writeNumberField(
                "findings", findings.stream().mapToLong(Finding::count).sum());
        counts("findings_by_severity", bySeverity);
        counts("findings_by_code", byKey);
    }

    private void counts(String name, Map<String, Long> counts) throws IOException {
        json.writeObjectFieldStart(name);
        for (var entry : counts.entrySet()) {
            json.writeNumberField(entry.getKey(), entry.getValue());
        }
        json.writeEndObject();
    }

    private void metres(String name, double lengthM) throws IOException {
        json.writeNumberField(name, BigDecimal.valueOf(lengthM).setScale(3, RoundingMode.HALF_UP));
    }
}
