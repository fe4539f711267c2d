package org.spanroom.output.columns;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.model.program.ProgramItem;
import org.spanroom.model.program.SpanFacts;
import org.spanroom.model.program.VaultPlace;

/**
 * The work of a program at one vault.
 *
 * @param vaultId name of the vault
 * @param place where it is; empty where the network does not know it
 * @param facts what the run wrote of it for the crew, by column: text, number or Boolean, without what is unknown
 * @param items spans that end at it, in the order of the calendar; at least one
 */
public record VaultWork(
        String vaultId, Optional<VaultPlace> place, Map<String, Object> facts, List<ProgramItem> items) {
    public VaultWork {
        facts = Map.copyOf(facts);
        items = List.copyOf(items);
    }

    /**
     * Returns all vaults with work, in the order in which the items come to them.
     *
     * @param vaultFacts what the run wrote of vaults for the crews, by vault and column
     */
    public static List<VaultWork> all(
            List<ProgramItem> items, DuctNetwork network, Map<String, Map<String, Object>> vaultFacts) {
        Map<String, List<ProgramItem>> byVault = new LinkedHashMap<>();
        for (ProgramItem item : items) {
            SpanFacts facts = item.span().facts();
            Stream.of(facts.vaultA(), facts.vaultB())
                    .distinct()
                    .forEach(vault -> byVault.computeIfAbsent(vault, name -> new ArrayList<>())
                            .add(item));
        }
        var all = new ArrayList<VaultWork>();
        byVault.forEach((vault, work) ->
                all.add(new VaultWork(vault, place(vault, network), vaultFacts.getOrDefault(vault, Map.of()), work)));
        return all;
    }

    private static Optional<VaultPlace> place(String vaultId, DuctNetwork network) {
        OptionalInt number = network.find(vaultId);
        return number.isPresent() ? Optional.of(network.vaults().get(number.getAsInt())) : Optional.empty();
    }

    LocalDate firstDay() {
        return days().min(Comparator.naturalOrder()).orElseThrow();
    }

    LocalDate lastDay() {
        return days().max(Comparator.naturalOrder()).orElseThrow();
    }

    /** Returns how many pairs of a crew and a week work at it. */
    long visits() {
        return items.stream()
                .flatMap(item -> item.entry().days().stream()
                        .map(day -> List.of(item.entry().crew(), monday(day))))
                .distinct()
                .count();
    }

    /** Returns the Mondays of the weeks with work. */
    List<LocalDate> weeks() {
        return days().map(VaultWork::monday).distinct().sorted().toList();
    }

    List<String> crews() {
        return items.stream().map(item -> item.entry().crew()).distinct().toList();
    }

    /** Returns the numbers of the years with work, from 0. */
    List<Integer> years() {
        return items.stream().map(ProgramItem::year).distinct().sorted().toList();
    }

    private Stream<LocalDate> days() {
        return items.stream().flatMap(item -> item.entry().days().stream());
    }

    private static LocalDate monday(LocalDate day) {
        return day.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
    }
}
