package org.spanroom.pipeline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.pipeline.ProgramFileChecker.Crew;
import org.spanroom.pipeline.ProgramFileChecker.Days;
import org.spanroom.pipeline.ProgramFileChecker.Inputs;

/** Holds the checker of the program's files against files made by hand. March 1, 2027, is a Monday. */
class ProgramFileCheckerTest {
    private static final String HEADER =
            "year,week,crew,group,order,section,span_id,first_day,last_day,start_hours,site_hours,"
                    + "shared_hours,night,vault_a,vault_b,apply_by,check_by\n";

    /** Three rows of one crew: two that share a vault on Monday, one on Thursday. */
    private static final String GOOD = HEADER
            + "1,2027-03-01,North,1,1,A,S1,2027-03-01,2027-03-01,0.00,4.00,,no,V1,V2,2027-02-01,2027-03-01\n"
            + "1,2027-03-01,North,1,2,B,S2,2027-03-01,2027-03-01,4.00,3.50,1.00,no,V2,V3,2027-03-01,2027-03-01\n"
            + "1,2027-03-01,North,2,3,C,S3,2027-03-04,2027-03-04,0.00,8.00,0.00,no,V8,V9,2027-03-04,2027-03-04\n"
            + "1,2027-03-01,South,3,1,D,S4,2027-03-01,2027-03-01,0.00,8.00,0.00,yes,V8,V9,2027-03-01,2027-03-01\n";

    private static final Inputs INPUTS = new Inputs(
            LocalDate.of(2027, 2, 1),
            List.of(new Crew("North", 5, 8), new Crew("South", 4, 10)),
            List.of(new Days(LocalDate.of(2027, 3, 3), LocalDate.of(2027, 3, 3))),
            Map.of("S3", List.of(new Days(LocalDate.of(2027, 3, 8), LocalDate.of(2027, 3, 12)))),
            Map.of("S1", 28),
            Map.of("S1", "Center", "S2", "Center"),
            Map.of("Center", 2));

    @Test
    void aGoodFileHasNoProblems() {
        assertEquals(List.of(), ProgramFileChecker.problems(GOOD, INPUTS));
    }

    @Test
    void columnsAreFoundByNameAndOthersPassedOver() {
        String csv = """
                note,apply_by,vault_b,vault_a,shared_hours,site_hours,start_hours,last_day,first_day,span_id,crew
                "a, b",2027-03-01,V2,V1,0,6,0,2027-03-01,2027-03-01,S9,North
                """;

        assertEquals(List.of(), ProgramFileChecker.problems(csv, INPUTS));
    }

    @Test
    void missingColumnsAreNamed() {
        assertEquals(
                List.of("columns are missing: [start_hours, apply_by]"),
                ProgramFileChecker.problems(
                        "crew,span_id,first_day,last_day,site_hours,shared_hours,vault_a,vault_b\n", INPUTS));
    }

    /** A row is replaced by another one; the problem is found. */
    @ParameterizedTest(name = "{2}")
    @CsvSource(delimiter = '|', textBlock = """
            S2,2027-03-01,2027-03-01,4.00 | S2,2027-03-01,2027-03-01,3.00 | S2: crew North is still at S1
            S3,2027-03-04,2027-03-04 | S3,2027-03-03,2027-03-04 | S3: works in a stop window on 2027-03-03
            S3,2027-03-04,2027-03-04 | S3,2027-03-09,2027-03-09 | S3: works in a closure on 2027-03-09
            S3,2027-03-04,2027-03-04 | S3,2027-03-06,2027-03-06 | S3: has no shift from 2027-03-06 to 2027-03-06
            V1,V2,2027-02-01 | V1,V2,2027-02-02 | S1: permit late: apply by 2027-02-02, but 2027-02-01 is the last day
            0.00,8.00,0.00,no | 1.00,8.00,0.00,no | S3: hours above those of its shifts: 8.0 after 1.0 in 1 shifts of 8.0
            S3,2027-03-04,2027-03-04 | S3,2027-03-04,2027-03-11 | S3: runs over the end of a week
            0.00,8.00,0.00,no | 0.00,8.00,0.50,no | S3: shares set-ups with S2, which does not end on the same day at the same vault
            no,V2,V3 | no,V4,V3 | S2: shares set-ups with S1, which does not end on the same day at the same vault
            0.00,4.00,,no | 0.00,4.00,1,no | S1: shares set-ups with no row before it
            0.00,8.00,0.00,no | 0.00,8.00,0.00,yes | S3: crew North works days and nights in week 2027-03-01
            2027-03-01,4.00,3.50 | 2027-03-02,4.00,5.50 | S2: begins beside other work and goes on in the next shift
            South | West | S4: there is no crew West
            D,S4 | D,S3 | S3: is in the calendar twice
            """)
    void aBrokenRowIsFound(String good, String broken, String problem) {
        List<String> problems = ProgramFileChecker.problems(GOOD.replace(good, broken), INPUTS);

        assertTrue(problems.contains(problem), problems.toString());
    }

    @Test
    void permitsCannotBeAppliedForBeforeThePlanIsReady() {
        var late = new Inputs(
                LocalDate.of(2027, 2, 2),
                INPUTS.crews(),
                INPUTS.stops(),
                Map.of(),
                INPUTS.leadDays(),
                Map.of(),
                Map.of());

        assertEquals(
                List.of("S1: permit late: 2027-02-01 is before 2027-02-02"), ProgramFileChecker.problems(GOOD, late));
    }

    @Test
    void districtsHaveALimitInAWeek() {
        var tight = new Inputs(
                INPUTS.readyOn(),
                INPUTS.crews(),
                INPUTS.stops(),
                Map.of(),
                Map.of(),
                INPUTS.districts(),
                Map.of("Center", 1));

        assertEquals(
                List.of("week 2027-03-01: 2 spans of district Center, at most 1"),
                ProgramFileChecker.problems(GOOD, tight));
    }
}
