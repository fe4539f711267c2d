package org.spanroom.input;

import java.nio.file.Path;
import java.util.List;

/**
 * A file that is odd or broken in one way, and how reading it must end.
 *
 * @param role what the file is read as: routes, vaults, contents or zones
 * @param maker writes it
 * @param used how many features are to be used
 * @param rejected how many are to be rejected
 * @param words what the findings must say among other things, each as "code: words"; or, for a file that is refused, words of
 *     the one line
 */
record HardCase(String name, String role, Maker maker, boolean refused, int used, int rejected, List<String> words) {
    /** Writes the file into an empty folder and returns it. */
    interface Maker {
        Path write(Path folder) throws Exception;
    }

    static HardCase routes(String name, Maker maker) {
        return new HardCase(name, "routes", maker, false, 0, 0, List.of());
    }

    static HardCase vaults(String name, Maker maker) {
        return new HardCase(name, "vaults", maker, false, 0, 0, List.of());
    }

    static HardCase contents(String name, Maker maker) {
        return new HardCase(name, "contents", maker, false, 0, 0, List.of());
    }

    static HardCase zones(String name, Maker maker) {
        return new HardCase(name, "zones", maker, false, 0, 0, List.of());
    }

    HardCase reads(int usedFeatures, int rejectedFeatures, String... findings) {
        return new HardCase(name, role, maker, false, usedFeatures, rejectedFeatures, List.of(findings));
    }

    HardCase isRefused(String... inTheLine) {
        return new HardCase(name, role, maker, true, 0, 0, List.of(inTheLine));
    }

    @Override
    public String toString() {
        return role + ", " + name;
    }
}
