package org.spanroom.sample;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;

/** Counts sections, the stretches of banks from one vault to the next, by what their ducts are like. */
final class SectionCount {
    static final String ALL = "sections in all";

    private static final Map<String, Predicate<Draft>> FACTS = new LinkedHashMap<>();

    static {
        FACTS.put("with a sound empty duct", draft -> draft.filling().isEmpty() && isSound(draft));
        FACTS.put("with a crowded duct", draft -> draft.filling().kind() == Filling.Kind.CROWDED);
        FACTS.put(
                "with a duct with few or small innerducts",
                draft -> draft.filling().kind() == Filling.Kind.ROOMY);
        FACTS.put("with a duct of loose cables only", draft -> draft.filling().kind() == Filling.Kind.LOOSE);
        FACTS.put("with fabric sleeves in a duct", draft -> draft.filling().kind() == Filling.Kind.SLEEVED);
        FACTS.put(
                "with a flooded duct",
                draft -> draft.attributes().text(RouteField.FLOODED).equals("yes"));
        FACTS.put(
                "with reserved positions or cells",
                draft -> draft.attributes().number(RouteField.RESERVED) > 0
                        || draft.filling().reservedCells() > 0);
    }

    private final Map<String, Integer> counts = new LinkedHashMap<>();

    SectionCount() {
        counts.put(ALL, 0);
        FACTS.keySet().forEach(fact -> counts.put(fact, 0));
    }

    /** Counts the sections of a bank, all of which have the same ducts. */
    void bank(int sections, List<Draft> ducts) {
        counts.merge(ALL, sections, Integer::sum);
        FACTS.forEach((fact, isTrue) -> {
            if (ducts.stream().anyMatch(isTrue)) {
                counts.merge(fact, sections, Integer::sum);
            }
        });
    }

    Map<String, Integer> counts() {
        return counts;
    }

    private static boolean isSound(Draft draft) {
        return draft.attributes().text(RouteField.CONDITION).equals("sound");
    }
}
