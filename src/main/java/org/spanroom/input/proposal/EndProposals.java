package org.spanroom.input.proposal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.spanroom.model.Counted;
import org.spanroom.model.Term;

/**
 * Proposes which fields name the vaults at the ends of lines: by the vaults that they refer to ({@link VaultLinks}), else by the nodes that
 * lines share ({@link SharedNodes}), else by their names alone, which is unsure.
 */
final class EndProposals {
    private static final int ENOUGH = 5;
    private static final int LEAST = 3;
    private static final double SIDE_SHARE = 0.9;
    private static final double NEAR_SHARE = 0.5;

    private final LayerSample routes;
    private final Optional<VaultLinks.Ends> links;

    EndProposals(LayerSample routes, Optional<VaultLinks.Ends> links) {
        this.routes = routes;
        this.links = links;
    }

    /** Returns at most one field for each end. */
    List<Candidate> find() {
        Optional<Candidate> from = links.flatMap(ends -> linked(Term.VAULT_A, ends.from()));
        Optional<Candidate> to = links.flatMap(ends -> linked(Term.VAULT_B, ends.to()));
        if (isSure(from) && isSure(to)) {
            return List.of(from.get(), to.get());
        }
        List<Candidate> shared = shared();
        boolean agree = shared.stream().allMatch(Candidate::isSure)
                && shared.stream().allMatch(each -> agrees(each, from) && agrees(each, to));
        if (!shared.isEmpty() && (agree || (from.isEmpty() && to.isEmpty()))) {
            return shared;
        }
        var found = new ArrayList<Candidate>();
        from.ifPresent(found::add);
        to.ifPresent(found::add);
        for (Term term : List.of(Term.VAULT_A, Term.VAULT_B)) {
            if (found.stream().noneMatch(each -> each.term() == term)) {
                named(term, found).ifPresent(found::add);
            }
        }
        return List.copyOf(found);
    }

    /** Returns the vaults' field that the ends refer to, with the doubt that both ends share. */
    Optional<Candidate> vault() {
        return links.flatMap(ends -> {
            List<Candidate> referring = new ArrayList<>();
            linked(Term.VAULT_A, ends.from()).ifPresent(referring::add);
            linked(Term.VAULT_B, ends.to()).ifPresent(referring::add);
            boolean enough = Math.max(ends.from().near(), ends.to().near()) >= ENOUGH
                    || referring.stream().anyMatch(Candidate::isSure);
            Doubt doubt = Doubt.when(!enough, "few lines refer to it");
            return referring.isEmpty()
                    ? Optional.empty()
                    : Optional.of(new Candidate(ends.vaultField(), Term.VAULT, 1, UnitGuess.NONE, doubt));
        });
    }

    private static boolean isSure(Optional<Candidate> candidate) {
        return candidate.map(Candidate::isSure).orElse(false);
    }

    /** A sure link is not given up for what the lines say among themselves. */
    private static boolean agrees(Candidate shared, Optional<Candidate> linked) {
        return !isSure(linked)
                || linked.get().term() != shared.term()
                || linked.get().place() == shared.place();
    }

    private Optional<Candidate> linked(Term term, VaultLinks.Link link) {
        if (link.field() < 0) {
            return Optional.empty();
        }
        boolean named = isNamed(link.field());
        boolean near = link.near() >= NEAR_SHARE * link.resolved();
        if (!named && !(near && link.near() >= LEAST)) {
            return Optional.empty();
        }
        int side = term == Term.VAULT_A ? link.first() : link.last();
        Doubt doubt = Doubt.when(!near, "most vaults that it names are elsewhere")
                .or(Doubt.when(
                        side < SIDE_SHARE * link.near(),
                        String.format(
                                Locale.ROOT,
                                "its vault is at the %s vertex of %s, at the other end of %d",
                                term == Term.VAULT_A ? "first" : "last",
                                Counted.of(side, "line"),
                                link.near() - side)))
                .or(Doubt.when(!named && link.near() < ENOUGH, "found by the values of few lines only"));
        return Optional.of(new Candidate(link.field(), term, 1, UnitGuess.NONE, doubt));
    }

    private List<Candidate> shared() {
        return new SharedNodes(routes)
                .find()
                .map(pair -> {
                    Doubt doubt = Doubt.when(
                            !isNamed(pair.from()) || !isNamed(pair.to()),
                            "found by lines that meet where both fields agree, not by its name");
                    return List.of(
                            new Candidate(pair.from(), Term.VAULT_A, 1, UnitGuess.NONE, doubt),
                            new Candidate(pair.to(), Term.VAULT_B, 1, UnitGuess.NONE, doubt));
                })
                .orElse(List.of());
    }

    private Optional<Candidate> named(Term term, List<Candidate> taken) {
        String why = links.isPresent()
                ? "found by its name; its values are not the ids of vaults at the lines' ends"
                : "found by its name only";
        var candidates = new ArrayList<Candidate>();
        for (int i = 0; i < routes.fields().size(); i++) {
            SeenField field = routes.fields().get(i);
            int place = i;
            double score = TermPhrases.score(field.name(), term);
            if (score > 0 && field.mayNameThings() && taken.stream().noneMatch(each -> each.place() == place)) {
                candidates.add(new Candidate(i, term, score, UnitGuess.NONE, new Doubt(why)));
            }
        }
        return candidates.stream().min(Comparator.comparingDouble(each -> -each.score()));
    }

    private boolean isNamed(int field) {
        FieldName name = routes.fields().get(field).name();
        return TermPhrases.score(name, Term.VAULT_A) > 0 || TermPhrases.score(name, Term.VAULT_B) > 0;
    }
}
