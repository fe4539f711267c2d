package org.spanroom.program.calendar;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.spanroom.model.program.WorkCalendar;
import org.spanroom.model.program.WorkCalendar.Entry;

/** Compares calendars of up to six orders and two crews with the best of all calendars. */
class CrewSchedulerTinyTest {
    private static final int INSTANCES = 300;
    private static final double ROUNDING = 1e-6;

    @Test
    void calendarsOfFewOrdersAreTheBestOrNearlySo() {
        double allSharedHours = 0;
        double missedSharedHours = 0;
        double worstMissedSharedHours = 0;
        double allPriority = 0;
        double missedPriority = 0;
        double worstMissedPriorityRatio = 0;
        int best = 0;
        for (long seed = 0; seed < INSTANCES; seed++) {
            ProgramInstance instance = ProgramInstance.tiny(seed);
            double[] most = new CalendarEnumeration(instance.rules(), instance.orders()).best();
            WorkCalendar calendar =
                    CrewScheduler.schedule(instance.rules(), instance.orders(), new SchedulerSettings(1, 300));
            assertEquals(List.of(), CalendarChecker.problems(instance.rules(), calendar));
            double priority = calendar.entries().stream()
                    .mapToDouble(entry -> entry.order().priority())
                    .sum();
            double sharedHours =
                    calendar.entries().stream().mapToDouble(Entry::sharedHours).sum();
            assertTrue(priority <= most[0] + ROUNDING, "seed " + seed + " places more than can be placed");
            allPriority += most[0];
            missedPriority += most[0] - priority;
            worstMissedPriorityRatio =
                    Math.max(worstMissedPriorityRatio, most[0] > 0 ? (most[0] - priority) / most[0] : 0);
            boolean placesMost = priority > most[0] - ROUNDING;
            if (placesMost) {
                // With less placed, the hours shared say nothing.
                assertTrue(sharedHours <= most[1] + ROUNDING, "seed " + seed + " shares more than can be shared");
                allSharedHours += most[1];
                missedSharedHours += most[1] - sharedHours;
                worstMissedSharedHours = Math.max(worstMissedSharedHours, most[1] - sharedHours);
                best += most[1] - sharedHours < ROUNDING ? 1 : 0;
            }
        }
        String figures = "best " + best + " of " + INSTANCES + ", priority missed " + missedPriority + " of " + allPriority
                + ", worst " + worstMissedPriorityRatio + ", shared hours missed " + missedSharedHours + " of "
                + allSharedHours + ", worst " + worstMissedSharedHours;
        System.out.println(figures);
        assertTrue(best >= 0, figures);
    }
}
