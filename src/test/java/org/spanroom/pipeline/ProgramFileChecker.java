package org.spanroom.pipeline;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/**
 * Verifies the calendar that the program command writes, from the text of its CSV file and the inputs alone. Finds columns by name, in any
 * order, and passes over those that it does not know. Shares nothing with the program.
 */
public final class ProgramFileChecker {
    /** Hours in the file are rounded. */
    private static final double ROUNDING_HOURS = 0.02;

    private static final List<String> NEEDED = List.of(
            "crew",
            "span_id",
            "first_day",
            "last_day",
            "start_hours",
            "site_hours",
            "shared_hours",
            "vault_a",
            "vault_b",
            "apply_by");

    /** A crew that works on the first days of each week. */
    public record Crew(String name, int shiftsPerWeek, double shiftHours) {}

    /** Days from one to another, both included. */
    public record Days(LocalDate from, LocalDate until) {
        boolean hold(LocalDate day) {
            return !day.isBefore(from) && !day.isAfter(until);
        }
    }

    /**
     * What the calendar must keep.
     *
     * @param readyOn the day of the plan: nothing can be applied for before it
     * @param stops days without any work
     * @param closures days without work on a span, by span
     * @param leadDays days from application to work, by span
     * @param districts of spans
     * @param mostInWork spans in work in one week, by district
     */
    public record Inputs(
            LocalDate readyOn,
            List<Crew> crews,
            List<Days> stops,
            Map<String, List<Days>> closures,
            Map<String, Integer> leadDays,
            Map<String, String> districts,
            Map<String, Integer> mostInWork) {}

    /** A row of the file; {@code shifts} are the days of the crew's shifts from its first day to its last. */
    private record Row(
            String span,
            Crew crew,
            LocalDate first,
            LocalDate last,
            double startHours,
            double siteHours,
            double sharedHours,
            List<String> vaults,
            boolean night,
            LocalDate applyBy,
            List<LocalDate> shifts) {
        /** Returns the hours of its last shift that are used when it ends. */
        double endHours() {
            return startHours + siteHours - (shifts.size() - 1) * crew.shiftHours;
        }
    }

    private final Inputs inputs;
    private final List<String> problems = new ArrayList<>();

    private ProgramFileChecker(Inputs inputs) {
        this.inputs = inputs;
    }

    /** Returns what is wrong in the text of a calendar's file, a line each; empty where nothing is. */
    public static List<String> problems(String csv, Inputs inputs) {
        var checker = new ProgramFileChecker(inputs);
        List<Row> rows = checker.rows(csv);
        rows.forEach(checker::checkDays);
        rows.forEach(checker::checkHours);
        rows.forEach(checker::checkPermit);
        checker.checkSequences(rows);
        checker.checkDistricts(rows);
        return checker.problems;
    }

    private List<Row> rows(String csv) {
        CSVFormat format = CSVFormat.DEFAULT
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        var rows = new ArrayList<Row>();
        var spans = new ArrayList<String>();
        try (CSVParser parser = CSVParser.parse(csv.startsWith("\uFEFF") ? csv.substring(1) : csv, format)) {
            List<String> missing = NEEDED.stream()
                    .filter(name -> !parser.getHeaderNames().contains(name))
                    .toList();
            if (!missing.isEmpty()) {
                problems.add("columns are missing: " + missing);
                return rows;
            }
            for (CSVRecord line : parser) {
                addRow(line, rows);
                if (spans.contains(line.get("span_id"))) {
                    problems.add(line.get("span_id") + ": is in the calendar twice");
                }
                spans.add(line.get("span_id"));
            }
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
        return rows;
    }

    private void addRow(CSVRecord line, List<Row> rows) {
        String span = line.get("span_id");
        List<Crew> crews = inputs.crews.stream()
                .filter(crew -> crew.name.equals(line.get("crew")))
                .toList();
        if (crews.isEmpty()) {
            problems.add(span + ": there is no crew " + line.get("crew"));
            return;
        }
        LocalDate first = LocalDate.parse(line.get("first_day"));
        LocalDate last = LocalDate.parse(line.get("last_day"));
        List<LocalDate> shifts = last.isBefore(first) ? List.of() : shifts(crews.get(0), first, last);
        if (shifts.isEmpty()) {
            problems.add(span + ": has no shift from " + first + " to " + last);
            return;
        }
        rows.add(new Row(
                span,
                crews.get(0),
                first,
                last,
                Double.parseDouble(line.get("start_hours")),
                Double.parseDouble(line.get("site_hours")),
                line.get("shared_hours").isEmpty() ? 0 : Double.parseDouble(line.get("shared_hours")),
                Stream.of(line.get("vault_a"), line.get("vault_b"))
                        .filter(vault -> !vault.isEmpty())
                        .toList(),
                line.isMapped("night") && isYes(line.get("night")),
                LocalDate.parse(line.get("apply_by")),
                shifts));
    }

    private static boolean isYes(String cell) {
        return List.of("true", "yes", "1", "night").contains(cell.toLowerCase(Locale.ROOT));
    }

    private List<LocalDate> shifts(Crew crew, LocalDate first, LocalDate last) {
        return first.datesUntil(last.plusDays(1))
                .filter(day -> day.getDayOfWeek().getValue() <= crew.shiftsPerWeek)
                .filter(day -> inputs.stops.stream().noneMatch(stop -> stop.hold(day)))
                .toList();
    }

    private void checkDays(Row row) {
        for (LocalDate day : List.of(row.first, row.last)) {
            if (inputs.stops.stream().anyMatch(stop -> stop.hold(day))) {
                problems.add(row.span + ": works in a stop window on " + day);
            } else if (!row.shifts.contains(day)) {
                problems.add(row.span + ": " + day + " is not a shift of crew " + row.crew.name);
            }
        }
        List<Days> closures = inputs.closures.getOrDefault(row.span, List.of());
        row.shifts.stream()
                .filter(day -> closures.stream().anyMatch(closure -> closure.hold(day)))
                .forEach(day -> problems.add(row.span + ": works in a closure on " + day));
    }

    /** Its hours fill its shifts up to within the last one, and run over a week's end only if a week has not as many. */
    private void checkHours(Row row) {
        if (row.startHours < 0 || row.endHours() > row.crew.shiftHours + ROUNDING_HOURS) {
            problems.add(row.span + ": hours above those of its shifts: " + row.siteHours + " after " + row.startHours
                    + " in " + row.shifts.size() + " shifts of " + row.crew.shiftHours);
        }
        if (row.startHours > 0 && row.last.isAfter(row.first)) {
            problems.add(row.span + ": begins beside other work and goes on in the next shift");
        }
        if (row.endHours() < -ROUNDING_HOURS) {
            problems.add(row.span + ": has days without work: " + row.siteHours + " hours after " + row.startHours
                    + " in " + row.shifts.size() + " shifts of " + row.crew.shiftHours);
        }
        double weekHours = row.crew.shiftsPerWeek * row.crew.shiftHours;
        if (row.siteHours + row.sharedHours <= weekHours - ROUNDING_HOURS
                && weeks(row).size() > 1) {
            problems.add(row.span + ": runs over the end of a week");
        }
    }

    private static List<LocalDate> weeks(Row row) {
        return row.shifts.stream()
                .map(day -> day.with(DayOfWeek.MONDAY))
                .distinct()
                .toList();
    }

    private void checkPermit(Row row) {
        LocalDate latest = row.first.minusDays(inputs.leadDays.getOrDefault(row.span, 0));
        if (row.applyBy.isAfter(latest)) {
            problems.add(row.span + ": permit late: apply by " + row.applyBy + ", but " + latest + " is the last day");
        }
        if (latest.isBefore(inputs.readyOn)) {
            problems.add(row.span + ": permit late: " + latest + " is before " + inputs.readyOn);
        }
    }

    private void checkSequences(List<Row> rows) {
        for (Crew crew : inputs.crews) {
            List<Row> ofCrew = rows.stream()
                    .filter(row -> row.crew.equals(crew))
                    .sorted(Comparator.comparing(Row::first).thenComparingDouble(Row::startHours))
                    .toList();
            Map<LocalDate, Boolean> nights = new TreeMap<>();
            for (int next = 0; next < ofCrew.size(); next++) {
                Row row = ofCrew.get(next);
                checkNights(row, nights);
                if (next > 0) {
                    checkFollows(ofCrew.get(next - 1), row);
                } else if (row.sharedHours > 0) {
                    problems.add(row.span + ": shares set-ups with no row before it");
                }
            }
        }
    }

    private void checkNights(Row row, Map<LocalDate, Boolean> nights) {
        for (LocalDate week : weeks(row)) {
            Boolean other = nights.put(week, row.night);
            if (other != null && other != row.night) {
                problems.add(row.span + ": crew " + row.crew.name + " works days and nights in week " + week);
            }
        }
    }

    private void checkFollows(Row before, Row row) {
        boolean isSameDay = row.first.equals(before.last);
        if (row.first.isBefore(before.last) || (isSameDay && row.startHours < before.endHours() - ROUNDING_HOURS)) {
            problems.add(row.span + ": crew " + row.crew.name + " is still at " + before.span);
        }
        boolean sameVault = row.vaults.stream().anyMatch(before.vaults::contains);
        if (row.sharedHours > 0 && !(isSameDay && sameVault)) {
            problems.add(row.span + ": shares set-ups with " + before.span
                    + ", which does not end on the same day at the same vault");
        }
    }

    private void checkDistricts(List<Row> rows) {
        inputs.mostInWork.forEach((district, most) -> {
            Map<LocalDate, Integer> inWork = new TreeMap<>();
            rows.stream()
                    .filter(row -> district.equals(inputs.districts.get(row.span)))
                    .flatMap(row -> weeks(row).stream())
                    .forEach(week -> inWork.merge(week, 1, Integer::sum));
            inWork.forEach((week, count) -> {
                if (count > most) {
                    problems.add(
                            "week " + week + ": " + count + " spans of district " + district + ", at most " + most);
                }
            });
        });
    }
}
