package org.spanroom.output.style;

import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.GeometryKind;
import org.spanroom.output.table.Table;

/** The styles of all layers, by the names of their tables and, where two tables share a name, by their columns. */
public final class LayerStyles {
    private LayerStyles() {}

    /** Finds the style of a layer; a table without shapes has none. */
    public static Optional<LayerStyle> find(Table<?> table) {
        return style(table, UnaryOperator.identity());
    }

    /** Finds the style of a layer for a Shapefile, where columns have their short names. */
    public static Optional<LayerStyle> findForShortNames(Table<?> table) {
        Map<String, String> shortNames =
                table.columns().stream().collect(Collectors.toMap(Column::name, Column::shortName));
        return style(table, shortNames::get);
    }

    private static Optional<LayerStyle> style(Table<?> table, UnaryOperator<String> names) {
        return look(table)
                .map(look ->
                        new LayerStyle(SldWriter.document(table.name(), look, names), QmlWriter.document(look, names)));
    }

    /** Finds how a layer looks, in no language yet. */
    static Optional<MapStyle> look(Table<?> table) {
        GeometryKind geometry = table.geometry();
        if (geometry == GeometryKind.NONE) {
            return Optional.empty();
        }
        Set<String> columns = table.columns().stream().map(Column::name).collect(Collectors.toCollection(TreeSet::new));
        return Optional.ofNullable(
                switch (table.name()) {
                    case "spans" -> RankLooks.spans(geometry, columns);
                    case "sections" ->
                        columns.contains("best_rank")
                                ? RankLooks.sections(geometry)
                                : ProgramLooks.actions("Sections by what serves a cable", geometry);
                    case "vaults" -> PlaceLooks.vaults();
                    case "bends" -> PlaceLooks.bends();
                    case "permits" -> PlaceLooks.permits(geometry);
                    case "findings" -> PlaceLooks.findings();
                    case "field_checks" -> PlaceLooks.fieldChecks();
                    case "vault_survey" -> PlaceLooks.vaultSurvey();
                    case "zones" -> PlaceLooks.zones();
                    case "moves" -> RankLooks.moves(geometry);
                    case "program" -> ProgramLooks.program(geometry);
                    case "program_vaults" -> ProgramLooks.programVaults();
                    case "new_ducts" -> ProgramLooks.newDucts(geometry);
                    case "reserve" -> ProgramLooks.reserve(geometry);
                    case "corridors" -> ProgramLooks.corridors(geometry);
                    case "path_sections" -> ProgramLooks.actions("Ways by what serves a cable", geometry);
                    case "connection_sections" -> ProgramLooks.actions("Connections by what serves a cable", geometry);
                    case "connections" -> ProgramLooks.connections(geometry);
                    default -> null;
                });
    }
}
