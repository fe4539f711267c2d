package org.spanroom.output.explain;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.spanroom.output.explain.ExplanationReading.Alignment;
import org.spanroom.output.explain.ExplanationReading.Column;
import org.spanroom.output.explain.ExplanationReading.Item;
import org.spanroom.output.explain.ExplanationReading.Section;
import org.spanroom.output.explain.ExplanationReading.Sentence;
import org.spanroom.output.explain.ExplanationReading.Table;
import org.spanroom.output.explain.ExplanationValue.Figure;
import org.spanroom.output.explain.ExplanationValue.Flag;
import org.spanroom.output.explain.ExplanationValue.Sentences;

/** Puts an explanation into the words and figures that people read. */
final class ExplanationReader {
    private ExplanationReader() {}

    static Section section(ExplanationSection section) {
        return new Section(
                section.title(),
                section.parts().stream()
                        .filter(ExplanationPart::isShown)
                        .flatMap(ExplanationReader::part)
                        .toList());
    }

    private static Stream<ExplanationReading> part(ExplanationPart part) {
        if (part instanceof ExplanationItem item) {
            return item.value() instanceof Sentences list
                    ? list.sentences().stream().map(Sentence::new)
                    : Stream.of(new Item(item.label(), ExplanationWords.of(item)));
        } else if (part instanceof ExplanationLine line) {
            return Stream.of(new Item(line.label(), ExplanationWords.inline(line.parts())));
        } else if (part instanceof ExplanationTable table) {
            return table(table);
        } else if (part instanceof ExplanationSections several) {
            return several.sections().stream().map(ExplanationReader::section);
        }
        return Stream.of(section((ExplanationSection) part));
    }

    /** Rows that hold tables of their own do not go into columns. */
    private static Stream<ExplanationReading> table(ExplanationTable table) {
        if (table.rows().stream().flatMap(List::stream).anyMatch(ExplanationTable.class::isInstance)) {
            return table.rows().stream().map(row -> new Item(table.label(), ExplanationWords.inline(row)));
        }
        List<List<ExplanationItem>> rows =
                table.rows().stream().map(row -> cells(row).toList()).toList();
        return table.grouped()
                ? groups(rows).entrySet().stream().map(group -> columns(group.getKey(), group.getValue()))
                : Stream.of(columns(table.label(), rows));
    }

    /** Returns the rows by the words of their first cell, and without that. */
    private static Map<String, List<List<ExplanationItem>>> groups(List<List<ExplanationItem>> rows) {
        Map<String, List<List<ExplanationItem>>> groups = new LinkedHashMap<>();
        for (List<ExplanationItem> row : rows) {
            groups.computeIfAbsent(ExplanationWords.of(row.get(0)), heading -> new ArrayList<>())
                    .add(row.subList(1, row.size()));
        }
        return groups;
    }

    private static Stream<ExplanationItem> cells(List<ExplanationPart> row) {
        return row.stream()
                .flatMap(
                        part -> part instanceof ExplanationLine line ? within(line) : Stream.of((ExplanationItem) part))
                .filter(cell -> !cell.label().isEmpty());
    }

    /** Returns the facts of a line, each with the line's label before its own. */
    private static Stream<ExplanationItem> within(ExplanationLine line) {
        return cells(line.parts())
                .map(cell -> new ExplanationItem(
                        cell.key(), line.label() + " " + cell.label(), cell.value(), cell.evidence()));
    }

    private static Table columns(String title, List<List<ExplanationItem>> rows) {
        return new Table(
                title,
                IntStream.range(0, rows.get(0).size())
                        .mapToObj(place ->
                                column(rows.stream().map(row -> row.get(place)).toList()))
                        .toList());
    }

    private static Column column(List<ExplanationItem> items) {
        List<Figure> numbers = items.stream()
                .filter(item -> item.value() instanceof Figure)
                .map(item -> (Figure) item.value())
                .toList();
        List<String> units = numbers.stream().map(Figure::unit).distinct().toList();
        String label = items.get(0).label();
        if (units.size() == 1) {
            return new Column(label, units.get(0), alike(items, numbers), Alignment.POINTS);
        }
        return new Column(label, "", words(items), numbers.isEmpty() ? Alignment.LEFT : Alignment.RIGHT);
    }

    private static List<String> words(List<ExplanationItem> items) {
        return items.stream()
                .map(item -> item.value() instanceof Flag flag && !flag.value() ? "" : ExplanationWords.of(item))
                .toList();
    }

    /** Returns numbers of one unit: with the same decimals, unless they are exact. */
    private static List<String> alike(List<ExplanationItem> items, List<Figure> numbers) {
        boolean exact = numbers.stream().anyMatch(Figure::isExact);
        int decimals =
                numbers.stream().mapToInt(ExplanationWords::decimals).min().orElse(0);
        return items.stream()
                .map(item -> !(item.value() instanceof Figure number)
                        ? ""
                        : exact ? ExplanationWords.figures(number) : ExplanationWords.fixed(number.value(), decimals))
                .toList();
    }
}
