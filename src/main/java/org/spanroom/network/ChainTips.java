package org.spanroom.network;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.spanroom.model.network.Route;
import org.spanroom.model.network.RouteEnds;
import org.spanroom.model.network.SpanEnd;

/**
 * Notes which spans of a chain end where the chain does, so that what the records say of the ends of its routes goes to those spans only.
 *
 * <p>Joints are at no vault, so that of a chain of several routes only its two outermost ends are. A closed chain has none. Where
 * the records name the two vaults of a route in reverse order, what they say of each end belongs to the vault of its name. For use by one thread.
 */
final class ChainTips {
    private final RecordedVaults recorded;
    private final UncutMarks marks = new UncutMarks();
    private List<VaultCrossing> passes = List.of();
    private List<Cut> cuts = List.of();
    private @Nullable Cut first;
    private @Nullable Cut last;
    private boolean firstBack;
    private boolean lastBack;

    ChainTips(RecordedVaults recorded) {
        this.recorded = recorded;
    }

    void clear() {
        passes = List.of();
        cuts = List.of();
        first = null;
        last = null;
    }

    /** Notes where an open chain is cut. */
    void cutAt(List<VaultCrossing> settled, List<Cut> atCuts) {
        passes = settled;
        cuts = atCuts;
    }

    /** Notes the next span along the chain; back where it runs against the chain. */
    void span(Cut before, Cut after, boolean back) {
        if (first == null) {
            first = before;
            firstBack = back;
        }
        last = after;
        lastBack = back;
    }

    /** Returns the spans with what is recorded at the ends of their chain; themselves where nothing is. */
    ChainSpans withFacts(Chain chain, ChainSpans spans) {
        if (!isAnyRecorded(chain)) {
            return spans;
        }
        return EndedSpans.of(spans, chain.pieces().get(0).route().duct(), begin(chain), end(chain), marks);
    }

    private static boolean isAnyRecorded(Chain chain) {
        for (ChainLink piece : chain.pieces()) {
            Route route = piece.route();
            if (!route.ends().equals(RouteEnds.UNKNOWN)
                    || route.duct().contents().hasUncutRecord()) {
                return true;
            }
        }
        return false;
    }

    private ChainTip begin(Chain chain) {
        Cut cut = first;
        if (cut == null || !isSettled(cut, VaultCrossing.FIRST) || cut.fromM() > VaultCrossing.SAME_PLACE_M) {
            return ChainTip.OPEN;
        }
        ChainLink piece = chain.pieces().get(0);
        return tip(chain, piece, cut, firstBack, piece.reversed() ? SpanEnd.B : SpanEnd.A);
    }

    private ChainTip end(Chain chain) {
        Cut cut = last;
        if (cut == null
                || !isSettled(cut, VaultCrossing.LAST)
                || cut.toM() < chain.lengthM() - VaultCrossing.SAME_PLACE_M) {
            return ChainTip.OPEN;
        }
        ChainLink piece = chain.pieces().get(chain.pieces().size() - 1);
        return tip(chain, piece, cut, lastBack, piece.reversed() ? SpanEnd.A : SpanEnd.B);
    }

    private boolean isSettled(Cut cut, int end) {
        return passes.stream().anyMatch(pass -> pass.vault() == cut.vault() && pass.isSettledAt(end));
    }

    private ChainTip tip(Chain chain, ChainLink piece, Cut cut, boolean back, SpanEnd drawn) {
        SpanEnd named = recorded.isSwapped(chain, cuts, piece) ? drawn.opposite() : drawn;
        RouteEnds ends = piece.route().ends();
        return new ChainTip(cut.vault(), back, ends.factsAt(named), ends.uncutAt(named));
    }
}
