package org.spanroom.input.proposal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.spanroom.config.LayerConfig;
import org.spanroom.crs.ReferenceSystem;
import org.spanroom.input.layer.LayerHeader;
import org.spanroom.input.layer.SourceFeature;
import org.spanroom.input.layer.SourceNumber;
import org.spanroom.model.Term;
import org.spanroom.model.network.IdKey;

/**
 * Which fields of the lines hold ids of vaults, by their values.
 *
 * <p>Method: of every vault the values are kept that are also in a line; a field of the lines and one of the vaults belong together where
 * the vault of the same value is at an end of the line. Row numbers, which agree by chance, fail that. The end that the vault is at
 * distinguishes from and to. What is kept is bounded by the lines looked at, not by the number of vaults.
 */
final class VaultLinks {
    private static final double UNIQUE_SHARE = 0.95;

    private final LayerSample routes;
    private final List<Integer> candidates;
    private final Set<String> wanted = new HashSet<>();
    private final Optional<ReferenceSystem> crs;
    private final List<FieldName> names;
    private final List<Map<String, Found>> foundByField = new ArrayList<>();

    /** Where the vault of a value lies, and how many vaults have the value. */
    private record Found(LineEnds.Place place, int count) {}

    /**
     * How a field of the lines goes with one of the vaults.
     *
     * @param filled lines that have a value
     * @param resolved lines whose value is that of one vault
     * @param first lines at whose first vertex that vault lies, {@code last} at the last
     */
    record Link(int field, int filled, int resolved, int first, int last) {
        static final Link NONE = new Link(-1, 0, 0, 0, 0);

        int near() {
            return first + last;
        }
    }

    /** The vaults' field that the lines refer to, and the fields that refer to it from both ends; a field of -1 is none. */
    record Ends(int vaultField, Link from, Link to) {
        int near() {
            return from.first + to.last;
        }
    }

    VaultLinks(LayerSample routes, LayerHeader vaults, LayerConfig layer) {
        this.routes = routes;
        this.crs = routes.hasCrs() ? LayerSample.crs(vaults, layer) : Optional.empty();
        this.names = FieldName.all(vaults.fields());
        this.candidates = candidates(routes);
        for (int line = 0; line < routes.lineCount(); line++) {
            for (int field : candidates) {
                wanted.add(IdKey.of(routes.text(line, field)));
            }
        }
        wanted.remove("");
        vaults.fields().forEach(name -> foundByField.add(new HashMap<>()));
    }

    private static List<Integer> candidates(LayerSample routes) {
        var places = new ArrayList<Integer>();
        for (int i = 0; i < routes.fields().size(); i++) {
            if (routes.fields().get(i).mayNameThings()) {
                places.add(i);
            }
        }
        return places;
    }

    /** Notes a vault. */
    void add(SourceFeature vault) {
        LineEnds.Place place = LineEnds.Place.NOWHERE;
        boolean placed = false;
        for (int i = 0; i < foundByField.size(); i++) {
            Object value = vault.values().get(i);
            String text = value == null ? "" : IdKey.of(SourceNumber.text(value));
            if (wanted.contains(text)) {
                place = placed ? place : LineEnds.place(vault.geometry(), crs);
                placed = true;
                LineEnds.Place at = place;
                foundByField
                        .get(i)
                        .merge(text, new Found(at, 1), (known, added) -> new Found(known.place(), known.count() + 1));
            }
        }
    }

    /** Finds the fields that agree best with each other, if any vault lies where a line says. */
    Optional<Ends> find() {
        Optional<Ends> best = Optional.empty();
        for (int field = 0; field < foundByField.size(); field++) {
            if (isUnique(foundByField.get(field))) {
                Ends ends = ends(field);
                if (ends.near() > 0 && best.map(known -> isBetter(ends, known)).orElse(true)) {
                    best = Optional.of(ends);
                }
            }
        }
        return best;
    }

    private boolean isBetter(Ends ends, Ends known) {
        if (ends.near() != known.near()) {
            return ends.near() > known.near();
        }
        return TermPhrases.score(names.get(ends.vaultField), Term.VAULT)
                > TermPhrases.score(names.get(known.vaultField), Term.VAULT);
    }

    private static boolean isUnique(Map<String, Found> found) {
        long single = found.values().stream().filter(each -> each.count() == 1).count();
        return !found.isEmpty() && single >= UNIQUE_SHARE * found.size();
    }

    private Ends ends(int vaultField) {
        List<Link> links = candidates.stream()
                .map(field -> link(field, foundByField.get(vaultField)))
                .toList();
        // The clearer of both sides is chosen first, so that a single field that names one end is not treated as the
        // other.
        Link from = best(links, Comparator.comparingInt(link -> link.first - link.last));
        Link to = best(links, Comparator.comparingInt(link -> link.last - link.first));
        if (from.field == to.field) {
            boolean isFrom = from.first >= from.last;
            return new Ends(vaultField, isFrom ? from : Link.NONE, isFrom ? Link.NONE : to);
        }
        return new Ends(vaultField, from.first > from.last ? from : Link.NONE, to.last > to.first ? to : Link.NONE);
    }

    private Link best(List<Link> links, Comparator<Link> order) {
        return links.stream()
                .max(order.thenComparingDouble(this::nameScore)
                        .thenComparing(Comparator.comparingInt(Link::field).reversed()))
                .orElse(Link.NONE);
    }

    private double nameScore(Link link) {
        FieldName name = routes.fields().get(link.field).name();
        return Math.max(TermPhrases.score(name, Term.VAULT_A), TermPhrases.score(name, Term.VAULT_B));
    }

    private Link link(int field, Map<String, Found> found) {
        int filled = 0;
        int resolved = 0;
        int first = 0;
        int last = 0;
        for (int line = 0; line < routes.lineCount(); line++) {
            String text = IdKey.of(routes.text(line, field));
            Found vault = text.isEmpty() ? null : found.get(text);
            filled += text.isEmpty() ? 0 : 1;
            if (vault != null && vault.count() == 1) {
                resolved++;
                LineEnds ends = routes.ends(line);
                if (ends.isNear(vault.place())) {
                    boolean isFirst = ends.isNearerFirst(vault.place());
                    first += isFirst ? 1 : 0;
                    last += isFirst ? 0 : 1;
                }
            }
        }
        return new Link(field, filled, resolved, first, last);
    }
}
