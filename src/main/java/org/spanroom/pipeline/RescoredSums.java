package org.spanroom.pipeline;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.spanroom.model.Term;
import org.spanroom.model.effort.Cents;
import org.spanroom.model.network.SectionKey;
import org.spanroom.model.pull.LimitKind;
import org.spanroom.model.rank.RescoredSpan;
import org.spanroom.output.RescoredCells;
import org.spanroom.output.columns.MoneyColumns;
import org.spanroom.output.columns.SpanColumns;
import org.spanroom.rank.SectionGroups;

/** What is summed up and counted over the spans of an earlier run that another scoring ranks, from what that run wrote of them. */
final class RescoredSums {
    private static final String DUCTS = "build_ducts";
    private static final String FURTHER_DUCT = "further_duct_money";
    private static final String RULE = "binding_rule";
    private static final String LIMIT = "pull_tightest_limit";

    private final RescoredCells cells;
    private final List<RescoredSpan> ranked;

    /**
     * Prepares.
     *
     * @param columns the names of the columns that the earlier run wrote of its spans
     */
    RescoredSums(List<String> columns, List<RescoredSpan> spans) {
        cells = new RescoredCells(columns);
        ranked = spans.stream().filter(span -> span.rank().isPresent()).toList();
    }

    /** Returns the section that a span is in. */
    static SectionKey section(RescoredSpan span, RescoredCells cells) {
        return SectionKey.of(
                cells.text(span, SpanColumns.BANK),
                cells.text(span, SpanColumns.DUCT),
                cells.text(span, SpanColumns.VAULT_A),
                cells.text(span, SpanColumns.VAULT_B));
    }

    /** Returns what new build costs where one trench or bore serves all ranked spans of a section; empty where the run did not write what it takes. */
    OptionalDouble sharedBuildMoney() {
        if (!cells.has(List.of(MoneyColumns.NEW_BUILD_MONEY.name(), DUCTS, FURTHER_DUCT))) {
            return OptionalDouble.empty();
        }
        var build = new SharedBuild(ranked.size());
        for (int number = 0; number < ranked.size(); number++) {
            RescoredSpan span = ranked.get(number);
            build.add(
                    number,
                    cells.number(span, MoneyColumns.NEW_BUILD_MONEY),
                    cells.number(span, DUCTS),
                    cells.number(span, FURTHER_DUCT));
        }
        var groups = SectionGroups.of(ranked.size(), ranked.size(), place -> section(ranked.get(place), cells));
        double cents = 0;
        for (int section = 0; section < groups.size(); section++) {
            cents += build.cents(groups.members(section));
        }
        return OptionalDouble.of(Cents.money(cents));
    }

    /** Returns what decides most of the ranked spans, one sentence each without a full stop. */
    List<String> deciders() {
        if (!cells.has(List.of(SpanColumns.ASSUMED.name(), RULE, LIMIT))) {
            return List.of();
        }
        var deciders = new Deciders();
        Deciders.Counts counts = deciders.begin();
        for (RescoredSpan span : ranked) {
            counts.add(
                    List.of(cells.text(span, SpanColumns.ASSUMED).split(";", -1))
                            .contains(Term.INSIDE_DIAMETER.key()),
                    cells.text(span, RULE),
                    limit(cells.text(span, LIMIT)));
        }
        return deciders.sentences();
    }

    private static Optional<LimitKind> limit(String key) {
        return Arrays.stream(LimitKind.values())
                .filter(kind -> kind.key().equals(key))
                .findFirst();
    }
}
