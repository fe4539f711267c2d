package org.spanroom.network;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.spanroom.finding.FindingCode;
import org.spanroom.model.Term;
import org.spanroom.model.ValueSource;
import org.spanroom.model.network.IdKey;
import org.spanroom.model.network.NetworkSettings;
import org.spanroom.model.network.Route;

/**
 * The vaults that the records name at the ends of routes, against those where the ends lie.
 *
 * <p>An end inside a chain is at no vault: there the name is right if it is that of the next vault beyond, since pieces of a
 * duct often carry the vaults of the whole. Where the records count, the named vault takes the end if it is within tolerance
 * or reach of it, whatever else is nearer, unless the drawing refutes the record ({@link RecordedEnds}). Where the drawing counts,
 * the records decide between vaults that lie equally near.
 */
final class RecordedVaults {
    private final NetworkSettings settings;
    private final VaultPlaces places;
    private final NetworkFindings findings;
    private final Map<String, List<Integer>> numbers;
    private Optional<Map<String, List<Integer>>> alike = Optional.empty();

    RecordedVaults(List<Route> routes, NetworkSettings settings, VaultPlaces places, NetworkFindings findings) {
        this.settings = settings;
        this.places = places;
        this.findings = findings;
        boolean any = routes.stream().anyMatch(RecordedVaults::namesAny);
        numbers = any ? places.numbersById() : Map.of();
    }

    private static boolean namesAny(Route route) {
        return route.fromVaultId().isPresent() || route.toVaultId().isPresent();
    }

    private static Optional<String> nameAt(Route route, int side) {
        return side == 0 ? route.fromVaultId() : route.toVaultId();
    }

    /** Returns the vaults of a name as it is written or, where there is none, the only one that is spelled otherwise. */
    private List<Integer> named(Optional<String> id) {
        if (id.isEmpty()) {
            return List.of();
        }
        List<Integer> exact = numbers.getOrDefault(id.get(), List.of());
        return exact.isEmpty() ? alike().getOrDefault(IdKey.of(id.get()), List.of()) : exact;
    }

    /** Only where a name is not found as it is written; without those that several vaults could be. */
    private synchronized Map<String, List<Integer>> alike() {
        if (alike.isEmpty()) {
            var byKey = new HashMap<String, List<Integer>>();
            numbers.forEach((name, vaults) -> byKey.merge(IdKey.of(name), vaults, (one, other) -> List.of()));
            alike = Optional.of(byKey);
        }
        return alike.get();
    }

    /** Returns the passes with those marked that the records name, and with those in reach where the records count. */
    List<VaultCrossing> decide(Route route, Track track, List<VaultCrossing> passes) {
        if (numbers.isEmpty() || !namesAny(route)) {
            return passes;
        }
        var ends = new RecordedEnds(named(route.fromVaultId()), named(route.toVaultId()), settings, places, track);
        List<VaultCrossing> decided = new ArrayList<>(passes);
        for (int side = 0; side < 2; side++) {
            decideEnd(side, ends.claimed(side), track, decided);
        }
        return decided;
    }

    private void decideEnd(int side, List<Integer> claimed, Track track, List<VaultCrossing> passes) {
        int end = side == 0 ? VaultCrossing.FIRST : VaultCrossing.LAST;
        double endM = side == 0 ? 0 : track.lengthM();
        boolean passed = false;
        for (int i = 0; i < passes.size(); i++) {
            VaultCrossing pass = passes.get(i);
            if (!claimed.contains(pass.vault())) {
                continue;
            }
            if (pass.holds(endM)) {
                passes.set(i, pass.namedAt(end));
            }
            // a line drawn past its vault is at the vault where it passes it
            passed |= Math.abs(pass.cutFromM() - endM) <= 2 * settings.recordedVaultReachM() || pass.holds(endM);
        }
        if (!passed && settings.vaults() == ValueSource.RECORDED) {
            inReach(claimed, track, endM)
                    .ifPresent(vault ->
                            passes.add(VaultCrossing.beside(vault, endM, endM, endM, distance(vault, track, endM))
                                    .namedAt(end)));
        }
    }

    private OptionalInt inReach(List<Integer> candidates, Track track, double endM) {
        return candidates.stream()
                .filter(vault -> distance(vault, track, endM) <= settings.recordedVaultReachM())
                .min(Comparator.comparingDouble((Integer vault) -> distance(vault, track, endM))
                        .thenComparingInt(vault -> vault))
                .map(OptionalInt::of)
                .orElse(OptionalInt.empty());
    }

    private double distance(int vault, Track track, double placeM) {
        return places.distanceM(vault, track.lonAt(placeM), track.latAt(placeM));
    }

    /** Reports where the cuts of a chain disagree with the records. */
    void compare(Chain chain, List<Cut> ofChain) {
        if (chain.round().stream().noneMatch(piece -> namesAny(piece.route()))) {
            return;
        }
        var cuts = new CutOrder(ofChain);
        for (ChainLink piece : chain.round()) {
            Route route = piece.route();
            if (!namesAny(route)) {
                continue;
            }
            OptionalInt atFirst = vaultBeyond(chain, cuts, piece, 0);
            OptionalInt atLast = vaultBeyond(chain, cuts, piece, 1);
            if (isSwapped(route, atFirst, atLast)) {
                place(
                        FindingCode.RECORDED_VAULT_DIFFERS,
                        piece,
                        0,
                        "the recorded vaults are swapped: the line is drawn from " + name(atFirst) + " to "
                                + name(atLast) + "; the drawn order was used");
            } else {
                compareEnd(piece, 0, atFirst);
                compareEnd(piece, 1, atLast);
            }
        }
    }

    /** Returns whether the records name the two vaults of a piece in reverse order. */
    boolean isSwapped(Chain chain, List<Cut> ofChain, ChainLink piece) {
        var cuts = new CutOrder(ofChain);
        return isSwapped(piece.route(), vaultBeyond(chain, cuts, piece, 0), vaultBeyond(chain, cuts, piece, 1));
    }

    private boolean isSwapped(Route route, OptionalInt atFirst, OptionalInt atLast) {
        return atFirst.isPresent()
                && atLast.isPresent()
                && atFirst.getAsInt() != atLast.getAsInt()
                && named(route.fromVaultId()).contains(atLast.getAsInt())
                && named(route.toVaultId()).contains(atFirst.getAsInt())
                && !named(route.fromVaultId()).contains(atFirst.getAsInt());
    }

    private void compareEnd(ChainLink piece, int side, OptionalInt actual) {
        Optional<String> name = nameAt(piece.route(), side);
        if (name.isEmpty()) {
            return;
        }
        List<Integer> candidates = named(name);
        if (candidates.isEmpty()) {
            place(
                    FindingCode.RECORDED_VAULT_UNKNOWN,
                    piece,
                    side,
                    "recorded vault " + name.get() + " is not in the vaults layer");
        } else if (actual.isEmpty() || !candidates.contains(actual.getAsInt())) {
            double endM = side == 0 ? 0 : piece.lengthM();
            double meters = candidates.stream()
                    .mapToDouble(vault -> distance(vault, piece.track(), endM))
                    .min()
                    .orElseThrow();
            place(
                    FindingCode.RECORDED_VAULT_DIFFERS,
                    piece,
                    side,
                    "the recorded vault is " + name.get() + ", "
                            + NetworkFindings.meters(meters) + " from the line's end; "
                            + (actual.isEmpty() ? "no vault is drawn there" : "the drawn vault is " + name(actual))
                            + (isAtOtherEnd(piece, side, candidates)
                                    ? "; the recorded vault is at the line's other end"
                                    : ""));
        }
    }

    private boolean isAtOtherEnd(ChainLink piece, int side, List<Integer> candidates) {
        double otherM = side == 0 ? piece.lengthM() : 0;
        return candidates.stream()
                .anyMatch(vault -> distance(vault, piece.track(), otherM) <= settings.snapToleranceM());
    }

    private String name(OptionalInt vault) {
        return places.vault(vault.getAsInt()).id();
    }

    private void place(FindingCode code, ChainLink piece, int side, String detail) {
        double placeM = piece.placeOfSideM(side);
        String field = (side == 0 ? Term.VAULT_A : Term.VAULT_B).key();
        findings.field(code, piece.route(), field, detail, piece.lonAt(placeM), piece.latAt(placeM));
    }

    /** Returns the vault at a side of a piece, or the next beyond it on the chain. */
    private static OptionalInt vaultBeyond(Chain chain, CutOrder cuts, ChainLink piece, int side) {
        double placeM = piece.placeOfSideM(side);
        boolean onward = (side == 1) != piece.reversed();
        double roundM = chain.closed() ? chain.lengthM() : 0;
        return onward ? cuts.next(placeM, roundM) : cuts.last(placeM, roundM);
    }
}
