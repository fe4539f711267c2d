package org.spanroom.cli;

import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.spanroom.model.Counted;
import org.spanroom.model.fieldwork.FactUse;
import org.spanroom.model.fieldwork.WorkStatus;
import org.spanroom.model.rank.SpanMove;
import org.spanroom.model.rank.Standing;
import org.spanroom.pipeline.CompareRun.CompareSummary;

/** What {@code compare} says at its end. */
final class CompareReport {
    private static final int MOST_DIFFERENCES = 12;
    private static final int MOST_MOVES = 12;
    private static final int MOST_CHANGES = 3;

    private static final Map<SpanMove.Cause, String> MEANING = new EnumMap<>(Map.of(
            SpanMove.Cause.NEW, "only in the second run",
            SpanMove.Cause.GONE, "only in the first run",
            SpanMove.Cause.EXCLUDED, "no longer ranked",
            SpanMove.Cause.ADMITTED, "newly ranked",
            SpanMove.Cause.SCORE, "own score changed, with or without a change of rank; excluded spans too",
            SpanMove.Cause.OTHERS, "moved because other spans moved",
            SpanMove.Cause.REASON, "excluded for a different reason"));

    private final StringBuilder text = new StringBuilder();

    private CompareReport() {}

    static String text(CompareSummary summary) {
        var report = new CompareReport();
        report.differences(summary.differences());
        report.counts(summary);
        report.fieldBook(summary);
        report.moves(summary.moves());
        report.line(
                "%nResults: %s",
                String.join(", ", summary.files().stream().map(String::valueOf).toList()));
        return report.text.toString();
    }

    private void differences(List<String> differences) {
        if (differences.isEmpty()) {
            line("%nBoth runs read the same files with the same config.");
            return;
        }
        line("%nThe runs differ in:");
        differences.stream().limit(MOST_DIFFERENCES).forEach(text -> line("  %s", Printable.of(text)));
        if (differences.size() > MOST_DIFFERENCES) {
            line("  and %d more", differences.size() - MOST_DIFFERENCES);
        }
    }

    private void counts(CompareSummary summary) {
        int moved = summary.moves().size();
        line("%n%s changed, %,d unchanged%s", Counted.of(moved, "span"), summary.unmoved(), moved > 0 ? ":" : "");
        for (SpanMove.Cause cause : SpanMove.Cause.values()) {
            long count = summary.moves().stream()
                    .filter(move -> move.cause() == cause)
                    .count();
            if (count > 0) {
                line("%,8d %s", count, MEANING.getOrDefault(cause, cause.key()));
            }
        }
    }

    /** Returns the first changes of a span, how far its work is before all others; the table has all of them. */
    private static String shortened(List<String> changes) {
        Predicate<String> ofStatus =
                text -> WorkStatus.find(text.replaceFirst(" \\(entry.*", "").replace(' ', '_'))
                        .isPresent();
        String first = Stream.concat(
                        changes.stream().filter(ofStatus), changes.stream().filter(ofStatus.negate()))
                .limit(MOST_CHANGES)
                .collect(Collectors.joining("; "));
        return changes.size() > MOST_CHANGES ? first + "; and " + (changes.size() - MOST_CHANGES) + " more" : first;
    }

    private void fieldBook(CompareSummary summary) {
        long entries = summary.fieldEntries().values().stream()
                .mapToLong(Long::longValue)
                .sum();
        if (entries == 0) {
            return;
        }
        line("%nOnly the second run has %s of the field book:", Counted.of(entries, "entry", "entries"));
        summary.fieldEntries().forEach((use, count) -> {
            String states = use == FactUse.STATUS
                    ? summary.statuses().entrySet().stream()
                            .map(state -> Counted.whole(state.getValue()) + " "
                                    + state.getKey().replace('_', ' '))
                            .collect(Collectors.joining(", ", " (", ")"))
                    : "";
            line("%,8d %s%s", count, CloseoutReport.meaning(use), states);
        });
        List<SpanMove> explained = summary.moves().stream()
                .filter(move -> !move.fieldChanges().isEmpty())
                .filter(move -> move.cause() == SpanMove.Cause.EXCLUDED || move.cause() == SpanMove.Cause.ADMITTED)
                .limit(MOST_MOVES)
                .toList();
        explained.forEach(
                move -> line("  %s: %s", Printable.of(move.spanId()), Printable.of(shortened(move.fieldChanges()))));
    }

    private static String why(SpanMove move) {
        String field = move.fieldChanges().isEmpty() ? "" : "; field book: " + shortened(move.fieldChanges());
        return String.join("; ", move.partChanges()) + field;
    }

    private void moves(List<SpanMove> moves) {
        List<SpanMove> shown = moves.stream()
                .filter(move ->
                        move.cause() == SpanMove.Cause.SCORE && move.rankGain().orElse(0) != 0)
                .limit(MOST_MOVES)
                .toList();
        if (shown.isEmpty()) {
            return;
        }
        line("%nLargest moves due to the span's own score:");
        line("%7s  %7s  %16s  %-24s %s", "before", "after", "points", "span", "why");
        shown.forEach(move -> line(
                "%7s  %7s  %7.1f > %6.1f  %-24s %s",
                rank(move.before().orElseThrow()),
                rank(move.after().orElseThrow()),
                move.before().orElseThrow().scorePoints(),
                move.after().orElseThrow().scorePoints(),
                Printable.of(move.spanId()),
                Printable.of(why(move))));
    }

    private static String rank(Standing standing) {
        OptionalInt rank = standing.rank();
        return rank.isPresent() ? String.valueOf(rank.getAsInt()) : "none";
    }

    private void line(String format, Object... values) {
        text.append(String.format(Locale.ROOT, format.replace("%n", "\n"), values))
                .append('\n');
    }
}
