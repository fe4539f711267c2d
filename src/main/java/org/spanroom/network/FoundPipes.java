package org.spanroom.network;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.spanroom.model.Answer;
import org.spanroom.model.Term;
import org.spanroom.model.fieldwork.FieldEntry;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.SpanEnd;

/** The innerducts of one duct while entries change them. */
final class FoundPipes {
    private static final String STEM = "innerduct-";

    private final FoundContext context;
    private final FactsInForce facts;
    private final CableList cables;
    private final Map<String, Innerduct> pipes = new LinkedHashMap<>();

    FoundPipes(FoundContext context, CableList cables) {
        this.context = context;
        this.facts = context.facts();
        this.cables = cables;
        context.duct().contents().innerducts().forEach(pipe -> pipes.put(pipe.id(), pipe));
    }

    boolean has(String name) {
        return pipes.containsKey(name);
    }

    /** Returns the names in the order of the records, additional ones last. */
    List<String> names() {
        return List.copyOf(pipes.keySet());
    }

    List<Innerduct> all() {
        return pipes.values().stream()
                .map(pipe -> pipe.holding(cables.in(pipe.id())))
                .toList();
    }

    /** Adds innerducts that were reported to be there, and removes those that were not. */
    void findItems() {
        for (FieldEntry entry : facts.all(FieldFact.INNERDUCT_THERE)) {
            if (FactsInForce.isYes(entry) && !has(entry.item())) {
                additional(entry.item(), entry).ifPresent(pipe -> pipes.put(pipe.id(), pipe));
            } else if (!FactsInForce.isYes(entry) && pipes.remove(entry.item()) != null) {
                cables.vacate(entry.item(), CableList.Basis.DISPLACED);
            }
        }
        Set<String> reported = facts.named(FieldFact.INNERDUCT_THERE, FieldFact.INNERDUCT_OUT);
        boolean anyDenied = facts.all(FieldFact.INNERDUCT_THERE).size() > 0;
        if ((anyDenied || !reported.isEmpty()) && reported.containsAll(pipes.keySet())) {
            context.found().add(Term.INNERDUCT_COUNT);
        }
    }

    /** Adds or removes innerducts until there are as many as were found; returns whether there are. */
    boolean count() {
        Optional<FieldEntry> entry = facts.find(FieldFact.INNERDUCTS_FOUND);
        Set<String> named = named();
        if (entry.isEmpty() || context.contradicts(entry.get(), named, "innerduct")) {
            return false;
        }
        int wanted = FoundContext.count(entry.get());
        for (String name : FoundContext.newNames(wanted - pipes.size(), named, pipes.keySet(), STEM)) {
            additional(name, entry.get()).ifPresent(pipe -> pipes.put(name, pipe));
        }
        List<String> unnamed = new ArrayList<>(pipes.keySet());
        unnamed.removeAll(named);
        for (int i = unnamed.size() - 1; i >= 0 && pipes.size() > wanted; i--) {
            pipes.remove(unnamed.get(i));
            cables.vacate(unnamed.get(i), CableList.Basis.OPEN);
        }
        boolean counted = pipes.size() == wanted;
        if (counted) {
            context.found().add(Term.INNERDUCT_COUNT);
        }
        return counted;
    }

    private Set<String> named() {
        return facts.named(
                FieldFact.INNERDUCT_THERE,
                FieldFact.INNERDUCT_DIAMETER,
                FieldFact.INNERDUCT_WALL,
                FieldFact.INNERDUCT_COLOR,
                FieldFact.INNERDUCT_UNCUT,
                FieldFact.INNERDUCT_OUT);
    }

    /** Returns an innerduct that is not recorded, of the size of those that are, else of the usual one. */
    private Optional<Innerduct> additional(String name, FieldEntry entry) {
        List<Innerduct> recorded = context.duct().contents().innerducts();
        Optional<Innerduct> like = recorded.stream().findFirst().or(context.usual()::innerduct);
        if (like.isEmpty()) {
            context.incomplete(
                    entry,
                    "no size of an innerduct is recorded or assumed; set assumed.innerduct_outside_diameter in the config");
        } else if (recorded.isEmpty()) {
            context.assumed().addAll(Set.of(Term.INNERDUCT_OUTSIDE_DIAMETER, Term.INNERDUCT_SDR));
        }
        return like.map(size -> new Innerduct(name, size.outsideDiameterMm(), size.wallMm(), List.of()));
    }

    /** Gives innerducts the sizes that were measured. A wall that was not measured keeps its share of the diameter. */
    void size() {
        Set<String> diameters = new HashSet<>();
        Set<String> walls = new HashSet<>();
        facts.all(FieldFact.INNERDUCT_DIAMETER).forEach(entry -> diameter(entry, diameters));
        facts.all(FieldFact.INNERDUCT_WALL).forEach(entry -> wall(entry, walls));
        boolean none = pipes.isEmpty() && context.found().contains(Term.INNERDUCT_COUNT);
        if (none || isAllOf(diameters)) {
            context.found().add(Term.INNERDUCT_OUTSIDE_DIAMETER);
        }
        if (none || isAllOf(walls)) {
            context.found().addAll(Set.of(Term.INNERDUCT_WALL, Term.INNERDUCT_SDR));
        }
    }

    /** Gives innerducts the color that was found, and whether they run uncut through the vaults. */
    void mark() {
        for (FieldEntry entry : facts.all(FieldFact.INNERDUCT_COLOR)) {
            mark(entry, entry.item(), pipe -> pipe.colored(entry.value().text()));
        }
        for (FieldEntry entry : facts.all(FieldFact.INNERDUCT_UNCUT)) {
            int blank = Math.max(0, entry.item().lastIndexOf(' '));
            boolean atB = entry.item().endsWith(" " + SpanEnd.B.key());
            Answer uncut = FactsInForce.isYes(entry) ? Answer.YES : Answer.NO;
            mark(
                    entry,
                    entry.item().substring(0, blank),
                    pipe -> atB ? pipe.withUncut(pipe.uncutAtA(), uncut) : pipe.withUncut(uncut, pipe.uncutAtB()));
        }
    }

    private void mark(FieldEntry entry, String name, UnaryOperator<Innerduct> marked) {
        if (pipes.computeIfPresent(name, (same, pipe) -> marked.apply(pipe)) == null) {
            context.unknown(entry, "innerduct", FieldFact.INNERDUCT_THERE);
        }
    }

    private boolean isAllOf(Set<String> measured) {
        return !measured.isEmpty() && measured.containsAll(pipes.keySet());
    }

    private void diameter(FieldEntry entry, Set<String> measured) {
        Innerduct pipe = pipes.get(entry.item());
        double outsideMm = entry.value().keptInUnit().orElse(0);
        if (pipe == null) {
            context.unknown(entry, "innerduct", FieldFact.INNERDUCT_THERE);
        } else if (!(outsideMm > 0) || outsideMm >= context.duct().insideDiameterMm()) {
            context.contradiction(entry, "it does not go into the bore of the duct");
        } else {
            boolean same = outsideMm == pipe.outsideDiameterMm();
            double wallMm = same ? pipe.wallMm() : pipe.wallMm() * outsideMm / pipe.outsideDiameterMm();
            pipes.put(pipe.id(), pipe.resized(outsideMm, wallMm));
            measured.add(pipe.id());
        }
    }

    private void wall(FieldEntry entry, Set<String> measured) {
        Innerduct pipe = pipes.get(entry.item());
        double wallMm = entry.value().keptInUnit().orElse(0);
        if (pipe == null) {
            context.unknown(entry, "innerduct", FieldFact.INNERDUCT_THERE);
        } else if (!(wallMm > 0) || 2 * wallMm >= pipe.outsideDiameterMm()) {
            context.contradiction(entry, "such a wall leaves no bore in the innerduct");
        } else {
            pipes.put(pipe.id(), pipe.resized(pipe.outsideDiameterMm(), wallMm));
            measured.add(pipe.id());
        }
    }

    /** Takes out what crews took out; the cables stay in the duct, loose. */
    void takeOut() {
        for (FieldEntry entry : facts.all(FieldFact.INNERDUCT_OUT)) {
            if (!FactsInForce.isYes(entry)) {
                continue;
            }
            if (pipes.remove(entry.item()) == null) {
                context.unknown(entry, "innerduct", FieldFact.INNERDUCT_THERE);
            } else {
                cables.vacate(entry.item(), CableList.Basis.DISPLACED);
            }
        }
        if (pipes.isEmpty()) {
            context.found().addAll(Set.of(Term.INNERDUCT_OUTSIDE_DIAMETER, Term.INNERDUCT_WALL, Term.INNERDUCT_SDR));
        }
    }
}
