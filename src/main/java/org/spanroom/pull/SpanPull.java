package org.spanroom.pull;

import java.util.ArrayList;
import java.util.List;
import org.spanroom.model.bend.Bends;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.pull.EndPull;
import org.spanroom.model.pull.Friction;
import org.spanroom.model.pull.FrictionUse;
import org.spanroom.model.pull.InnerductPull;
import org.spanroom.model.pull.LimitUse;
import org.spanroom.model.pull.PullForces;
import org.spanroom.model.pull.PullOutcome;
import org.spanroom.model.pull.PullSettings;
import org.spanroom.model.pull.PullTrace;

/** The calculation of one span: its path toward either end, and its innerducts in the order of pulling. */
final class SpanPull {
    private static final double[] OUT_RATIOS = {0, 0.25, 0.5, 0.75, 1};

    private final Span span;
    private final PullSettings settings;
    private final PullSites sites;
    private final List<PullOrder.Turn> turns;
    private final PullDirection toA;
    private final PullDirection toB;

    SpanPull(Span span, Bends bends, PullSettings settings, PullSites sites, List<PullOrder.Turn> turns) {
        this.span = span;
        this.sites = sites;
        this.settings = settings;
        this.turns = turns;
        double turnRad = bends.total().rad();
        PullSegments sections = SegmentCutter.cut(span, bends, settings);
        this.toB = new PullDirection(SpanEnd.B, span, new PullDirection.Way(sections, turnRad), settings, sites);
        this.toA = new PullDirection(
                SpanEnd.A, span, new PullDirection.Way(sections.reversed(), turnRad), settings, sites);
    }

    List<InnerductPull> pulls() {
        var pulls = new ArrayList<InnerductPull>(turns.size());
        for (int i = 0; i < turns.size(); i++) {
            pulls.add(pull(i));
        }
        return pulls;
    }

    /** Returns the trace of one innerduct by its place in the order, from 0. */
    PullTrace trace(int place, Friction friction) {
        InnerductPull pull = pull(place);
        return new PullTrace(
                pull, friction, trace(toA, turns.get(place), friction), trace(toB, turns.get(place), friction));
    }

    /** Returns the answer for a whole span from that for each of its innerducts, of which there is at least one. */
    PullOutcome outcome(List<InnerductPull> pulls) {
        EndPull worstA = worst(pulls, SpanEnd.A);
        EndPull worstB = worst(pulls, SpanEnd.B);
        BetterEnd better =
                BetterEnd.of(span, demand(pulls, worstA), demand(pulls, worstB), sites, settings.endPreferencePoints());
        LimitUse tightestA = worstA.tightest();
        LimitUse tightestB = worstB.tightest();
        if (worstA.isPossible() && worstB.isPossible()) {
            return new PullOutcome.FromBoth(
                    better.end(), better.reason(), better.end() == SpanEnd.A ? tightestA : tightestB);
        }
        if (worstA.isPossible()) {
            return new PullOutcome.FromOne(SpanEnd.A, tightestA, tightestB);
        }
        if (worstB.isPossible()) {
            return new PullOutcome.FromOne(SpanEnd.B, tightestB, tightestA);
        }
        return better.end() == SpanEnd.A
                ? new PullOutcome.FromNeither(SpanEnd.A, better.reason(), tightestA, tightestB)
                : new PullOutcome.FromNeither(SpanEnd.B, better.reason(), tightestB, tightestA);
    }

    private InnerductPull pull(int place) {
        PullOrder.Turn turn = turns.get(place);
        return new InnerductPull(
                place + 1,
                turn.innerduct(),
                turn.reason(),
                turn.load().neighborNPerM(),
                turn.load().wedgeRatio(),
                endPull(toA, turn),
                endPull(toB, turn));
    }

    private EndPull endPull(PullDirection way, PullOrder.Turn turn) {
        var use = new FrictionUse.Builder();
        var tightest = new LimitSink.Tightest();
        PullForces lubricated = forces(way, turn, Friction.LUBRICATED, use, tightest);
        PullForces bad = forces(way, turn, Friction.BAD, use, tightest);
        // The usual one to judge by comes last, so that the forces are compared without another run.
        PullForces dry = forces(way, turn, Friction.DRY, use, tightest);
        if (settings.judgedBy() != Friction.DRY) {
            run(way, turn, settings.judgedBy());
        }
        double forceRatio = way.forceRatio(turn.innerduct(), turn.load());
        return new EndPull(
                way.pullingEnd(), lubricated, dry, bad, tightest.use(), tightest.failing(), forceRatio, use.build());
    }

    /**
     * Returns the forces in one state of friction.
     *
     * @param use takes how far each limit is used
     * @param tightest takes the limits if pulls are judged by this state
     */
    private PullForces forces(
            PullDirection way,
            PullOrder.Turn turn,
            Friction friction,
            FrictionUse.Builder use,
            LimitSink.Tightest tightest) {
        run(way, turn, friction);
        boolean judged = friction == settings.judgedBy();
        way.offerLimits(turn.innerduct(), turn.load(), (kind, found, allowed, atM) -> {
            use.add(kind, friction, kind.ratio(found, allowed));
            if (judged) {
                tightest.offer(kind, found, allowed, atM);
            }
        });
        return way.passes().forces();
    }

    private void run(PullDirection way, PullOrder.Turn turn, Friction friction) {
        way.passes().run(turn.load(), settings.friction().of(friction));
    }

    private PullTrace.Way trace(PullDirection way, PullOrder.Turn turn, Friction friction) {
        run(way, turn, friction);
        var limits = new LimitSink.EachKind();
        way.offerLimits(turn.innerduct(), turn.load(), limits);
        return new PullTrace.Way(way.pullingEnd(), sections(way), fallOff(way, turn, friction), limits.uses());
    }

    private static List<PullTrace.Section> sections(PullDirection way) {
        PullSegments sections = way.sections();
        var traced = new ArrayList<PullTrace.Section>(sections.count);
        double startM = 0;
        for (int i = 0; i < sections.count; i++) {
            PullTrace.Point near = point(way, i, startM);
            startM += sections.lengthM[i];
            PullTrace.Point far = point(way, i + 1, startM);
            traced.add(new PullTrace.Section(
                    kind(sections, i), near, far, sections.turnRad[i], sections.radiusM[i], sections.riseM(i)));
        }
        return traced;
    }

    private static PullTrace.Point point(PullDirection way, int boundary, double fromAnchorM) {
        double cableN = way.passes().cableN(boundary);
        return new PullTrace.Point(way.fromA(fromAnchorM), cableN, way.passes().bodyN(boundary) - cableN);
    }

    private static PullTrace.SectionKind kind(PullSegments sections, int i) {
        if (sections.isStraight(i)) {
            return PullTrace.SectionKind.STRAIGHT;
        }
        if (sections.isPlanBend(i)) {
            return PullTrace.SectionKind.BEND;
        }
        return sections.vertical[i] > 0 ? PullTrace.SectionKind.CREST : PullTrace.SectionKind.SAG;
    }

    private List<PullTrace.FallOff> fallOff(PullDirection way, PullOrder.Turn turn, Friction friction) {
        double totalM = way.sections().totalM();
        var falls = new ArrayList<PullTrace.FallOff>(OUT_RATIOS.length);
        for (double ratio : OUT_RATIOS) {
            double outM = ratio * totalM;
            PullSegments rest = ratio == 0 ? way.sections() : way.sections().without(outM);
            var passes = new TwoPasses(rest, PullDirection.passing(settings));
            passes.run(turn.load(), settings.friction().of(friction));
            falls.add(new PullTrace.FallOff(outM, passes.forces()));
        }
        return falls;
    }

    private static EndPull worst(List<InnerductPull> pulls, SpanEnd pullingEnd) {
        EndPull worst = pulls.get(0).from(pullingEnd);
        for (InnerductPull pull : pulls) {
            EndPull other = pull.from(pullingEnd);
            if (other.tightest().utilizationRatio() > worst.tightest().utilizationRatio()) {
                worst = other;
            }
        }
        return worst;
    }

    private static BetterEnd.Demand demand(List<InnerductPull> pulls, EndPull worst) {
        double mostRatio = 0;
        for (InnerductPull pull : pulls) {
            mostRatio = Math.max(mostRatio, pull.from(worst.pullingEnd()).forceRatio());
        }
        return new BetterEnd.Demand(worst.isPossible(), worst.tightest().utilizationPercent(), mostRatio);
    }
}
