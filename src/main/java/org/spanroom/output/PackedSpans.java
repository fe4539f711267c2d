package org.spanroom.output;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentLinkedQueue;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.output.columns.SpanColumns;
import org.spanroom.output.columns.SpanLayout;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.PackedRows;
import org.spanroom.output.table.Table;
import org.spanroom.output.table.UsColumns;

/**
 * The rows of the spans, packed while each span is assessed for its place, so that it needs to be assessed only once. Only the core columns and
 * what later commands need are packed: groups of columns come from a second assessment.
 */
public final class PackedSpans implements AutoCloseable {
    private static final String FILE = "rows.packed";

    private final List<Column<RankedSpan>> all;
    private final PackedRows<RankedSpan, PlacedSpan> rows;
    private final ConcurrentLinkedQueue<ZoneTally> zones = new ConcurrentLinkedQueue<>();

    private PackedSpans(List<Column<RankedSpan>> all, PackedRows<RankedSpan, PlacedSpan> rows) {
        this.all = all;
        this.rows = rows;
    }

    /**
     * Prepares the rows of a run, in memory.
     *
     * @param layout what the tables depend on, without groups
     * @param spans how many there are
     */
    public static PackedSpans inMemory(SpanLayout layout, UnitSystem units, int spans) {
        List<Column<RankedSpan>> all = columns(layout, units);
        return new PackedSpans(all, new PackedRows<>(all, PlacedSpan.columns(all), spans));
    }

    /** Prepares the rows of a run, in a file of this folder that only this program sees; empty where it cannot be made. */
    public static Optional<PackedSpans> inFile(SpanLayout layout, UnitSystem units, int spans, Path folder) {
        List<Column<RankedSpan>> all = columns(layout, units);
        return PackedRows.inFile(all, PlacedSpan.columns(all), spans, folder.resolve(FILE))
                .map(rows -> new PackedSpans(all, rows));
    }

    private static List<Column<RankedSpan>> columns(SpanLayout layout, UnitSystem units) {
        Map<String, Column<RankedSpan>> byName = new LinkedHashMap<>();
        SpanColumns.forLater(layout).columns().forEach(column -> byName.putIfAbsent(column.name(), column));
        UsColumns.in(SpanColumns.table(layout), units)
                .columns()
                .forEach(column -> byName.putIfAbsent(column.name(), column));
        return List.copyOf(byName.values());
    }

    /** Packs rows, for one thread. */
    public final class Filler {
        private final PackedRows<RankedSpan, PlacedSpan>.Filler filler = rows.newFiller();
        private final ZoneTally touched = new ZoneTally();

        private Filler() {
            zones.add(touched);
        }

        /** Packs the row of a span, whose rank and whose chance of the top need not be right yet. */
        public void add(int number, RankedSpan span) {
            filler.add(number, span);
            touched.add(span.assessment().permits());
        }
    }

    /** Returns what one thread packs rows with. */
    public Filler newFiller() {
        return new Filler();
    }

    /** To be called once all rows have been packed: from now on they may be read. */
    public void end() {
        rows.end();
    }

    /** Releases all rows. */
    @Override
    public void close() {
        rows.close();
    }

    /** Returns whether all rows could be held. */
    public boolean isComplete() {
        return !rows.isIncomplete();
    }

    PackedRows<RankedSpan, PlacedSpan>.Reader newReader() {
        return rows.newReader();
    }

    /** Returns the places of a table's columns among the packed ones. */
    int[] order(Table<RankedSpan> table) {
        List<String> names = all.stream().map(Column::name).toList();
        return table.columns().stream()
                .mapToInt(column -> names.indexOf(column.name()))
                .toArray();
    }

    /** Adds what the spans touch to a tally. */
    void addZones(ZoneTally tally) {
        zones.forEach(tally::take);
    }
}
