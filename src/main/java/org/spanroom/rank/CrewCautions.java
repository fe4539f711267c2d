package org.spanroom.rank;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.spanroom.model.Answer;
import org.spanroom.model.effort.VaultAccess;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Service;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.Vault;
import org.spanroom.model.rank.RankedSpan;

/** What a crew has to bear in mind that opens one vault of a span to look at its duct. */
final class CrewCautions {
    private CrewCautions() {}

    /** Returns the cautions, the live cable first. */
    static List<String> of(RankedSpan ranked, Vault vault, VaultAccess access) {
        Span span = ranked.span();
        var cautions = new ArrayList<String>();
        addIf(
                mayBeLive(span.duct().contents()),
                "live cable: hold it still, within its hold force and bend radius",
                cautions);
        addIf(access.isEntered(vault), "confined-space entry", cautions);
        OptionalInt circuits = span.duct().circumstances().circuitsAtRisk();
        addIf(circuits.orElse(0) > 0, "circuits at risk: " + circuits.orElse(0), cautions);
        addIf(isWet(span, vault), "water: pump it where it may go, then test the air again", cautions);
        addIf(access.isInRoadway(vault), "cover in the roadway: traffic control", cautions);
        addIf(isUnderEmbargo(ranked), "embargo: leave the cables as they lie", cautions);
        return cautions;
    }

    private static void addIf(boolean applies, String caution, List<String> cautions) {
        if (applies) {
            cautions.add(caution);
        }
    }

    /** What is not recorded as dead counts as live. */
    private static boolean mayBeLive(Contents contents) {
        return !contents.known() || Services.has(contents, Service.LIVE) || Services.has(contents, Service.UNKNOWN);
    }

    private static boolean isWet(Span span, Vault vault) {
        return span.duct().flooded() || vault.site().water() == Answer.YES;
    }

    /** An embargo in force is a reason whose gate is open: the span would have no rank otherwise. */
    private static boolean isUnderEmbargo(RankedSpan ranked) {
        return ranked.verdict().waived().contains(Gate.EMBARGO.exclusion());
    }
}
