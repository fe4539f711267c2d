package org.spanroom.output.table;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;

/** Numbers for texts that recur in millions of rows. Safe for use by several threads. */
final class PackedTexts {
    /** What a text that has no number gets. */
    static final int NONE = -1;

    private static final int MOST = 1 << 16;

    private final Map<String, Integer> numbers = new ConcurrentHashMap<>();
    private final @Nullable String[] texts = new String[MOST];
    private int used;

    /** Returns the number of a text; {@link #NONE} where there are too many texts to give it one. */
    int number(String text) {
        Integer known = numbers.get(text);
        return known == null ? numberOfNew(text) : known;
    }

    private synchronized int numberOfNew(String text) {
        Integer known = numbers.get(text);
        if (known != null) {
            return known;
        }
        if (used == MOST) {
            return NONE;
        }
        texts[used] = text;
        numbers.put(text, used);
        return used++;
    }

    /** Returns the text of a number, after all texts have been given theirs. */
    String text(int number) {
        String text = texts[number];
        if (text == null) {
            throw new IllegalArgumentException("number has no text: " + number);
        }
        return text;
    }
}
