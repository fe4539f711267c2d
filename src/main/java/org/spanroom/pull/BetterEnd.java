package org.spanroom.pull;

import org.spanroom.model.network.Span;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.network.Vault;
import org.spanroom.model.pull.EndReason;

/**
 * The end that is proposed to pull from: the possible one; of two the one whose tightest limit is used less, unless the other is a
 * better place for the machine and its tightest limit is used hardly more.
 *
 * <p>Which end of a span's line comes first does not matter: what decides last is the name of the vault.
 */
record BetterEnd(SpanEnd end, EndReason reason) {
    /** Differences up to this share are rounding. */
    private static final double ROUNDING_RATIO = 1e-9;

    /**
     * What pulling at one end asks for.
     *
     * @param possible whether no limit fails
     * @param usedPercent how far the tightest limit of any innerduct is used
     * @param forceRatio largest force over what is allowed for it
     */
    record Demand(boolean possible, double usedPercent, double forceRatio) {}

    /** @param points by how many points of percent the better place may be used more */
    static BetterEnd of(Span span, Demand a, Demand b, PullSites sites, double points) {
        if (a.possible() != b.possible()) {
            return new BetterEnd(a.possible() ? SpanEnd.A : SpanEnd.B, EndReason.ONLY_END);
        }
        if (a.possible() && isPreferred(span.from(), span.to(), a, b, sites, points)) {
            return new BetterEnd(SpanEnd.A, EndReason.BETTER_SITE);
        }
        if (a.possible() && isPreferred(span.to(), span.from(), b, a, sites, points)) {
            return new BetterEnd(SpanEnd.B, EndReason.BETTER_SITE);
        }
        int used = compare(a.usedPercent(), b.usedPercent());
        if (used != 0) {
            return new BetterEnd(used < 0 ? SpanEnd.A : SpanEnd.B, EndReason.LEAST_USED);
        }
        int force = compare(a.forceRatio(), b.forceRatio());
        if (force != 0) {
            return new BetterEnd(force < 0 ? SpanEnd.A : SpanEnd.B, EndReason.LESS_FORCE);
        }
        boolean firstByName = span.from().id().compareTo(span.to().id()) <= 0;
        return new BetterEnd(firstByName ? SpanEnd.A : SpanEnd.B, EndReason.BOTH_EQUAL);
    }

    /** Returns whether the site decides for one end, whose limits are used no less than those of the other. */
    private static boolean isPreferred(
            Vault vault, Vault other, Demand here, Demand there, PullSites sites, double points) {
        return sites.isBetter(vault, other)
                && compare(here.usedPercent(), there.usedPercent()) >= 0
                && compare(here.usedPercent(), there.usedPercent() + points) <= 0;
    }

    private static int compare(double one, double other) {
        return Math.abs(one - other) <= ROUNDING_RATIO * Math.max(one, other) ? 0 : Double.compare(one, other);
    }
}
