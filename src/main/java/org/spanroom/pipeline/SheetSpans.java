package org.spanroom.pipeline;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.spanroom.config.NearestWord;
import org.spanroom.finding.InputException;
import org.spanroom.model.network.SpanList;
import org.spanroom.output.table.Text;

/** Finds spans of a network by their ids, as the data or as the results have them. */
final class SheetSpans {
    private static final int NEAREST_SHOWN = 3;

    private SheetSpans() {}

    /**
     * A span of those asked for.
     *
     * @param place among them, from 0
     * @param number in the network
     * @param id as the data has it
     */
    record Found(int place, int number, String id) {}

    /**
     * Returns the spans in the order of the ids.
     *
     * @param folder of the run, for the message
     * @throws InputException if there is no span of an id; the message names the nearest ids
     */
    static List<Found> find(Path folder, SpanList spans, List<String> ids) {
        Set<String> wanted = Set.copyOf(ids);
        Map<String, Integer> exact = new HashMap<>();
        Map<String, Integer> cleaned = new HashMap<>();
        for (int number = 0; number < spans.size(); number++) {
            String id = spans.id(number);
            if (wanted.contains(id)) {
                exact.putIfAbsent(id, number);
            }
            String clean = Text.clean(id);
            if (wanted.contains(clean)) {
                cleaned.putIfAbsent(clean, number);
            }
        }
        List<Integer> numbers = ids.stream()
                .map(id -> Optional.ofNullable(exact.getOrDefault(id, cleaned.get(id)))
                        .orElseThrow(() -> noSuchSpan(folder, id, spans)))
                .distinct()
                .toList();
        return IntStream.range(0, numbers.size())
                .mapToObj(place -> new Found(place, numbers.get(place), spans.id(numbers.get(place))))
                .toList();
    }

    private static InputException noSuchSpan(Path folder, String spanId, SpanList spans) {
        List<String> all = IntStream.range(0, spans.size()).mapToObj(spans::id).toList();
        List<String> nearest = NearestWord.nearest(spanId, all, NEAREST_SHOWN);
        return new InputException(
                folder,
                "no span of this run has the id '" + spanId + "'",
                "The nearest are: " + String.join(", ", nearest) + ".");
    }
}
