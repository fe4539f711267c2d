package org.spanroom.model.permit;

import java.util.List;
import java.util.Set;
import org.spanroom.model.Check;

/**
 * What the permit settings say of one kind of zone. Permits are keys, such as {@code lane_closure}.
 *
 * @param words how the owner's data call the kind, in addition to its key
 * @param recoveryAtVault permits that recovering needs where one of the span's vaults is in the zone: crews work there
 * @param recoveryAlong permits that recovering needs where the duct alone runs through it
 * @param newBuild permits that a new build needs in the zone, in addition to those that it needs everywhere
 * @param rules what else applies in it
 * @param recoveryLeadDays days from asking for the permits of recovering to having them
 * @param newBuildLeadDays the same for a new build
 */
public record ZoneKind(
        List<String> words,
        List<String> recoveryAtVault,
        List<String> recoveryAlong,
        List<String> newBuild,
        Set<ZoneRule> rules,
        int recoveryLeadDays,
        int newBuildLeadDays) {
    /** A kind without any rule. */
    public static final ZoneKind NONE = new ZoneKind(List.of(), List.of(), List.of(), List.of(), Set.of(), 0, 0);

    public ZoneKind {
        words = List.copyOf(words);
        rules = Set.copyOf(rules);
        recoveryAtVault = PermitSettings.keys("recoveryAtVault", recoveryAtVault);
        recoveryAlong = PermitSettings.keys("recoveryAlong", recoveryAlong);
        newBuild = PermitSettings.keys("newBuild", newBuild);
        Check.notNegative("recoveryLeadDays", recoveryLeadDays);
        Check.notNegative("newBuildLeadDays", newBuildLeadDays);
    }
}
