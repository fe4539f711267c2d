package org.spanroom.model.program;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Days of every year, and days of once. */
class YearlyDaysTest {
    private static final LocalDate FIRST = LocalDate.of(2027, 1, 4);
    private static final LocalDate LAST = LocalDate.of(2029, 1, 3);

    @Test
    void daysOfEveryYearComeInEachYearThatTheyTouch() {
        assertThat(new YearlyDays("fair", "05-01", "05-09").within(FIRST, LAST))
                .containsExactly(
                        new Closure("fair", LocalDate.of(2027, 5, 1), LocalDate.of(2027, 5, 9)),
                        new Closure("fair", LocalDate.of(2028, 5, 1), LocalDate.of(2028, 5, 9)));
    }

    @Test
    void daysOverTheTurnOfAYearEndInTheNextOne() {
        assertThat(new YearlyDays("winter", "12-15", "01-15").within(FIRST, LAST))
                .containsExactly(
                        new Closure("winter", LocalDate.of(2026, 12, 15), LocalDate.of(2027, 1, 15)),
                        new Closure("winter", LocalDate.of(2027, 12, 15), LocalDate.of(2028, 1, 15)),
                        new Closure("winter", LocalDate.of(2028, 12, 15), LocalDate.of(2029, 1, 15)));
    }

    @Test
    void theLeapDayIsTheLastOfFebruaryInOtherYears() {
        assertThat(new YearlyDays("thaw", "02-29", "02-29").within(FIRST, LAST))
                .extracting(Closure::from)
                .containsExactly(LocalDate.of(2027, 2, 28), LocalDate.of(2028, 2, 29));
    }

    @Test
    void daysOfOnceComeOnceOrNotAtAll() {
        var days = new YearlyDays("parade", "2027-05-01", "2027-05-02");

        assertThat(days.within(FIRST, LAST)).hasSize(1);
        assertThat(days.within(LocalDate.of(2027, 5, 3), LAST)).isEmpty();
        assertThat(days.within(FIRST, LocalDate.of(2027, 4, 30))).isEmpty();
    }

    /** A day is closed exactly if its month and day lie in the window, counted by hand over the days of two years. */
    @Test
    void eachDayOfTheYearsIsClosedOrOpen() {
        var closures = new YearlyDays("winter", "12-15", "01-15").within(FIRST, LAST);
        for (long day = 0; day <= ChronoUnit.DAYS.between(FIRST, LAST); day++) {
            LocalDate date = FIRST.plusDays(day);
            boolean isWinter = (date.getMonthValue() == 12 && date.getDayOfMonth() >= 15)
                    || (date.getMonthValue() == 1 && date.getDayOfMonth() <= 15);
            assertThat(closures.stream().anyMatch(closure -> closure.holds(date)))
                    .as("%s", date)
                    .isEqualTo(isWinter);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"12-15", "02-29", "2027-05-09"})
    void theseAreDays(String text) {
        assertThat(YearlyDays.isDay(text)).isTrue();
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "15-12", "02-30", "2027-02-29", "12/15", "Dec 15", "12-15-2027"})
    void theseAreNone(String text) {
        assertThat(YearlyDays.isDay(text)).isFalse();
    }
}
