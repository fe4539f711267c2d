package org.spanroom.network;

/**
 * One coming-by of a line at a vault: a stretch over which the line stays within tolerance of it.
 *
 * <p>All places are lengths along the line. The line is cut at the place nearest to the vault; where a stretch is equally
 * near (a line drawn beside a wall), at the middle of it. Where the line runs inside the vault's footprint, it is cut at
 * both ends of that.
 *
 * @param vault number of the vault
 * @param reachFromM where the line comes within tolerance
 * @param reachToM where it leaves it
 * @param nearFromM first place of least distance
 * @param nearToM last place of least distance
 * @param offsetM the least distance
 * @param insideFromM first place inside the footprint; positive infinity where there is none
 * @param insideToM last place inside the footprint; negative infinity where there is none
 * @param named for which ends of its line the records name this vault: {@link #FIRST}, {@link #LAST}, both or 0
 * @param settled which ends of its chain were found to be at this vault, by the same numbers
 */
record VaultCrossing(
        int vault,
        double reachFromM,
        double reachToM,
        double nearFromM,
        double nearToM,
        double offsetM,
        double insideFromM,
        double insideToM,
        int named,
        int settled) {
    /** The end where a line is drawn from. */
    static final int FIRST = 1;

    /** The end where it is drawn to. */
    static final int LAST = 2;

    /** Two places of a line nearer than this are one: a micrometer, far below any drawing and far above rounding. */
    static final double SAME_PLACE_M = 1e-6;

    static VaultCrossing beside(int vault, double reachFromM, double reachToM, double nearM, double offsetM) {
        return beside(vault, reachFromM, reachToM, nearM, nearM, offsetM);
    }

    static VaultCrossing beside(
            int vault, double reachFromM, double reachToM, double nearFromM, double nearToM, double offsetM) {
        return new VaultCrossing(
                vault,
                reachFromM,
                reachToM,
                nearFromM,
                nearToM,
                offsetM,
                Double.POSITIVE_INFINITY,
                Double.NEGATIVE_INFINITY,
                0,
                0);
    }

    static VaultCrossing inside(int vault, double fromM, double toM) {
        return new VaultCrossing(vault, fromM, toM, fromM, toM, 0, fromM, toM, 0, 0);
    }

    boolean isInside() {
        return insideFromM <= insideToM;
    }

    double cutFromM() {
        return isInside() ? insideFromM : (nearFromM + nearToM) / 2;
    }

    double cutToM() {
        return isInside() ? insideToM : (nearFromM + nearToM) / 2;
    }

    /** Returns true where the line is within tolerance at a place. */
    boolean holds(double placeM) {
        return placeM >= reachFromM - SAME_PLACE_M && placeM <= reachToM + SAME_PLACE_M;
    }

    boolean touches(VaultCrossing other) {
        return reachFromM <= other.reachToM + SAME_PLACE_M && other.reachFromM <= reachToM + SAME_PLACE_M;
    }

    /** Returns the two as one coming-by at one vault. */
    VaultCrossing with(VaultCrossing other) {
        boolean tie = Math.abs(offsetM - other.offsetM) <= SAME_PLACE_M;
        VaultCrossing nearer = other.offsetM < offsetM ? other : this;
        return new VaultCrossing(
                vault,
                Math.min(reachFromM, other.reachFromM),
                Math.max(reachToM, other.reachToM),
                tie ? Math.min(nearFromM, other.nearFromM) : nearer.nearFromM,
                tie ? Math.max(nearToM, other.nearToM) : nearer.nearToM,
                nearer.offsetM,
                Math.min(insideFromM, other.insideFromM),
                Math.max(insideToM, other.insideToM),
                named | other.named,
                settled | other.settled);
    }

    /** Returns this pass as the only cut where another, too close to it, gives way; what is inside either stays inside. */
    VaultCrossing instead(VaultCrossing loser) {
        return new VaultCrossing(
                vault,
                Math.min(reachFromM, loser.reachFromM),
                Math.max(reachToM, loser.reachToM),
                nearFromM,
                nearToM,
                offsetM,
                loser.isInside() ? Math.min(cutFromM(), loser.insideFromM) : insideFromM,
                loser.isInside() ? Math.max(cutToM(), loser.insideToM) : insideToM,
                named,
                settled);
    }

    /** Returns this pass as one that the records name at an end. */
    VaultCrossing namedAt(int end) {
        return new VaultCrossing(
                vault, reachFromM, reachToM, nearFromM, nearToM, offsetM, insideFromM, insideToM, named | end, settled);
    }

    boolean isNamedAt(int end) {
        return (named & end) != 0;
    }

    boolean isSettled() {
        return settled != 0;
    }

    boolean isSettledAt(int end) {
        return (settled & end) != 0;
    }

    /**
     * Returns this pass as that of an end of a chain. The cut moves there: the little that is drawn past the vault belongs
     * to the last span. A pass at both ends takes all between.
     */
    VaultCrossing settledAt(int end, double placeM, double distanceM) {
        boolean stretch = isInside() || isSettled();
        return new VaultCrossing(
                vault,
                Math.min(reachFromM, placeM),
                Math.max(reachToM, placeM),
                isSettled() ? Math.min(nearFromM, placeM) : placeM,
                isSettled() ? Math.max(nearToM, placeM) : placeM,
                distanceM,
                stretch ? Math.min(cutFromM(), placeM) : insideFromM,
                stretch ? Math.max(cutToM(), placeM) : insideToM,
                named,
                settled | end);
    }

    /** Returns this pass on a line that begins {@code startM} before. */
    VaultCrossing shifted(double startM) {
        return new VaultCrossing(
                vault,
                reachFromM + startM,
                reachToM + startM,
                nearFromM + startM,
                nearToM + startM,
                offsetM,
                insideFromM + startM,
                insideToM + startM,
                named,
                settled);
    }

    /** Returns this pass on the same line of a given length, seen from its other end. */
    VaultCrossing reversed(double lengthM) {
        return new VaultCrossing(
                vault,
                lengthM - reachToM,
                lengthM - reachFromM,
                lengthM - nearToM,
                lengthM - nearFromM,
                offsetM,
                lengthM - insideToM,
                lengthM - insideFromM,
                exchanged(named),
                exchanged(settled));
    }

    private static int exchanged(int ends) {
        return (ends & FIRST) << 1 | (ends & LAST) >> 1;
    }
}
