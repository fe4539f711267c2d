package org.spanroom.pull;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.spanroom.model.bend.Bend;
import org.spanroom.model.bend.Bends;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.Unrecoverable;
import org.spanroom.model.pull.Beside;
import org.spanroom.model.pull.Friction;
import org.spanroom.model.pull.InnerductPull;
import org.spanroom.model.pull.LimitKind;
import org.spanroom.model.pull.PullAssessment;
import org.spanroom.model.pull.PullSettings;
import org.spanroom.model.pull.PullTrace;

/**
 * Calculates the forces of pulling each innerduct of a span off its live cable, from either end, and the limits they use.
 *
 * <p>Method: two passes over straights and bends in closed form ({@link TwoPasses}), for three states of friction. Both forces
 * are planning figures, uncertain by a factor of two: they rank and they warn, they do not authorize a pull. No object
 * is kept between calls, so that threads may share one assessor.
 */
public final class PullAssessor {
    private final PullSettings settings;
    private final PullSites sites;

    public PullAssessor(PullSettings settings, PullSites sites) {
        this.settings = settings;
        this.sites = sites;
    }

    /** An assessor for whom every vault takes the machine, and none is a better place for it than another. */
    PullAssessor(PullSettings settings) {
        this(settings, PullSites.ALIKE);
    }

    /** Returns forces, limits and the answer for pulling every innerduct of a span, by the friction that settings judge by. */
    public PullAssessment assess(Span span, Bends bends) {
        return assess(span, bends, span.duct().contents().innerducts().size());
    }

    /**
     * Returns forces, limits and the answer for pulling some innerducts of a span; the others stay and are beside them.
     *
     * @param out how many come out, the first in the order of {@link Contents#innerductsByOrderOut}
     */
    public PullAssessment assess(Span span, Bends bends, int out) {
        return assess(span, bends, out, Beside.NONE);
    }

    /**
     * Returns forces, limits and the answer for pulling some innerducts of a span beside which something was placed before.
     *
     * @param out as for {@link #assess(Span, Bends, int)}
     * @param beside what was placed beside the innerducts; it is there during every pull
     */
    public PullAssessment assess(Span span, Bends bends, int out, Beside beside) {
        Optional<Unrecoverable> why = Unrecoverable.of(span.duct());
        if (why.isPresent()) {
            return PullAssessment.nothing(why.get());
        }
        demandWithin("out", out, span.duct());
        SpanPull pull = pull(span, bends, out, beside);
        List<InnerductPull> pulls = pull.pulls();
        return new PullAssessment(
                pull.outcome(pulls),
                settings.judgedBy(),
                pulls,
                warnings(span, bends),
                new Assumptions(settings).of(span, bends));
    }

    /** Returns the calculation of one innerduct where all come out. */
    public PullTrace trace(Span span, Bends bends, int turn, Friction friction) {
        return trace(span, bends, span.duct().contents().innerducts().size(), turn, friction);
    }

    /**
     * Returns the calculation of one innerduct, segment by segment.
     *
     * @param out how many innerducts come out, as for {@link #assess}
     * @param turn the innerduct's place in the order of pulling, from 1
     */
    public PullTrace trace(Span span, Bends bends, int out, int turn, Friction friction) {
        return trace(span, bends, out, Beside.NONE, turn, friction);
    }

    /** Returns the calculation of one innerduct, segment by segment, with something placed beside the innerducts before. */
    public PullTrace trace(Span span, Bends bends, int out, Beside beside, int turn, Friction friction) {
        if (turn < 1 || turn > out) {
            throw new IllegalArgumentException("turn must be from 1 to " + out + ", was " + turn);
        }
        demandWithin("out", out, span.duct());
        return pull(span, bends, out, beside).trace(turn - 1, friction);
    }

    private SpanPull pull(Span span, Bends bends, int out, Beside beside) {
        PullSettings ofDuct = settings.forDuct(span.duct());
        return new SpanPull(span, bends, ofDuct, sites, PullOrder.of(span.duct(), ofDuct, out, beside));
    }

    private static void demandWithin(String name, int out, Duct duct) {
        int innerducts = duct.contents().innerducts().size();
        if (out < 1 || out > innerducts) {
            throw new IllegalArgumentException(name + " must be from 1 to " + innerducts + ", was " + out);
        }
    }

    private Set<LimitKind> warnings(Span span, Bends bends) {
        var warnings = EnumSet.noneOf(LimitKind.class);
        double totalDeg = 0;
        for (Bend bend : bends.list()) {
            totalDeg += bend.deflection().deg();
        }
        if (totalDeg > settings.limits().warnTotalDeg()) {
            warnings.add(LimitKind.TOTAL_BENDS);
        }
        if (span.lengthM() > settings.limits().warnLengthM()) {
            warnings.add(LimitKind.SECTION_LENGTH);
        }
        return warnings;
    }
}
