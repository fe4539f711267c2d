package org.spanroom.network;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Keeps one of several cuts where they are so close along a line that what is between them would be no span.
 *
 * <p>The vault of a line's end goes first ({@link LineEnds}), then the one nearest to the line, then the one that the records
 * name, then the one with the smaller name; each that is kept removes those closer to it than the least span, measured
 * along the line. The span on either side then ends at the vault that is kept, so that the way through stays whole. The
 * choice depends neither on the line's direction nor on the order of the file.
 */
final class CloseCuts {
    private static final Comparator<VaultCrossing> BY_RIGHT = Comparator.comparing(
                    (VaultCrossing pass) -> !pass.isSettled())
            .thenComparingLong(pass -> LineEnds.millimeters(pass.offsetM()))
            .thenComparing(pass -> pass.named() == 0)
            .thenComparingInt(VaultCrossing::vault)
            .thenComparingDouble(VaultCrossing::cutFromM);

    /** Receives each cut that gave way to another. */
    interface Sink {
        void gaveWay(VaultCrossing loser, VaultCrossing winner);
    }

    private final double minimumM;
    private final Sink sink;

    CloseCuts(double minimumM, Sink sink) {
        this.minimumM = minimumM - VaultCrossing.SAME_PLACE_M;
        this.sink = sink;
    }

    /** Returns those of the cuts, given in order along the line, that are kept. */
    List<VaultCrossing> standing(List<VaultCrossing> inOrder) {
        List<VaultCrossing> standing = new ArrayList<>(inOrder.size());
        int from = 0;
        double reachedM = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < inOrder.size(); i++) {
            if (i > from && inOrder.get(i).cutFromM() - reachedM >= minimumM) {
                choose(inOrder.subList(from, i), standing);
                from = i;
            }
            reachedM = Math.max(reachedM, inOrder.get(i).cutToM());
        }
        choose(inOrder.subList(from, inOrder.size()), standing);
        return standing;
    }

    private void choose(List<VaultCrossing> cluster, List<VaultCrossing> standing) {
        if (cluster.size() <= 1) {
            standing.addAll(cluster);
            return;
        }
        List<VaultCrossing> chosen = new ArrayList<>();
        for (VaultCrossing candidate : cluster.stream().sorted(BY_RIGHT).toList()) {
            int rival = nearestRival(candidate, chosen);
            if (rival < 0) {
                chosen.add(candidate);
            } else {
                VaultCrossing winner = chosen.get(rival);
                chosen.set(rival, winner.instead(candidate));
                if (winner.vault() != candidate.vault()) {
                    sink.gaveWay(candidate, winner);
                }
            }
        }
        chosen.sort(Chain.ALONG);
        standing.addAll(chosen);
    }

    private int nearestRival(VaultCrossing candidate, List<VaultCrossing> chosen) {
        int nearest = -1;
        double leastM = minimumM;
        for (int i = 0; i < chosen.size(); i++) {
            double gapM = gapM(candidate, chosen.get(i));
            if (gapM < leastM) {
                leastM = gapM;
                nearest = i;
            }
        }
        return nearest;
    }

    private static double gapM(VaultCrossing a, VaultCrossing b) {
        return Math.max(a.cutFromM() - b.cutToM(), b.cutFromM() - a.cutToM());
    }
}
