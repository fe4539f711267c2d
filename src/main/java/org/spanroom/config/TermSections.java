package org.spanroom.config;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import org.spanroom.model.Term;
import org.spanroom.model.Unit;

/** Reads the sections whose keys are our terms: field maps, assumed values, plausible ranges. */
final class TermSections {
    private TermSections() {}

    /** Returns the section as the wanted type, or empty if that type is not one of these. */
    static Optional<Object> read(ConfigNode node, Class<?> type, StandIn given, String key) {
        if (type == FieldMap.class) {
            return Optional.of(fields(Binder.mapping(node, key)));
        }
        if (type == AssumedValues.class) {
            return Optional.of(assumed(Binder.mapping(node, key), given));
        }
        if (type == PlausibleRanges.class) {
            return Optional.of(ranges(Binder.mapping(node, key), given));
        }
        return Optional.empty();
    }

    private static FieldMap fields(ConfigNode.Mapping section) {
        var sources = new EnumMap<Term, FieldSource>(Term.class);
        section.entries().forEach((key, entry) -> {
            Term term = term(key, entry.line());
            source(term, entry.value()).ifPresent(source -> sources.put(term, source));
        });
        return new FieldMap(sources);
    }

    /** A term without a field is as good as a term left out, so that a map may list every term. */
    private static Optional<FieldSource> source(Term term, ConfigNode node) {
        if (node instanceof ConfigNode.Scalar scalar) {
            return scalar.isNull()
                    ? Optional.empty()
                    : Optional.of(fieldSource(scalar, scalar.text(), TermQuantities.keptUnit(term)));
        }
        ConfigNode.Mapping section = Binder.mapping(node, term.key());
        Binder.demandKnownKeys(section, List.of("field", "unit"), term.key());
        ConfigNode.Entry field = section.entries().get("field");
        if (field == null) {
            throw new ConfigProblem(section.line(), "the key 'field' is missing in " + term.key(), "Add it.");
        }
        ConfigNode.Entry unit = section.entries().get("unit");
        Optional<Unit> read = unit == null ? TermQuantities.keptUnit(term) : Optional.of(unit(term, unit.value()));
        return Optional.of(
                fieldSource(field.value(), Binder.scalar(field.value(), "field").text(), read));
    }

    private static FieldSource fieldSource(ConfigNode node, String field, Optional<Unit> unit) {
        try {
            return new FieldSource(field, unit);
        } catch (IllegalArgumentException e) {
            throw new ConfigProblem(node.line(), String.valueOf(e.getMessage()), "");
        }
    }

    private static Unit unit(Term term, ConfigNode node) {
        Unit.Dimension dimension = TermQuantities.dimension(term)
                .orElseThrow(
                        () -> new ConfigProblem(node.line(), term.key() + " has no unit", "Remove the key 'unit'."));
        return TermQuantities.readUnit(Binder.scalar(node, "unit"), dimension, term.key());
    }

    /** A term without a value removes the default. */
    private static AssumedValues assumed(ConfigNode.Mapping section, StandIn given) {
        var numbers = new EnumMap<Term, Double>(Term.class);
        var words = new EnumMap<Term, String>(Term.class);
        Predicate<Term> isLeftOut = term -> !AssumedValues.NEVER_ASSUMED.contains(term)
                && !section.entries().containsKey(term.key());
        standIn(section, "assumed", isLeftOut, given)
                .map(AssumedValues.class::cast)
                .ifPresent(before -> {
                    numbers.putAll(before.numbers());
                    words.putAll(before.words());
                });
        section.entries().forEach((key, entry) -> {
            Term term = term(key, entry.line());
            if (AssumedValues.NEVER_ASSUMED.contains(term)) {
                throw new ConfigProblem(entry.line(), "no value can be assumed for " + key, "Remove the key.");
            }
            if (entry.value() instanceof ConfigNode.Scalar scalar && scalar.isNull()) {
                numbers.remove(term);
                words.remove(term);
            } else if (TermQuantities.isNumber(term)) {
                numbers.put(term, positive(term, TermQuantities.readNumber(term, entry.value()), entry.line()));
            } else {
                words.put(term, TermQuantities.readWord(term, entry.value()));
            }
        });
        try {
            return new AssumedValues(numbers, words);
        } catch (IllegalArgumentException e) {
            throw new ConfigProblem(section.line(), String.valueOf(e.getMessage()), "");
        }
    }

    private static double positive(Term term, double number, int line) {
        boolean fine = term.kind() == Term.Kind.COUNT ? number >= 0 : number > 0;
        if (!fine || Double.isInfinite(number)) {
            throw new ConfigProblem(line, term.key() + " must be more than 0", "");
        }
        return number;
    }

    private static PlausibleRanges ranges(ConfigNode.Mapping section, StandIn given) {
        var least = new EnumMap<Term, Double>(Term.class);
        var most = new EnumMap<Term, Double>(Term.class);
        standIn(section, "plausible", term -> TermQuantities.isNumber(term) && !hasBothBounds(section, term), given)
                .map(PlausibleRanges.class::cast)
                .ifPresent(before -> {
                    least.putAll(before.least());
                    most.putAll(before.most());
                });
        section.entries().forEach((key, entry) -> {
            Term term = term(key, entry.line());
            if (!TermQuantities.isNumber(term)) {
                throw new ConfigProblem(entry.line(), key + " is not a quantity and has no range", "Remove the key.");
            }
            ConfigNode.Mapping range = Binder.mapping(entry.value(), key);
            Binder.demandKnownKeys(range, List.of("least", "most"), key);
            bound(term, range, "least", least);
            bound(term, range, "most", most);
        });
        try {
            return new PlausibleRanges(least, most);
        } catch (IllegalArgumentException e) {
            throw new ConfigProblem(section.line(), String.valueOf(e.getMessage()), "");
        }
    }

    private static void bound(Term term, ConfigNode.Mapping range, String key, Map<Term, Double> bounds) {
        ConfigNode.Entry entry = range.entries().get(key);
        if (entry != null) {
            bounds.put(term, TermQuantities.readNumber(term, entry.value()));
        }
    }

    private static boolean hasBothBounds(ConfigNode.Mapping section, Term term) {
        ConfigNode.Entry range = section.entries().get(term.key());
        return range != null
                && range.value() instanceof ConfigNode.Mapping bounds
                && bounds.entries().size() == 2;
    }

    /** Returns what is used where something of a term is left out; empty where the section is whole. */
    private static Optional<Object> standIn(
            ConfigNode.Mapping section, String name, Predicate<Term> isLeftOut, StandIn given) {
        Optional<Term> missing = Arrays.stream(Term.values()).filter(isLeftOut).findFirst();
        if (missing.isPresent() && given.demandsAll()) {
            throw Binder.missing(section, missing.get().key(), name);
        }
        return missing.isPresent() ? given.value() : Optional.empty();
    }

    private static Term term(String key, int line) {
        return Arrays.stream(Term.values())
                .filter(term -> term.key().equals(key))
                .findFirst()
                .orElseThrow(() -> {
                    List<String> keys =
                            Arrays.stream(Term.values()).map(Term::key).toList();
                    return new ConfigProblem(line, "'" + key + "' is not a term", NearestWord.remedy(key, keys));
                });
    }
}
