package org.spanroom.output.explain;

import java.util.ArrayList;
import java.util.List;
import org.spanroom.model.Answer;
import org.spanroom.model.effort.Effort;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Service;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.SpanEnd;

/**
 * What anyone who works on a span must observe, in one sentence each. The numbers are those of 29 CFR 1910.146 and of
 * the government manuals that the methods name; they do not authorize entry.
 */
public final class SafetyCautions {
    /** 29 CFR 1910.146(b), hazardous atmosphere (from memory). */
    private static final String OXYGEN_AND_FLAMMABLE =
            "oxygen (O2) 19.5 to 23.5 %, flammable gas below 10 % of its lower flammable limit (LFL)";

    /** The limits of air, for the places where it is recorded. */
    public static final String AIR_LIMITS =
            "Limits: " + OXYGEN_AND_FLAMMABLE + ", toxic gas below the limits that the safety officer sets.";

    private SafetyCautions() {}

    /** Returns the cautions for a span, those that always apply first, and who decides last. */
    public static List<String> of(Span span, boolean night) {
        var cautions = new ArrayList<>(List.of(
                "A vault may be a permit-required confined space: 29 CFR 1910.146; telecom manholes 1910.268(o);"
                        + " construction work 1926 subpart AA. The safety officer decides which applies.",
                "Test the air before entry, after pumping, at each duct mouth when its plug comes out, and"
                        + " continuously: " + OXYGEN_AND_FLAMMABLE + ", then toxic"
                        + " gas. Ventilation hours are for planning; they do not make a vault safe.",
                "Keep an attendant outside, who does not enter, with a way to get an injured person out.",
                "Set up traffic control before a cover is off; guard the opening at once."));
        if (isLive(span)) {
            cautions.add(
                    "This duct has live cables: identify each one at both ends before cutting anything;"
                            + " do not exceed the hold force or bend tighter than the minimum radius of 20 outside diameters under load.");
        }
        if (isWet(span)) {
            cautions.add(
                    "Water is recorded here: discharge it only where permitted, and test the air again after pumping.");
        }
        if (night) {
            cautions.add("Work is allowed at night only: light the site, and have first aid at hand.");
        }
        cautions.add("Local codes, the owner's rules and licensed practice govern.");
        return List.copyOf(cautions);
    }

    /** Returns whether the work is done at night. */
    public static boolean isNight(Effort effort) {
        return effort.time().night();
    }

    private static boolean isLive(Span span) {
        return span.duct().contents().cables().stream()
                .map(Cable::service)
                .anyMatch(service -> service != Service.DEAD);
    }

    private static boolean isWet(Span span) {
        return span.duct().flooded()
                || SpanEnd.A.vaultOf(span).site().water() == Answer.YES
                || SpanEnd.B.vaultOf(span).site().water() == Answer.YES;
    }
}
