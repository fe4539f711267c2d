package org.spanroom.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.spanroom.model.fieldwork.CloseoutRow;
import org.spanroom.model.fieldwork.FieldFact;

/**
 * Invented crews of the demo city, who fill in a close-out file: most ducts are as recorded, setting up takes longer than planned, one
 * duct is blocked, and two hold one cable more than recorded. All of it is invented; nothing of it was measured.
 */
final class DemoCrew {
    /** How long steps take, in shares of the planned time, on the whole. */
    private static final Map<String, Double> PACE = Map.of("set_up", 1.35, "pulling", 1.15, "freeing", 1.25);

    private static final double SPREAD = 0.12;
    private static final String BLOCKED = "B149-1:V3-1051:V3-1052";
    private static final String ONE_MORE = "B154-1:V3-1001:V3-1007";
    private static final String IN_WORK = "B154-3:V3-1001:V3-1007";

    /** What the north crew does; the south crew does the others. */
    private static final Set<String> NORTH = Set.of(
            "B141-1:V3-1058:V3-1059",
            "B58-4:V2-1089:V2-1046",
            "B101-2:V2-1004:V2-1005",
            "B22-3:V1-1012:V1-1011",
            "B26-2:V1-1083:V1-1078");

    /** The spans of the first weeks of the demo's program, with the first day of their work. */
    private static final Map<String, String> DAYS = days();

    private static Map<String, String> days() {
        Map<String, String> days = new LinkedHashMap<>();
        days.put("B141-1:V3-1058:V3-1059", "2027-01-18");
        days.put("B58-2:V2-1047:V2-1046", "2027-01-18");
        days.put("B58-4:V2-1046:V2-1047", "2027-01-19");
        days.put("B58-4:V2-1089:V2-1046", "2027-01-25");
        days.put("B113-1:V2-1008:V2-1009", "2027-01-25");
        days.put("B96-2:V2-1002:V2-1009", "2027-01-26");
        days.put("B101-2:V2-1004:V2-1005", "2027-02-01");
        days.put("B29-2:V1-1077:V1-1078", "2027-02-01");
        days.put("B29-3:V1-1078:V1-1077", "2027-02-02");
        days.put("B22-3:V1-1012:V1-1011", "2027-02-08");
        days.put(BLOCKED, "2027-02-08");
        days.put("B73-2:V2-1036:V2-1037", "2027-02-09");
        days.put("B26-2:V1-1083:V1-1078", "2027-02-15");
        days.put("B154-2:V3-1001:V3-1007", "2027-02-15");
        days.put("B154-4:V3-1001:V3-1007", "2027-02-15");
        days.put(ONE_MORE, "2027-02-16");
        days.put(IN_WORK, "2027-02-16");
        return days;
    }

    /** Returns the spans that the crews report on. */
    static List<String> spans() {
        return List.copyOf(DAYS.keySet());
    }

    /** Fills in what the crews report; rows about which they say nothing are left out. */
    List<CloseoutRow> fill(List<CloseoutRow> template) {
        var random = new Random(20270118);
        var filled = new ArrayList<CloseoutRow>();
        for (CloseoutRow row : template) {
            String value = row.vault().isEmpty() ? ofSpan(row, random) : "";
            if (!value.isEmpty()) {
                filled.add(with(row, value, DAYS.getOrDefault(row.span(), "")));
            }
        }
        filled.add(ofVault("V3-1007", FieldFact.GAS_FOUND, "yes", "", "2027-02-15"));
        filled.add(ofVault("V3-1007", FieldFact.VAULT_INSPECTED, "2027-02-15", "", "2027-02-15"));
        filled.add(ofVault("V1-1012", FieldFact.VAULT_DEPTH, "7.5", "ft", "2027-02-08"));
        filled.add(ofVault("V1-1012", FieldFact.VAULT_WATER, "yes", "", "2027-02-08"));
        return filled;
    }

    private static String ofSpan(CloseoutRow row, Random random) {
        FieldFact fact = FieldFact.find(row.fact()).orElseThrow();
        // Drawn for every row, so that no row moves the numbers of the others.
        double noise = Math.exp(SPREAD * random.nextGaussian());
        if (row.span().equals(IN_WORK)) {
            return fact == FieldFact.STATUS ? "in_work" : "";
        }
        if (row.span().equals(BLOCKED)) {
            return ofBlocked(fact, row, noise);
        }
        return switch (fact) {
            case STATUS -> "done";
            case CABLES_FOUND ->
                row.span().equals(ONE_MORE) ? Integer.toString(Integer.parseInt(row.planned()) + 1) : row.planned();
            case INNERDUCTS_FOUND, INNERDUCT_OUT, PULLED_FROM, SLEEVE_CELLS, BAGS, LOADS, SEALS_USED -> row.planned();
            case STEP_HOURS -> times(row, PACE.getOrDefault(row.item(), 1.0) * noise, 2);
            case PULL_FORCE -> times(row, 1.1 * noise * noise, 0);
            // Nearly all of it is the length of the span, which does not vary.
            case SLEEVE_USED -> times(row, Math.pow(noise, 0.1), 1);
            case LUBRICANT_USED, INNERDUCT_MASS, RECYCLED_MASS -> times(row, noise, 1);
            case COST -> times(row, 1.05 * noise, 0);
            case CREW_PERSONS -> "5";
            default -> "";
        };
    }

    private static String ofBlocked(FieldFact fact, CloseoutRow row, double noise) {
        return switch (fact) {
            case STATUS -> "stopped";
            case STATUS_REASON -> "the rod stopped at 31 m from A";
            case DUCT_CONDITION -> "blocked";
            case BLOCKED_AT -> row.item().equals("a") ? "31" : "";
            case STEP_HOURS ->
                List.of("traffic_control", "briefing", "opening", "air_test", "proof", "closing")
                                .contains(row.item())
                        ? times(row, noise, 2)
                        : "";
            default -> "";
        };
    }

    private static String times(CloseoutRow row, double ratio, int decimals) {
        return row.planned().isEmpty()
                ? ""
                : String.format(Locale.ROOT, "%." + decimals + "f", Double.parseDouble(row.planned()) * ratio);
    }

    private static CloseoutRow with(CloseoutRow row, String value, String day) {
        String crew = NORTH.contains(row.span()) ? "north crew" : "south crew";
        return new CloseoutRow(
                "", row.span(), "", row.fact(), row.item(), row.planned(), value, row.unit(), crew, day, "", "");
    }

    private static CloseoutRow ofVault(String vault, FieldFact fact, String value, String unit, String day) {
        String crew = vault.equals("V1-1012") ? "north crew" : "south crew";
        return new CloseoutRow("", "", vault, fact.key(), "", "", value, unit, crew, day, "", "");
    }
}
