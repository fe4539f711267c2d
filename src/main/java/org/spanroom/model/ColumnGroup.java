package org.spanroom.model;

import java.util.Collection;
import java.util.Collections;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;

/**
 * A subject whose columns and tables a run writes in addition to its core columns, where a user asks for them. The lower-case name is
 * the word for it in the config and on the command line.
 */
public enum ColumnGroup {
    SCORE("why a span has its score, and how certain that is"),
    ROOM("the bore, its contents, and the positions that they leave"),
    PULL("bends, forces and limits"),
    PERMITS("zones, rules and what they require"),
    EFFORT("hours, crews and material"),
    MONEY("costs of recovery and of new build, with their ranges"),
    CARBON("emissions avoided"),
    PROVENANCE("what is recorded, and where values come from"),
    /** Stands for all of them where groups are named; no column belongs to it. */
    ALL("all of them");

    private final String subject;

    ColumnGroup(String subject) {
        this.subject = subject;
    }

    /** Returns what its columns are about, in a few words. */
    public String subject() {
        return subject;
    }

    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Returns the groups that columns belong to. */
    public static Set<ColumnGroup> all() {
        return Collections.unmodifiableSet(EnumSet.complementOf(EnumSet.of(ALL)));
    }

    /** Returns the groups that a list names, in their own order. */
    public static Set<ColumnGroup> named(Collection<ColumnGroup> names) {
        if (names.contains(ALL)) {
            return all();
        }
        return names.isEmpty() ? Set.of() : Collections.unmodifiableSet(EnumSet.copyOf(names));
    }
}
