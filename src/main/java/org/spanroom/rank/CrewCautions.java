package org.spanroom.rank;

import java.util.ArrayList;
import java.util.List;
import org.spanroom.model.Answer;
import org.spanroom.model.effort.VaultAccess;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Service;
import org.spanroom.model.network.Vault;
import org.spanroom.model.rank.RankedSpan;

/** Cautions for a crew that opens one vault to look at ducts. */
public final class CrewCautions {
    private CrewCautions() {}

    /** Returns the cautions, the live cable first. */
    static List<String> of(RankedSpan ranked, Vault vault, VaultAccess access) {
        var cautions = new ArrayList<>(of(List.of(ranked.span().duct()), vault, access));
        addIf(isUnderEmbargo(ranked), "embargo: do not disturb the cables", cautions);
        return cautions;
    }

    /** Returns the cautions at a vault where several ducts are looked at. */
    public static List<String> of(List<Duct> ducts, Vault vault, VaultAccess access) {
        var cautions = new ArrayList<String>();
        addIf(
                ducts.stream().anyMatch(duct -> mayBeLive(duct.contents())),
                "live cable: restrain it; do not exceed the hold force or bend tighter than the minimum radius",
                cautions);
        addIf(access.isEntered(vault), "confined-space entry", cautions);
        long circuits = ducts.stream()
                .mapToLong(duct -> duct.circumstances().circuitsAtRisk().orElse(0))
                .sum();
        addIf(circuits > 0, "circuits at risk: " + circuits, cautions);
        addIf(
                ducts.stream().anyMatch(duct -> isWet(duct, vault)),
                "water: discharge it where permitted, then test the air again",
                cautions);
        addIf(access.isInRoadway(vault), "cover in the roadway: traffic control", cautions);
        return cautions;
    }

    private static void addIf(boolean applies, String caution, List<String> cautions) {
        if (applies) {
            cautions.add(caution);
        }
    }

    /** What is not recorded as dead is treated as live. */
    private static boolean mayBeLive(Contents contents) {
        return !contents.known() || Services.has(contents, Service.LIVE) || Services.has(contents, Service.UNKNOWN);
    }

    private static boolean isWet(Duct duct, Vault vault) {
        return duct.flooded() || vault.site().water() == Answer.YES;
    }

    /** An embargo in force is a reason whose gate is open: the span would have no rank otherwise. */
    private static boolean isUnderEmbargo(RankedSpan ranked) {
        return ranked.verdict().waived().contains(Gate.EMBARGO.exclusion());
    }
}
