package org.spanroom.output;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.spanroom.finding.InputException;
import org.spanroom.model.effort.MoneyRange;
import org.spanroom.model.effort.MoneyRanges;
import org.spanroom.model.effort.MoneyTotals;

/**
 * What the record of an earlier run says of its outcome.
 *
 * @param startedAt when the run was started, as the record has it
 * @param ranked how many spans are ranked
 * @param rankedLengthM their length as drawn
 * @param money what the ranked spans cost and save together
 * @param contents what the results rest on
 * @param findings how many problems there are of each kind, by its key
 * @param notes what the run said of itself
 * @param rescoredFrom the run whose spans it ranked again; empty for a run of its own
 * @param filter what was asked of the rows that it wrote; empty where it wrote all
 */
public record RecordedAccount(
        String startedAt,
        long ranked,
        double rankedLengthM,
        MoneyTotals money,
        Contents contents,
        SortedMap<String, Long> findings,
        List<String> notes,
        Optional<String> rescoredFrom,
        SortedMap<String, String> filter) {
    public RecordedAccount {
        findings = Collections.unmodifiableSortedMap(findings);
        notes = List.copyOf(notes);
        filter = Collections.unmodifiableSortedMap(filter);
    }

    /**
     * What the results rest on.
     *
     * @param statement one sentence without a full stop
     * @param rankedAssumed how many ranked spans have contents that are assumed
     * @param missing the terms that are not recorded everywhere
     */
    public record Contents(String statement, long rankedAssumed, List<Missing> missing) {
        public Contents {
            missing = List.copyOf(missing);
        }
    }

    /**
     * A term that is not recorded everywhere.
     *
     * @param without how many lack it
     * @param of how many there are
     * @param counted what is counted
     * @param standsIn the value that is used instead; empty where none is
     */
    public record Missing(String term, long without, long of, String counted, String standsIn) {}

    /**
     * Reads the record of a run.
     *
     * @throws InputException if it cannot be read
     */
    public static RecordedAccount read(RecordedRun run) {
        Path file = run.file();
        try {
            JsonNode root = new ObjectMapper().readTree(Files.readString(file));
            var filter = new TreeMap<String, String>();
            root.path(RunJson.FILTER)
                    .properties()
                    .forEach(
                            asked -> filter.put(asked.getKey(), asked.getValue().asText()));
            return new RecordedAccount(
                    root.path("started_at").asText(),
                    root.path("spans_ranked").asLong(),
                    root.path("lengths_m").path("spans_ranked").asDouble(),
                    money(root.path("money_ranked")),
                    contents(root.path("contents")),
                    counts(root.path("findings_by_code")),
                    texts(root.path("notes")),
                    Optional.ofNullable(root.path("rescored_from").textValue()),
                    filter);
        } catch (IOException failure) {
            throw new InputException(file, "it cannot be read", "Make the run again with this version.", failure);
        }
    }

    private static MoneyTotals money(JsonNode money) {
        Optional<MoneyRanges> ranges = money.has("recovery_low_money")
                ? Optional.of(new MoneyRanges(range(money, "recovery"), range(money, "build"), range(money, "saving")))
                : Optional.empty();
        return new MoneyTotals(
                money.path("currency").asText(),
                money.path("recovery_money").asDouble(),
                money.path("build_money").asDouble(),
                ranges);
    }

    private static MoneyRange range(JsonNode money, String name) {
        return new MoneyRange(
                money.path(name + "_low_money").asDouble(),
                money.path(name + "_likely_money").asDouble(),
                money.path(name + "_high_money").asDouble());
    }

    private static Contents contents(JsonNode contents) {
        var missing = new ArrayList<Missing>();
        for (JsonNode term : contents.path("missing")) {
            missing.add(new Missing(
                    term.path("term").asText(),
                    term.path("without").asLong(),
                    term.path("of").asLong(),
                    term.path("counted").asText(),
                    term.path("stands_in").asText()));
        }
        return new Contents(
                contents.path("statement").asText(),
                contents.path("spans_ranked_assumed").asLong(),
                missing);
    }

    private static SortedMap<String, Long> counts(JsonNode node) {
        var counts = new TreeMap<String, Long>();
        node.properties()
                .forEach(count -> counts.put(count.getKey(), count.getValue().asLong()));
        return counts;
    }

    private static List<String> texts(JsonNode node) {
        var texts = new ArrayList<String>();
        node.forEach(text -> texts.add(text.asText()));
        return texts;
    }
}
