package org.spanroom.pipeline;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.spanroom.output.CopiedTable;

/** A limited number of the rows of a table that may be long: preferred ones before others, both from the beginning, in their order. */
final class PreferredRows {
    private final int most;
    private final Predicate<CopiedTable.Row> isPreferred;
    private final List<Numbered> preferred = new ArrayList<>();
    private final List<Numbered> others = new ArrayList<>();
    private int read;

    /**
     * Prepares the list.
     *
     * @param most how many rows it keeps
     */
    PreferredRows(int most, Predicate<CopiedTable.Row> isPreferred) {
        this.most = most;
        this.isPreferred = isPreferred;
    }

    private record Numbered(int number, CopiedTable.Row row) {}

    /** Adds the next row of the table. */
    void add(CopiedTable.Row row) {
        List<Numbered> its = isPreferred.test(row) ? preferred : others;
        if (its.size() < most) {
            its.add(new Numbered(read, row));
        }
        read++;
    }

    /** Returns the rows that are kept, in the order of the table. */
    List<CopiedTable.Row> rows() {
        return Stream.concat(preferred.stream(), others.stream())
                .limit(most)
                .sorted(Comparator.comparingInt(Numbered::number))
                .map(Numbered::row)
                .toList();
    }
}
