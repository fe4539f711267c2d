package org.spanroom.output;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.spanroom.model.program.Corridor;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.model.program.SectionNeed;
import org.spanroom.output.columns.CorridorColumns;
import org.spanroom.output.folder.OutputException;
import org.spanroom.output.table.LayerOptions;

/** Writes corridors and sections, as layers and as CSV. */
public final class CorridorWriter {
    /** The file by which a folder of ours is known. */
    public static final String MARKER = CorridorColumns.CORRIDORS.name() + ".csv";

    private CorridorWriter() {}

    /**
     * Writes both.
     *
     * @throws OutputException if the folder exists and may not be replaced, or cannot be written
     */
    public static List<Path> write(
            DuctNetwork network,
            List<Corridor> corridors,
            List<SectionNeed> needs,
            Path folder,
            boolean overwrite,
            LayerOptions options) {
        var rows = new ArrayList<CorridorColumns.CorridorRow>();
        corridors.forEach(corridor -> rows.add(new CorridorColumns.CorridorRow(rows.size() + 1, corridor, network)));
        List<CorridorColumns.NeedRow> sections = needs.stream()
                .map(need -> new CorridorColumns.NeedRow(need, network))
                .toList();
        return ProgramWriter.write(
                "corridors.gpkg",
                List.of(
                        new ProgramWriter.Rows<>(CorridorColumns.CORRIDORS, rows),
                        new ProgramWriter.Rows<>(CorridorColumns.SECTIONS, sections)),
                folder,
                overwrite,
                options);
    }
}
