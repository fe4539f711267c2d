package org.spanroom.cli;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.model.effort.MoneyRange;
import org.spanroom.model.effort.MoneyRanges;
import org.spanroom.model.effort.MoneyTotals;
import org.spanroom.model.fieldwork.FactUse;
import org.spanroom.model.rank.RankTotals;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.model.rank.SpanMove;
import org.spanroom.output.JsonObject;
import org.spanroom.output.PlanningCaution;
import org.spanroom.output.WrittenResults;
import org.spanroom.pipeline.CheckRun.CheckSummary;
import org.spanroom.pipeline.CompareRun.CompareSummary;
import org.spanroom.pipeline.RankSummary;
import org.spanroom.pipeline.RescoreRun.RescoreSummary;

/** The summaries of commands for programs. Keys are part of the interface; the page json-summaries.md explains each. */
final class SummaryJson {
    static final String CAUTION = PlanningCaution.TEXT;

    private static final int LENGTH_DECIMALS = 3;
    private static final int MONEY_DECIMALS = 2;
    private static final int POINTS_DECIMALS = 2;
    private static final int PLACE_DECIMALS = 7;

    private SummaryJson() {}

    /** Returns what {@code rank} found and wrote. */
    static String of(RankSummary summary) {
        JsonObject json = begin("rank");
        written(json, summary.written());
        json.number("sections_ranked", summary.sectionsRanked())
                .objects("best", summary.best().stream().map(SummaryJson::best).toList())
                .number(
                        "findings",
                        summary.findings().values().stream()
                                .mapToLong(Long::longValue)
                                .sum())
                .number("findings_to_fix", summary.findingsToFix())
                .counts("findings_by_code", byCode(summary.findings()));
        return end(json, summary.written());
    }

    /** Returns what {@code rank --from} found and wrote. */
    static String of(RescoreSummary summary) {
        JsonObject json = begin("rank");
        written(json, summary.written());
        return end(json, summary.written());
    }

    /**
     * Returns what {@code check} found.
     *
     * @param everyFinding whether each finding is listed too
     */
    static String of(CheckSummary summary, boolean everyFinding) {
        var network = summary.network();
        JsonObject json = begin("check")
                .number("spans", network.spans().size())
                .number("vaults", network.vaults().size())
                .number("routes_length_m", network.routeLengthM(), LENGTH_DECIMALS)
                .number("spans_length_m", network.spanLengthM(), LENGTH_DECIMALS)
                .number("remainders_length_m", network.remainderLengthM(), LENGTH_DECIMALS)
                .number("line_ends", summary.ends().endCount())
                .objects(
                        "line_ends_near_vault",
                        summary.ends().bands().stream()
                                .map(band -> new JsonObject()
                                        .number("within_m", band.withinM(), 1)
                                        .number("line_ends", band.count()))
                                .toList());
        var counts = new TreeMap<FindingCode, Long>();
        summary.findings().forEach(finding -> counts.merge(finding.code(), finding.count(), Long::sum));
        json.number(
                        "findings",
                        counts.values().stream().mapToLong(Long::longValue).sum())
                .number("findings_to_fix", summary.findingsToFix())
                .counts("findings_by_code", byCode(counts));
        if (everyFinding) {
            json.objects(
                    "findings_listed",
                    summary.findings().stream().map(SummaryJson::finding).toList());
        }
        return json.write();
    }

    /** Returns what {@code compare} found and wrote. */
    static String of(CompareSummary summary) {
        var counts = new LinkedHashMap<String, Long>();
        for (SpanMove.Cause cause : SpanMove.Cause.values()) {
            counts.put(
                    cause.key(),
                    summary.moves().stream()
                            .filter(move -> move.cause() == cause)
                            .count());
        }
        return begin("compare")
                .number("spans_moved", summary.moves().size())
                .number("spans_unmoved", summary.unmoved())
                .counts("moves_by_cause", counts)
                .counts("field_entries_by_use", byUse(summary.fieldEntries()))
                .texts("differences", summary.differences())
                .texts("files", summary.files().stream().map(String::valueOf).toList())
                .write();
    }

    /** Returns counts of entries of the field book by what they change. */
    static Map<String, Long> byUse(Map<FactUse, Long> counts) {
        var byKey = new LinkedHashMap<String, Long>();
        counts.forEach((use, count) -> byKey.put(use.name().toLowerCase(Locale.ROOT), count));
        return byKey;
    }

    /** Begins the summary of a command. */
    static JsonObject begin(String command) {
        return new JsonObject().text("command", command).text("version", SpanroomCommand.Version.text());
    }

    private static void written(JsonObject json, WrittenResults written) {
        RankTotals totals = written.totals();
        var excluded = new TreeMap<String, Long>();
        totals.excluded().forEach((why, count) -> excluded.put(why.key(), count));
        json.number("spans", totals.spans()).number("spans_ranked", totals.ranked());
        json.number("spans_ranked_doubtful", totals.doubtful())
                .number("spans_ranked_tight_bend", totals.tightBends())
                .counts("spans_excluded", excluded);
        written.spansKept().ifPresent(kept -> json.number("spans_kept", kept));
        json.number("positions_gained", totals.positionsGained())
                .number("spans_ranked_length_m", totals.rankedLengthM(), LENGTH_DECIMALS)
                .object("money_ranked", money(written.money()))
                .text("contents_basis", written.contents().basis())
                .texts("deciders", written.contents().deciders());
    }

    private static String end(JsonObject json, WrittenResults written) {
        return json.text("folder", written.folder().toString())
                .texts("files", written.files())
                .texts("notes", written.notes())
                .texts("cautions", List.of(CAUTION))
                .write();
    }

    private static JsonObject best(RankSummary.Best best) {
        RankedSpan span = best.span();
        var room = span.assessment().room();
        return new JsonObject()
                .text("span_id", span.span().id())
                .number("rank", span.rank().orElse(0))
                .number("score_points", span.score().totalPoints(), POINTS_DECIMALS)
                .number("length_m", span.span().lengthM(), LENGTH_DECIMALS)
                .number("bend_total_deg", span.assessment().bends().total().deg(), 2)
                .number("positions_now", room.positionsNow().orElse(0))
                .number("positions_after", room.positionsAfter().orElse(0))
                .text("pull_outcome", span.assessment().pull().outcome().key())
                .number("section_spans_ranked", best.section().counts().ranked());
    }

    private static JsonObject money(MoneyTotals money) {
        var json = new JsonObject().text("currency", money.currency());
        money(json, "recovery", money.recoveryMoney(), money.ranges().map(MoneyRanges::recovery));
        money(json, "build", money.newBuildMoney(), money.ranges().map(MoneyRanges::newBuild));
        money(json, "saving", money.savingMoney(), money.ranges().map(MoneyRanges::saving));
        money.sharedBuildMoney().ifPresent(shared -> json.number("build_shared_money", shared, MONEY_DECIMALS));
        return json;
    }

    private static void money(JsonObject json, String name, double atValuesMoney, Optional<MoneyRange> range) {
        json.number(name + "_money", atValuesMoney, MONEY_DECIMALS);
        range.ifPresent(found -> json.number(name + "_low_money", found.lowMoney(), MONEY_DECIMALS)
                .number(name + "_likely_money", found.likelyMoney(), MONEY_DECIMALS)
                .number(name + "_high_money", found.highMoney(), MONEY_DECIMALS));
    }

    private static Map<String, Long> byCode(Map<FindingCode, Long> counts) {
        var byKey = new TreeMap<String, Long>();
        counts.forEach((code, count) -> byKey.put(code.key(), count));
        return byKey;
    }

    private static JsonObject finding(Finding finding) {
        var json = new JsonObject()
                .text("code", finding.code().key())
                .text("source", finding.source())
                .text("feature", finding.featureId())
                .text("field", finding.field())
                .text("detail", finding.detail())
                .number("length_m", finding.lengthM(), LENGTH_DECIMALS)
                .number("count", finding.count());
        finding.place()
                .ifPresent(place -> json.number("lon_deg", place.lonDeg(), PLACE_DECIMALS)
                        .number("lat_deg", place.latDeg(), PLACE_DECIMALS));
        return json;
    }
}
