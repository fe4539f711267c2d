package org.spanroom.model.program;

import java.util.List;

/**
 * Sections that follow one another, over which cables that go together can pass, some of them only once recovered.
 *
 * @param way the sections in order, with what is done in each
 * @param gainedPositions by how many the narrowest section is wider with this recovery than today
 * @param metersPerMoney positions gained times meters, for each unit of money; what corridors are ranked by
 */
public record Corridor(Way way, int gainedPositions, double metersPerMoney) {
    /** Returns whether it is a single section that no other one continues. */
    public boolean isIsland() {
        return way.steps().size() == 1;
    }

    /** Returns the ducts that are recovered, in order. */
    public List<DuctOffer> recovered() {
        return way.steps().stream()
                .filter(step -> step.action() == WayStep.Action.RECOVER)
                .map(step -> step.duct().orElseThrow())
                .toList();
    }
}
