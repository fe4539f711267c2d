package org.spanroom.pipeline;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.spanroom.model.Line;
import org.spanroom.output.CopiedTable;
import org.spanroom.output.columns.SectionColumns;
import org.spanroom.output.report.ReportProgram;
import org.spanroom.output.report.ReportSections;
import org.spanroom.output.report.ReportSpans;

/** Where the spans of the page belong: their sections, and their places beside the other spans of a section. */
final class ReportPlaces {
    private final ReportSpansReader.Read spans;
    private final int[] section;
    private final int[] pack;
    private final int[] band;
    private final int[] year;

    ReportPlaces(ReportSpansReader.Read spans) {
        this.spans = spans;
        int rows = spans.table().rows();
        section = filled(rows);
        pack = filled(rows);
        band = filled(rows);
        year = filled(rows);
    }

    private static int[] filled(int rows) {
        int[] none = new int[rows];
        Arrays.fill(none, -1);
        return none;
    }

    /** Puts the spans into their sections; a section of which the page shows no span is left out. */
    ReportSections sections(ReportTables tables) {
        CopiedTable copied = tables.copied(SectionColumns.NAME);
        int id = copied.columns().indexOf("section_id");
        Map<String, List<Integer>> bySection = ReportSpansReader.rowsBySection(spans.sections());
        var rows = new ArrayList<CopiedTable.Row>();
        var members = new ArrayList<List<Integer>>();
        var lines = new ArrayList<Optional<Line>>();
        for (CopiedTable.Row row : copied.rows()) {
            List<Integer> its = bySection.get(String.valueOf(row.values().get(id)));
            if (its != null) {
                its.forEach(span -> section[span] = rows.size());
                lines.add(spans.lonLat().get(its.get(0)));
                members.add(its);
                rows.add(row);
            }
        }
        return new ReportSections(
                tables.table(SectionColumns.NAME, copied, rows),
                lines,
                members,
                copied.rows().size());
    }

    /** Puts the spans that have details into their packs and bands; they are the first rows. */
    void put(DetailSource.Details details) {
        for (int row = 0; row < details.spans(); row++) {
            pack[row] = row / ReportSources.PACK;
        }
        details.bands().ifPresent(bands -> {
            for (int row = 0; row < bands.bandOfSpan().size(); row++) {
                band[row] = bands.bandOfSpan().get(row);
            }
        });
    }

    /** Puts the spans of a program into their years. */
    void put(ReportProgram program) {
        int column = program.items().place("year");
        for (int item = 0; item < program.items().rows(); item++) {
            int row = program.itemRows().get(item);
            if (row >= 0) {
                year[row] = (int) program.items().number(item, column);
            }
        }
    }

    /** Returns the year of the program in which a span is recovered, from 1. */
    OptionalInt findYear(int row) {
        return year[row] < 0 ? OptionalInt.empty() : OptionalInt.of(year[row]);
    }

    ReportSpans spans() {
        var places = new ArrayList<ReportSpans.Place>();
        for (int row = 0; row < section.length; row++) {
            places.add(new ReportSpans.Place(section[row], pack[row], band[row], year[row]));
        }
        return new ReportSpans(spans.table(), spans.lonLat(), places);
    }

    /** Returns the rows of sections by their names. */
    static Map<String, Integer> rowBySection(ReportSections sections) {
        Map<String, Integer> rows = new HashMap<>();
        int id = sections.table().place("section_id");
        for (int row = 0; row < sections.table().rows(); row++) {
            rows.put(sections.table().text(row, id), row);
        }
        return rows;
    }
}
