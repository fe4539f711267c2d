package org.spanroom.model.effort;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Open trench, boring and emissions of materials that some recovered spans avoid. One trench or bore would serve all spans of a
 * section, so only the longest of each section counts, and its surface and encasement once.
 */
public final class AvoidedDig {
    private final Map<String, Way> longest = new LinkedHashMap<>();
    private double ductsCo2eKg;

    private record Way(double trenchM, double boreM, double co2eKg) {
        double lengthM() {
            return trenchM + boreM;
        }
    }

    /**
     * Adds a span.
     *
     * @param co2eKg emissions of the materials of its new build
     * @param co2eDigKg the part of them that a trench emits once, however many ducts lie in it
     */
    public void add(String sectionId, double trenchM, double boreM, double co2eKg, double co2eDigKg) {
        ductsCo2eKg += co2eKg - co2eDigKg;
        longest.merge(
                sectionId,
                new Way(trenchM, boreM, co2eDigKg),
                (known, other) -> other.lengthM() > known.lengthM() ? other : known);
    }

    public double trenchM() {
        return longest.values().stream().mapToDouble(Way::trenchM).sum();
    }

    public double boreM() {
        return longest.values().stream().mapToDouble(Way::boreM).sum();
    }

    public double co2eKg() {
        return ductsCo2eKg + longest.values().stream().mapToDouble(Way::co2eKg).sum();
    }
}
