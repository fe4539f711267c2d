package org.spanroom.output;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.spanroom.model.ColumnGroup;
import org.spanroom.model.OutputFormat;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.output.columns.SpanLayout;
import org.spanroom.output.style.LayerStyles;
import org.spanroom.output.table.Table;

/**
 * One table of results: its columns, where its rows come from, and which formats hold it. Whatever writes, documents or reads back
 * tables follows the list of these, {@link ResultTables}.
 *
 * @param <R> what a row is
 * @param layout the table itself: name, meaning, geometry and columns, which may depend on the run
 * @param source where its rows come from
 * @param formats the formats that hold it
 * @param alwaysWritten whether it is written as CSV where none of its formats is asked for
 * @param group the group that it is written with; empty where every run writes it
 * @param ofItsScoring whether its rows hold for the scoring of the run only, so that another scoring leaves them out
 */
public record ResultTable<R>(
        String name,
        Function<SpanLayout, Table<R>> layout,
        RowSource<R> source,
        Set<OutputFormat> formats,
        boolean alwaysWritten,
        boolean ofItsScoring,
        Optional<ColumnGroup> group) {
    public ResultTable {
        formats = Set.copyOf(formats);
    }

    /** Returns a table in the GeoPackage, with any number of rows for a span. */
    static <R> ResultTable<R> ofSpans(Table<R> table, Function<RankedSpan, List<R>> rows) {
        return inGeoPackage(table.name(), layout -> table, new RowSource.OfSpans<>(rows, false));
    }

    /** Returns a table in the GeoPackage whose rows the run has once. */
    static <R> ResultTable<R> ofRun(Table<R> table, Function<Results, List<R>> rows) {
        return ofRun(table.name(), layout -> table, rows);
    }

    /** Returns a table in the GeoPackage whose rows the run has once, and whose layout depends on the run. */
    static <R> ResultTable<R> ofRun(
            String name, Function<SpanLayout, Table<R>> layout, Function<Results, List<R>> rows) {
        return inGeoPackage(name, layout, new RowSource.OfRun<>(rows));
    }

    /** Returns the table of the spans themselves, one row each. */
    static ResultTable<RankedSpan> spans(String name, Function<SpanLayout, Table<RankedSpan>> layout) {
        return inGeoPackage(name, layout, new RowSource.OfSpans<>(List::of, true));
    }

    private static <R> ResultTable<R> inGeoPackage(
            String name, Function<SpanLayout, Table<R>> layout, RowSource<R> source) {
        return new ResultTable<>(name, layout, source, Set.of(OutputFormat.GEOPACKAGE), false, false, Optional.empty());
    }

    /** Returns the same table, in further formats as well. */
    ResultTable<R> alsoIn(OutputFormat first, OutputFormat... more) {
        var all = EnumSet.of(first, more);
        all.addAll(formats);
        return new ResultTable<>(name, layout, source, all, alwaysWritten, ofItsScoring, group);
    }

    /** Returns the same table, written whatever formats are asked for. */
    ResultTable<R> written() {
        return new ResultTable<>(name, layout, source, formats, true, ofItsScoring, group);
    }

    /** Returns the same table, valid for the scoring of its run only. */
    ResultTable<R> scored() {
        return new ResultTable<>(name, layout, source, formats, alwaysWritten, true, group);
    }

    /** Returns the same table, written only where a group is asked for. */
    ResultTable<R> in(ColumnGroup itsGroup) {
        return new ResultTable<>(name, layout, source, formats, alwaysWritten, ofItsScoring, Optional.of(itsGroup));
    }

    /** Returns whether it is written where some groups are asked for. */
    boolean isAmong(Set<ColumnGroup> groups) {
        return group.map(groups::contains).orElse(true);
    }

    Table<R> table(SpanLayout run) {
        return layout.apply(run);
    }

    /** Returns the formats that this table is written in where some formats are asked for. */
    Set<OutputFormat> formatsAmong(Set<OutputFormat> asked) {
        var written = EnumSet.copyOf(formats);
        written.retainAll(asked);
        if (written.isEmpty() && alwaysWritten) {
            written.add(OutputFormat.CSV);
        }
        return written;
    }

    /** Returns the names of the files that hold this table. */
    List<String> files(Set<OutputFormat> asked) {
        var files = new ArrayList<String>();
        for (OutputFormat format : formatsAmong(asked)) {
            files.addAll(ResultFiles.names(name, format));
        }
        if (StyleFiles.areBeside(formatsAmong(asked))
                && LayerStyles.find(layout.apply(SpanLayout.PLAIN)).isPresent()) {
            files.addAll(StyleFiles.names(name));
        }
        return files;
    }
}
