package org.spanroom.output;

import static java.util.stream.Collectors.joining;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import org.spanroom.model.ColumnGroup;
import org.spanroom.model.OutputFormat;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.output.columns.ConnectColumns;
import org.spanroom.output.columns.CorridorColumns;
import org.spanroom.output.columns.MoveColumns;
import org.spanroom.output.columns.PathColumns;
import org.spanroom.output.columns.SpanColumns;
import org.spanroom.output.columns.SpanLayout;
import org.spanroom.output.folder.OutputFolder;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.GeometryKind;
import org.spanroom.output.table.Table;

/** The document that explains every column of the results, made from the columns themselves. */
final class DataDictionary {
    /** What the last word of a column's name says of its unit. */
    private static final Map<String, String> UNITS = new TreeMap<>(Map.ofEntries(
            Map.entry("m", "m"),
            Map.entry("mm", "mm"),
            Map.entry("mm2", "mm²"),
            Map.entry("m3", "m³"),
            Map.entry("l", "l"),
            Map.entry("kg", "kg"),
            Map.entry("n", "N"),
            Map.entry("deg", "degrees"),
            Map.entry("hours", "h"),
            Map.entry("minutes", "min"),
            Map.entry("days", "days"),
            Map.entry("money", "currency of the rates"),
            Map.entry("pct", "%"),
            Map.entry("ratio", "-"),
            Map.entry("unit", "see the column of the unit"),
            Map.entry("points", "points of 100"),
            Map.entry("positions", "positions"),
            Map.entry("value", "0 to 1")));

    private static final String OPENING = """
            # Data dictionary: results

            Generated from the code by `DataDictionaryTest`. To regenerate it after a change of columns, run
            `mvn test -Dtest=DataDictionaryTest -Dspanroom.regenerate=true`.

            A run writes one folder: layers and tables in a GeoPackage and as CSV, and on request as GeoJSON and Shapefile (`--formats`). The layer
            `spans` has the core columns, and those of the groups that `--columns` names:

            GROUPS

            A group also adds tables, with one row for each part of a span and the `span_id`. `rank --from` writes the same tables,
            except those that apply to one scoring only.

            """;

    private static final String FOR_ALL = """
            ## Rules for all tables

            - The GeoPackage is of version 1.3, with a spatial index for each layer. Its table `gpkg_data_columns` has the meanings below and a
              name in words for each column, `gpkg_metadata` what the file is made from, and `layer_styles` how layers look. GeoJSON is RFC 7946, one feature per line. A Shapefile has
              the short names below. CSV is without geometry.
            - Columns marked **core** are in every run. The others of `spans` are written with their group.
            - Every format has the same values, rounded to the decimals given below (half away from zero).
            - An empty cell means: not known, not recorded, or not applicable. Blank texts and numbers that are not finite count as
              empty. It is `null` in GeoJSON and GeoPackage, no character between two commas in CSV, blanks in the Shapefile.
            - Coordinates: GeoJSON is always longitude, latitude on WGS 84 with up to 9 decimals; GeoPackage and Shapefile are in the
              output reference system, rounded to 1e-9 degrees or 1e-4 of its unit of length. All are about 0.1 mm or finer.
              Elevations, where the input has them, are in meters with 4 decimals; in the Shapefile a line without elevations has 0 where
              other lines have them. If no route of the run has elevations, no layer has.
            - Control characters other than tab and line breaks, unpaired surrogates and noncharacters become U+FFFD.
            - CSV: RFC 4180, so lines end with CR LF; UTF-8 without a byte-order mark; flags are `true` and `false`; the decimal mark is a
              point. A text that a spreadsheet would run as a formula has an apostrophe in front: one that begins with `=`, `+`, `-`, `@`
              (ordinary, small or full-width), after any blanks, quotation marks and invisible characters, or with a tab or line break, and is not a plain number.
              What follows a semicolon, tab or line break within a text is guarded the same way, since some spreadsheets begin a cell there.
            - Shapefile: names of at most 10 characters, texts of at most 254 bytes of UTF-8 (longer ones are cut after the last
              whole character, and the run reports how many); flags are `T` and `F`. If it would exceed 2 GB it is not written, and the run reports that.
            - GeoPackage and GeoJSON flags are Booleans.
            - Rows of `spans` are in order of rank, the excluded ones last in order of `span_id`.
            """;

    private static final String STANDARDS = """
            ## Words of open standards

            INSPIRE: data specification D2.8.III.6 Utility and Government Services, v3.2.0 (31 Jan 2024). MUDDI: OGC 23-024 for the
            concepts, model file 1.1 (2019) for the names. OFDS: Open Fibre Data Standard 0.2, GeoJSON publication format, paths as a field map
            takes them (from memory). A dash: no counterpart there.

            | here | INSPIRE Utility Networks | MUDDI | OFDS |
            |---|---|---|---|
            | a row of `spans` | `UtilityLinkSequence` between two nodes | `NetworkObject` | a span, which may pass several vaults |
            | `duct` | `Duct`, `inspireId` | `ContainerObject` of `containerType` Duct or Conduit, `assetID` | a span, `id` |
            | `duct_bank` | the outermost `Duct`, which holds others by its role `ducts` | `ContainerObject` with `numberOfConduits` | - |
            | innerducts (`innerducts_out`) | `Duct` inside `Duct`, role `ducts` | `ContainerObject` of `containerType` Subduct | - |
            | `vault_a`, `vault_b`, `vault_id` | `Manhole` | `ContainerObject` of `containerType` Vault | `start.id`, `end.id`, `id` of a node |
            | `inside_diameter_mm` | `ductWidth`, which does not say inside or outside | `insideWidth`, `insideHeight` | - |
            | `length_m` | - (geometry of the link) | `insideLength` | - (geometry; `fibreLength` is that of the fibre) |
            | `owner` | `authorityRole` of the `UtilityNetwork` | `assetOwner` | `physicalInfrastructureProvider.name` |
            | `condition` | `currentStatus`, which gives the use, not the state of the bore | `operationalStatus`, such as Unfit For Service | `status`, which gives the stage of life |
            | `position_quality` | - | `qualityLevel`, QL-A to QL-D | - |
            | `year_installed` | `validFrom` | - | `readyForServiceDate` |
            """;

    private static final String RUN = """
            ## run.json

            | member | meaning |
            |---|---|
            | `program`, `version`, `started_at` | what ran, and when (UTC) |
            | `rescored_from` | only of a run made by `rank --from`: the run that all but the scoring is from, and whose `version` and `inputs` these are |
            | `filter` | only where `--where` or `--within` chose the rows: `where`, `within`, `within_sha256`, `spans_kept`, `spans_left_out`. Ranks, counts and sums are those of the whole run; only the rows of each table (below) are fewer |
            | `inputs` | for each layer or table read: `role` (`routes`, `vaults`, `contents`, `zones`, `field_book`), `file` as named, `layer`, `crs`, `sha256` of the file, `parts` (of a Shapefile, the files that belong to it, with theirs), `features_read`, `features_used`, `features_rejected`, `rejected_by_code` (those, counted by the finding that says why; exact, also where the findings are too many to list) |
            | TABLES | how many rows each table has, those of tables in no file included; of findings, how many problems they stand for |
            | `spans_ranked`, `spans_excluded` | how many spans have a rank, and how many have none, by reason |
            | `spans_ranked_doubtful` | how many of the ranked spans can be pulled only when well lubricated: caution `pull_doubtful` |
            | `spans_ranked_tight_bend` | how many of them have an innerduct that must pass a bend tighter than its minimum radius: caution `innerduct_radius` |
            | `lengths_m` | meters on the ground: all `routes` read, `spans`, `remainders` that are not assigned to a span, and `spans_ranked` |
            | `kept_fields` | only where `inputs.routes.keep` names fields: for each, over the ranked spans by its values, `spans_ranked`, `positions_gained` and `length_m`, most gained first; values beyond the first thousand in the order of the ranking together as `others` |
            | `money_ranked` | over all spans that have a rank, in `currency`: `recovery_money`, `build_money` and `saving_money` with all rates at their values, and of each the `low`, `likely` (median) and `high` percentile of the totals of joint drawings of the rates; without these where nothing was simulated, or by `rank --from` |
            | `findings_by_severity`, `findings_by_code` | how many of each |
            | `output_crs` | name of the reference system of GeoPackage and Shapefile |
            | `notes` | what was cut or left out in writing |
            | `config` | the configuration as used, keys in order of the alphabet |
            """;

    private static final String CORE = "**core** ";

    private DataDictionary() {}

    /**
     * Returns the whole document.
     *
     * @param layout with every criterion that a score may have
     */
    static String text(SpanLayout layout) {
        var parts = new ArrayList<>(List.of(OPENING.replace("GROUPS", groups()) + files(), FOR_ALL));
        for (ResultTable<?> entry : ResultTables.ALL) {
            parts.add(entry.equals(ResultTables.SPANS) ? spans(layout) : section(entry.table(layout)));
        }
        parts.add(forLater(layout));
        parts.add(ofCommand(MoveColumns.TABLE, "Of `compare`, as the layer of `moves.gpkg` and as `moves.csv`."));
        parts.add(ofCommand(PathColumns.PATHS, "Of `path`, as a table of `path.gpkg` and as `paths.csv`."));
        parts.add(
                ofCommand(PathColumns.SECTIONS, "Of `path`, as the layer of `path.gpkg` and as `path_sections.csv`."));
        parts.add(ofCommand(
                CorridorColumns.CORRIDORS, "Of `corridors`, as a layer of `corridors.gpkg` and as `corridors.csv`."));
        parts.add(ofCommand(
                CorridorColumns.SECTIONS, "Of `corridors`, as a layer of `corridors.gpkg` and as `sections.csv`."));
        parts.add(ofCommand(
                ConnectColumns.CONNECTIONS, "Of `connect`, as a layer of `connect.gpkg` and as `connections.csv`."));
        parts.add(ofCommand(
                ConnectColumns.SECTIONS,
                "Of `connect`, as a layer of `connect.gpkg` and as `connection_sections.csv`."));
        AnnualWriter.tables().forEach(table -> parts.add(ofCommand(table, ofProgram(table))));
        LearnWriter.tables()
                .forEach(table -> parts.add(ofCommand(table, "Of `learn`, as `" + table.name() + ".csv`.")));
        parts.add(FieldworkDictionary.text(DataDictionary::section));
        parts.add(RUN.replace("TABLES", names(entry -> true)));
        parts.add(STANDARDS);
        return String.join("\n", parts);
    }

    /** Returns the section of a table that is none of a run. */
    private static String ofCommand(Table<?> table, String where) {
        return section(table).replaceFirst("\n\n", "\n\n" + where + " ");
    }

    private static String ofProgram(Table<?> table) {
        String kind = table.geometry() == GeometryKind.NONE ? "a table" : "a layer";
        return "Of `program`, as " + kind + " of `program.gpkg` and as `" + table.name() + ".csv`.";
    }

    private static String groups() {
        return ColumnGroup.all().stream()
                .map(group -> "- `" + group.key() + "`: " + group.subject() + tables(group))
                .collect(joining("\n", "", "\n- `all`: all of them"));
    }

    private static String tables(ColumnGroup group) {
        String names = names(entry -> entry.group().equals(Optional.of(group)));
        return names.isEmpty() ? "" : "; tables " + names;
    }

    /** Returns the columns of the spans by group. */
    private static String spans(SpanLayout layout) {
        Table<RankedSpan> table = SpanColumns.all(layout);
        var text = new StringBuilder(heading(table));
        text.append("\n### Identity\n\n").append(rows(SpanColumns.identity(), true));
        text.append("""

                Fields that `inputs.routes.keep` names follow the core columns, as `src_` and their names.
                """);
        SpanColumns.byGroup(layout)
                .forEach((group, columns) -> text.append("\n### Group `")
                        .append(group.key())
                        .append("`: ")
                        .append(group.subject())
                        .append("\n\n")
                        .append(rows(columns, true)));
        return text.toString();
    }

    /** Returns which columns the file for later commands has. */
    private static String forLater(SpanLayout layout) {
        SpanLayout lean = new SpanLayout(layout.criteria(), false, List.of(), Set.of());
        List<String> core =
                SpanColumns.table(lean).columns().stream().map(Column::name).toList();
        List<? extends Column<?>> further = SpanColumns.forLater(lean).columns().stream()
                .filter(column -> !core.contains(column.name()))
                .toList();
        return "## " + RecordedSpans.FILE + "\n\n" + SpanColumns.forLater(lean).meaning() + "\n\n"
                + """
                Comma-separated values (RFC 4180) in gzip (RFC 1952), texts as they are: `rank --from`, `compare` and `explain` read this file, so keep
                it with the run. It has every column that the run wrote of `spans`, and whatever groups are asked for also those below. A run
                without a GeoPackage, or one that `--where` or `--within` filtered, adds the column `line_wkt`: the line in longitude and latitude on
                WGS 84. `run.json` has the version of the file (`run_spans_format`) and how many spans it has (`run_spans`).
                Commands that read it check every cell: a value that a run cannot have written, such as hours below 0, ends with exit code 3 and a line that
                names span, column and what was expected.

                """
                + rows(further);
    }

    /** Returns which file holds which table. */
    private static String files() {
        var text = new StringBuilder("| file | what |\n|---|---|\n");
        line(
                text,
                List.of(OutputFolder.GEOPACKAGE),
                "the layers " + names(DataDictionary::isLayer) + " and the tables " + names(entry -> !isLayer(entry)));
        for (ResultTable<?> entry : ResultTables.ALL) {
            List<String> files = entry.files(EnumSet.complementOf(EnumSet.of(OutputFormat.GEOPACKAGE)));
            if (!files.isEmpty()) {
                line(text, files, "the rows of `" + entry.name() + "`" + condition(entry));
            }
        }
        line(text, List.of(RecordedSpans.FILE), "every span, compressed, for later commands");
        line(
                text,
                List.of(ProjectFile.name(OutputFolder.GEOPACKAGE)),
                "a project for QGIS that opens the layers of the GeoPackage with their styles");
        line(text, List.of(RunJson.FILE), "the run: what went in, and counts of what came out");
        line(
                text,
                List.of(".results"),
                "the names of the files above, by which `--overwrite` knows what it may replace");
        return text.toString();
    }

    private static void line(StringBuilder text, List<String> files, String meaning) {
        text.append("| `")
                .append(String.join("`, `", files))
                .append("` | ")
                .append(meaning)
                .append(" |\n");
    }

    private static String condition(ResultTable<?> entry) {
        String always = entry.alwaysWritten() ? "; as CSV also where no format that holds them is asked for" : "";
        String group = entry.group()
                .map(asked -> "; with the group `" + asked.key() + "`")
                .orElse("");
        return always + group + (entry.ofItsScoring() ? "; not written by `rank --from`" : "");
    }

    private static String names(Predicate<ResultTable<?>> which) {
        return ResultTables.ALL.stream()
                .filter(which)
                .map(entry -> "`" + entry.name() + "`")
                .collect(joining(", "));
    }

    private static boolean isLayer(ResultTable<?> entry) {
        return entry.table(SpanLayout.PLAIN).geometry() != GeometryKind.NONE;
    }

    /** Returns the unit that a column's name ends in, or empty. */
    static String unit(Column<?> column) {
        if (column.type() != Column.Type.REAL) {
            return "";
        }
        if (column.name().endsWith("_n_per_m")) {
            return "N/m";
        }
        if (column.name().endsWith("_money_per_position")) {
            return "currency of the rates per position";
        }
        if (column.name().endsWith("_money_per_cable")) {
            return "currency of the rates per cable";
        }
        if (column.name().endsWith("_money_per_cable_m")) {
            return "currency of the rates per meter and cable";
        }
        String lastWord = column.name().substring(column.name().lastIndexOf('_') + 1);
        return UNITS.getOrDefault(lastWord, "");
    }

    private static String section(Table<?> table) {
        return heading(table) + "\n" + rows(table.columns());
    }

    private static String heading(Table<?> table) {
        return "## " + table.name() + "\n\n" + table.meaning() + " Geometry: " + geometry(table.geometry()) + ".\n";
    }

    private static String rows(List<? extends Column<?>> columns) {
        return rows(columns, false);
    }

    private static String rows(List<? extends Column<?>> columns, boolean marked) {
        var text = new StringBuilder("| column | in Shapefiles | type | unit | meaning |\n|---|---|---|---|---|\n");
        for (Column<?> column : columns) {
            List<String> cells = List.of(
                    "`" + column.name() + "`",
                    "`" + column.shortName() + "`",
                    type(column),
                    unit(column),
                    (marked && SpanColumns.isCore(column) ? CORE : "") + column.meaning());
            text.append("| ").append(String.join(" | ", cells)).append(" |\n");
        }
        return text.toString().replace("|  |", "| |");
    }

    private static String geometry(GeometryKind kind) {
        return switch (kind) {
            case NONE -> "none";
            case POINT -> "point, or none where the place is not known";
            case LINE -> "line";
            case MULTILINE -> "line of one part or several";
            case POLYGON -> "polygon";
            case MULTIPOLYGON -> "polygon of one part or several";
        };
    }

    private static String type(Column<?> column) {
        return switch (column.type()) {
            case TEXT -> "text";
            case INTEGER -> "whole number";
            case REAL -> "number, " + column.decimals() + (column.decimals() == 1 ? " decimal" : " decimals");
            case FLAG -> "flag";
        };
    }
}
