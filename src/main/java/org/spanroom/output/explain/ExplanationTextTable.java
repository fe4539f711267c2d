package org.spanroom.output.explain;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.spanroom.output.explain.ExplanationValue.Figure;
import org.spanroom.output.explain.ExplanationValue.Flag;

/** Renders a table of an explanation as columns of text: numbers to the right, with the same decimals, and words to the left. */
final class ExplanationTextTable {
    private static final int GAP = 2;
    private static final int WIDEST = 40;
    private static final int LAST_TO_WRAP_WITHIN = 76;

    private final List<Column> columns;
    private final String pad;
    private final TextPage page;

    private ExplanationTextTable(List<List<ExplanationItem>> rows, int indent, TextPage page) {
        this.columns = IntStream.range(0, rows.get(0).size())
                .mapToObj(place ->
                        Column.of(rows.stream().map(row -> row.get(place)).toList()))
                .toList();
        this.pad = " ".repeat(indent);
        this.page = page;
    }

    /** Returns whether all rows are made of single facts, so that they go into columns. */
    static boolean fits(ExplanationTable table) {
        return table.rows().stream().flatMap(List::stream).noneMatch(ExplanationTable.class::isInstance);
    }

    static void write(ExplanationTable table, int indent, TextPage page) {
        List<List<ExplanationItem>> rows =
                table.rows().stream().map(row -> cells(row).toList()).toList();
        if (table.grouped()) {
            groups(rows).forEach((heading, group) -> write(heading, group, indent, page));
        } else {
            write(table.label(), rows, indent, page);
        }
    }

    private static void write(String heading, List<List<ExplanationItem>> rows, int indent, TextPage page) {
        int step = heading.isEmpty() ? 0 : GAP;
        if (step > 0) {
            page.line("%s%s", " ".repeat(indent), heading);
        }
        new ExplanationTextTable(rows, indent + step, page).write(rows.size());
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

    private void write(int rows) {
        int headerLines = columns.stream()
                .mapToInt(column -> column.header().size())
                .max()
                .orElse(0);
        for (int i = headerLines; i > 0; i--) {
            int fromBottom = i;
            line(column -> column.headerLine(fromBottom));
        }
        for (int i = 0; i < rows; i++) {
            int row = i;
            line(column -> column.cells().get(row));
        }
    }

    private void line(Function<Column, String> text) {
        var line = new StringBuilder(pad);
        int lastAt = 0;
        for (Column column : columns) {
            lastAt = line.length();
            line.append(column.padded(text.apply(column))).append(" ".repeat(GAP));
        }
        boolean under = !columns.get(columns.size() - 1).right() && lastAt <= LAST_TO_WRAP_WITHIN;
        page.hanging(
                under ? lastAt : pad.length() + 2 * GAP, "%s", line.toString().stripTrailing());
    }

    /**
     * One column.
     *
     * @param header the lines of its label, and below these the unit of its numbers unless they differ in it and each cell has its own
     * @param right whether it is aligned right, as numbers are
     */
    private record Column(List<String> header, List<String> cells, int width, boolean right) {
        static Column of(List<ExplanationItem> items) {
            List<Figure> numbers = items.stream()
                    .filter(item -> item.value() instanceof Figure)
                    .map(item -> (Figure) item.value())
                    .toList();
            List<String> units = numbers.stream().map(Figure::unit).distinct().toList();
            String unit = units.size() == 1 ? units.get(0) : "";
            List<String> cells = units.size() == 1 ? alike(items, numbers) : words(items);
            String label = items.get(0).label();
            int width = Stream.of(cells.stream(), Stream.of(label.split(" ", -1)), Stream.of(unit))
                    .flatMap(texts -> texts)
                    .mapToInt(String::length)
                    .max()
                    .orElse(0);
            return new Column(header(label, unit, width), cells, Math.min(WIDEST, width), !numbers.isEmpty());
        }

        private static List<String> words(List<ExplanationItem> items) {
            return items.stream()
                    .map(item -> item.value() instanceof Flag flag && !flag.value() ? "" : ExplanationWords.of(item))
                    .toList();
        }

        /** Returns numbers of one unit with the same decimals, or, where they are exact, with their points one below another. */
        private static List<String> alike(List<ExplanationItem> items, List<Figure> numbers) {
            boolean exact = numbers.stream().anyMatch(Figure::isExact);
            int decimals =
                    numbers.stream().mapToInt(ExplanationWords::decimals).min().orElse(0);
            List<String> figures = items.stream()
                    .map(item -> !(item.value() instanceof Figure number)
                            ? ""
                            : exact
                                    ? ExplanationWords.figures(number)
                                    : ExplanationWords.fixed(number.value(), decimals))
                    .toList();
            int most = figures.stream().mapToInt(Column::fraction).max().orElse(0);
            return figures.stream()
                    .map(text -> text + " ".repeat(most - fraction(text)))
                    .toList();
        }

        /** Returns how many characters a number has from its point on. */
        private static int fraction(String figures) {
            return figures.contains(".") ? figures.length() - figures.indexOf('.') : 0;
        }

        private static List<String> header(String label, String unit, int width) {
            List<String> lines = new ArrayList<>();
            for (String word : label.split(" ", -1)) {
                int last = lines.size() - 1;
                if (last >= 0 && lines.get(last).length() + 1 + word.length() <= width) {
                    lines.set(last, lines.get(last) + " " + word);
                } else {
                    lines.add(word);
                }
            }
            if (!unit.isEmpty()) {
                lines.add(unit);
            }
            return lines;
        }

        /** Returns a line of the header, counted from 1 for the lowest. */
        String headerLine(int fromBottom) {
            return fromBottom > header.size() ? "" : header.get(header.size() - fromBottom);
        }

        String padded(String text) {
            String fill = " ".repeat(Math.max(0, width - text.codePointCount(0, text.length())));
            return right ? fill + text : text + fill;
        }
    }
}
