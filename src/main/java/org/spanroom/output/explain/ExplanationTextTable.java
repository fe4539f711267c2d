package org.spanroom.output.explain;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import org.spanroom.output.explain.ExplanationReading.Alignment;

/** Lays out a table of an explanation as columns of text: numbers to the right, with the same decimals, and words to the left. */
final class ExplanationTextTable {
    private static final int GAP = 2;
    private static final int WIDEST = 40;
    private static final int LAST_TO_WRAP_WITHIN = 76;

    private final List<Column> columns;
    private final String pad;
    private final TextPage page;

    private ExplanationTextTable(List<Column> columns, int indent, TextPage page) {
        this.columns = columns;
        this.pad = " ".repeat(indent);
        this.page = page;
    }

    static void write(ExplanationReading.Table table, int indent, TextPage page) {
        int step = table.title().isEmpty() ? 0 : GAP;
        if (step > 0) {
            page.line("%s%s", " ".repeat(indent), table.title());
        }
        List<Column> columns = table.columns().stream().map(Column::of).toList();
        new ExplanationTextTable(columns, indent + step, page).write(table.rows());
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
     * @param header the lines of its label, and below these the unit
     * @param right whether it is aligned right, as numbers are
     */
    private record Column(List<String> header, List<String> cells, int width, boolean right) {
        static Column of(ExplanationReading.Column column) {
            List<String> cells =
                    column.alignment() == Alignment.POINTS ? pointsBelowOneAnother(column.cells()) : column.cells();
            int width = Stream.of(cells.stream(), Stream.of(column.label().split(" ", -1)), Stream.of(column.unit()))
                    .flatMap(texts -> texts)
                    .mapToInt(String::length)
                    .max()
                    .orElse(0);
            return new Column(
                    header(column.label(), column.unit(), width),
                    cells,
                    Math.min(WIDEST, width),
                    column.alignment() != Alignment.LEFT);
        }

        private static List<String> pointsBelowOneAnother(List<String> figures) {
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
