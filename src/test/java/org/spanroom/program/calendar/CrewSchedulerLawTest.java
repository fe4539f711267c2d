package org.spanroom.program.calendar;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.model.program.WorkCalendar;
import org.spanroom.model.program.WorkCalendar.Entry;
import org.spanroom.model.program.WorkOrder;

/** What holds for every calendar, on invented programs. */
class CrewSchedulerLawTest {
    static LongStream seeds() {
        return LongStream.range(0, 250);
    }

    private static WorkCalendar schedule(ProgramInstance instance) {
        return CrewScheduler.schedule(instance.rules(), instance.orders(), new SchedulerSettings(1, 150));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void everyRuleIsKeptAndNothingIsLost(long seed) {
        ProgramInstance instance = ProgramInstance.draw(seed, 60);

        WorkCalendar calendar = schedule(instance);

        assertEquals(List.of(), CalendarChecker.problems(instance.rules(), calendar));
        List<WorkOrder> all = Stream.concat(
                        calendar.entries().stream().map(Entry::order),
                        calendar.unplaced().stream().map(WorkCalendar.Unplaced::order))
                .sorted(Comparator.comparingInt(instance.orders()::indexOf))
                .toList();
        assertEquals(instance.orders(), all);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void twoRunsAreEqual(long seed) {
        ProgramInstance instance = ProgramInstance.draw(seed, 60);

        assertEquals(schedule(instance), schedule(instance));
    }

    /** A search may end elsewhere with other numbers of the orders; without it, only equal choices differ. */
    @Test
    void whatCannotBePlacedAloneDoesNotDependOnTheOrderGiven() {
        for (long seed = 0; seed < 50; seed++) {
            ProgramInstance instance = ProgramInstance.draw(seed, 20);
            var turned = new ArrayList<>(instance.orders());
            Collections.shuffle(turned, new Random(seed));

            assertEquals(
                    hopeless(schedule(instance)), hopeless(schedule(new ProgramInstance(instance.rules(), turned))));
        }
    }

    private static List<String> hopeless(WorkCalendar calendar) {
        return calendar.unplaced().stream()
                .filter(unplaced -> !unplaced.why().startsWith("crews have no")
                        && !unplaced.why().startsWith("district"))
                .map(unplaced -> unplaced.order().spanId() + ": " + unplaced.why())
                .sorted()
                .toList();
    }

    @Test
    void aProgramOfUsualSizeKeepsEveryRule() {
        ProgramInstance instance = ProgramInstance.usual(1, 1_000, 4);

        WorkCalendar calendar =
                CrewScheduler.schedule(instance.rules(), instance.orders(), new SchedulerSettings(1, 1_000));

        assertEquals(List.of(), CalendarChecker.problems(instance.rules(), calendar));
        assertTrue(calendar.entries().size() > 600, calendar.entries().size() + " placed");
    }
}
