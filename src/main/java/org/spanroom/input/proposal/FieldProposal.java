package org.spanroom.input.proposal;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.spanroom.config.LayerConfig;
import org.spanroom.model.Term;
import org.spanroom.model.Unit;

/**
 * What a layer's fields might mean: each with samples and, where its name and values suggest one, a term and a unit.
 *
 * @param role routes, vaults or zones: the layer's key in a config
 * @param features how many features the layer has, or -1 where it was not read to its end
 * @param looked how many of them were looked at
 * @param hasCrs whether the layer's reference system is known, from its file or because it was given
 * @param source how the layer is read, with what was given for it
 */
public record FieldProposal(
        Path file,
        String layer,
        String role,
        long features,
        int looked,
        boolean hasCrs,
        LayerConfig source,
        List<Field> fields) {
    /**
     * A field of the layer.
     *
     * @param samples up to three different values, the first that occur
     * @param filled how many of the features looked at have a value
     * @param doubt why the term or the unit is unsure; empty where it is sure
     * @param unknownWords values that the words of the config give no meaning
     */
    public record Field(
            String name,
            List<String> samples,
            long filled,
            Optional<Term> term,
            Optional<Unit> unit,
            String doubt,
            List<String> unknownWords) {
        public Field {
            samples = List.copyOf(samples);
            unknownWords = List.copyOf(unknownWords);
        }

        /** Returns whether the field has a term, and no doubt about it. */
        public boolean isSure() {
            return term.isPresent() && doubt.isEmpty();
        }
    }

    public FieldProposal {
        fields = List.copyOf(fields);
    }

    /** Returns the field that is proposed for a term, sure or not. */
    public Optional<Field> find(Term term) {
        return fields.stream()
                .filter(field -> field.term().equals(Optional.of(term)))
                .findFirst();
    }

    /** Returns the terms that a field surely is. */
    public Set<Term> sureTerms() {
        return fields.stream()
                .filter(Field::isSure)
                .flatMap(field -> field.term().stream())
                .collect(Collectors.toCollection(TreeSet::new));
    }
}
