package org.spanroom.pipeline;

import java.util.AbstractList;
import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.RandomAccess;
import org.spanroom.model.Prefetch;
import org.spanroom.model.effort.Cents;
import org.spanroom.model.network.SpanList;
import org.spanroom.model.rank.RankedSection;
import org.spanroom.model.rank.SpanFigures;
import org.spanroom.rank.SectionGroups;
import org.spanroom.rank.Standings;

/** The sections of a run in their order, each put together when it is requested, from what is kept of its spans. Safe for use by several threads. */
final class RunSections extends AbstractList<RankedSection> implements RandomAccess {
    private final SpanList spans;
    private final int[] order;
    private final Standings standings;
    private final SpanFigures figures;
    private final SectionGroups groups;

    /**
     * Groups the spans of a run.
     *
     * @param order the numbers of the spans in the order of the ranking; the caller must not change it
     */
    RunSections(SpanList spans, int[] order, Standings standings, SpanFigures figures) {
        this.spans = spans;
        this.order = order;
        this.standings = standings;
        this.figures = figures;
        groups = SectionGroups.of(order, standings.countRanked(), spans::section);
    }

    @Override
    public int size() {
        return groups.size();
    }

    /** Returns how many sections have a ranked span: the first ones. */
    int countRanked() {
        return groups.countRanked();
    }

    /** Returns what new build of all ranked spans costs where one trench or bore serves all of a section. */
    double sharedBuildMoney(SharedBuild build) {
        double cents = 0;
        for (int section = 0; section < groups.countRanked(); section++) {
            cents += build.cents(Arrays.stream(groups.members(section))
                    .filter(this::isRanked)
                    .map(place -> order[place])
                    .toArray());
        }
        return Cents.money(cents);
    }

    /** Returns the place in the ranking of the best span of a section. */
    int best(int section) {
        return groups.first(section);
    }

    /** Returns the places of the spans beside the other ducts of their sections. */
    BankPlaces bankPlaces() {
        return BankPlaces.of(groups, place -> spans.duct(order[place]).id(), place -> isForth(order[place]));
    }

    /** Two spans of a section are drawn the same way where this is the same of both. */
    private boolean isForth(int number) {
        return spans.fromVault(number) <= spans.toVault(number);
    }

    @Override
    public RankedSection get(int section) {
        if (section % Prefetch.AT_ONCE == 0) {
            prefetch(section, Math.min(groups.size(), section + Prefetch.AT_ONCE));
        }
        var counts = RankedSection.Counts.NONE;
        for (int place : groups.members(section)) {
            int number = order[place];
            int now = figures.positionsNow(number);
            int after = figures.positionsAfter(number);
            boolean assumed = figures.isAssumed(number);
            counts = counts.plus(isRanked(place), figures.isSpare(number), now, after, Math.max(0, after - now))
                    .plusAssumed(isRanked(place) && assumed ? 1 : 0);
        }
        int first = groups.first(section);
        return new RankedSection(
                spans.section(order[first]),
                section < groups.countRanked() ? OptionalInt.of(section + 1) : OptionalInt.empty(),
                counts,
                first(first));
    }

    /** Sections are mostly requested one after another. */
    private void prefetch(int from, int to) {
        int[] numbers = groups.members(from, to);
        for (int i = 0; i < numbers.length; i++) {
            numbers[i] = order[numbers[i]];
        }
        spans.prefetch(numbers);
        figures.prefetch(numbers);
    }

    private RankedSection.First first(int place) {
        int number = order[place];
        return new RankedSection.First(
                spans.id(number),
                spans.fromId(number),
                spans.toId(number),
                isRanked(place) ? OptionalInt.of(place + 1) : OptionalInt.empty(),
                standings.points(number),
                spans.lengthM(number),
                figures.cautions(number),
                Optional.of(spans.lonLat(number)));
    }

    private boolean isRanked(int place) {
        return place < standings.countRanked();
    }
}
