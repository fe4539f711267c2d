package org.spanroom.output.explain;

import static java.util.stream.Collectors.joining;

import java.time.LocalDate;
import java.util.OptionalDouble;
import org.spanroom.model.Answer;
import org.spanroom.model.Term;
import org.spanroom.model.network.AirSupplyReason;
import org.spanroom.model.network.AirTest;
import org.spanroom.model.network.EndFacts;
import org.spanroom.model.network.InsideSize;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.network.Vault;
import org.spanroom.model.network.VaultFacts;
import org.spanroom.model.network.VaultNeeds;

/** The vault at one end of a span: what the records say of it and of the duct there, and what a crew prepares for. */
final class ExplanationVault {
    private static final String NOT_RECORDED = "not recorded";
    private static final String NOT_ENTERED = "crews do not enter";

    private final ExplanationParts parts = new ExplanationParts();
    private final Span span;
    private final SpanEnd end;
    private final Vault vault;

    private ExplanationVault(Span span, SpanEnd end) {
        this.span = span;
        this.end = end;
        vault = end.vaultOf(span);
    }

    static ExplanationSection of(Span span, SpanEnd end, VaultNeeds needs) {
        var one = new ExplanationVault(span, end);
        one.records();
        one.duct();
        one.needs(needs);
        return one.parts.section("vault_" + end.key(), "Vault " + one.vault.id() + " at " + end);
    }

    private void records() {
        VaultFacts facts = vault.facts();
        parts.text("vault_id", "", vault.id());
        known("kind", "kind", text(vault.kind()), unknown(Term.VAULT_KIND));
        known("depth_m", "depth from cover to floor", number(facts.depthM(), "m"), unknown(Term.VAULT_DEPTH));
        inside(facts.inside());
        known("cover_size_mm", "opening under the cover", number(facts.coverSizeMm(), "mm"), unknown(Term.COVER_SIZE));
        known("volume_m3", "volume", number(vault.site().volumeM3(), "m3"), unknown(Term.VAULT_VOLUME));
        if (vault.site().volumeM3().isPresent()) {
            parts.because(facts.volumeBasis().key().replace('_', ' '));
        }
        known("water", "standing water", answer(vault.site().water()), unknown(Term.VAULT_WATER));
        known("surface", "surface around the cover", text(vault.site().surface()), unknown(Term.VAULT_SURFACE));
        known("gas_found", "gas found before", answer(facts.gasFound()), unknown(Term.GAS_FOUND));
        known("joint_power", "shared with power cables", answer(facts.jointPower()), unknown(Term.JOINT_POWER));
        String day = facts.inspectedOn().map(LocalDate::toString).orElse("");
        known("inspected_on", "last inspected", text(day), unknown(Term.VAULT_INSPECTED));
    }

    /** Three sizes in one line; where none is recorded, that once. */
    private void inside(InsideSize inside) {
        parts.line(
                "",
                "inside",
                line -> line.value("inside_length_m", "length", number(inside.lengthM(), "m"))
                        .value("inside_width_m", "width", number(inside.widthM(), "m"))
                        .value("inside_height_m", "height", number(inside.heightM(), "m")));
        if (inside.equals(InsideSize.UNKNOWN)) {
            parts.text("", "inside", unknown(Term.VAULT_LENGTH));
        }
    }

    private void duct() {
        EndFacts facts = span.factsAt(end);
        known("hole", "hole of the duct", text(facts.hole()), NOT_RECORDED);
        known("slack_m", "slack of each live cable", number(span.slackM(end), "m"), unknown(Term.CABLE_SLACK));
        if (span.slackM(end).isPresent()) {
            parts.because(facts.slackM().isPresent() ? "of this duct" : "of the vault");
        }
    }

    private void needs(VaultNeeds needs) {
        boolean outside = needs.entered() == Answer.NO;
        known(
                "purge_minutes",
                "ventilate before entry at least",
                ExplanationValue.number(needs.purgeMinutes().orElse(Double.NaN), 1, "min"),
                outside ? NOT_ENTERED : "volume not recorded");
        parts.words("air_tests", "air tests", needs.airTests(), AirTest::key);
        known(
                "air_retest_hours",
                "longest time between air tests",
                ExplanationValue.number(needs.airRetestHours().orElse(Double.NaN), 1, "h"),
                outside ? NOT_ENTERED : NOT_RECORDED);
        String why = needs.airSupplyReasons().stream()
                .map(AirSupplyReason::key)
                .map(key -> key.replace('_', ' '))
                .collect(joining(", "));
        known("forced_air", "forced air", answer(needs.airSupply()), why.isEmpty() ? NOT_RECORDED : why);
        if (needs.airSupply() != Answer.UNKNOWN) {
            parts.because(why);
        }
        parts.words("forced_air_why", "", needs.airSupplyReasons(), AirSupplyReason::key);
        known("discharge_permit", "permit to discharge water", answer(needs.pumped()), "water not recorded");
        known("lane_closure", "lane closure", answer(needs.inRoadway()), "surface not recorded");
        known("confined_space_entry", "confined-space entry", answer(needs.entered()), "kind not recorded");
    }

    /** Adds a value; people read of one that is absent why it is. */
    private void known(String key, String label, ExplanationValue value, String whyAbsent) {
        if (value.equals(ExplanationValue.ABSENT)) {
            parts.value(key, "", value).text("", label, whyAbsent);
        } else {
            parts.value(key, label, value);
        }
    }

    /** A value that was rejected was recorded all the same. */
    private String unknown(Term term) {
        return vault.findRejected(term).map(rejected -> rejected.words()).orElse(NOT_RECORDED);
    }

    private static ExplanationValue text(String text) {
        return ExplanationValue.text(text);
    }

    private static ExplanationValue number(OptionalDouble value, String unit) {
        return ExplanationValue.number(value.orElse(Double.NaN), 2, unit);
    }

    private static ExplanationValue answer(Answer answer) {
        return answer == Answer.UNKNOWN ? ExplanationValue.ABSENT : new ExplanationValue.Flag(answer == Answer.YES);
    }
}
