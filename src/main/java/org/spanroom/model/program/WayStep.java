package org.spanroom.model.program;

import java.time.LocalDate;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * One section on a way, and how the cables get through it.
 *
 * @param forward whether the way passes it from its first vault to its second
 * @param duct the duct that takes the cables; empty where one is built
 * @param newDuct what is built; empty where a duct takes them
 */
public record WayStep(
        SectionOffer section,
        boolean forward,
        Action action,
        Optional<DuctOffer> duct,
        Optional<NewDuctOffer> newDuct) {
    /** How cables get through a section. */
    public enum Action {
        /** Positions of today are used, with all contents left in place. */
        FREE,
        /** A duct is recovered first. */
        RECOVER,
        /** A new duct is built on the same path. */
        BUILD;

        /** Returns the word in columns. */
        public String key() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** Returns what the step costs; nothing where free positions are used. */
    public Costs costs() {
        return switch (action) {
            case FREE -> Costs.NONE;
            case RECOVER -> recovery().costs();
            case BUILD -> newDuct.orElseThrow().first();
        };
    }

    /** Returns the hours on site that recovery takes; 0 for anything else. */
    public double siteHours() {
        return action == Action.RECOVER ? recovery().siteHours() : 0;
    }

    /** Returns the days until permits are issued. */
    public int leadDays() {
        return switch (action) {
            case FREE -> 0;
            case RECOVER -> recovery().leadDays();
            case BUILD -> newDuct.orElseThrow().leadDays();
        };
    }

    /** Returns the first day on which the work can be done: permits are issued and no embargo applies. */
    public LocalDate earliest(LocalDate onDate) {
        LocalDate issued = onDate.plusDays(leadDays());
        Optional<LocalDate> notBefore = action == Action.RECOVER ? recovery().notBefore() : Optional.empty();
        return notBefore.filter(issued::isBefore).orElse(issued);
    }

    /**
     * Returns in which of the first samples of the simulation the step works, as bits: a step without recovery works in all; empty where
     * the recovery was not simulated.
     */
    public OptionalLong feasibleDraws() {
        return action == Action.RECOVER ? recovery().feasibleDraws() : OptionalLong.of(-1L);
    }

    private DuctOffer.Recovery recovery() {
        return duct.flatMap(DuctOffer::recovery).orElseThrow();
    }

    /** Returns the vault that the way comes from. */
    public int from() {
        return forward ? section.from() : section.to();
    }

    /** Returns the vault that the way goes on to. */
    public int to() {
        return forward ? section.to() : section.from();
    }
}
