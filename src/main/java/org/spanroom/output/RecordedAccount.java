package org.spanroom.output;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedMap;
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
     * @param deciders what decides most of the ranked spans, one sentence each without a full stop
     */
    public record Contents(String statement, long rankedAssumed, List<Missing> missing, List<String> deciders) {
        public Contents {
            deciders = List.copyOf(deciders);
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
        RecordJson root = RecordJson.read(run.file());
        return new RecordedAccount(
                root.time(RunJson.STARTED_AT),
                root.count("spans_ranked"),
                root.section("lengths_m").amount("spans_ranked"),
                money(root.section("money_ranked")),
                contents(root.section("contents")),
                root.section("findings_by_code").counts(),
                root.texts("notes"),
                root.has("rescored_from") ? Optional.of(root.text("rescored_from")) : Optional.empty(),
                root.section(RunJson.FILTER).textsWithout(RunJson.FILTER_COUNTS));
    }

    private static MoneyTotals money(RecordJson money) {
        Optional<MoneyRanges> ranges = money.has("recovery_low_money")
                ? Optional.of(new MoneyRanges(range(money, "recovery"), range(money, "build"), range(money, "saving")))
                : Optional.empty();
        return new MoneyTotals(
                money.text("currency"),
                money.amount("recovery_money"),
                money.amount("build_money"),
                money.has(RunJson.SHARED_BUILD)
                        ? OptionalDouble.of(money.amount(RunJson.SHARED_BUILD))
                        : OptionalDouble.empty(),
                ranges);
    }

    private static MoneyRange range(RecordJson money, String name) {
        return new MoneyRange(
                money.amount(name + "_low_money"),
                money.amount(name + "_likely_money"),
                money.amount(name + "_high_money"));
    }

    private static Contents contents(RecordJson contents) {
        List<Missing> missing = contents.items("missing").stream()
                .map(term -> new Missing(
                        term.text("term"),
                        term.count("without"),
                        term.count("of"),
                        term.text("counted"),
                        term.text("stands_in")))
                .toList();
        List<String> deciders = contents.has("deciders") ? contents.texts("deciders") : List.of();
        return new Contents(contents.text("statement"), contents.count("spans_ranked_assumed"), missing, deciders);
    }
}
