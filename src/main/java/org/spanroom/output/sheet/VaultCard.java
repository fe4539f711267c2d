package org.spanroom.output.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.network.Vault;
import org.spanroom.model.network.VaultUse;

/**
 * A vault as the crew of one duct needs it; everything of it, with its blanks, is on the cover page.
 *
 * @param task what is done there
 */
public record VaultCard(String end, String name, String task, List<String> lines) {
    /** Facts for those who plan the entry, for which the card has no room. */
    private static final Set<FieldFact> ON_COVER_ONLY =
            Set.of(FieldFact.VAULT_LENGTH, FieldFact.VAULT_WIDTH, FieldFact.VAULT_HEIGHT, FieldFact.VAULT_INSPECTED);

    private static final double NAME_ROOM_MM = 50;
    private static final double FACT_ROOM_MM = 34;

    static VaultCard of(DuctSheet duct, SpanEnd end) {
        Vault vault = end.vaultOf(duct.span());
        VaultUse use = duct.section().vaultA().vault().id().equals(vault.id())
                ? duct.section().vaultA()
                : duct.section().vaultB();
        var words = new VaultWords(use, duct.units());
        List<VaultWords.Fact> facts = words.facts().stream()
                .filter(fact -> !ON_COVER_ONLY.contains(fact.fact()))
                .toList();
        var lines = new ArrayList<String>();
        lines.add(facts.stream()
                .filter(VaultCard::isRecorded)
                .map(fact -> small(fact.label()) + " " + duct.names().fit(fact.recorded(), FACT_ROOM_MM))
                .collect(Collectors.joining("; ", "Recorded: ", ".")));
        lines.add(facts.stream()
                .filter(fact -> !isRecorded(fact))
                .map(fact -> small(fact.label()))
                .collect(Collectors.joining(", ", "Not recorded: ", ".")));
        lines.removeIf(line -> line.endsWith(": ."));
        lines.addAll(words.preparations());
        return new VaultCard(end.name(), duct.names().fitBold(vault.id(), NAME_ROOM_MM, 10), task(duct, end), lines);
    }

    private static boolean isRecorded(VaultWords.Fact fact) {
        return !fact.recorded().equals(VaultWords.NOT_RECORDED);
    }

    private static String small(String label) {
        return label.substring(0, 1).toLowerCase(Locale.ROOT) + label.substring(1);
    }

    private static String task(DuctSheet duct, SpanEnd end) {
        if (!duct.work().hasPulls()) {
            return "";
        }
        return end == duct.pullingEnd() ? "PULL OUT HERE" : "HOLD CABLES HERE";
    }
}
