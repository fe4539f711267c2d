package org.spanroom.model.permit;

import java.util.ArrayList;
import java.util.List;
import org.spanroom.model.Check;

/**
 * What work needs inside and outside of zones: some permits always, others by what the two vaults of the span are like. Each list holds
 * keys of permits.
 *
 * @param recovery what recovery always needs
 * @param recoveryAtVaultRoadway what it needs where the cover of a vault is in the roadway, or it is not recorded what it is in
 * @param recoveryAtVaultOffRoadway what it needs where the cover of a vault is beside the roadway
 * @param recoveryEntered what it needs where crews enter a vault
 * @param recoveryPumped what it needs where water is pumped out of a vault or out of the duct
 * @param newBuild what a new build on the same path always needs
 * @param newBuildAtVaultRoadway as for recovery, for a new build into the same two vaults
 * @param newBuildAtVaultOffRoadway as for recovery
 * @param newBuildEntered as for recovery
 * @param newBuildPumped what a new build needs where water is pumped out of a vault; the old duct stays as it is
 * @param recoveryLeadDays days from asking for the permits of recovery to having them
 * @param newBuildLeadDays the same for a new build
 */
public record WorkPermits(
        List<String> recovery,
        List<String> recoveryAtVaultRoadway,
        List<String> recoveryAtVaultOffRoadway,
        List<String> recoveryEntered,
        List<String> recoveryPumped,
        List<String> newBuild,
        List<String> newBuildAtVaultRoadway,
        List<String> newBuildAtVaultOffRoadway,
        List<String> newBuildEntered,
        List<String> newBuildPumped,
        int recoveryLeadDays,
        int newBuildLeadDays) {
    public WorkPermits {
        recovery = PermitSettings.keys("recovery", recovery);
        recoveryAtVaultRoadway = PermitSettings.keys("recoveryAtVaultRoadway", recoveryAtVaultRoadway);
        recoveryAtVaultOffRoadway = PermitSettings.keys("recoveryAtVaultOffRoadway", recoveryAtVaultOffRoadway);
        recoveryEntered = PermitSettings.keys("recoveryEntered", recoveryEntered);
        recoveryPumped = PermitSettings.keys("recoveryPumped", recoveryPumped);
        newBuild = PermitSettings.keys("newBuild", newBuild);
        newBuildAtVaultRoadway = PermitSettings.keys("newBuildAtVaultRoadway", newBuildAtVaultRoadway);
        newBuildAtVaultOffRoadway = PermitSettings.keys("newBuildAtVaultOffRoadway", newBuildAtVaultOffRoadway);
        newBuildEntered = PermitSettings.keys("newBuildEntered", newBuildEntered);
        newBuildPumped = PermitSettings.keys("newBuildPumped", newBuildPumped);
        Check.notNegative("recoveryLeadDays", recoveryLeadDays);
        Check.notNegative("newBuildLeadDays", newBuildLeadDays);
    }

    /**
     * What of a span decides which permits work there needs.
     *
     * @param inRoadway whether the cover of at least one vault is in the roadway, or it is not recorded what it is in
     * @param offRoadway whether the cover of at least one vault is beside the roadway
     * @param entered whether crews enter at least one vault
     * @param vaultPumped whether water is recorded in at least one vault
     * @param ductPumped whether the duct is recorded as flooded
     */
    public record Site(
            boolean inRoadway, boolean offRoadway, boolean entered, boolean vaultPumped, boolean ductPumped) {}

    /** Returns what recovery needs at a site; a permit may occur twice. */
    public List<String> forRecovery(Site site) {
        var needs = new ArrayList<>(recovery);
        addIf(site.inRoadway(), recoveryAtVaultRoadway, needs);
        addIf(site.offRoadway(), recoveryAtVaultOffRoadway, needs);
        addIf(site.entered(), recoveryEntered, needs);
        addIf(site.vaultPumped() || site.ductPumped(), recoveryPumped, needs);
        return needs;
    }

    /** Returns what a new build into the same vaults needs; a permit may occur twice. */
    public List<String> forNewBuild(Site site) {
        var needs = new ArrayList<>(newBuild);
        addIf(site.inRoadway(), newBuildAtVaultRoadway, needs);
        addIf(site.offRoadway(), newBuildAtVaultOffRoadway, needs);
        addIf(site.entered(), newBuildEntered, needs);
        addIf(site.vaultPumped(), newBuildPumped, needs);
        return needs;
    }

    private static void addIf(boolean applies, List<String> permits, List<String> needs) {
        if (applies) {
            needs.addAll(permits);
        }
    }
}
