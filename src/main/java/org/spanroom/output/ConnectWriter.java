package org.spanroom.output;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.spanroom.model.program.ConnectionResult;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.output.columns.ConnectColumns;
import org.spanroom.output.folder.OutputException;
import org.spanroom.output.table.LayerOptions;

/** Writes what becomes of connections: two layers, the same as CSV, and the account as JSON. */
public final class ConnectWriter {
    /** The file by which a folder of ours is known. */
    public static final String MARKER = ConnectColumns.CONNECTIONS.name() + ".csv";

    private static final String GEOPACKAGE = "connect.gpkg";
    private static final String JSON = "connect.json";

    private ConnectWriter() {}

    /** Returns the files that will be written. */
    public static List<Path> files(Path folder) {
        return List.of(
                folder.resolve(GEOPACKAGE),
                folder.resolve(ProjectFile.name(GEOPACKAGE)),
                folder.resolve(MARKER),
                folder.resolve(ConnectColumns.SECTIONS.name() + ".csv"),
                folder.resolve(JSON));
    }

    /**
     * Writes all of it.
     *
     * @throws OutputException if the folder exists and may not be replaced, or cannot be written
     */
    public static void write(
            DuctNetwork network,
            List<ConnectionResult> results,
            JsonObject account,
            Path folder,
            boolean overwrite,
            LayerOptions options) {
        var connections = new ArrayList<ConnectColumns.ConnectionRow>();
        var sections = new ArrayList<ConnectColumns.SectionRow>();
        for (ConnectionResult result : results) {
            connections.add(new ConnectColumns.ConnectionRow(result, network));
            for (int place = 0; place < result.steps().size(); place++) {
                sections.add(new ConnectColumns.SectionRow(
                        result.connection().name(), place + 1, result.steps().get(place), network));
            }
        }
        ProgramWriter.write(
                GEOPACKAGE,
                List.of(
                        new ProgramWriter.Rows<>(ConnectColumns.CONNECTIONS, connections),
                        new ProgramWriter.Rows<>(ConnectColumns.SECTIONS, sections)),
                Map.of(JSON, account.write()),
                folder,
                overwrite,
                options);
    }
}
