package org.spanroom.model.pull;

import java.util.List;
import org.spanroom.model.network.SpanEnd;

/** The calculation of one innerduct's pull in one state of friction, segment by segment, from both ends. */
public record PullTrace(InnerductPull pull, Friction friction, Way fromA, Way fromB) {
    /** What a span's way between two points of a trace is. */
    public enum SectionKind {
        STRAIGHT,
        BEND,
        CREST,
        SAG
    }

    /**
     * One way of pulling.
     *
     * @param sections from the anchor to the pulling end
     * @param fallOff both forces as length comes out: start, quarter points, end
     * @param limits every limit that applies, breakaway included, the most used first
     */
    public record Way(SpanEnd pullingEnd, List<Section> sections, List<FallOff> fallOff, List<LimitUse> limits) {
        public Way {
            sections = List.copyOf(sections);
            fallOff = List.copyOf(fallOff);
            limits = List.copyOf(limits);
        }
    }

    /**
     * A straight or a bend between two boundaries.
     *
     * @param near the boundary towards the anchor
     * @param far the boundary towards the pulling end
     * @param turnRad what the section turns by; 0 for a straight
     * @param radiusM radius of the turn; 0 for a straight
     * @param riseM how far it rises towards the pulling end
     */
    public record Section(SectionKind kind, Point near, Point far, double turnRad, double radiusM, double riseM) {}

    /**
     * Forces at one boundary.
     *
     * @param atM distance along the span from end A
     * @param cableN tension of the cables, all together
     * @param innerductN tension of the innerduct
     */
    public record Point(double atM, double cableN, double innerductN) {
        /** Returns the sum of both, with which a bend is pressed on. */
        public double bodyN() {
            return cableN + innerductN;
        }
    }

    /**
     * Both forces when part of the innerduct is out.
     *
     * @param outM length that is out
     */
    public record FallOff(double outM, PullForces forces) {}
}
