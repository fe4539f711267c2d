package org.spanroom.model.pull;

import java.util.Locale;
import java.util.Optional;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.network.Unrecoverable;

/** Whether every innerduct of a span can be pulled out of it, and from which end; each answer with its evidence. */
public sealed interface PullOutcome {
    /** Returns the word for this answer in columns. */
    String key();

    /** Returns one phrase for tables and reports, in metric units. */
    default String summary() {
        return summary(UnitSystem.METRIC);
    }

    /** Returns one phrase for people who read such units. */
    String summary(UnitSystem units);

    /** Finds the end that is proposed to pull from. */
    Optional<SpanEnd> findBetterEnd();

    /** Finds why that end is proposed. */
    Optional<EndReason> findEndReason();

    /** Finds the limit that is used most when pulling from the better end. */
    Optional<LimitUse> findTightest();

    /** Finds the failing limit that says no: of the better end where neither is possible, else of the other end. */
    Optional<LimitUse> findFailing();

    default boolean isPossible() {
        return false;
    }

    /** Every innerduct can come out at either end. */
    record FromBoth(SpanEnd better, EndReason reason, LimitUse tightest) implements PullOutcome {
        @Override
        public String key() {
            return "both";
        }

        @Override
        public String summary(UnitSystem units) {
            String why = reason == EndReason.BETTER_SITE ? " for its site" : "";
            return "possible from either end, better from " + better + why + ": " + tightest.summary(units);
        }

        @Override
        public Optional<SpanEnd> findBetterEnd() {
            return Optional.of(better);
        }

        @Override
        public Optional<EndReason> findEndReason() {
            return Optional.of(reason);
        }

        @Override
        public Optional<LimitUse> findTightest() {
            return Optional.of(tightest);
        }

        @Override
        public Optional<LimitUse> findFailing() {
            return Optional.empty();
        }

        @Override
        public boolean isPossible() {
            return true;
        }
    }

    /** Every innerduct can come out at one end, but not at the other. */
    record FromOne(SpanEnd end, LimitUse tightest, LimitUse failsAtOther) implements PullOutcome {
        @Override
        public String key() {
            return end.key();
        }

        @Override
        public String summary(UnitSystem units) {
            return "possible from " + end + " only: from " + end.opposite() + " " + failsAtOther.summary(units);
        }

        @Override
        public Optional<SpanEnd> findBetterEnd() {
            return Optional.of(end);
        }

        @Override
        public Optional<EndReason> findEndReason() {
            return Optional.of(EndReason.ONLY_END);
        }

        @Override
        public Optional<LimitUse> findTightest() {
            return Optional.of(tightest);
        }

        @Override
        public Optional<LimitUse> findFailing() {
            return Optional.of(failsAtOther);
        }

        @Override
        public boolean isPossible() {
            return true;
        }
    }

    /** Some innerduct can come out at neither end, or one fails here and another there. */
    record FromNeither(SpanEnd better, EndReason reason, LimitUse failsAtBetter, LimitUse failsAtOther)
            implements PullOutcome {
        @Override
        public String key() {
            return "neither";
        }

        @Override
        public String summary(UnitSystem units) {
            return "possible from neither end; from " + better + " " + failsAtBetter.summary(units);
        }

        @Override
        public Optional<SpanEnd> findBetterEnd() {
            return Optional.of(better);
        }

        @Override
        public Optional<EndReason> findEndReason() {
            return Optional.of(reason);
        }

        @Override
        public Optional<LimitUse> findTightest() {
            return Optional.of(failsAtBetter);
        }

        @Override
        public Optional<LimitUse> findFailing() {
            return Optional.of(failsAtBetter);
        }
    }

    /** No innerduct is there to be pulled out of a duct. */
    record NothingToPull(Unrecoverable why) implements PullOutcome {
        @Override
        public String key() {
            return "none";
        }

        @Override
        public String summary(UnitSystem units) {
            return String.format(Locale.ROOT, "no innerduct to pull: %s", why.explanation());
        }

        @Override
        public Optional<SpanEnd> findBetterEnd() {
            return Optional.empty();
        }

        @Override
        public Optional<EndReason> findEndReason() {
            return Optional.empty();
        }

        @Override
        public Optional<LimitUse> findTightest() {
            return Optional.empty();
        }

        @Override
        public Optional<LimitUse> findFailing() {
            return Optional.empty();
        }
    }
}
