package org.spanroom.output.style;

import java.util.List;
import java.util.Map;

/**
 * The place of a layer in a project.
 *
 * @param shown whether it is switched on when the project is opened
 * @param scales the scales at which it is drawn, so that one layer follows another
 */
record ProjectLayer(String table, boolean shown, ScaleRange scales) {
    private static final ScaleRange STREET = ScaleRange.upTo(RankLooks.STREET);
    private static final ScaleRange BEYOND = ScaleRange.between(RankLooks.STREET, 0);

    /** From the top of the map to the bottom: points, lines, areas. */
    private static final List<ProjectLayer> ORDER = List.of(
            always("vault_survey", false),
            always("field_checks", false),
            always("findings", false),
            always("bends", false),
            always("program_vaults", true),
            always("vaults", true),
            always("program", true),
            always("new_ducts", true),
            always("reserve", false),
            always("moves", true),
            always("connections", false),
            always("connection_sections", true),
            always("path_sections", true),
            always("corridors", true),
            new ProjectLayer("spans", true, STREET),
            always("sections", true),
            always("permits", false),
            always("zones", true));

    private static final Map<String, ProjectLayer> WITH_SPANS =
            Map.of("sections", new ProjectLayer("sections", true, BEYOND));

    private static ProjectLayer always(String table, boolean shown) {
        return new ProjectLayer(table, shown, ScaleRange.ALL);
    }

    /** Returns the layers of some tables from the top of the map to the bottom; a table that is in no map is left out. */
    static List<ProjectLayer> of(List<String> tables) {
        return ORDER.stream()
                .filter(layer -> tables.contains(layer.table()))
                .map(layer -> tables.contains("spans") ? WITH_SPANS.getOrDefault(layer.table(), layer) : layer)
                .toList();
    }
}
