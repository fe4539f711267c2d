package org.spanroom.model.effort;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Open trench and boring that some recovered spans avoid. One trench or bore would serve all spans of a section, so only the
 * longest of each section counts.
 */
public final class AvoidedDig {
    private final Map<String, Way> longest = new LinkedHashMap<>();

    private record Way(double trenchM, double boreM) {
        double lengthM() {
            return trenchM + boreM;
        }
    }

    /** Adds a span. */
    public void add(String sectionId, double trenchM, double boreM) {
        longest.merge(
                sectionId,
                new Way(trenchM, boreM),
                (known, other) -> other.lengthM() > known.lengthM() ? other : known);
    }

    public double trenchM() {
        return longest.values().stream().mapToDouble(Way::trenchM).sum();
    }

    public double boreM() {
        return longest.values().stream().mapToDouble(Way::boreM).sum();
    }
}
