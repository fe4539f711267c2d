package org.spanroom.learn;

import java.time.LocalDate;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.spanroom.model.Counted;
import org.spanroom.model.effort.Rate;

/**
 * The source of a rate that was learned: from how many spans, until which day, and what it was before anything was learned. So the
 * next learning takes only later reports, and the rate counts as what it rests on.
 */
record LearnedSource(int spans, LocalDate untilDay, String before) {
    private static final Pattern FORM =
            Pattern.compile("learned from (\\d{1,9}) spans? to (\\d{4}-\\d{2}-\\d{2}); (.*)");

    /** Reads the source of a rate; empty where it was not learned. */
    static Optional<LearnedSource> of(Rate rate) {
        Matcher words = FORM.matcher(rate.source());
        return words.matches()
                ? Optional.of(new LearnedSource(
                        Integer.parseInt(words.group(1)), LocalDate.parse(words.group(2)), words.group(3)))
                : Optional.empty();
    }

    /**
     * Returns the source of a rate after further spans.
     *
     * @param rate as it is before them
     * @param shipped whether its value is that of the program
     */
    static LearnedSource after(Rate rate, boolean shipped, int furtherSpans, LocalDate day) {
        String now = (shipped ? "shipped " : "before ") + number(rate.value()) + ", " + rate.source();
        return of(rate).map(earlier -> new LearnedSource(earlier.spans() + furtherSpans, day, earlier.before()))
                .orElseGet(() -> new LearnedSource(furtherSpans, day, now));
    }

    private static String number(double value) {
        String text = String.format(Locale.ROOT, "%s", value);
        return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
    }

    String text() {
        return "learned from " + Counted.of(spans, "span").replace(",", "") + " to " + untilDay + "; " + before;
    }
}
