package org.spanroom.network;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.spanroom.finding.FindingCode;
import org.spanroom.model.Term;
import org.spanroom.model.ValueSource;
import org.spanroom.model.network.NetworkSettings;
import org.spanroom.model.network.Route;

/**
 * The vaults that the records name at the ends of routes, against those where the ends lie.
 *
 * <p>An end inside a chain is at no vault: there the name is right if it is that of the next vault beyond, since pieces of a
 * duct often carry the vaults of the whole. Where the records count, the named vault takes the end if it lies within tolerance
 * or reach of it, whatever else is nearer.
 */
final class RecordedVaults {
    private final NetworkSettings settings;
    private final VaultPlaces places;
    private final NetworkFindings findings;
    private final Map<String, List<Integer>> numbers;

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

    private List<Integer> named(Optional<String> id) {
        return id.map(name -> numbers.getOrDefault(name, List.of())).orElse(List.of());
    }

    /** Returns the passes with those that the records decide, where they count. */
    List<VaultCrossing> decide(Route route, Track track, List<VaultCrossing> passes) {
        if (settings.vaults() == ValueSource.DRAWN || numbers.isEmpty()) {
            return passes;
        }
        List<VaultCrossing> decided = new ArrayList<>(passes);
        for (int side = 0; side < 2; side++) {
            List<Integer> candidates = named(nameAt(route, side));
            double endM = side == 0 ? 0 : track.lengthM();
            boolean inTolerance = false;
            for (int i = 0; i < decided.size(); i++) {
                if (candidates.contains(decided.get(i).vault())
                        && decided.get(i).holds(endM)) {
                    decided.set(i, decided.get(i).asNamed());
                    inTolerance = true;
                }
            }
            OptionalInt reached = inTolerance ? OptionalInt.empty() : inReach(candidates, track, endM);
            reached.ifPresent(
                    vault -> decided.add(VaultCrossing.beside(vault, endM, endM, endM, distance(vault, track, endM))
                            .asNamed()));
        }
        return decided;
    }

    private OptionalInt inReach(List<Integer> candidates, Track track, double endM) {
        int best = -1;
        double leastM = settings.recordedVaultReachM();
        for (int vault : candidates) {
            double metres = distance(vault, track, endM);
            if (metres <= leastM && (best < 0 || metres < leastM)) {
                best = vault;
                leastM = metres;
            }
        }
        return best < 0 ? OptionalInt.empty() : OptionalInt.of(best);
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
                                + name(atLast));
            } else {
                compareEnd(piece, 0, atFirst);
                compareEnd(piece, 1, atLast);
            }
        }
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
            double metres = candidates.stream()
                    .mapToDouble(vault -> distance(vault, piece.track(), endM))
                    .min()
                    .orElseThrow();
            place(
                    FindingCode.RECORDED_VAULT_DIFFERS,
                    piece,
                    side,
                    "recorded is vault " + name.get() + ", which lies "
                            + NetworkFindings.metres(metres) + " from the line's end; drawn is "
                            + (actual.isEmpty() ? "no vault" : "vault " + name(actual)));
        }
    }

    private String name(OptionalInt vault) {
        return places.vault(vault.getAsInt()).id();
    }

    private void place(FindingCode code, ChainLink piece, int side, String detail) {
        double placeM = piece.placeOfSideM(side);
        String field = (side == 0 ? Term.FROM_VAULT : Term.TO_VAULT).key();
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
