package org.spanroom.pull;

import java.util.Map;
import java.util.function.Predicate;
import org.spanroom.model.FewAnswers;
import org.spanroom.model.network.Vault;
import org.spanroom.model.network.VaultKind;

/** What vaults mean for the pulling machine. Safe for use by several threads. */
public final class PullSites {
    /** Every vault takes the machine, and none is a better place for it than another. */
    static final PullSites ALIKE = new PullSites(Map.of(), vault -> true);

    private final FewAnswers<String, VaultKind> kinds;
    private final Predicate<Vault> inRoadway;

    /**
     * Creates the sites.
     *
     * @param kinds what each recorded kind means, see {@link VaultKind#of}
     * @param inRoadway whether a vault's cover is in the roadway; doubt is treated as yes
     */
    public PullSites(Map<String, VaultKind> kinds, Predicate<Vault> inRoadway) {
        Map<String, VaultKind> known = Map.copyOf(kinds);
        this.kinds = new FewAnswers<>(recorded -> VaultKind.of(known, recorded));
        this.inRoadway = inRoadway;
    }

    /** Returns whether the machine is in a vault, so that the innerduct is slit at the duct mouth. */
    boolean machineInside(Vault vault) {
        return kinds.of(vault.kind()).machineInside();
    }

    /**
     * Returns whether one vault is a better place for the machine than another: in one respect, off the roadway or taking the machine,
     * and worse in none.
     */
    boolean isBetter(Vault one, Vault other) {
        int roadway = Boolean.compare(inRoadway.test(other), inRoadway.test(one));
        int access = Boolean.compare(machineInside(one), machineInside(other));
        return roadway >= 0 && access >= 0 && roadway + access > 0;
    }
}
