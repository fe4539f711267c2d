package org.spanroom.model.program;

import java.util.Optional;

/**
 * Why no way joins two vaults.
 *
 * @param isJoined whether sections join them, whatever these take
 * @param widestCables the most cables that can go together on any way between them, whatever is recovered or built; 0 where some section
 *     of every way takes none, or no sections join them
 * @param ends where the gap is narrowest; empty where sections join the vaults, or no lines are recorded
 */
public record Gap(boolean isJoined, int widestCables, Optional<Ends> ends) {
    /**
     * The nearest ends on both sides of a gap.
     *
     * @param from number of the vault that can be reached from the first one and is nearest to those that can be reached from the other
     * @param to number of the vault on the other side
     * @param gapM distance between these two; 0 where they are at one place
     */
    public record Ends(int from, int to, double gapM) {}
}
