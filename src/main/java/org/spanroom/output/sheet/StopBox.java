package org.spanroom.output.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.model.network.Cable;
import org.spanroom.model.pull.Friction;
import org.spanroom.model.pull.InnerductPull;
import org.spanroom.model.pull.PullForces;
import org.spanroom.output.explain.StopRules;

/**
 * When work stops: limits that are never exceeded, which are not calculated forces, and beside them what is expected, which is.
 *
 * @param limits what, its limit, and what is expected
 * @param expected what the calculated range means
 * @param pause what to do below the limits, where a pull goes much worse than calculated; empty where nothing is pulled
 * @param rules when to stop, one sentence each
 * @param watch who watches the light level and whom to call
 */
record StopBox(SheetTable limits, String expected, String pause, List<String> rules, List<SheetCell> watch) {
    /** The item of the contact that watches the light level; another is called. */
    static final String LIGHT_WATCH = "light level watch";

    static final String ALARM = "stall or alarm";

    private static final List<SheetHead> HEADS = List.of(
            new SheetHead("Limit", 42),
            new SheetHead("Never exceed", 66.5),
            new SheetHead("Expected here, calculated", 68));
    private static final int MOST_CABLES = 4;
    private static final double CABLE_ROOM_MM = 28;

    static StopBox of(DuctSheet duct, SheetBlanks page) {
        var rows = new ArrayList<SheetRow>();
        if (duct.work().hasPulls()) {
            rows.add(pull(duct));
        }
        if (!duct.liveCables().isEmpty()) {
            rows.add(hold(duct));
        }
        if (!duct.cables().isEmpty()) {
            rows.add(radius(duct));
        }
        return new StopBox(
                SheetTable.whole("", "limits", HEADS, rows),
                duct.work().hasPulls() ? meaning(duct) : "",
                duct.work().hasPulls() ? PauseLevel.WHAT_TO_DO : "",
                StopRules.of(duct.work().explained(), duct.book().units()),
                List.of(SheetCell.of(
                        SheetPart.words("Light level watched by "),
                        SheetPart.blank(page.of(FieldFact.CONTACT, LIGHT_WATCH)),
                        SheetPart.words(" On a stall or an alarm call "),
                        SheetPart.blank(page.of(FieldFact.CONTACT, ALARM)))));
    }

    /** Returns how many of the rows of limits take two lines. */
    int longRows() {
        return (int) limits.rows().stream()
                .filter(row -> row.cells().get(1).widthMm() > HEADS.get(1).roomMm())
                .count();
    }

    /** How far the owner lets each live cable move, which no calculation says. */
    static LongTable<Cable> movements(DuctSheet duct) {
        return new LongTable<>(
                "Movement of a live cable that the owner allows",
                "movements",
                List.of(new SheetHead("Cable", 60), new SheetHead("Allowed", 60)),
                duct.liveCables(),
                MOST_CABLES,
                (page, cable) -> List.of(SheetRow.of(
                        SheetCell.words(duct.names().fit(cable.id(), CABLE_ROOM_MM)),
                        SheetCell.of(SheetPart.blank(page.of(FieldFact.CABLE_MOVEMENT_ALLOWED, cable.id()))))));
    }

    private static SheetRow pull(DuctSheet duct) {
        InnerductPull weakest = duct.pulls().stream()
                .min(Comparator.comparingDouble(pull -> duct.limits().innerductStrengthN(pull.innerduct())))
                .orElseThrow();
        double strengthN = duct.limits().innerductStrengthN(weakest.innerduct());
        double machineN = duct.limits().machinePullN();
        String why = machineN < strengthN
                ? "the machine"
                : duct.names().fit(weakest.innerduct().id(), 26);
        return row(
                "Pull on any innerduct",
                duct.units().both(Math.min(strengthN, machineN), 0, "N"),
                " (weakest: " + why + ")",
                expected(duct, PullForces::pullN));
    }

    private static SheetRow hold(DuctSheet duct) {
        return row(
                "Hold on any live cable",
                duct.units().both(duct.limits().holdAllowedN(), 0, "N"),
                " (assumed rating: check)",
                duct.work().hasPulls() ? expected(duct, PullForces::holdN) : "");
    }

    private static SheetRow radius(DuctSheet duct) {
        double widestMm = duct.cables().stream()
                .mapToDouble(Cable::outsideDiameterMm)
                .max()
                .orElseThrow();
        Optional<String> tightest = duct.work().explained().assessment().bends().list().stream()
                .map(bend -> bend.radiusM())
                .min(Comparator.naturalOrder())
                .map(radiusM -> "tightest bend here " + duct.units().both(radiusM, 1, "m"));
        return row(
                "Bend of a cable under load",
                "not below " + duct.units().both(Math.ceil(1000 * duct.limits().cableRadiusM(widestMm)), 0, "mm"),
                "",
                tightest.orElse("no bend in the duct"));
    }

    private static String meaning(DuctSheet duct) {
        double breakawayRatio = duct.work().explained().pulling().breakawayRatio();
        String first = breakawayRatio == 1
                ? "."
                : String.format(Locale.ROOT, "; the first pull can be %.1f times as much.", breakawayRatio);
        return "Expected: from lubricated to bad friction, uncertain by a factor of two" + first;
    }

    private static String expected(DuctSheet duct, ToDoubleFunction<PullForces> force) {
        double lowN = duct.pulls().stream()
                .mapToDouble(
                        pull -> force.applyAsDouble(pull.from(duct.pullingEnd()).forces(Friction.LUBRICATED)))
                .min()
                .orElse(0);
        double highN = duct.pulls().stream()
                .mapToDouble(
                        pull -> force.applyAsDouble(pull.from(duct.pullingEnd()).forces(Friction.BAD)))
                .max()
                .orElse(0);
        return duct.units().bothForces(lowN, highN);
    }

    private static SheetRow row(String what, String limit, String why, String expected) {
        return SheetRow.of(
                SheetCell.words(what),
                SheetCell.of(SheetPart.strong(limit), SheetPart.words(why)),
                SheetCell.words(expected));
    }
}
