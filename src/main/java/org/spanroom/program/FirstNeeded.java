package org.spanroom.program;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.model.program.Way;
import org.spanroom.model.program.WayStep;

/** Counts how often each section is on a cheapest way between two hubs, and how often it is the narrowest there. */
public final class FirstNeeded {
    private final Map<String, Integer> ways = new HashMap<>();
    private final Map<String, Integer> narrowest = new HashMap<>();
    private int pairs;

    /**
     * Counts over all pairs of hubs.
     *
     * @param cables how many go together
     */
    public FirstNeeded(DuctNetwork network, int cables, List<Integer> hubs) {
        var finder = new WayFinder(network, cables);
        for (int i = 0; i < hubs.size(); i++) {
            finder.findCheapest(hubs.get(i), hubs.subList(i + 1, hubs.size()))
                    .forEach(way -> way.ifPresent(this::count));
        }
    }

    private void count(Way way) {
        pairs++;
        int least = way.binding().section().widthPositions();
        for (WayStep step : way.steps()) {
            ways.merge(step.section().id(), 1, Integer::sum);
            if (step.section().widthPositions() == least) {
                narrowest.merge(step.section().id(), 1, Integer::sum);
            }
        }
    }

    /** Returns how many pairs of hubs have a way. */
    public int pairs() {
        return pairs;
    }

    /** Returns how many ways pass a section. */
    public int ways(String sectionId) {
        return ways.getOrDefault(sectionId, 0);
    }

    /** Returns on how many of them it is the narrowest section, or one of several. */
    public int narrowest(String sectionId) {
        return narrowest.getOrDefault(sectionId, 0);
    }
}
