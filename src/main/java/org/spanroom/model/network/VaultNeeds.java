package org.spanroom.model.network;

import java.util.List;
import java.util.OptionalDouble;
import org.spanroom.model.Answer;
import org.spanroom.model.Check;

/**
 * What a crew prepares for at a vault, by its records. It plans; it declares no vault safe to enter.
 *
 * @param entered whether crews enter it, which is confined-space entry
 * @param purgeMinutes least time of ventilating before entry; empty where its volume is unknown or it is not entered
 * @param airTests when its air is tested; pumping among them where water is recorded, or nothing about water; none where it is not entered
 * @param airRetestHours longest time between two tests; empty where it is not entered
 * @param airSupply whether air is blown in all the time that a person is inside
 * @param airSupplyReasons why; where the answer is unknown, what is not recorded
 * @param pumped whether water must be pumped out, the discharge of which needs a permit
 * @param inRoadway whether its cover is in the roadway, so that a lane is closed
 */
public record VaultNeeds(
        Answer entered,
        OptionalDouble purgeMinutes,
        List<AirTest> airTests,
        OptionalDouble airRetestHours,
        Answer airSupply,
        List<AirSupplyReason> airSupplyReasons,
        Answer pumped,
        Answer inRoadway) {
    /** Nothing is known. */
    public static final VaultNeeds UNKNOWN = new VaultNeeds(
            Answer.UNKNOWN,
            OptionalDouble.empty(),
            List.of(),
            OptionalDouble.empty(),
            Answer.UNKNOWN,
            List.of(),
            Answer.UNKNOWN,
            Answer.UNKNOWN);

    public VaultNeeds {
        purgeMinutes.ifPresent(minutes -> Check.notNegative("purgeMinutes", minutes));
        airRetestHours.ifPresent(hours -> Check.notNegative("airRetestHours", hours));
        airTests = List.copyOf(airTests);
        airSupplyReasons = List.copyOf(airSupplyReasons);
    }
}
