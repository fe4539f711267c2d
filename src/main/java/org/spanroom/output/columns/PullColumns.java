package org.spanroom.output.columns;

import static java.util.stream.Collectors.joining;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.stream.Stream;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.pull.EndReason;
import org.spanroom.model.pull.Friction;
import org.spanroom.model.pull.LimitKind;
import org.spanroom.model.pull.LimitUse;
import org.spanroom.model.pull.PullAssessment;
import org.spanroom.model.pull.PullAssumption;
import org.spanroom.model.pull.PullOutcome;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.output.table.CellRange;
import org.spanroom.output.table.Column;

/** The columns of the spans about whether the innerducts can come out, from which end, and what that takes. */
public final class PullColumns {
    private static final Map<Friction, String> SHORT =
            new TreeMap<>(Map.of(Friction.LUBRICATED, "lub", Friction.DRY, "dry", Friction.BAD, "bad"));

    private PullColumns() {}

    static List<Column<RankedSpan>> all() {
        var columns = new ArrayList<>(answer());
        columns.addAll(tightest());
        columns.addAll(failure());
        columns.addAll(failurePlace());
        for (Friction friction : Friction.values()) {
            columns.addAll(atBetterEnd(friction));
        }
        for (SpanEnd end : SpanEnd.values()) {
            columns.addAll(fromEnd(end));
        }
        columns.addAll(grounds());
        return columns;
    }

    /** Returns how a state of friction is written in short names. */
    static String shortWord(Friction friction) {
        return SHORT.getOrDefault(friction, friction.key());
    }

    private static List<Column<RankedSpan>> answer() {
        return List.of(
                Column.text(
                        "pull_outcome",
                        "pull_out",
                        CellRange.oneOf(Stream.of("both", "a", "b", "neither", "none")),
                        "Ends at which every innerduct can be pulled out: both, a, b or neither; none where the duct has no innerduct to pull.",
                        pull(p -> p.outcome().key())),
                Column.text(
                        "pull_better_end",
                        "pull_end",
                        CellRange.oneOf(Stream.of(SpanEnd.values()).map(SpanEnd::key)),
                        "Better end to pull the innerducts out at: a (vault_a) or b (vault_b).",
                        pull(p -> p.outcome().findBetterEnd().map(SpanEnd::key))),
                Column.text(
                        "pull_end_reason",
                        "pull_why",
                        CellRange.oneOf(Stream.of(EndReason.values()).map(EndReason::key)),
                        "Why that end: only_end, least_used, better_site (off the roadway or with machine "
                                + "access, and hardly"
                                + " more used), less_force or both_equal.",
                        pull(p -> p.outcome().findEndReason().map(EndReason::key))),
                Column.text("pull_better_vault", "pull_vault", "The vault at that end.", PullColumns::betterVault));
    }

    private static List<Column<RankedSpan>> tightest() {
        return List.of(
                Column.real(
                        "pull_utilization_pct",
                        "pull_util",
                        1,
                        CellRange.NOT_NEGATIVE,
                        "Utilization of the tightest limit at the better end; above 100 the pull fails.",
                        pull(p -> p.outcome().findTightest().map(LimitUse::utilizationPercent))),
                Column.text(
                        "pull_tightest_limit",
                        "pull_tight",
                        CellRange.oneOf(Stream.of(LimitKind.values()).map(LimitKind::key)),
                        "That limit.",
                        pull(p ->
                                p.outcome().findTightest().map(use -> use.kind().key()))),
                Column.real(
                        "pull_later_pct",
                        "pull_later",
                        1,
                        CellRange.NOT_NEGATIVE,
                        "The same if the positions beside the innerducts (positions_now_beside) are filled with "
                                + "cables first: their weight rests on every innerduct that is pulled later. "
                                + "Empty where there are none.",
                        row -> row.assessment()
                                .laterPull()
                                .flatMap(later -> later.outcome().findTightest())
                                .map(LimitUse::utilizationPercent)),
                Column.integer(
                        "pull_count",
                        "pulls",
                        CellRange.COUNT,
                        "How many innerducts are to be pulled, one row each in the table pulls.",
                        pull(p -> p.pulls().size())));
    }

    private static List<Column<RankedSpan>> failure() {
        return List.of(
                Column.text(
                        "pull_failing_limit",
                        "fail_limit",
                        CellRange.oneOf(Stream.of(LimitKind.values()).map(LimitKind::key)),
                        "The limit that fails: at the better end if the pull is possible from neither, "
                                + "otherwise at the other end.",
                        failing(use -> use.kind().key())),
                Column.text(
                        "pull_failing_limits",
                        "fail_all",
                        CellRange.listOf(Stream.of(LimitKind.values()).map(LimitKind::key)),
                        "Every limit that fails for any innerduct at the better end, joined by ;.",
                        pull(p -> p.failingLimits().stream().map(LimitKind::key).collect(joining(";")))),
                Column.text(
                        "pull_failing_end",
                        "fail_end",
                        CellRange.oneOf(Stream.of(SpanEnd.values()).map(SpanEnd::key)),
                        "The end at which that innerduct would come out: a or b.",
                        pull(p -> findFailingEnd(p.outcome()).map(SpanEnd::key))));
    }

    private static List<Column<RankedSpan>> failurePlace() {
        return List.of(
                Column.real(
                        "pull_failing_at_m",
                        "fail_at_m",
                        2,
                        CellRange.NOT_NEGATIVE,
                        "Where it fails, as distance along the span from vault_a.",
                        failing(LimitUse::atM)),
                Column.real(
                        "pull_failing_found_in_unit",
                        "fail_found",
                        2,
                        CellRange.NOT_NEGATIVE,
                        "What is found there, breakaway included, in the unit of pull_failing_unit.",
                        failing(use -> inUnit(use, use.foundSi()))),
                Column.real(
                        "pull_failing_allowed_in_unit",
                        "fail_allow",
                        2,
                        CellRange.NOT_NEGATIVE,
                        "What is allowed there: a maximum, or for a radius or slack a minimum.",
                        failing(use -> inUnit(use, use.allowedSi()))),
                Column.text(
                        "pull_failing_unit",
                        "fail_unit",
                        CellRange.oneOf(Stream.of(LimitKind.values()).map(PullColumns::unit)),
                        "Unit of both: N, N/m, m or degrees.",
                        failing(use -> unit(use.kind()))));
    }

    private static List<Column<RankedSpan>> atBetterEnd(Friction friction) {
        return List.of(
                Column.real(
                        "pull_" + friction.key() + "_n",
                        "pull_" + shortWord(friction) + "_n",
                        1,
                        CellRange.NOT_NEGATIVE,
                        "Largest steady pull on an innerduct that comes out at the better end, friction "
                                + friction.key() + ".",
                        atBetterEnd((p, end) -> p.largestPullN(end, friction))),
                Column.real(
                        "hold_" + friction.key() + "_n",
                        "hold_" + shortWord(friction) + "_n",
                        1,
                        CellRange.NOT_NEGATIVE,
                        "Largest force that holds the cables of an innerduct during that pull, at the opposite end.",
                        atBetterEnd((p, end) -> p.largestHoldN(end, friction))));
    }

    private static List<Column<RankedSpan>> fromEnd(SpanEnd end) {
        return List.of(
                Column.real(
                        "pull_out_at_" + end.key() + "_n",
                        "pull_" + end.key() + "_n",
                        1,
                        CellRange.NOT_NEGATIVE,
                        "Largest steady pull on an innerduct that comes out at end " + end.key()
                                + ", in the state of pull_friction.",
                        pull(p -> present(p, p.largestPullN(end, p.judgedBy())))),
                Column.real(
                        "hold_for_" + end.key() + "_n",
                        "hold_" + end.key() + "_n",
                        1,
                        CellRange.NOT_NEGATIVE,
                        "Largest force that holds the cables of an innerduct during that pull, at end "
                                + end.opposite().key() + ".",
                        pull(p -> present(p, p.largestHoldN(end, p.judgedBy())))));
    }

    private static List<Column<RankedSpan>> grounds() {
        return List.of(
                Column.text(
                        "pull_friction",
                        "pull_frict",
                        CellRange.oneOf(Stream.of(Friction.values()).map(Friction::key)),
                        "Friction state that the outcome applies to: lubricated, dry or bad.",
                        pull(p -> p.pulls().isEmpty() ? "" : p.judgedBy().key())),
                Column.text(
                        "pull_warnings",
                        "pull_warn",
                        CellRange.listOf(Stream.of(LimitKind.values()).map(LimitKind::key)),
                        "Limits whose warning value is exceeded, joined by ;.",
                        pull(p -> p.warnings().stream().map(LimitKind::key).collect(joining(";")))),
                Column.text(
                        "pull_assumptions",
                        "pull_assum",
                        CellRange.listOf(Stream.of(PullAssumption.values()).map(PullAssumption::key)),
                        "Assumptions on which the forces are based, as keys joined by ;.",
                        pull(p -> p.assumptions().stream()
                                .map(PullAssumption::key)
                                .collect(joining(";")))));
    }

    /** Returns a limit's value as people say it: angles in degrees, the rest in its SI unit. */
    public static double inUnit(LimitUse use, double valueSi) {
        return use.kind().unit().equals("rad") ? Math.toDegrees(valueSi) : valueSi;
    }

    /** Returns the unit of {@link #inUnit}. */
    public static String unit(LimitKind kind) {
        return kind.unit().equals("rad") ? "degrees" : kind.unit();
    }

    /** Finds the end at which the failing pull would come out. */
    public static Optional<SpanEnd> findFailingEnd(PullOutcome outcome) {
        return outcome.findFailing()
                .flatMap(use -> outcome.findBetterEnd())
                .map(end -> outcome.isPossible() ? end.opposite() : end);
    }

    private static Optional<String> betterVault(RankedSpan row) {
        return row.assessment()
                .pull()
                .outcome()
                .findBetterEnd()
                .map(end -> end.vaultOf(row.span()).id());
    }

    private static Function<RankedSpan, Object> pull(Function<PullAssessment, Object> cell) {
        return row -> cell.apply(row.assessment().pull());
    }

    private static Function<RankedSpan, Object> failing(Function<LimitUse, Object> cell) {
        return pull(p -> p.outcome().findFailing().map(cell));
    }

    private static Function<RankedSpan, Object> atBetterEnd(BiFunction<PullAssessment, SpanEnd, Double> force) {
        return pull(p -> p.outcome().findBetterEnd().map(end -> force.apply(p, end)));
    }

    private static OptionalDouble present(PullAssessment pull, double forceN) {
        return pull.pulls().isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(forceN);
    }
}
