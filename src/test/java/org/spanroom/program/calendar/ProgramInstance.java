package org.spanroom.program.calendar;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.spanroom.model.program.CalendarRules;
import org.spanroom.model.program.CalendarRules.ProgramYear;
import org.spanroom.model.program.Closure;
import org.spanroom.model.program.CrewTeam;
import org.spanroom.model.program.CrewTeam.Shifts;
import org.spanroom.model.program.WorkOrder;

/**
 * An invented program for a seed: spans of sections in a grid of streets, one to three of each section, with dates, closures, districts
 * and crews of all kinds. Shared hours are part of the site hours.
 */
record ProgramInstance(CalendarRules rules, List<WorkOrder> orders) {
    private static final LocalDate START = LocalDate.of(2027, 1, 1);
    private static final List<Shifts> KINDS = List.of(Shifts.values());

    /** Draws a program of all rules, tight or loose at random. */
    static ProgramInstance draw(long seed, int most) {
        var random = new SplittableRandom(seed);
        int years = 1 + random.nextInt(3);
        int yearDays = 14 + random.nextInt(60);
        var program = new ArrayList<ProgramYear>();
        for (int year = 0; year < years; year++) {
            LocalDate from = START.plusDays((long) year * yearDays);
            program.add(new ProgramYear(from, from.plusDays(yearDays - 1)));
        }
        var crews = new ArrayList<CrewTeam>();
        int crewCount = 1 + random.nextInt(4);
        for (int crew = 0; crew < crewCount; crew++) {
            Shifts shifts = KINDS.get(random.nextInt(KINDS.size()));
            crews.add(new CrewTeam(
                    "Crew " + crew,
                    1 + random.nextInt(7),
                    random.nextBoolean() ? 8 : 6 + 4 * random.nextDouble(),
                    shifts));
        }
        var stops = new ArrayList<Closure>();
        for (int stop = random.nextInt(4); stop > 0; stop--) {
            stops.add(closure("Stop " + stop, years * yearDays, 9, random));
        }
        Map<String, Integer> limits = new TreeMap<>(Map.of("D0", random.nextInt(4), "D1", 1 + random.nextInt(8)));
        var rules = new CalendarRules(START.minusDays(random.nextInt(40)), program, crews, stops, limits);
        return new ProgramInstance(rules, orders(random, 1 + random.nextInt(most), years, yearDays, 1));
    }

    /** Draws a program of up to six orders, of one or two crews, of a week or two. */
    static ProgramInstance tiny(long seed) {
        var random = new SplittableRandom(seed);
        int crewCount = 1 + random.nextInt(2);
        int yearDays = crewCount == 1 ? 14 : 7 * (1 + random.nextInt(2));
        // A Friday, so that the weeks of the year are cut at both ends.
        var years = List.of(new ProgramYear(START, START.plusDays(yearDays - 1)));
        var crews = new ArrayList<CrewTeam>();
        for (int crew = 0; crew < crewCount; crew++) {
            crews.add(new CrewTeam("Crew " + crew, 2 + random.nextInt(3), 8, KINDS.get(random.nextInt(KINDS.size()))));
        }
        List<Closure> stops = random.nextInt(3) == 0 ? List.of(closure("Stop", yearDays, 3, random)) : List.of();
        Map<String, Integer> limits = Map.of("D0", 1 + random.nextInt(3));
        var rules = new CalendarRules(START.minusDays(random.nextInt(60)), years, crews, stops, limits);
        return new ProgramInstance(rules, orders(random, 3 + random.nextInt(4), 1, yearDays, 2));
    }

    private static Closure closure(String name, int spanDays, int mostDays, SplittableRandom random) {
        LocalDate from = START.plusDays(random.nextInt(spanDays));
        return new Closure(name, from, from.plusDays(random.nextInt(mostDays)));
    }

    /** Draws orders; the greater {@code rarely}, the fewer are by night, have dates, lead times or closures. */
    private static List<WorkOrder> orders(SplittableRandom random, int count, int years, int yearDays, int rarely) {
        int side = 1 + (int) Math.sqrt(count / 2.0);
        var orders = new ArrayList<WorkOrder>();
        while (orders.size() < count) {
            int x = random.nextInt(side);
            int y = random.nextInt(side);
            boolean along = random.nextBoolean();
            int year = random.nextInt(years);
            boolean night = random.nextInt(4 * rarely) == 0;
            for (int duct = random.nextInt(3); duct >= 0 && orders.size() < count; duct--) {
                String from = "V" + x + "-" + y;
                String to = along ? "V" + (x + 1) + "-" + y : "V" + x + "-" + (y + 1);
                double aHours = rounded(random.nextDouble());
                double bHours = rounded(random.nextDouble());
                orders.add(new WorkOrder(
                        "S" + orders.size(),
                        from + to,
                        year,
                        rounded(10 * random.nextDouble()),
                        hours(random, aHours + bHours),
                        night,
                        random.nextInt(20) == 0 ? "" : from,
                        to,
                        aHours,
                        bHours,
                        random.nextInt(3) == 0 ? "" : "D" + random.nextInt(3),
                        random.nextInt(3 * rarely) == 0 ? random.nextInt(60) : 0,
                        random.nextInt(3 * rarely) == 0 ? random.nextInt(20) : 0,
                        random.nextInt(4 * rarely) == 0 ? dayNear(year, yearDays, random) : LocalDate.MIN,
                        random.nextInt(4 * rarely) == 0 ? dayNear(year, yearDays, random) : LocalDate.MAX,
                        random.nextInt(3 * rarely) == 0
                                ? List.of(closure("Fair", years * yearDays, 20, random))
                                : List.of()));
            }
        }
        return orders;
    }

    /** Returns a day of a year, now and then one of a year before or after. */
    private static LocalDate dayNear(int year, int yearDays, SplittableRandom random) {
        int shift = random.nextInt(10) == 0 ? random.nextInt(3) - 1 : 0;
        return START.plusDays((long) (year + shift) * yearDays + random.nextInt(yearDays));
    }

    /** Most take part of a shift or a few shifts, some exactly a shift, and some more than a week. */
    private static double hours(SplittableRandom random, double shared) {
        return switch (random.nextInt(10)) {
            case 0 -> 8;
            case 1 -> shared + 60 * random.nextDouble();
            default -> rounded(shared + 0.25 + 9 * random.nextDouble());
        };
    }

    private static double rounded(double value) {
        return Math.rint(4 * value) / 4;
    }

    /**
     * Draws a program of five years and four crews; with 1 000 spans and shifts on two days a week about as many hours as are needed.
     */
    static ProgramInstance usual(long seed, int count, int shiftsPerWeek) {
        var random = new SplittableRandom(seed);
        var years = new ArrayList<ProgramYear>();
        for (int year = 0; year < 5; year++) {
            years.add(new ProgramYear(
                    START.plusYears(year), START.plusYears(year + 1).minusDays(1)));
        }
        var crews = new ArrayList<CrewTeam>();
        for (int crew = 0; crew < 4; crew++) {
            crews.add(new CrewTeam("Crew " + crew, shiftsPerWeek, 8, KINDS.get(crew % KINDS.size())));
        }
        var stops = new ArrayList<Closure>();
        for (int year = 0; year < 5; year++) {
            stops.add(new Closure(
                    "Holidays", START.plusYears(year), START.plusYears(year).plusDays(2)));
            stops.add(new Closure(
                    "Freeze",
                    START.plusYears(year).plusDays(320),
                    START.plusYears(year).plusDays(345)));
        }
        var rules = new CalendarRules(START.minusDays(30), years, crews, stops, Map.of("D0", 6, "D1", 10));
        return new ProgramInstance(rules, orders(random, count, 5, 365, 1));
    }
}
