package org.spanroom.network;

import java.util.List;
import org.spanroom.model.network.NetworkSettings;

/**
 * Which vaults the records claim for each end of one line, as far as the drawing does not refute them.
 *
 * <p>Records often name the two vaults of a line in reverse order, and a line shorter than the reach has both its vaults in
 * reach of both its ends. There the drawn order decides: the two names are exchanged where they fit better so, by the sum of
 * their distances. A name whose vault is nearer to the line's other end claims nothing, on a line so short that the reach
 * alone explains it, or where the line is drawn to that vault at its other end and only this end names it.
 */
final class RecordedEnds {
    private final NetworkSettings settings;
    private final VaultPlaces places;
    private final Track track;
    private final List<Integer> first;
    private final List<Integer> last;

    /** Takes the vaults of the name at the first vertex, and of that at the last; none where there is no name. */
    RecordedEnds(List<Integer> from, List<Integer> to, NetworkSettings settings, VaultPlaces places, Track track) {
        this.settings = settings;
        this.places = places;
        this.track = track;
        boolean reverse = isReverse(from, to);
        first = reverse ? to : from;
        last = reverse ? from : to;
    }

    private boolean isReverse(List<Integer> from, List<Integer> to) {
        if (from.isEmpty() || to.isEmpty()) {
            return false;
        }
        double asRecordedM = nearestM(from, 0) + nearestM(to, 1);
        double exchangedM = nearestM(to, 0) + nearestM(from, 1);
        return exchangedM < asRecordedM - VaultCrossing.SAME_PLACE_M;
    }

    /** Returns the vaults that may take the first end (side 0) or the last (side 1) by the records. */
    List<Integer> claimed(int side) {
        List<Integer> here = side == 0 ? first : last;
        return here.isEmpty() || isRefuted(here, side == 0 ? last : first, side) ? List.of() : here;
    }

    private boolean isRefuted(List<Integer> here, List<Integer> there, int side) {
        double hereM = nearestM(here, side);
        double thereM = nearestM(here, 1 - side);
        if (thereM >= hereM - VaultCrossing.SAME_PLACE_M) {
            return false;
        }
        double toleranceM = settings.snapToleranceM();
        boolean isShort = track.lengthM() <= 2 * Math.max(settings.recordedVaultReachM(), toleranceM);
        boolean leadsThere = hereM > toleranceM && thereM <= toleranceM && !there.equals(here);
        return isShort || leadsThere;
    }

    private double nearestM(List<Integer> vaults, int side) {
        double placeM = side == 0 ? 0 : track.lengthM();
        double lonDeg = track.lonAt(placeM);
        double latDeg = track.latAt(placeM);
        return vaults.stream()
                .mapToDouble(vault -> places.distanceM(vault, lonDeg, latDeg))
                .min()
                .orElse(Double.POSITIVE_INFINITY);
    }
}
