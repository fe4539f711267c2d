package org.spanroom.pipeline;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.spanroom.config.RunConfig;
import org.spanroom.finding.FindingCode;
import org.spanroom.model.Counted;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.effort.MoneyRange;
import org.spanroom.model.effort.MoneyRanges;
import org.spanroom.model.effort.MoneyTotals;
import org.spanroom.model.effort.Rate;
import org.spanroom.output.PlanningCaution;
import org.spanroom.output.RecordedAccount;
import org.spanroom.output.report.PageTexts.Caution;
import org.spanroom.output.report.PageTexts.Figure;

/** The summary of a run in figures and sentences: what there is to gain, what it costs, and what all of it rests on. */
final class ReportTexts {
    private static final String ILLUSTRATIVE = "illustrative";

    private final RecordedAccount account;
    private final ReportTotals totals;
    private final RunConfig config;
    private final UnitSystem units;
    private final ReportWords words;

    ReportTexts(RecordedAccount account, ReportTotals totals, RunConfig config, UnitSystem units) {
        this.account = account;
        this.totals = totals;
        this.config = config;
        this.units = units;
        this.words = new ReportWords(config.rates().currency());
    }

    /** Returns the big figures. */
    List<Figure> headline() {
        MoneyTotals money = account.money();
        var figures = new ArrayList<Figure>();
        figures.add(new Figure(
                "candidates",
                Counted.whole(totals.ranked()),
                "of " + Counted.of(totals.spans(), "span") + "; a span is one duct between two vaults"));
        figures.add(new Figure(
                "cable positions gained",
                Counted.whole(totals.positionsGained()),
                "if every candidate were recovered"));
        figures.add(
                figure("recovery cost", money.recoveryMoney(), money.ranges().map(MoneyRanges::recovery)));
        if (money.sharedBuildMoney().isEmpty()) {
            figures.add(figure(
                    "new duct, span by span",
                    money.newBuildMoney(),
                    money.ranges().map(MoneyRanges::newBuild)));
        }
        figures.add(figure(
                "saving, span by span", money.savingMoney(), money.ranges().map(MoneyRanges::saving)));
        money.sharedBuildMoney()
                .ifPresent(shared -> figures.add(new Figure(
                        "saving, shared trenches",
                        words.money(shared - money.recoveryMoney()),
                        "one trench or bore for each section, with all rates at their values")));
        return figures;
    }

    private Figure figure(String label, double atValuesMoney, Optional<MoneyRange> range) {
        return range.map(found -> new Figure(label, words.money(found.likelyMoney()), "likely; " + words.spread(found)))
                .orElse(new Figure(label, words.money(atValuesMoney), "with all rates at their values"));
    }

    /** Returns sentences that can be read aloud. */
    List<String> statements() {
        var statements = new ArrayList<String>();
        statements.add(ReportWords.sentence(account.contents().statement()));
        statements.add(
                "A candidate is a span that no rule of the run excludes; the table below has the reasons for each of"
                        + " the others.");
        if (totals.ranked() == 0) {
            statements.add("No span can be recovered as the data is; the table says why, span by span.");
            return statements;
        }
        String length = units.words(account.rankedLengthM() / 1000, 1, "km");
        statements.add("If all of them were recovered, their ducts would take "
                + Counted.of(totals.positionsGained(), "additional cable") + ", over " + length + " of duct.");
        MoneyTotals money = account.money();
        statements.add("Recovery would likely cost " + likely(money.recoveryMoney(), MoneyRanges::recovery)
                + "; new duct on the same paths, each span by itself, "
                + likely(money.newBuildMoney(), MoneyRanges::newBuild)
                + "; the saving is "
                + likely(money.savingMoney(), MoneyRanges::saving) + ".");
        money.sharedBuildMoney().ifPresent(shared -> statements.add(sharedWords(shared, money.recoveryMoney())));
        if (money.ranges().isPresent()) {
            statements.add(
                    "Each likely amount is the median of its own draws, so the three do not subtract exactly; each"
                            + " range holds " + ReportWords.rangeShare(config.uncertainty())
                            + " of the draws of the rates.");
        }
        account.contents().deciders().forEach(decider -> statements.add(ReportWords.sentence(decider)));
        if (totals.doubtful() > 0) {
            statements.add(Counted.of(totals.doubtful(), "candidate") + " "
                    + Counted.form(totals.doubtful(), "passes", "pass")
                    + " the calculated pull only with good lubrication.");
        }
        if (totals.tightBends() > 0) {
            statements.add(
                    "In " + Counted.of(totals.tightBends(), "candidate")
                            + " an innerduct must pass a bend that is tighter than its minimum radius; check these in the field.");
        }
        return statements;
    }

    private String sharedWords(double buildMoney, double recoveryMoney) {
        return "These amounts price the new duct of each span by itself. Ducts of one section can share a trench or bore: then new"
                + " duct for all candidates costs " + words.money(buildMoney)
                + " with all rates at their values, and recovery " + words.money(recoveryMoney)
                + (buildMoney < recoveryMoney ? ", an additional cost of " : ", a saving of ")
                + words.money(Math.abs(buildMoney - recoveryMoney)) + ".";
    }

    private String likely(double atValuesMoney, Function<MoneyRanges, MoneyRange> part) {
        return account.money().ranges().map(part).map(words::money).orElse(words.money(atValuesMoney));
    }

    private Optional<String> units() {
        long doubtful = account.findings().getOrDefault(FindingCode.UNIT_DOUBTFUL.key(), 0L);
        return doubtful == 0
                ? Optional.empty()
                : Optional.of("The data of " + Counted.of(doubtful, "field") + " "
                        + Counted.form(doubtful, "does", "do")
                        + " not fit the configured unit; do not use these results"
                        + " before that is fixed. The findings of kind unit_doubtful name each field.");
    }

    /**
     * Returns what a reader must keep in mind.
     *
     * @param notes what this page leaves out
     */
    List<Caution> cautions(List<String> notes) {
        var cautions = new ArrayList<Caution>();
        units().ifPresent(text -> cautions.add(new Caution("units", text)));
        long assumed = account.contents().rankedAssumed();
        if (assumed > 0) {
            cautions.add(new Caution(
                    "contents",
                    "The contents of " + Counted.of(assumed, "candidate") + " are assumed, not recorded: what "
                            + Counted.form(assumed, "it gains", "they gain")
                            + " stays an assumption until a crew opens a vault."));
        }
        rates().ifPresent(text -> cautions.add(new Caution("rates", text)));
        if (config.inputs().zones().file().isEmpty()) {
            cautions.add(new Caution(
                    "permits",
                    "No permit zones were given: permits for zones, bans on cutting and work at night are missing from"
                            + " times and costs."));
        }
        cautions.add(new Caution(
                "accuracy",
                PlanningCaution.TEXT
                        + " A single span's cost or force may be off by a factor of two. Sums are not"
                        + " much more certain: all spans share the drawn rates, so the range of a sum is, in"
                        + " percent, about as wide as that of one span."));
        cautions.add(new Caution(
                "safety",
                "A vault may be a permit-required confined space. The safety officer decides; local codes, the owner's"
                        + " rules and licensed practice govern."));
        account.rescoredFrom()
                .ifPresent(from -> cautions.add(
                        new Caution("rescored", "Ranks are by another scoring of an earlier run, " + from + ".")));
        if (!account.filter().isEmpty()) {
            cautions.add(new Caution(
                    "filter", "The run wrote layers of some spans only; this page has the spans of the whole run."));
        }
        notes.forEach(note -> cautions.add(new Caution("note", note)));
        return cautions;
    }

    private Optional<String> rates() {
        List<Rate> all = config.rates().all();
        long illustrative = all.stream().filter(ReportTexts::isIllustrative).count();
        return illustrative == 0
                ? Optional.empty()
                : Optional.of(illustrative + " of " + all.size()
                        + " rates are illustrative: put in your own prices and hours before you budget with these"
                        + " figures.");
    }

    static boolean isIllustrative(Rate rate) {
        return rate.source().contains(ILLUSTRATIVE);
    }
}
