package org.spanroom.output;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.spanroom.model.Counted;
import org.spanroom.model.program.ProgramDucts;
import org.spanroom.model.program.ProgramItem;
import org.spanroom.model.program.ProgramResults;
import org.spanroom.model.program.SpanFacts;
import org.spanroom.output.columns.AnnualColumns;
import org.spanroom.output.table.Text;

/** Makes the events of a program: the work of each crew in each week, and the days by which to apply for permits and to check in the field. */
final class AnnualEvents {
    /** How many names a summary shows. */
    private static final int NAMED = 3;

    private static final int PERMITS_A_LINE = 3;

    private AnnualEvents() {}

    /** Returns all events, in the order of their first days, then of their kinds. */
    static List<AnnualEvent> of(ProgramResults results) {
        var events = new ArrayList<AnnualEvent>();
        events.addAll(permits(results));
        events.addAll(checks(results.items()));
        events.addAll(work(results.items()));
        events.sort(Comparator.comparing(AnnualEvent::from).thenComparing(AnnualEvent::kind));
        return events;
    }

    private static List<AnnualEvent> permits(ProgramResults results) {
        Map<LocalDate, List<Subject>> byDay = new TreeMap<>();
        for (ProgramItem item : results.items()) {
            SpanFacts facts = item.span().facts();
            String permits = facts.permits().isEmpty() ? "" : " (" + String.join(", ", facts.permits()) + ")";
            add(byDay, item.entry().applyBy(), new Subject(facts.spanId(), facts.spanId() + permits));
        }
        for (ProgramDucts ducts : results.ducts()) {
            String section = ducts.section().id();
            String built = Counted.of(ducts.ducts(), "new duct") + " in " + section;
            add(byDay, ducts.applyBy(), new Subject(built, built));
        }
        var events = new ArrayList<AnnualEvent>();
        byDay.forEach((day, subjects) -> events.add(onDay(
                day, AnnualEvent.Kind.PERMITS, "Apply for permits: ", subjects, inLines(subjects, PERMITS_A_LINE))));
        return events;
    }

    private static List<AnnualEvent> checks(List<ProgramItem> items) {
        Map<LocalDate, List<Subject>> byDay = new TreeMap<>();
        for (ProgramItem item : items) {
            if (AnnualColumns.isChecked(item)) {
                SpanFacts facts = item.span().facts();
                String check = String.format(
                        "%s: %s; %s to %s, work from %s",
                        facts.spanId(),
                        facts.fieldCheck(),
                        facts.vaultA(),
                        facts.vaultB(),
                        AnnualColumns.firstDay(item.entry()));
                add(byDay, item.entry().checkBy(), new Subject(facts.spanId(), check));
            }
        }
        var events = new ArrayList<AnnualEvent>();
        byDay.forEach((day, subjects) ->
                events.add(onDay(day, AnnualEvent.Kind.FIELD_CHECK, "Field check: ", subjects, inLines(subjects, 1))));
        return events;
    }

    private static List<AnnualEvent> work(List<ProgramItem> items) {
        Map<List<Object>, List<ProgramItem>> byCrewAndWeek = new LinkedHashMap<>();
        for (ProgramItem item : items) {
            List<Object> key = List.of(item.entry().crew(), item.entry().week());
            byCrewAndWeek.computeIfAbsent(key, crewAndWeek -> new ArrayList<>()).add(item);
        }
        return byCrewAndWeek.values().stream().map(AnnualEvents::week).toList();
    }

    /** Returns the event of a crew and a week. */
    private static AnnualEvent week(List<ProgramItem> unordered) {
        List<ProgramItem> items = unordered.stream()
                .sorted(Comparator.comparingInt(item -> item.entry().place()))
                .toList();
        List<LocalDate> days = items.stream()
                .flatMap(item -> item.entry().days().stream())
                .sorted()
                .toList();
        List<String> sections =
                items.stream().map(ProgramItem::sectionId).distinct().toList();
        double siteHours =
                items.stream().mapToDouble(item -> item.entry().siteHours()).sum();
        var lines = new ArrayList<String>();
        for (ProgramItem item : items) {
            lines.add((lines.size() + 1) + ". " + oneLine(span(item)));
        }
        lines.add("Hours on site: " + Counted.fixed(siteHours, 1));
        return new AnnualEvent(
                days.get(0),
                days.get(days.size() - 1),
                AnnualEvent.Kind.WORK,
                oneLine(items.get(0).entry().crew() + ": " + Counted.of(items.size(), "span") + ", " + named(sections)),
                lines);
    }

    private static String span(ProgramItem item) {
        SpanFacts facts = item.span().facts();
        LocalDate first = AnnualColumns.firstDay(item.entry());
        LocalDate last = AnnualColumns.lastDay(item.entry());
        return String.format(
                "%s in %s, %s to %s, %s h, %s%s%s%s%s",
                facts.spanId(),
                item.sectionId(),
                facts.vaultA(),
                facts.vaultB(),
                Counted.fixed(item.entry().siteHours(), 1),
                first,
                first.equals(last) ? "" : " to " + last,
                item.entry().order().night() ? ", by night" : "",
                facts.permits().isEmpty() ? "" : "; permits: " + String.join(", ", facts.permits()),
                facts.crewPermits().isEmpty()
                        ? ""
                        : "; the crew issues on the day: " + String.join(", ", facts.crewPermits()));
    }

    private static AnnualEvent onDay(
            LocalDate day, AnnualEvent.Kind kind, String what, List<Subject> subjects, List<String> lines) {
        List<String> names = subjects.stream().map(Subject::name).toList();
        return new AnnualEvent(day, day, kind, what + named(names), lines);
    }

    private static List<String> inLines(List<Subject> subjects, int each) {
        var lines = new ArrayList<String>();
        for (int from = 0; from < subjects.size(); from += each) {
            lines.add(subjects.subList(from, Math.min(from + each, subjects.size())).stream()
                    .map(subject -> oneLine(subject.detail()))
                    .collect(Collectors.joining("; ")));
        }
        return lines;
    }

    /** Returns the first names, and how many follow. */
    private static String named(List<String> names) {
        String first = names.stream().limit(NAMED).map(AnnualEvents::oneLine).collect(Collectors.joining(", "));
        return names.size() > NAMED ? first + " and " + (names.size() - NAMED) + " more" : first;
    }

    /** Names from outside may hold line breaks, which would look like lines of ours. */
    private static String oneLine(String text) {
        return Text.clean(text).replaceAll("[\\s\\u0085\\u2028\\u2029]+", " ").strip();
    }

    private static void add(Map<LocalDate, List<Subject>> byDay, LocalDate day, Subject subject) {
        byDay.computeIfAbsent(day, subjects -> new ArrayList<>()).add(subject);
    }

    /** What an event is about: its name, and what there is to know of it. */
    private record Subject(String name, String detail) {}
}
