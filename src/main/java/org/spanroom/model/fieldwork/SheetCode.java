package org.spanroom.model.fieldwork;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.spanroom.model.Check;

/**
 * The code on a page of a sheet, which close-out reads back: {@code SR1|run|section|span|page}. A {@code |} or {@code %} inside a part
 * is written as in a URL, so that a code can be split again.
 *
 * @param run code of the run
 * @param section id of the section, or empty
 * @param span id of the span; empty on the cover page of a section
 * @param page from 1 within its section
 */
public record SheetCode(String run, String section, String span, int page) {
    /** What every code of this format begins with. */
    public static final String FORMAT = "SR1";

    private static final String SEPARATOR = "|";
    private static final int PARTS = 5;

    public SheetCode {
        Check.notBlank("run", run);
        Check.positive("page", page);
    }

    /** Reads a code; empty where the text is none. */
    public static Optional<SheetCode> parse(String text) {
        List<String> parts = new ArrayList<>(Arrays.asList(text.strip().split("\\|", -1)));
        if (parts.size() != PARTS
                || !parts.get(0).equals(FORMAT)
                || parts.get(1).isBlank()
                || !parts.get(4).matches("[1-9]\\d{0,5}")) {
            return Optional.empty();
        }
        parts.replaceAll(part -> part.replace("%7C", SEPARATOR).replace("%25", "%"));
        return Optional.of(new SheetCode(parts.get(1), parts.get(2), parts.get(3), Integer.parseInt(parts.get(4))));
    }

    /** Returns the code as text. */
    public String text() {
        return String.join(SEPARATOR, FORMAT, escaped(run), escaped(section), escaped(span), Integer.toString(page));
    }

    private static String escaped(String part) {
        return part.replace("%", "%25").replace(SEPARATOR, "%7C");
    }
}
