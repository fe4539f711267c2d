package org.spanroom.model.program;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/**
 * The vaults and sections of a run, as cables can use them. Unmodifiable.
 *
 * <p>Vaults are numbered from 0; sections name their ends by these numbers.
 */
public final class DuctNetwork {
    private final List<VaultPlace> vaults;
    private final List<SectionOffer> sections;
    private final int samples;
    private final LocalDate onDate;
    private final Map<String, Integer> numbers = new HashMap<>();

    /**
     * Puts a network together.
     *
     * @param samples how many samples the masks of draws have; 0 where nothing was simulated
     * @param onDate the day from which lead times count
     */
    public DuctNetwork(List<VaultPlace> vaults, List<SectionOffer> sections, int samples, LocalDate onDate) {
        this.vaults = List.copyOf(vaults);
        this.sections = List.copyOf(sections);
        this.samples = samples;
        this.onDate = onDate;
        for (VaultPlace vault : this.vaults) {
            numbers.put(vault.id(), numbers.size());
        }
    }

    public List<VaultPlace> vaults() {
        return vaults;
    }

    /** Returns the name of a vault. */
    public String vaultId(int vault) {
        return vaults.get(vault).id();
    }

    public Iterable<String> vaultIds() {
        return numbers.keySet();
    }

    public List<SectionOffer> sections() {
        return sections;
    }

    /** Returns how many samples the masks of draws have; 0 where nothing was simulated. */
    public int samples() {
        return samples;
    }

    /** Returns the day from which lead times count. */
    public LocalDate onDate() {
        return onDate;
    }

    /** Finds the number of a vault. */
    public OptionalInt find(String vaultId) {
        Integer number = numbers.get(vaultId);
        return number == null ? OptionalInt.empty() : OptionalInt.of(number);
    }
}
