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
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.spanroom.crs.ReferenceSystem;
import org.spanroom.model.effort.MoneyRange;
import org.spanroom.model.effort.MoneyRanges;
import org.spanroom.model.effort.MoneyTotals;
import org.spanroom.model.rank.KeptTotals;
import org.spanroom.model.rank.RankTotals;
import org.spanroom.output.folder.OutputException;

/** The record of a run, {@code run.json}: what went in, how, and what came out, in an order that never changes. */
final class RunJson {
    static final String FILE = "run.json";

    /** The member with the time at which the run was started. */
    static final String STARTED_AT = "started_at";

    /** The member with the version of the file that later commands read. */
    static final String RUN_SPANS_FORMAT = "run_spans_format";

    /** The member with the definition of the reference system of the layers. */
    static final String OUTPUT_CRS_DEFINITION = "output_crs_definition";

    /** What new build costs where one trench or bore serves all ranked spans of a section. */
    static final String SHARED_BUILD = "build_shared_money";

    /** What says that the run did not write all its spans. */
    static final String FILTER = "filter";

    private static final String SPANS_KEPT = "spans_kept";
    private static final String SPANS_LEFT_OUT = "spans_left_out";

    /** The members of the filter that say what came of it. */
    static final Set<String> FILTER_COUNTS = Set.of(SPANS_KEPT, SPANS_LEFT_OUT);

    private static final ObjectMapper MAPPER = new ObjectMapper()
            .enable(SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS)
            .disable(SerializationFeature.FLUSH_AFTER_WRITE_VALUE);

    private final JsonGenerator json;

    private RunJson(JsonGenerator json) {
        this.json = json;
    }

    static void write(Path file, RunAccount account) {
        // The file is mostly config, deeply nested: a second space would be a sixth of it.
        var indenter = new DefaultIndenter(" ", "\n");
        var printer = new DefaultPrettyPrinter().withObjectIndenter(indenter).withArrayIndenter(indenter);
        try (JsonGenerator json = new JsonFactory(MAPPER).createGenerator(file.toFile(), JsonEncoding.UTF8)) {
            json.setPrettyPrinter(printer);
            new RunJson(json).all(account);
            json.writeRaw('\n');
        } catch (IOException failure) {
            throw OutputException.of(file, failure);
        }
    }

    private void all(RunAccount account) throws IOException {
        RunRecord run = account.run();
        json.writeStartObject();
        json.writeStringField("program", "Spanroom");
        json.writeStringField("version", run.version());
        json.writeStringField(STARTED_AT, run.startedAt().toString());
        if (account.rescoredFrom().isPresent()) {
            json.writeStringField("rescored_from", account.rescoredFrom().get());
        }
        inputs(run.inputs());
        filter(account);
        rows(account);
        json.writeNumberField(RUN_SPANS_FORMAT, RecordedSpans.FORMAT);
        spans(account.totals());
        lengths(account.lengths(), account.totals());
        keptFields(account);
        money(account.money());
        ContentsJson.write(json, account.contents());
        counts("findings_by_severity", account.findings().bySeverity());
        counts("findings_by_code", account.findings().byCode());
        json.writeStringField("output_crs", account.outputCrs());
        json.writeStringField(OUTPUT_CRS_DEFINITION, definition(account.outputSystem()));
        json.writeArrayFieldStart("notes");
        for (String note : account.notes()) {
            json.writeString(note);
        }
        json.writeEndArray();
        json.writeFieldName("config");
        MAPPER.writeValue(json, run.config());
        json.writeEndObject();
    }

    private static String definition(ReferenceSystem system) {
        if (system.equals(ReferenceSystem.crs84())) {
            return "OGC:CRS84";
        }
        return system.epsgCode().isPresent() ? "EPSG:" + system.epsgCode().getAsInt() : system.wkt();
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

    /** What was asked of the rows that are written; nothing where all are. Counts and sums below are of the whole run. */
    private void filter(RunAccount account) throws IOException {
        if (account.filter().isEmpty()) {
            return;
        }
        json.writeObjectFieldStart(FILTER);
        for (var asked : account.filter().entrySet()) {
            json.writeStringField(asked.getKey(), asked.getValue());
        }
        json.writeNumberField(SPANS_KEPT, account.spansKept());
        json.writeNumberField(SPANS_LEFT_OUT, account.totals().spans() - account.spansKept());
        json.writeEndObject();
    }

    /** How many rows each table has; of findings, how many problems they stand for. */
    private void rows(RunAccount account) throws IOException {
        var rows = new LinkedHashMap<>(account.rows());
        rows.put(ResultTables.FINDINGS.name(), account.findings().total());
        for (var table : rows.entrySet()) {
            json.writeNumberField(table.getKey(), table.getValue());
        }
    }

    private void spans(RankTotals totals) throws IOException {
        json.writeNumberField("spans_ranked", totals.ranked());
        json.writeNumberField("spans_ranked_doubtful", totals.doubtful());
        json.writeNumberField("spans_ranked_tight_bend", totals.tightBends());
        var byKey = new TreeMap<String, Long>();
        totals.excluded().forEach((why, count) -> byKey.put(why.key(), count));
        counts("spans_excluded", byKey);
    }

    private void lengths(NetworkLengths lengths, RankTotals totals) throws IOException {
        json.writeObjectFieldStart("lengths_m");
        meters("routes", lengths.routesM());
        meters("spans", lengths.spansM());
        meters("remainders", lengths.remaindersM());
        meters("spans_ranked", totals.rankedDrawnLengthM());
        json.writeEndObject();
    }

    /** Sums over the ranked spans by the owner's own fields, the values with most to gain first. */
    private void keptFields(RunAccount account) throws IOException {
        if (account.kept().isEmpty()) {
            return;
        }
        json.writeObjectFieldStart("kept_fields");
        for (int field = 0; field < account.kept().size(); field++) {
            KeptTotals totals = account.totals().kept().size() > field
                    ? account.totals().kept().get(field)
                    : KeptTotals.NONE;
            json.writeObjectFieldStart(account.kept().get(field));
            json.writeArrayFieldStart("values");
            for (var entry : totals.mostGainedFirst()) {
                json.writeStartObject();
                json.writeStringField("value", entry.getKey());
                keptSum(entry.getValue());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeObjectFieldStart("others");
            keptSum(totals.others());
            json.writeEndObject();
            json.writeEndObject();
        }
        json.writeEndObject();
    }

    private void keptSum(KeptTotals.Sum sum) throws IOException {
        json.writeNumberField("spans_ranked", sum.ranked());
        json.writeNumberField("positions_gained", sum.positionsGained());
        meters("length_m", sum.lengthM());
    }

    /** What the ranked spans cost and save together; low, likely and high where these were drawn. */
    private void money(MoneyTotals money) throws IOException {
        json.writeObjectFieldStart("money_ranked");
        json.writeStringField("currency", money.currency());
        money("recovery", money.recoveryMoney(), money.ranges().map(MoneyRanges::recovery));
        money("build", money.newBuildMoney(), money.ranges().map(MoneyRanges::newBuild));
        money("saving", money.savingMoney(), money.ranges().map(MoneyRanges::saving));
        if (money.sharedBuildMoney().isPresent()) {
            decimals(SHARED_BUILD, money.sharedBuildMoney().getAsDouble(), 2);
        }
        json.writeEndObject();
    }

    private void money(String name, double atValuesMoney, Optional<MoneyRange> range) throws IOException {
        decimals(name + "_money", atValuesMoney, 2);
        if (range.isPresent()) {
            decimals(name + "_low_money", range.get().lowMoney(), 2);
            decimals(name + "_likely_money", range.get().likelyMoney(), 2);
            decimals(name + "_high_money", range.get().highMoney(), 2);
        }
    }

    private void counts(String name, Map<String, Long> counts) throws IOException {
        json.writeObjectFieldStart(name);
        for (var entry : counts.entrySet()) {
            json.writeNumberField(entry.getKey(), entry.getValue());
        }
        json.writeEndObject();
    }

    private void meters(String name, double lengthM) throws IOException {
        decimals(name, lengthM, 3);
    }

    private void decimals(String name, double value, int decimals) throws IOException {
        json.writeNumberField(name, BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP));
    }
}
