package org.spanroom.network;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import org.spanroom.finding.FindingCode;
import org.spanroom.model.ValueSource;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.NetworkSettings;
import org.spanroom.model.network.Route;
import org.spanroom.model.network.Vault;

/**
 * Cuts one chain at its vaults. For use by one thread.
 *
 * <p>Every meter of the chain goes either into a span or into a remainder that a finding names: before the first vault and
 * after the last, inside a footprint, or too short between two cuts. A span runs as the first-read of its routes is drawn.
 */
final class ChainCutter {
    private final NetworkSettings settings;
    private final VaultPlaces places;
    private final VaultSightings sightings;
    private final NetworkFindings findings;
    private final RecordedVaults recorded;
    private final CloseCuts closeCuts;
    private final LineEnds lineEnds;
    private final SpanLine line = new SpanLine(new GroundStep());
    private final RecentLines recent = new RecentLines();
    private Chain chain = new Chain(List.of(), false, 0);
    private final ChainTips tips;
    private final List<JoinedSpans.Joined> joined = new ArrayList<>();
    private final RoutePacker packer;
    private CompensatedSum drawn = new CompensatedSum();
    private final Remainders remainders;

    /**
     * What a chain gave.
     *
     * @param drawnM drawn length of all spans
     * @param remainderM drawn length that is not assigned to a span
     */
    record Cutting(ChainSpans spans, double drawnM, double remainderM) {}

    ChainCutter(CuttingContext context, CloseCuts.Sink tooClose) {
        settings = context.settings();
        places = context.places();
        sightings = context.sightings();
        findings = context.findings();
        recorded = context.recorded();
        closeCuts = new CloseCuts(settings.minimumSpanM(), tooClose);
        lineEnds = new LineEnds(settings, places);
        packer = new RoutePacker(places.vaults());
        tips = new ChainTips(recorded);
        remainders = new Remainders(settings, places, findings);
    }

    Cutting cut(Chain next) {
        chain = next;
        remainders.begin(chain);
        joined.clear();
        drawn = new CompensatedSum();
        packer.clear();
        tips.clear();
        List<VaultCrossing> passes = chain.passes();
        if (passes.isEmpty()) {
            leaveWhole();
        } else if (chain.closed()) {
            cutRound(fromLargestGap(passes));
        } else {
            cutOpen(lineEnds.settle(chain, passes));
        }
        ChainSpans spans = isOneRoute() ? packer.spans(chain.pieces().get(0).route()) : new JoinedSpans(joined);
        return new Cutting(tips.withFacts(chain, spans), drawn.value(), remainders.lengthM());
    }

    private boolean isOneRoute() {
        return chain.pieces().size() == 1;
    }

    private void leaveWhole() {
        chain.round().forEach(piece -> findings.routeWithoutVault(piece, chain.closed()));
        remainders.add(chain.lengthM());
        recorded.compare(chain, List.of());
    }

    private void cutOpen(List<VaultCrossing> passes) {
        remainders.setPasses(passes);
        List<Cut> cuts = Cut.of(standing(passes));
        tips.cutAt(passes, cuts);
        Cut first = cuts.get(0);
        if (first.fromM() > 0) {
            remainders.leaveEnd(0, first.fromM(), 0, first);
        }
        double reachedM = walk(cuts);
        if (reachedM < chain.lengthM()) {
            remainders.leaveEnd(reachedM, chain.lengthM(), chain.lengthM(), cuts.get(cuts.size() - 1));
        }
        recorded.compare(chain, cuts);
    }

    /** Returns the passes that cut; of a line too short for a span those of its two ends, so that the finding names the two vaults that it is between. */
    private List<VaultCrossing> standing(List<VaultCrossing> passes) {
        boolean shorter = isTooShort(chain.lengthM());
        List<VaultCrossing> ends =
                shorter ? passes.stream().filter(VaultCrossing::isSettled).toList() : List.of();
        return ends.size() == 2 ? ends : closeCuts.standing(passes);
    }

    private boolean isTooShort(double meters) {
        return meters < settings.minimumSpanM() - VaultCrossing.SAME_PLACE_M;
    }

    private void cutRound(List<VaultCrossing> passes) {
        remainders.setPasses(passes);
        List<Cut> cuts = Cut.of(closeCuts.standing(passes));
        List<Cut> round = new ArrayList<>(cuts);
        Cut again = cuts.get(0).shifted(chain.lengthM());
        round.add(new Cut(again.vault(), again.fromM(), again.fromM()));
        walk(round);
        recorded.compare(chain, cuts);
    }

    /** Goes from the first cut to the last; returns the place after it. */
    private double walk(List<Cut> cuts) {
        double reachedM = cuts.get(0).fromM();
        Cut before = cuts.get(0);
        for (Cut cut : cuts) {
            if (cut.fromM() > reachedM) {
                between(before, cut, reachedM, cut.fromM());
            }
            double fromM = Math.max(reachedM, cut.fromM());
            if (cut.toM() > fromM) {
                remainders.leaveInside(cut, fromM, cut.toM());
            }
            reachedM = Math.max(fromM, cut.toM());
            before = cut;
        }
        return reachedM;
    }

    /** Turns the passes of a closed chain so that they begin after the longest stretch without one. */
    private List<VaultCrossing> fromLargestGap(List<VaultCrossing> passes) {
        int first = 0;
        int count = passes.size();
        double widestM = passes.get(0).cutFromM()
                + chain.lengthM()
                - passes.get(count - 1).cutToM();
        for (int i = 1; i < count; i++) {
            double gapM = passes.get(i).cutFromM() - passes.get(i - 1).cutToM();
            if (gapM > widestM) {
                widestM = gapM;
                first = i;
            }
        }
        List<VaultCrossing> turned = new ArrayList<>(passes.subList(first, count));
        passes.subList(0, first).forEach(pass -> turned.add(pass.shifted(chain.lengthM())));
        return turned;
    }

    private void between(Cut before, Cut after, double fromM, double toM) {
        if (isTooShort(toM - fromM)) {
            remainders.leaveShort(before.vault(), after.vault(), fromM, toM);
            return;
        }
        double turnsM = chain.closed() && fromM >= chain.lengthM() ? chain.lengthM() : 0;
        span(before, after, fromM - turnsM, toM - turnsM);
    }

    private Vault vault(Cut cut) {
        return places.vault(cut.vault());
    }

    private void span(Cut before, Cut after, double fromM, double toM) {
        List<ChainLink> pieces = chain.between(fromM, toM);
        ChainLink lead =
                pieces.stream().min(Comparator.comparingInt(ChainLink::number)).orElseThrow();
        boolean back = lead.reversed();
        List<ChainLink> ordered = back ? reversed(pieces) : pieces;
        line.clear();
        ordered.forEach(piece -> piece.copy(Math.max(fromM, piece.startM()), Math.min(toM, piece.endM()), back, line));
        reportJoints(ordered, back);
        Cut from = back ? after : before;
        Cut to = back ? before : after;
        tips.span(before, after, back);
        add(from, to, ordered, toM - fromM, lengthM(pieces, fromM, toM));
    }

    /** Returns the duct as the piece has it of which least had to be assumed; of equals the first. */
    private static Duct bestRecorded(List<ChainLink> pieces) {
        return pieces.stream()
                .map(piece -> piece.route().duct())
                .min(Comparator.comparingInt(duct -> duct.assumed().size()))
                .orElseThrow();
    }

    private void add(Cut fromCut, Cut toCut, List<ChainLink> pieces, double drawnM, double lengthM) {
        drawn.add(drawnM);
        var ends = new RoutePacker.Ends(
                fromCut.vault(),
                toCut.vault(),
                lengthM,
                drawnM,
                places.distanceM(fromCut.vault(), line.firstLonDeg(), line.firstLatDeg()),
                places.distanceM(toCut.vault(), line.lastLonDeg(), line.lastLatDeg()));
        if (isOneRoute()) {
            packer.add(ends, line, pieces.get(0).route().lonLat());
        } else {
            joined.add(joined(ends, pieces));
        }
        sightings.addEnd(fromCut.vault());
        sightings.addEnd(toCut.vault());
        if (fromCut.vault() == toCut.vault()) {
            findings.route(
                    FindingCode.LOOP_TO_SAME_VAULT,
                    pieces.get(0).route(),
                    NetworkFindings.meters(drawnM) + " from vault "
                            + vault(fromCut).id() + " back to the same vault",
                    line.firstLonDeg(),
                    line.firstLatDeg());
        }
    }

    private JoinedSpans.Joined joined(RoutePacker.Ends ends, List<ChainLink> pieces) {
        Route first = pieces.get(0).route();
        return new JoinedSpans.Joined(
                first.duct().id(),
                KeptFields.together(bestRecorded(pieces), pieces),
                routeIds(pieces),
                places.vault(ends.fromVault()),
                places.vault(ends.toVault()),
                recent.of(line),
                ends,
                first.positionQuality());
    }

    private static List<ChainLink> reversed(List<ChainLink> pieces) {
        List<ChainLink> back = new ArrayList<>(pieces);
        Collections.reverse(back);
        return back;
    }

    private static List<String> routeIds(List<ChainLink> pieces) {
        List<String> ids = new ArrayList<>();
        for (int i = 0; i < pieces.size(); i++) {
            if (i == 0 || pieces.get(i).number() != pieces.get(i - 1).number()) {
                ids.add(pieces.get(i).route().id());
            }
        }
        return ids;
    }

    /** Returns the length that counts: where recorded lengths do, each route's is spread evenly over its drawn length. */
    private double lengthM(List<ChainLink> pieces, double fromM, double toM) {
        if (settings.lengths() == ValueSource.DRAWN) {
            return toM - fromM;
        }
        double lengthM = 0;
        for (ChainLink piece : pieces) {
            double partM = Math.min(toM, piece.endM()) - Math.max(fromM, piece.startM());
            double recordedM = piece.route().recordedLengthM().orElse(0);
            lengthM += recordedM > 0 ? partM * (recordedM / piece.lengthM()) : partM;
        }
        return lengthM;
    }

    private void reportJoints(List<ChainLink> pieces, boolean back) {
        for (int i = 1; i < pieces.size(); i++) {
            Route before = pieces.get(i - 1).route();
            ChainLink piece = pieces.get(i);
            double placeM = back ? piece.endM() : piece.startM();
            for (var difference :
                    DuctDifferences.between(before.duct(), piece.route().duct())) {
                findings.field(
                        FindingCode.ATTRIBUTES_CHANGE_AT_JOINT,
                        before,
                        difference.term(),
                        difference.before() + " becomes " + difference.after() + " on route "
                                + piece.route().id() + "; the span uses the first",
                        piece.lonAt(placeM),
                        piece.latAt(placeM));
            }
        }
    }
}
