package org.spanroom.input.proposal;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.spanroom.model.Term;
import org.spanroom.model.network.SpanEnd;

/**
 * How well a field's name fits what is recorded of a duct at one of its two ends: it says the thing and the end, and nothing else. A name without
 * an end, such as {@code hole}, could be either, and means none.
 */
final class EndPhrases {
    private static final List<Set<String>> HOLES = List.of(
            Set.of("hole"),
            Set.of("duct", "hole"),
            Set.of("bank", "hole"),
            Set.of("vault", "hole"),
            Set.of("hole", "position"),
            Set.of("duct", "position"),
            Set.of("bank", "position"));

    private static final List<Set<String>> SLACKS =
            List.of(Set.of("slack"), Set.of("cable", "slack"), Set.of("slack", "length"), Set.of("coil", "length"));

    private static final List<Set<String>> UNCUT =
            List.of(Set.of("uncut"), Set.of("innerduct", "uncut"), Set.of("uncut", "vault"));

    /** What is said of an end of the duct, by term. */
    private record Said(SpanEnd end, List<Set<String>> phrases) {}

    private static final Map<Term, Said> SAID = Map.of(
            Term.HOLE_A, new Said(SpanEnd.A, HOLES),
            Term.HOLE_B, new Said(SpanEnd.B, HOLES),
            Term.SLACK_A, new Said(SpanEnd.A, SLACKS),
            Term.SLACK_B, new Said(SpanEnd.B, SLACKS),
            Term.CONTINUOUS_AT_A, new Said(SpanEnd.A, UNCUT),
            Term.CONTINUOUS_AT_B, new Said(SpanEnd.B, UNCUT));

    private EndPhrases() {}

    /** Returns whether a term is one of these. */
    static boolean has(Term term) {
        return SAID.containsKey(term);
    }

    /** Returns 1 for a name that says the term, 0 for one that does not. */
    static double score(Set<String> all, Term term) {
        Said said = Objects.requireNonNull(SAID.get(term));
        var words = new HashSet<>(all);
        words.removeAll(Set.of("id", "number", "name", "code"));
        if (words.remove("pipe")) {
            words.add("duct");
        }
        return takeEnd(words).filter(said.end()::equals).isPresent()
                        && said.phrases().contains(words)
                ? TermPhrases.EXACT
                : 0;
    }

    /** Takes the words for an end out of a name; empty where it has none, or words for both. */
    private static Optional<SpanEnd> takeEnd(Set<String> words) {
        boolean isA = words.removeAll(Set.of("a", "from"));
        boolean isB = words.removeAll(Set.of("b", "to"));
        return isA == isB ? Optional.empty() : Optional.of(isA ? SpanEnd.A : SpanEnd.B);
    }
}
