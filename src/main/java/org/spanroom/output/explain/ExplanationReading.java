package org.spanroom.output.explain;

import java.util.List;

/**
 * What people read of an explanation, in words and figures: parts that only programs get are left out. Text for a terminal and the report
 * lay out the same reading, so that both say the same.
 */
public sealed interface ExplanationReading {
    /** Parts under a title. */
    record Section(String title, List<ExplanationReading> parts) implements ExplanationReading {
        public Section {
            parts = List.copyOf(parts);
        }
    }

    /** A fact, or facts that are read together in one line. */
    record Item(String label, String words) implements ExplanationReading {}

    /** A sentence that stands by itself. */
    record Sentence(String text) implements ExplanationReading {}

    /**
     * Facts in rows and columns.
     *
     * @param title empty where the section's title says it already
     * @param columns from the left, at least one, with the same number of cells each
     */
    record Table(String title, List<Column> columns) implements ExplanationReading {
        public Table {
            columns = List.copyOf(columns);
        }

        /** Returns how many rows it has below its head. */
        public int rows() {
            return columns.get(0).cells().size();
        }
    }

    /** How the cells of a column are aligned. */
    enum Alignment {
        LEFT,
        RIGHT,
        /** Right, with the decimal points one below another. */
        POINTS
    }

    /**
     * A column of a table.
     *
     * @param unit of all its numbers; empty where it has none, and where they differ in it so that each cell has its own
     * @param cells from the top; empty for what is not known or does not apply, and for a no
     */
    record Column(String label, String unit, List<String> cells, Alignment alignment) {
        public Column {
            cells = List.copyOf(cells);
        }
    }

    /** Returns words with a question mark for each character that is not seen but acts, as the text of an explanation shows them. */
    static String printable(String words) {
        return TextPage.printable(words);
    }

    /** Returns what people read of an explanation. */
    static Section of(ExplanationSection explanation) {
        return ExplanationReader.section(explanation);
    }
}
