package org.spanroom.output.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.spanroom.output.table.Column;

/** The values of one column, packed: a run may have a hundred thousand rows of eighty columns. */
abstract class PayloadColumn {
    private static final int FIRST_ROWS = 64;

    /** Above this share of distinct texts a dictionary saves nothing. */
    private static final double MOST_DISTINCT_RATIO = 0.5;

    /** Whole numbers below this are exact in a browser. */
    private static final double EXACT = 0x1.0p53;

    static PayloadColumn of(Column.Type type) {
        return type == Column.Type.TEXT ? new Texts() : new Numbers(type == Column.Type.FLAG);
    }

    abstract void add(Optional<Object> cell);

    abstract String text(int row);

    abstract double number(int row);

    abstract void write(JsonGenerator json) throws IOException;

    /** Texts, each kept once, in the order in which they come. */
    private static final class Texts extends PayloadColumn {
        private final List<String> dictionary = new ArrayList<>();
        private final Map<String, Integer> codeByText = new HashMap<>();
        private int[] codes = new int[FIRST_ROWS];
        private int rows;

        @Override
        void add(Optional<Object> cell) {
            if (rows == codes.length) {
                codes = Arrays.copyOf(codes, 2 * rows);
            }
            codes[rows++] = cell.map(text -> code(text.toString())).orElse(-1);
        }

        private int code(String text) {
            Integer known = codeByText.putIfAbsent(text, dictionary.size());
            if (known != null) {
                return known;
            }
            dictionary.add(text);
            return dictionary.size() - 1;
        }

        @Override
        String text(int row) {
            return codes[row] < 0 ? "" : dictionary.get(codes[row]);
        }

        @Override
        double number(int row) {
            return Double.NaN;
        }

        @Override
        void write(JsonGenerator json) throws IOException {
            if (dictionary.size() > MOST_DISTINCT_RATIO * rows) {
                json.writeStartArray();
                for (int row = 0; row < rows; row++) {
                    json.writeString(codes[row] < 0 ? null : dictionary.get(codes[row]));
                }
                json.writeEndArray();
                return;
            }
            json.writeStartObject();
            json.writeArrayFieldStart("dict");
            for (String text : dictionary) {
                json.writeString(text);
            }
            json.writeEndArray();
            json.writeArrayFieldStart("codes");
            for (int row = 0; row < rows; row++) {
                if (codes[row] < 0) {
                    json.writeNull();
                } else {
                    json.writeNumber(codes[row]);
                }
            }
            json.writeEndArray();
            json.writeEndObject();
        }
    }

    /** Numbers, or flags as 0 and 1; an empty cell is not a number. */
    private static final class Numbers extends PayloadColumn {
        private final boolean flags;
        private double[] inUnit = new double[FIRST_ROWS];
        private int rows;

        Numbers(boolean flags) {
            this.flags = flags;
        }

        @Override
        void add(Optional<Object> cell) {
            if (rows == inUnit.length) {
                inUnit = Arrays.copyOf(inUnit, 2 * rows);
            }
            inUnit[rows++] = cell.map(Numbers::number).orElse(Double.NaN);
        }

        private static double number(Object value) {
            return value instanceof Boolean flag ? (flag ? 1 : 0) : ((Number) value).doubleValue();
        }

        @Override
        String text(int row) {
            return Double.isNaN(inUnit[row]) ? "" : Double.toString(inUnit[row]);
        }

        @Override
        double number(int row) {
            return inUnit[row];
        }

        @Override
        void write(JsonGenerator json) throws IOException {
            json.writeStartArray();
            for (int row = 0; row < rows; row++) {
                if (flags && !Double.isNaN(inUnit[row])) {
                    json.writeBoolean(inUnit[row] > 0);
                } else {
                    writeNumber(json, inUnit[row]);
                }
            }
            json.writeEndArray();
        }
    }

    /** Writes a number in the shortest form that reads back as the same; null for none. */
    static void writeNumber(JsonGenerator json, double inUnit) throws IOException {
        if (!Double.isFinite(inUnit)) {
            json.writeNull();
        } else if (inUnit == Math.rint(inUnit) && Math.abs(inUnit) < EXACT) {
            json.writeNumber((long) inUnit);
        } else {
            json.writeNumber(inUnit);
        }
    }

    static void writeNumber(JsonGenerator json, String name, double inUnit) throws IOException {
        json.writeFieldName(name);
        writeNumber(json, inUnit);
    }
}
