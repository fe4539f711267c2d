package org.spanroom.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.spanroom.model.effort.MoneyRange;
import org.spanroom.model.effort.MoneyRanges;
import org.spanroom.model.effort.MoneyTotals;

/** What the ranked spans cost and save together, in a few lines. */
final class MoneyReport {
    private MoneyReport() {}

    static List<String> lines(MoneyTotals money) {
        var lines = new ArrayList<String>();
        String range = money.ranges().isPresent() ? "likely (low to high)" : "all rates at their values";
        lines.add("Totals over these spans, in " + money.currency() + ", " + range + ":");
        lines.add(line("recovery", money.recoveryMoney(), money.ranges().map(MoneyRanges::recovery)));
        lines.add(line(
                "new build, each span by itself",
                money.newBuildMoney(),
                money.ranges().map(MoneyRanges::newBuild)));
        lines.add(line(
                "saving, each span by itself",
                money.savingMoney(),
                money.ranges().map(MoneyRanges::saving)));
        money.sharedBuildMoney().ifPresent(shared -> shared(shared, money, lines));
        return List.copyOf(lines);
    }

    /** New ducts of a section can share a trench or bore, which the new build of each span by itself leaves out. */
    private static void shared(double buildMoney, MoneyTotals money, List<String> lines) {
        lines.add("With all rates at their values, and one trench or bore shared in each section:");
        lines.add(line("recovery", money.recoveryMoney(), Optional.empty()));
        lines.add(line("new build", buildMoney, Optional.empty()));
        lines.add(line("saving", buildMoney - money.recoveryMoney(), Optional.empty()));
    }

    private static String line(String what, double atValuesMoney, Optional<MoneyRange> range) {
        return range.map(found -> String.format(
                        Locale.ROOT,
                        "%,14.0f (%,.0f to %,.0f) %s",
                        found.likelyMoney(),
                        found.lowMoney(),
                        found.highMoney(),
                        what))
                .orElse(String.format(Locale.ROOT, "%,14.0f %s", atValuesMoney, what));
    }
}
