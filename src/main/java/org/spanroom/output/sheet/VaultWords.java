package org.spanroom.output.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.spanroom.model.Answer;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.model.network.AirSupplyReason;
import org.spanroom.model.network.AirTest;
import org.spanroom.model.network.Vault;
import org.spanroom.model.network.VaultFacts;
import org.spanroom.model.network.VaultNeeds;
import org.spanroom.model.network.VaultUse;
import org.spanroom.model.network.VolumeBasis;
import org.spanroom.output.explain.RoundNumbers;
import org.spanroom.output.explain.SafetyCautions;

/** What is recorded of a vault and what a crew prepares for there, in words. What is not recorded is said to be so, never assumed. */
final class VaultWords {
    static final String NOT_RECORDED = "not recorded";

    /** So much above a whole minute comes from hours that were rounded. */
    private static final double ROUNDING_MINUTES = 0.01;

    private final VaultUse use;
    private final SheetUnits units;

    VaultWords(VaultUse use, SheetUnits units) {
        this.use = use;
        this.units = units;
    }

    /**
     * A fact of the vault.
     *
     * @param recorded in words
     * @param planned the same for the close-out file; empty where nothing is recorded
     */
    record Fact(FieldFact fact, String label, String recorded, String planned) {}

    Vault vault() {
        return use.vault();
    }

    VaultNeeds needs() {
        return use.needs();
    }

    /** Returns all facts that are recorded of vaults, in one order. */
    List<Fact> facts() {
        Vault vault = use.vault();
        VaultFacts facts = vault.facts();
        return List.of(
                text(FieldFact.VAULT_KIND, "Kind", vault.kind()),
                text(FieldFact.VAULT_SURFACE, "Cover location", vault.site().surface()),
                number(FieldFact.COVER_SIZE, "Cover opening", facts.coverSizeMm(), 0, "mm"),
                number(FieldFact.VAULT_DEPTH, "Depth", facts.depthM(), 2, "m"),
                number(FieldFact.VAULT_LENGTH, "Inside length", facts.inside().lengthM(), 2, "m"),
                number(FieldFact.VAULT_WIDTH, "Inside width", facts.inside().widthM(), 2, "m"),
                number(FieldFact.VAULT_HEIGHT, "Inside height", facts.inside().heightM(), 2, "m"),
                volume(),
                answer(FieldFact.VAULT_WATER, "Standing water", vault.site().water()),
                answer(FieldFact.GAS_FOUND, "Gas found before", facts.gasFound()),
                answer(FieldFact.JOINT_POWER, "Power cables in it", facts.jointPower()),
                answer(FieldFact.CABLE_HOLD, "Can hold a cable", vault.site().cableHold()),
                number(FieldFact.CABLE_SLACK, "Slack of a cable", vault.site().cableSlackM(), 1, "m"),
                new Fact(
                        FieldFact.VAULT_INSPECTED,
                        "Inspected",
                        facts.inspectedOn().map(Object::toString).orElse(NOT_RECORDED),
                        facts.inspectedOn().map(Object::toString).orElse("")));
    }

    private Fact volume() {
        Fact recorded = number(
                FieldFact.VAULT_VOLUME, "Volume of air", use.vault().site().volumeM3(), 2, "m3");
        boolean assumed = use.vault().facts().volumeBasis() == VolumeBasis.ASSUMED;
        return assumed
                ? new Fact(recorded.fact(), recorded.label(), recorded.recorded() + ", assumed", recorded.planned())
                : recorded;
    }

    private static Fact text(FieldFact fact, String label, String recorded) {
        String words = recorded.strip();
        return new Fact(fact, label, words.isEmpty() ? NOT_RECORDED : words, words);
    }

    private static Fact answer(FieldFact fact, String label, Answer answer) {
        return new Fact(fact, label, words(answer), answer == Answer.UNKNOWN ? "" : words(answer));
    }

    private Fact number(FieldFact fact, String label, OptionalDouble recorded, int metricDecimals, String unit) {
        if (recorded.isEmpty()) {
            return new Fact(fact, label, NOT_RECORDED, "");
        }
        double value = recorded.getAsDouble();
        int decimals = units.shown().decimals(metricDecimals, unit);
        return new Fact(
                fact, label, units.both(value, metricDecimals, unit), units.planned(fact.kind(), value, decimals));
    }

    static String words(Answer answer) {
        return switch (answer) {
            case YES -> "yes";
            case NO -> "no";
            case UNKNOWN -> NOT_RECORDED;
        };
    }

    /** Returns the same for the cover page, where the air is recorded: with the limits of air. */
    List<String> preparationsAndLimits() {
        var lines = new ArrayList<>(preparations());
        if (use.needs().entered() != Answer.NO) {
            lines.add(SafetyCautions.AIR_LIMITS);
        }
        return lines;
    }

    /** What is not known counts as needed. */
    private static String needed(Answer answer) {
        return answer == Answer.UNKNOWN ? "plan for it until checked" : words(answer);
    }

    /** Returns what the crew prepares for, a sentence each. */
    List<String> preparations() {
        var lines = new ArrayList<String>();
        VaultNeeds needs = use.needs();
        if (needs.entered() == Answer.NO) {
            lines.add("Crews work from the surface: not entered, by its kind.");
        } else {
            lines.add("Purge before entry " + purge() + " Forced air while occupied: " + forcedAir() + ".");
            lines.add("Test the air " + tests() + "; retest within "
                    + RoundNumbers.plain(needs.airRetestHours().orElse(0)) + " h.");
        }
        lines.add("Confined space entry: " + needed(needs.entered()) + ". Lane closure: " + needed(needs.inRoadway())
                + ". Water discharge permit: " + needed(needs.pumped()) + ".");
        return lines;
    }

    /** Returns the least time of ventilating in whole minutes; empty where it is not known. */
    String plannedPurgeMinutes() {
        OptionalDouble minutes = use.needs().purgeMinutes();
        // A rate is in hours: 0.16667 h are 10.0002 min, and mean 10.
        return minutes.isPresent() ? RoundNumbers.plain(Math.ceil(minutes.getAsDouble() - ROUNDING_MINUTES)) : "";
    }

    private String purge() {
        String minutes = plannedPurgeMinutes();
        return minutes.isEmpty()
                ? "for a time that its volume decides, which is " + NOT_RECORDED + "."
                : "at least " + minutes + " min.";
    }

    private String forcedAir() {
        VaultNeeds needs = use.needs();
        return needed(needs.airSupply())
                + needs.airSupplyReasons().stream()
                        .map(VaultWords::words)
                        .collect(Collectors.joining(" and ", " (", ")"));
    }

    private String tests() {
        return use.needs().airTests().stream().map(VaultWords::words).collect(Collectors.joining(", "));
    }

    private static String words(AirTest test) {
        return switch (test) {
            case BEFORE_ENTRY -> "before entry at each corner";
            case AFTER_PUMPING -> "after pumping";
            case EACH_DUCT_MOUTH -> "at each duct mouth as its plug comes out";
            case CONTINUOUSLY -> "continuously";
        };
    }

    private static String words(AirSupplyReason reason) {
        return switch (reason) {
            case ROADWAY -> "in a street open to traffic";
            case GAS_FOUND -> "gas was found before";
            case OFF_ROADWAY_WITHOUT_GAS -> "beside the roadway, no gas before";
            case NOT_ENTERED -> "not entered";
            case SURFACE_NOT_RECORDED -> "surface not recorded";
            case GAS_NOT_RECORDED -> "gas not recorded";
        };
    }
}
