package org.spanroom.program;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.spanroom.model.Counted;
import org.spanroom.model.program.ProgramItem;

/** How a program differs from an earlier one. */
public final class ProgramChanges {
    private ProgramChanges() {}

    /**
     * Returns the differences in one sentence.
     *
     * @param earlier the year of each span of the earlier program that lies within the years of this one
     * @param items the spans of this one
     */
    public static String words(Map<String, Integer> earlier, List<ProgramItem> items) {
        Map<String, Integer> now = new HashMap<>();
        items.forEach(item -> now.put(item.span().facts().spanId(), item.year()));
        long same = earlier.entrySet().stream()
                .filter(entry -> entry.getValue().equals(now.get(entry.getKey())))
                .count();
        long left =
                earlier.keySet().stream().filter(span -> !now.containsKey(span)).count();
        long moved = earlier.size() - same - left;
        long added =
                now.keySet().stream().filter(span -> !earlier.containsKey(span)).count();
        return String.format(
                Locale.ROOT,
                "of the earlier program %s in the same year, %,d in another year, %,d not any longer; %,d spans are new",
                Counted.of(same, "span is", "spans are"),
                moved,
                left,
                added);
    }
}
