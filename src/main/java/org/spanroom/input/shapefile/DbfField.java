package org.spanroom.input.shapefile;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.temporal.JulianFields;
import org.jspecify.annotations.Nullable;

/**
 * One column of a .dbf table and the reading of its values; dBASE III layout, with the binary types of its successors.
 *
 * @param offset of its first byte in a record, the deletion mark being byte 0
 */
record DbfField(String name, char type, int offset, int length, int decimals) {
    private static final int MOST_LONG_DIGITS = 18;
    private static final long DAY_MS = 86_400_000;

    /**
     * Returns the value in the record: String, Long, Double, Boolean; null for blank. A number or date that
     * cannot be read as one comes as the recorded text, so that the reader of the field can report it.
     */
    @Nullable
    Object value(ByteBuffer row, DbfEncoding encoding) {
        return switch (type) {
            case 'N', 'F' -> number(row);
            case 'L' -> length == 0 ? null : logical((char) row.get(row.position() + offset));
            case 'D' -> date(ascii(row));
            case 'I', '+' -> length == 4 ? (Object) (long) integer(row) : null;
            case 'O', 'B' -> length == 8 ? finite(row) : null; // as B a memo reference where it is not 8 bytes
            case 'Y' -> length == 8 ? money(row) : null;
            case 'T', '@' -> length == 8 ? dateTime(row) : null;
            case 'M', 'G', 'P', '0' -> null; // references into other files, see MemoTexts; null flags
            default -> text(row, encoding);
        };
    }

    /** Returns true if the column only refers to texts, pictures or other things in a file beside the table. */
    boolean isMemo() {
        return isText() || type == 'G' || type == 'P' || (type == 'B' && length != 8);
    }

    /** Returns true if the column refers to texts in a file beside the table. */
    boolean isText() {
        return type == 'M';
    }

    /** Returns the block at which the text begins that the record refers to; 0 for none, -1 for what is no number of a block. */
    long memoBlock(ByteBuffer row) {
        if (length == 4) {
            return integer(row) & 0xFFFFFFFFL;
        }
        String digits = ascii(row);
        if (digits.isEmpty()) {
            return 0;
        }
        return digits.length() <= MOST_LONG_DIGITS && digits.chars().allMatch(c -> c >= '0' && c <= '9')
                ? Long.parseLong(digits)
                : -1;
    }

    private @Nullable Object text(ByteBuffer row, DbfEncoding encoding) {
        int from = row.position() + offset;
        int to = from + length;
        while (to > from && (row.get(to - 1) == ' ' || row.get(to - 1) == 0)) {
            to--;
        }
        return to == from ? null : encoding.decode(row.array(), row.arrayOffset() + from, to - from);
    }

    private @Nullable Object number(ByteBuffer row) {
        int from = row.position() + offset;
        int to = from + length;
        while (from < to && isBlank(row.get(from))) {
            from++;
        }
        while (to > from && isBlank(row.get(to - 1))) {
            to--;
        }
        if (from == to || isStars(row, from, to)) {
            return null; // blank, or stars, which programs write for no value
        }
        boolean whole = type == 'N' && decimals == 0;
        if (whole && to - from <= MOST_LONG_DIGITS) {
            long value = 0;
            boolean negative = row.get(from) == '-';
            int digit = negative ? from + 1 : from;
            for (; digit < to && row.get(digit) >= '0' && row.get(digit) <= '9'; digit++) {
                value = 10 * value + row.get(digit) - '0';
            }
            if (digit == to && to - from > (negative ? 1 : 0)) {
                return negative ? -value : value;
            }
        }
        return parsed(new String(row.array(), row.arrayOffset() + from, to - from, StandardCharsets.ISO_8859_1));
    }

    private static @Nullable Object parsed(String text) {
        if (text.equalsIgnoreCase("nan") || text.equalsIgnoreCase("null")) {
            return null;
        }
        try {
            double value = Double.parseDouble(text);
            return Double.isFinite(value) && !Character.isLetter(text.charAt(text.length() - 1))
                    ? (Object) value
                    : text;
        } catch (NumberFormatException e) {
            return text;
        }
    }

    private static @Nullable Object logical(char mark) {
        return switch (mark) {
            case 'T', 't', 'Y', 'y', '1' -> true;
            case 'F', 'f', 'N', 'n', '0' -> false;
            default -> null;
        };
    }

    private static @Nullable Object date(String text) {
        if (text.isEmpty() || text.chars().allMatch(c -> c == '0')) {
            return null;
        }
        return text.length() == 8 && text.chars().allMatch(c -> c >= '0' && c <= '9')
                ? text.substring(0, 4) + "-" + text.substring(4, 6) + "-" + text.substring(6)
                : text;
    }

    private static @Nullable Object finite(double value) {
        return Double.isFinite(value) ? (Object) value : null;
    }

    private @Nullable Object finite(ByteBuffer row) {
        return finite(row.order(ByteOrder.LITTLE_ENDIAN).getDouble(row.position() + offset));
    }

    private int integer(ByteBuffer row) {
        return row.order(ByteOrder.LITTLE_ENDIAN).getInt(row.position() + offset);
    }

    /** A count of ten-thousandths. */
    private Object money(ByteBuffer row) {
        long tenThousandths = row.order(ByteOrder.LITTLE_ENDIAN).getLong(row.position() + offset);
        return BigDecimal.valueOf(tenThousandths, 4)
                .setScale(4, RoundingMode.UNNECESSARY)
                .doubleValue();
    }

    /** A Julian day and the milliseconds of the day. */
    private @Nullable Object dateTime(ByteBuffer row) {
        ByteBuffer little = row.order(ByteOrder.LITTLE_ENDIAN);
        int day = little.getInt(row.position() + offset);
        int ms = little.getInt(row.position() + offset + 4);
        if (day <= 0 || ms < 0 || ms >= DAY_MS) {
            return null;
        }
        return LocalDate.MIN
                .with(JulianFields.JULIAN_DAY, day)
                .atTime(LocalTime.ofNanoOfDay(ms * 1_000_000L))
                .toString();
    }

    private String ascii(ByteBuffer row) {
        return new String(row.array(), row.arrayOffset() + row.position() + offset, length, StandardCharsets.ISO_8859_1)
                .replace('\0', ' ')
                .strip();
    }

    private static boolean isStars(ByteBuffer row, int from, int to) {
        for (int i = from; i < to; i++) {
            if (row.get(i) != '*') {
                return false;
            }
        }
        return true;
    }

    private static boolean isBlank(byte b) {
        return b == ' ' || b == 0 || b == '\t';
    }
}
