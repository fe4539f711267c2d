package org.spanroom.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.spanroom.model.rank.ContentsAccount;
import org.spanroom.model.rank.ContentsCounts;
import org.spanroom.model.rank.MissingTerm;
import org.spanroom.model.rank.ScenarioResult;
import org.spanroom.model.survey.SurveyStop;

/** What {@code rank} says where little is recorded of what lies in the ducts: results by scenario, what is missing, what to do next. */
final class ContentsReport {
    private ContentsReport() {}

    /** Returns the results by scenario; nothing where no contents were assumed. */
    static List<String> scenarios(ContentsAccount contents) {
        var lines = new ArrayList<String>();
        if (contents.scenarios().isEmpty()) {
            return lines;
        }
        lines.add("If ducts without recorded contents have few, typical or many innerducts and cables (money "
                + "with all rates at their values, in "
                + contents.scenarios().get(0).currency() + "):");
        lines.add("scenario  innerducts  cables   spans ranked   positions        recovery       new build        "
                + "  saving");
        contents.scenarios().forEach(result -> lines.add(line(result)));
        return lines;
    }

    private static String line(ScenarioResult result) {
        return String.format(
                Locale.ROOT,
                "%-8s  %10d  %6d  %,13d  %,10d  %,14.0f  %,14.0f  %,14.0f",
                result.name(),
                result.scenario().innerductCount(),
                result.scenario().cableCount(),
                result.spansRanked(),
                result.positionsGained(),
                result.recoveryMoney(),
                result.newBuildMoney(),
                result.savingMoney());
    }

    /** Returns what is missing and what to do about it; nothing where the contents of all spans are recorded. */
    static List<String> next(ContentsAccount contents, List<SurveyStop> survey) {
        var lines = new ArrayList<String>();
        long open = contents.counts().assumed() + contents.counts().unknown();
        if (open == 0) {
            return lines;
        }
        if (contents.counts().isMostlyUnknown() || contents.counts().isAssumption()) {
            lines.add(String.format(
                    Locale.ROOT,
                    "The contents of the ducts are not recorded for %,d of %,d spans. Missing:",
                    open,
                    contents.counts().spans()));
            contents.missing().stream().map(MissingTerm::inWords).forEach(line -> lines.add("  " + line));
        }
        if (!contents.toAssume().isEmpty() && (contents.counts().isMostlyUnknown() || isLeftOut(contents))) {
            lines.add("To see the results for typical contents, add these lines to your config:");
            contents.toAssume().forEach(line -> lines.add("    " + line));
        }
        if (!survey.isEmpty()) {
            lines.add(survey(survey, contents.counts()));
        }
        return lines;
    }

    /** Contents that were assumed are of no use while no span with them is ranked. */
    private static boolean isLeftOut(ContentsAccount contents) {
        return contents.counts().assumed() > 0 && contents.counts().rankedAssumed() == 0;
    }

    /** Where most is recorded it is no next step, only a list to know of. */
    private static String survey(List<SurveyStop> survey, ContentsCounts counts) {
        SurveyStop last = survey.get(survey.size() - 1);
        if (!counts.isMostlyUnknown() && !counts.isAssumption()) {
            return String.format(
                    Locale.ROOT,
                    "Contents are not recorded for %,d of %,d spans, not counting ducts that are blocked, collapsed, "
                            + "direct-buried or refused by their owner: the table vault_survey lists %,d vault%s that "
                            + "show %,d of them.",
                    last.spansUnrecorded(),
                    counts.spans(),
                    survey.size(),
                    survey.size() == 1 ? "" : "s",
                    last.spansSeen());
        }
        return String.format(
                Locale.ROOT,
                "Next: open %,d vault%s, which show %,d of %,d spans whose contents are not recorded; the table "
                        + "vault_survey lists them in order, beginning with %s.",
                survey.size(),
                survey.size() == 1 ? "" : "s",
                last.spansSeen(),
                last.spansUnrecorded(),
                survey.get(0).vault().id());
    }
}
