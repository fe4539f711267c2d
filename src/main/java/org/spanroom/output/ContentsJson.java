package org.spanroom.output;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import org.spanroom.model.rank.ContentsAccount;
import org.spanroom.model.rank.MissingTerm;
import org.spanroom.model.rank.ScenarioResult;

/** What the record of a run says of the contents that its results rest on. */
final class ContentsJson {
    private ContentsJson() {}

    static void write(JsonGenerator json, ContentsAccount contents) throws IOException {
        json.writeObjectFieldStart("contents");
        json.writeStringField("basis", contents.basis());
        json.writeStringField("statement", contents.statement());
        json.writeNumberField("spans_recorded", contents.counts().recorded());
        json.writeNumberField("spans_assumed", contents.counts().assumed());
        json.writeNumberField("spans_unknown", contents.counts().unknown());
        json.writeNumberField("spans_ranked_assumed", contents.counts().rankedAssumed());
        json.writeArrayFieldStart("missing");
        for (MissingTerm term : contents.missing()) {
            missing(json, term);
        }
        json.writeEndArray();
        json.writeArrayFieldStart("to_assume");
        for (String line : contents.toAssume()) {
            json.writeString(line);
        }
        json.writeEndArray();
        json.writeArrayFieldStart("deciders");
        for (String sentence : contents.deciders()) {
            json.writeString(sentence);
        }
        json.writeEndArray();
        json.writeArrayFieldStart("by_scenario");
        for (ScenarioResult result : contents.scenarios()) {
            scenario(json, result);
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private static void missing(JsonGenerator json, MissingTerm term) throws IOException {
        json.writeStartObject();
        json.writeStringField("term", term.term());
        json.writeStringField("field", term.field());
        json.writeNumberField("without", term.without());
        json.writeNumberField("of", term.among());
        json.writeStringField("counted", term.counted());
        json.writeStringField("stands_in", term.standsIn());
        json.writeEndObject();
    }

    private static void scenario(JsonGenerator json, ScenarioResult result) throws IOException {
        json.writeStartObject();
        json.writeStringField("scenario", result.name());
        json.writeBooleanField("main_result", result.main());
        json.writeNumberField("innerduct_count", result.scenario().innerductCount());
        json.writeNumberField("cable_count", result.scenario().cableCount());
        json.writeNumberField("spans_ranked", result.spansRanked());
        json.writeNumberField("spans_ranked_assumed", result.spansAssumed());
        decimals(json, "length_m", result.lengthM(), 3);
        json.writeNumberField("positions_gained", result.positionsGained());
        json.writeStringField("currency", result.currency());
        decimals(json, "recovery_money", result.recoveryMoney(), 2);
        decimals(json, "build_money", result.newBuildMoney(), 2);
        decimals(json, "saving_money", result.savingMoney(), 2);
        json.writeEndObject();
    }

    private static void decimals(JsonGenerator json, String name, double value, int decimals) throws IOException {
        json.writeNumberField(name, BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP));
    }
}
