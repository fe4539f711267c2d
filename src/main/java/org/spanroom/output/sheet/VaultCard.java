package org.spanroom.output.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.network.Vault;
import org.spanroom.model.network.VaultUse;

/**
 * A vault as the crew of one duct needs it; everything of it, with its blanks, is on the cover page.
 *
 * @param task what is done there
 */
public record VaultCard(String end, String name, String task, List<String> lines) {
    private static final double NAME_ROOM_MM = 50;
    private static final double FACT_ROOM_MM = 30;

    static VaultCard of(DuctSheet duct, SpanEnd end) {
        Vault vault = end.vaultOf(duct.span());
        VaultUse use = duct.section().vaultA().vault().id().equals(vault.id())
                ? duct.section().vaultA()
                : duct.section().vaultB();
        var words = new VaultWords(use, duct.units());
        String facts = words.facts().stream()
                .filter(fact -> !fact.recorded().equals(VaultWords.NOT_RECORDED))
                .map(fact -> fact.label() + " " + duct.names().fit(fact.recorded(), FACT_ROOM_MM))
                .collect(Collectors.joining("; "));
        String missing = words.facts().stream()
                .filter(fact -> fact.recorded().equals(VaultWords.NOT_RECORDED))
                .map(VaultWords.Fact::label)
                .map(label -> label.substring(0, 1).toLowerCase(Locale.ROOT) + label.substring(1))
                .collect(Collectors.joining(", "));
        var lines = new ArrayList<String>();
        if (!facts.isEmpty()) {
            lines.add(facts + ".");
        }
        if (!missing.isEmpty()) {
            lines.add("Not recorded: " + missing + ".");
        }
        lines.addAll(words.preparations());
        return new VaultCard(end.name(), duct.names().fitBold(vault.id(), NAME_ROOM_MM, 10), task(duct, end), lines);
    }

    private static String task(DuctSheet duct, SpanEnd end) {
        if (!duct.work().hasPulls()) {
            return "";
        }
        return end == duct.pullingEnd() ? "PULL OUT HERE" : "HOLD CABLES HERE";
    }
}
