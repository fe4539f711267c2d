package org.spanroom.model.network;

import java.util.Map;

/**
 * What a kind of vault means for the work there.
 *
 * @param entered whether crews climb into it; a handhole is worked on from the surface
 * @param machineInside whether the pulling machine is in it at the duct mouth; where it must be outside, innerduct and cable
 *     rise out of the vault together
 */
public record VaultKind(boolean entered, boolean machineInside) {
    /** A vault of a kind that is not listed, or not recorded: large enough to be entered and to take the machine. */
    private static final VaultKind LARGE = new VaultKind(true, true);

    /** Returns what a recorded kind means; case is ignored. */
    public static VaultKind of(Map<String, VaultKind> kinds, String recorded) {
        String wanted = recorded.strip();
        for (Map.Entry<String, VaultKind> kind : kinds.entrySet()) {
            if (kind.getKey().equalsIgnoreCase(wanted)) {
                return kind.getValue();
            }
        }
        return LARGE;
    }
}
