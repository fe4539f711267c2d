package org.spanroom.input.fields;

import java.util.Collection;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import org.apache.commons.csv.CSVRecord;
import org.jspecify.annotations.Nullable;
import org.spanroom.config.ContentsConfig;
import org.spanroom.config.RunConfig;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.input.layer.Blanks;
import org.spanroom.input.layer.CappedLog;
import org.spanroom.input.layer.SurplusCells;
import org.spanroom.model.Counted;
import org.spanroom.model.Term;
import org.spanroom.model.Unit;

/** The values of one row of the contents table. One object reads all rows in turn. */
final class ContentsRow extends TermValues {
    private static final int MOST_LINE_BREAKS = 50;

    private static final Map<Term, String> COLUMNS = Map.ofEntries(
            Map.entry(Term.INNERDUCT_OUTSIDE_DIAMETER, "outside_diameter"),
            Map.entry(Term.INNERDUCT_SDR, "sdr"),
            Map.entry(Term.INNERDUCT_WALL, "wall"),
            Map.entry(Term.INNERDUCT_SIZE, "catalog"),
            Map.entry(Term.CABLE_OUTSIDE_DIAMETER, "outside_diameter"),
            Map.entry(Term.CABLE_MASS, "mass"),
            Map.entry(Term.CABLE_TYPE, "catalog"),
            Map.entry(Term.IN_SERVICE, "in_service"),
            Map.entry(Term.CABLE_MAY_MOVE, "may_move"),
            Map.entry(Term.SLEEVE_CELLS, "cells"),
            Map.entry(Term.CELLS_RESERVED, "reserved"),
            Map.entry(Term.CONTINUOUS_AT_A, "continuous_at_a"),
            Map.entry(Term.CONTINUOUS_AT_B, "continuous_at_b"));

    /** Cells of these may be left empty without a finding. */
    private static final Set<String> OPTIONAL =
            Set.of("wall", "catalog", "in_service", "may_move", "reserved", "continuous_at_a", "continuous_at_b");

    private final CappedLog log;
    private final Map<String, Integer> columns;
    private final int width;
    private final Map<Term, LayerFields.Column> byTerm = new EnumMap<>(Term.class);
    private List<String> cells = List.of();
    private long line;

    /**
     * Makes ready for a table's rows.
     *
     * @param columns the place of each column that the table has
     * @param width how many columns the header has
     */
    ContentsRow(RunConfig config, CappedLog log, Map<String, Integer> columns, int width) {
        super(config);
        this.log = log;
        this.columns = columns;
        this.width = width;
        ContentsConfig contents = config.inputs().contents();
        COLUMNS.forEach((term, name) -> byTerm.put(
                term,
                new LayerFields.Column(columns.getOrDefault(name, Integer.MAX_VALUE), name, unit(term, contents))));
    }

    private static Optional<Unit> unit(Term term, ContentsConfig contents) {
        return switch (term.kind()) {
            case DIAMETER -> Optional.of(contents.diameterUnit());
            case MASS_PER_LENGTH -> Optional.of(contents.massUnit());
            default -> Optional.empty();
        };
    }

    /** Turns to a next row. */
    void start(CSVRecord record, long atLine) {
        cells = record.toList();
        line = atLine;
        clear();
    }

    /** Returns whether it says nothing: spreadsheets write such rows behind the last one. */
    boolean isBlank() {
        return cells.stream().allMatch(String::isBlank);
    }

    String duct() {
        return cell("duct");
    }

    /** Returns a cell's text; "" where the column, the cell or what it says is missing. */
    String cell(String column) {
        String text = textAt(columns.getOrDefault(column, Integer.MAX_VALUE));
        return saysMissing(text) ? "" : text;
    }

    private String textAt(int index) {
        return index < cells.size() ? Blanks.strip(cells.get(index)) : "";
    }

    @Override
    Optional<LayerFields.Column> find(Term term) {
        return Optional.ofNullable(byTerm.get(term))
                .filter(column -> !OPTIONAL.contains(column.field())
                        || !cell(column.field()).isEmpty());
    }

    @Override
    @Nullable
    Object value(LayerFields.Column column) {
        return textAt(column.index());
    }

    @Override
    String called(Term term) {
        return COLUMNS.getOrDefault(term, term.key());
    }

    @Override
    public void add(FindingCode code, String column, Supplier<String> detail) {
        place().add(code, column, detail);
    }

    /**
     * Says what is wrong with a row that goes on over further lines, because a quote was opened and not closed: it has swallowed
     * rows. Only a column that is not read may hold a text of several lines, and not of very many.
     */
    Optional<String> runOn() {
        boolean inColumn =
                lineBreaks(columns.values().stream().map(this::textAt).toList()) > 0;
        long lines = lineBreaks(cells);
        return inColumn || lines > MOST_LINE_BREAKS
                ? Optional.of("it and the " + Counted.of(lines, "line")
                        + " before it are one row; check for an unclosed quote")
                : Optional.empty();
    }

    /** Says what is wrong with a row of more cells than the header has. */
    Optional<String> tooLong() {
        return SurplusCells.problemAndRemedy(cells.size(), width);
    }

    private static long lineBreaks(Collection<String> texts) {
        return texts.stream().flatMapToInt(String::chars).filter(c -> c == '\n').count();
    }

    /** Notes that the row cannot be used; false for the caller to return. */
    boolean unusable(String why) {
        add(FindingCode.CONTENTS_ROW_UNUSABLE, "", () -> why);
        return false;
    }

    /** Returns what is needed of the row to report on it later, which takes less memory than the row. */
    Place place() {
        return new Place(log, duct().isEmpty() ? "line " + line : duct(), line);
    }

    /**
     * The place of a row.
     *
     * @param id what findings call the row: its duct, or its line
     */
    record Place(CappedLog log, String id, long line) {
        void add(FindingCode code, String column, Supplier<String> detail) {
            log.add(
                    code,
                    column,
                    () -> Finding.of(code, log.source(), id, "line " + line + ": " + detail.get())
                            .inField(column));
        }
    }
}
