package org.spanroom.effort;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.spanroom.model.bore.PullChoice;
import org.spanroom.model.bore.Room;
import org.spanroom.model.effort.CarbonItem;
import org.spanroom.model.effort.Effort;
import org.spanroom.model.effort.EffortLine;
import org.spanroom.model.effort.EffortQuantities;
import org.spanroom.model.effort.NewBuild;
import org.spanroom.model.effort.RateKey;
import org.spanroom.model.effort.RateSettings;
import org.spanroom.model.effort.Rates;
import org.spanroom.model.effort.SharedShift;
import org.spanroom.model.effort.VaultWork;
import org.spanroom.model.effort.WorkTime;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.network.Unrecoverable;
import org.spanroom.model.network.VaultKind;
import org.spanroom.model.permit.Permits;
import org.spanroom.model.pull.PullAssessment;
import org.spanroom.model.rank.SpanOffer;

/**
 * Calculates what recovering a span takes in hours, material and money, and what new build on the same path would cost. Each span by
 * itself; pure, and safe for use by several threads.
 *
 * <p>The static methods do the same for quantities taken once, with any draw of the rates, in well under a microsecond.
 */
public final class EffortAssessor {
    private static final PullAssessment ANY_ORDER = PullAssessment.nothing(Unrecoverable.NO_INNERDUCT);

    private static final Comparator<EffortLine> IN_ORDER = Comparator.comparing(
                    (EffortLine line) -> line.part().kind())
            .thenComparingInt(line -> line.part().ordinal());

    private final Rates rates;
    private final QuantityTakeoff take;

    /**
     * Prepares for spans of one network.
     *
     * @param vaultKinds what each recorded kind of vault means for the work there
     * @param demandPositions most positions of a span that new build is priced for; 0 for all that recovery gains
     */
    public EffortAssessor(RateSettings settings, Map<String, VaultKind> vaultKinds, int demandPositions) {
        rates = Rates.of(settings);
        take = new QuantityTakeoff(settings, rates, vaultKinds, demandPositions);
    }

    /** Returns the rates at their values, which drawings are made from. */
    public Rates rates() {
        return rates;
    }

    /** Finds what a span takes and saves; empty where no innerduct comes out. */
    public Optional<Effort> assess(Span span, Room room, PullAssessment pull, Permits permits) {
        return room.innerductsOut() == 0
                ? Optional.empty()
                : Optional.of(effort(quantities(span, room, pull, permits)));
    }

    /** Returns {@link Effort#savingRatio} of what {@link #assess} finds, without all else of it; 0 if no innerduct comes out. */
    public double savingRatio(Span span, Room room, PullAssessment pull, Permits permits) {
        if (room.innerductsOut() == 0) {
            return 0;
        }
        EffortQuantities taken = quantities(span, room, pull, permits);
        var totals = new Totals();
        var account = new Account(rates, totals);
        new RecoveryCost(taken, account).book(new SiteWork(taken, account.unwritten()).plan());
        var build = new BuildCost(taken, account);
        build.book(build.cheapest());
        return Effort.savingRatio(totals.cost().total(), totals.build().total());
    }

    /** Returns what hours and money of a span are based on. */
    public EffortQuantities quantities(Span span, Room room, PullAssessment pull, Permits permits) {
        return take.of(span, room.proposal(), pull, permits);
    }

    /**
     * Returns what further ducts on the path of a span would cost, each for so many cables as a new duct takes.
     *
     * @param span any quantities of the span
     * @param cellsPerSleeve how many cables a sleeve takes
     */
    public SpanOffer.NewDuctCost newDuct(EffortQuantities span, int cellsPerSleeve) {
        int positions = (int) Math.floor(Account.silent(rates).rate(RateKey.NEW_DUCT_CABLES, span.rows()) + 1e-9);
        int sleeves = (positions + cellsPerSleeve - 1) / cellsPerSleeve;
        double firstMoney = newBuildMoney(span.needing(positions, sleeves), rates);
        double bothMoney = newBuildMoney(span.needing(2 * positions, 2 * sleeves), rates);
        return new SpanOffer.NewDuctCost(positions, firstMoney, bothMoney - firstMoney);
    }

    /** Returns the hours on site for one way of recovering a span. */
    public double siteHours(Span span, PullChoice choice) {
        return siteHours(take.of(span, Optional.of(choice), ANY_ORDER, Permits.NONE), rates);
    }

    /** Returns the hours on site, over all shifts. */
    public static double siteHours(EffortQuantities span, Rates rates) {
        return new SiteWork(span, Account.silent(rates)).plan().siteHours();
    }

    /** Returns the cost of recovery. */
    public static double costMoney(EffortQuantities span, Rates rates) {
        Account account = Account.silent(rates);
        return new RecoveryCost(span, account).book(new SiteWork(span, account).plan());
    }

    /** Returns the cost of new build for the positions that are needed. */
    public static double newBuildMoney(EffortQuantities span, Rates rates) {
        var build = new BuildCost(span, Account.silent(rates));
        return build.book(build.cheapest());
    }

    /** Returns the effort of quantities at the rates' values. */
    public Effort effort(EffortQuantities span) {
        var totals = new Totals();
        var account = new Account(rates, totals);
        SiteWork.Plan plan = new SiteWork(span, account.unwritten()).plan();
        new SiteWork(span, account).book(plan.shifts());
        var cost = new RecoveryCost(span, account);
        cost.book(plan);
        NewBuild build = build(span, account, totals);
        return new Effort(
                span,
                time(span, plan, account),
                totals.hours(),
                totals.cost(),
                cost.siteHourMoney(),
                cost.material(plan),
                build);
    }

    /** Returns the account of a span, line by line, in the order of the work: the same sums as in its effort. */
    public List<EffortLine> lines(EffortQuantities span) {
        var lines = new ArrayList<EffortLine>();
        var account = new Account(rates, (part, place, quantity, key, at, factor, amount) -> {
            if (quantity != 0) {
                lines.add(new EffortLine(
                        part, place, quantity, key, rates.inUnit(key, at), factor, amount, rates.rate(key, at)));
            }
        });
        SiteWork.Plan plan = new SiteWork(span, account.unwritten()).plan();
        new SiteWork(span, account).book(plan.shifts());
        var cost = new RecoveryCost(span, account);
        cost.book(plan);
        var build = new BuildCost(span, account);
        BuildCost.Laying laying = build.cheapest();
        build.book(laying);
        build.bookCarbon(laying);
        account.book(CarbonItem.INNERDUCT_RECYCLED, cost.recycledKg(), RateKey.WARM_RECYCLED_KG_PER_KG, span.rows());
        lines.sort(IN_ORDER);
        return List.copyOf(lines);
    }

    /**
     * Returns what spans that follow one another take in one shift, daily work at a vault that several of them share counted
     * once, and the talk before work too.
     */
    public SharedShift inOneShift(List<EffortQuantities> run) {
        Account account = Account.silent(rates);
        double aloneHours = 0;
        double sharedHours = 0;
        double windowHours = Double.POSITIVE_INFINITY;
        double longestTalkHours = 0;
        Map<String, Double> longestByVault = new TreeMap<>();
        for (EffortQuantities span : run) {
            var work = new SiteWork(span, account);
            aloneHours += work.inOneShiftHours();
            windowHours = Math.min(windowHours, work.windowHours());
            double talkHours = account.rate(RateKey.BRIEFING_HOURS, span.rows());
            sharedHours += talkHours;
            longestTalkHours = Math.max(longestTalkHours, talkHours);
            for (SpanEnd end : SpanEnd.values()) {
                VaultWork vault = span.at(end);
                sharedHours += work.dailyAt(end, 1);
                longestByVault.merge(vault.vaultId(), work.dailyAt(end, 1), Math::max);
            }
        }
        double onceHours = longestTalkHours
                + longestByVault.values().stream()
                        .mapToDouble(Double::doubleValue)
                        .sum();
        double savedHours = Math.max(0, sharedHours - onceHours);
        double siteHours = aloneHours - savedHours;
        return new SharedShift(siteHours, savedHours, siteHours <= windowHours);
    }

    private static WorkTime time(EffortQuantities span, SiteWork.Plan plan, Account account) {
        var work = new SiteWork(span, account.unwritten());
        return new WorkTime(
                plan.siteHours(),
                new RecoveryCost(span, account).laborHours(plan),
                plan.shifts(),
                work.isAtNight(),
                work.dailyAt(SpanEnd.A, 1),
                work.dailyAt(SpanEnd.B, 1),
                plan.fitsWindow());
    }

    private static NewBuild build(EffortQuantities span, Account account, Totals totals) {
        var build = new BuildCost(span, account);
        BuildCost.Laying laying = build.cheapest();
        build.book(laying);
        BuildCost.Carbon carbon = build.bookCarbon(laying);
        return new NewBuild(
                laying.method(),
                build.ducts(),
                laying.trenchM(),
                laying.boreM(),
                totals.build(),
                carbon.totalKg(),
                carbon.digKg());
    }
}
