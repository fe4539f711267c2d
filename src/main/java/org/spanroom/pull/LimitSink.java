package org.spanroom.pull;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.spanroom.model.pull.LimitKind;
import org.spanroom.model.pull.LimitUse;

/** What becomes of the limits of one pull as they are calculated. */
interface LimitSink {
    void offer(LimitKind kind, double found, double allowed, double atM);

    /** Keeps the limit that is used most, the first of equals, and which fail. Makes no object until it is asked. */
    final class Tightest implements LimitSink {
        private LimitKind mostKind = LimitKind.SECTION_LENGTH;
        private double mostRatio = -1;
        private double mostFound;
        private double mostAllowed;
        private double mostAtM;
        private final EnumSet<LimitKind> failing = EnumSet.noneOf(LimitKind.class);

        @Override
        public void offer(LimitKind kind, double found, double allowed, double atM) {
            double ratio = kind.ratio(found, allowed);
            if (ratio > 1) {
                failing.add(kind);
            }
            if (ratio > mostRatio) {
                mostKind = kind;
                mostRatio = ratio;
                mostFound = found;
                mostAllowed = allowed;
                mostAtM = atM;
            }
        }

        /** Returns every limit that fails. */
        Set<LimitKind> failing() {
            return failing;
        }

        LimitUse use() {
            return new LimitUse(mostKind, mostFound, mostAllowed, mostAtM);
        }
    }

    /** Keeps, of each kind, the limit that is used most. */
    final class EachKind implements LimitSink {
        private final List<LimitUse> uses = new ArrayList<>();

        @Override
        public void offer(LimitKind kind, double found, double allowed, double atM) {
            var use = new LimitUse(kind, found, allowed, atM);
            uses.removeIf(other -> other.kind() == kind && other.utilizationRatio() < use.utilizationRatio());
            if (uses.stream().noneMatch(other -> other.kind() == kind)) {
                uses.add(use);
            }
        }

        /** Returns them, the most used first. */
        List<LimitUse> uses() {
            return uses.stream()
                    .sorted(Comparator.comparingDouble(LimitUse::utilizationRatio)
                            .reversed()
                            .thenComparing(LimitUse::kind))
                    .toList();
        }
    }
}
