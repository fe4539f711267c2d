package org.spanroom.network;

import java.util.Collection;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.spanroom.model.fieldwork.FactKind;
import org.spanroom.model.fieldwork.FieldEntry;
import org.spanroom.model.fieldwork.FieldFact;

/** The entries of one span or vault that are in force: of each fact and item the last one. */
final class FactsInForce {
    private static final String YES = "yes";

    private final Map<FieldFact, Map<String, FieldEntry>> byFact = new EnumMap<>(FieldFact.class);

    /** @param entries in the order of days */
    FactsInForce(List<FieldEntry> entries) {
        entries.forEach(entry -> byFact.computeIfAbsent(entry.fact(), fact -> new LinkedHashMap<>())
                .put(entry.item(), entry));
    }

    Optional<FieldEntry> find(FieldFact fact) {
        return find(fact, "");
    }

    Optional<FieldEntry> find(FieldFact fact, String item) {
        return Optional.ofNullable(byFact.getOrDefault(fact, Map.of()).get(item));
    }

    /** Returns the entries of a fact, one for each item. */
    Collection<FieldEntry> all(FieldFact fact) {
        return byFact.getOrDefault(fact, Map.of()).values();
    }

    /** Returns the items that facts speak of as being there, those of the answer no left out. */
    Set<String> named(FieldFact... facts) {
        Set<String> names = new LinkedHashSet<>();
        for (FieldFact fact : facts) {
            all(fact).stream()
                    .filter(entry -> fact.kind() != FactKind.ANSWER || isYes(entry))
                    .map(FactsInForce::thing)
                    .forEach(names::add);
        }
        return names;
    }

    /** Returns the name of the thing that an item names, without an end of the span. */
    private static String thing(FieldEntry entry) {
        String item = entry.item();
        return switch (entry.fact().item()) {
            case INNERDUCT_AT_END, CABLE_AT_END -> item.substring(0, Math.max(0, item.lastIndexOf(' ')));
            default -> item;
        };
    }

    static boolean isYes(FieldEntry entry) {
        return entry.value().text().equals(YES);
    }
}
