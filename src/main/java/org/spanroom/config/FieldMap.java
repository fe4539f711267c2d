package org.spanroom.config;

import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.spanroom.model.Term;

/** Which field of a source layer holds which of our terms. */
public record FieldMap(Map<Term, FieldSource> byTerm) {
    /** The terms that a vaults layer is read for; those of no other layer belong to routes. */
    public static final Set<Term> VAULT_TERMS = Set.of(
            Term.VAULT,
            Term.VAULT_KIND,
            Term.VAULT_ELEVATION,
            Term.VAULT_VOLUME,
            Term.VAULT_WATER,
            Term.VAULT_SURFACE,
            Term.CABLE_HOLD,
            Term.CABLE_SLACK,
            Term.VAULT_DEPTH,
            Term.VAULT_LENGTH,
            Term.VAULT_WIDTH,
            Term.VAULT_HEIGHT,
            Term.COVER_SIZE,
            Term.GAS_FOUND,
            Term.JOINT_POWER,
            Term.VAULT_INSPECTED);

    /** The terms that a layer of permit zones is read for. */
    public static final Set<Term> ZONE_TERMS =
            Set.of(Term.ZONE, Term.ZONE_KIND, Term.ZONE_NAME, Term.ZONE_FROM, Term.ZONE_UNTIL);

    /** The terms of the contents table only. */
    private static final Set<Term> TABLE_TERMS = Set.of(Term.SLEEVE_CELLS, Term.CELLS_RESERVED);

    public static final FieldMap EMPTY = new FieldMap(Map.of());

    public FieldMap {
        var sorted = new EnumMap<Term, FieldSource>(Term.class);
        sorted.putAll(byTerm);
        byTerm = Collections.unmodifiableMap(sorted);
    }

    /** Returns the terms that a routes layer is read for. */
    public static Set<Term> routeTerms() {
        Set<Term> terms = EnumSet.allOf(Term.class);
        terms.removeAll(VAULT_TERMS);
        terms.removeAll(ZONE_TERMS);
        terms.removeAll(TABLE_TERMS);
        return terms;
    }

    public Optional<FieldSource> find(Term term) {
        return Optional.ofNullable(byTerm.get(term));
    }

    /** Returns the names of all fields that are read, each once, in the order of their terms. */
    public List<String> fieldNames() {
        return byTerm.values().stream().map(FieldSource::field).distinct().toList();
    }
}
