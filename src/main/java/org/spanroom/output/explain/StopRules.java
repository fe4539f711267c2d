package org.spanroom.output.explain;

import java.util.ArrayList;
import java.util.List;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Service;
import org.spanroom.model.network.Span;
import org.spanroom.model.pull.InnerductPull;
import org.spanroom.model.pull.PullAssessment;
import org.spanroom.model.pull.PullLimits;
import org.spanroom.model.rank.SpanExplanation;

/**
 * When work on a span stops, in one sentence each and in the order of the work. Common practice, no source, but for the air: 29 CFR
 * 1910.146. The forces are the limits that the pull was calculated against.
 */
public final class StopRules {
    private StopRules() {}

    public static List<String> of(SpanExplanation explained, UnitSystem units) {
        PullLimits limits = explained.pulling().limits();
        var rules = new ArrayList<String>();
        rules.add(
                "The rod or camera does not pass, or shows a splice, grout, or a crushed or braided length: do not begin.");
        rules.add("The test pull over the first " + (units.isUs() ? "feet" : "meters")
                + " does not move the innerduct at the PAUSE force on its sheet: stop, and find out why.");
        rules.add("A pull exceeds " + force(mostPullN(explained.assessment().pull(), limits), units)
                + ", or rises steadily where the duct is straight: stop.");
        if (isHeld(explained.span())) {
            rules.add("The hold force on a live cable exceeds " + force(limits.holdAllowedN(), units)
                    + ", or the cable slips where it is held: stop.");
        }
        rules.add("A gas, oxygen or blower alarm: stop, leave the vault, and test the air before anyone enters again.");
        return List.copyOf(rules);
    }

    /** Returns the least that the machine, and any innerduct that comes out, may be pulled with. */
    private static double mostPullN(PullAssessment pull, PullLimits limits) {
        double leastN = limits.machinePullN();
        for (InnerductPull one : pull.pulls()) {
            leastN = Math.min(leastN, limits.innerductStrengthN(one.innerduct()));
        }
        return leastN;
    }

    private static boolean isHeld(Span span) {
        return span.duct().contents().cables().stream()
                .map(Cable::service)
                .anyMatch(service -> service != Service.DEAD);
    }

    /** Gauges of machines show either unit, so both are given. */
    private static String force(double forceN, UnitSystem units) {
        UnitSystem other = units.isUs() ? UnitSystem.METRIC : UnitSystem.US;
        return units.words(forceN, 0, "N") + " (" + other.words(forceN, 0, "N") + ")";
    }
}
