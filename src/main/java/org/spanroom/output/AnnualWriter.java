package org.spanroom.output;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.model.program.ProgramResults;
import org.spanroom.output.columns.AnnualColumns;
import org.spanroom.output.columns.AnnualFigureColumns;
import org.spanroom.output.columns.AnnualNetworkColumns;
import org.spanroom.output.columns.AnnualVaultColumns;
import org.spanroom.output.columns.ReserveColumns;
import org.spanroom.output.columns.VaultWork;
import org.spanroom.output.folder.OutputException;
import org.spanroom.output.table.LayerOptions;
import org.spanroom.output.table.Table;

/** Writes an annual program: layers and tables in a GeoPackage, the same as CSV, the account as JSON, and the events as iCalendar. */
public final class AnnualWriter {
    /** The file by which a folder of ours is known. */
    public static final String MARKER = AnnualColumns.PROGRAM.name() + ".csv";

    private static final String GEOPACKAGE = "program.gpkg";
    private static final String JSON = "program.json";
    private static final String CALENDAR = "program.ics";

    /** In the order in which they stand in the GeoPackage. */
    private static final List<Table<?>> TABLES = List.of(
            AnnualColumns.PROGRAM,
            AnnualVaultColumns.VAULTS,
            AnnualNetworkColumns.NEW_DUCTS,
            AnnualNetworkColumns.CONNECTIONS,
            ReserveColumns.RESERVE,
            AnnualFigureColumns.TOTALS,
            AnnualFigureColumns.CURVE,
            AnnualFigureColumns.PRICES);

    private AnnualWriter() {}

    /** Returns all tables, in the order in which they stand in the GeoPackage. */
    static List<Table<?>> tables() {
        return TABLES;
    }

    /** Returns the files that will be written; that of prices only where there are any. */
    public static List<Path> files(Path folder, ProgramResults results) {
        var files = new ArrayList<Path>();
        files.add(folder.resolve(GEOPACKAGE));
        files.add(folder.resolve(ProjectFile.name(GEOPACKAGE)));
        TABLES.stream()
                .filter(table -> isWritten(table, results))
                .forEach(table -> files.add(folder.resolve(table.name() + ".csv")));
        files.add(folder.resolve(JSON));
        files.add(folder.resolve(CALENDAR));
        return files;
    }

    /**
     * Writes all of it.
     *
     * @param network the sections and vaults that the program works on
     * @param vaultFacts what the run wrote of vaults for the crews, by vault and column
     * @throws OutputException if the folder exists and may not be replaced, or cannot be written
     */
    public static void write(
            DuctNetwork network,
            ProgramResults results,
            Map<String, Map<String, Object>> vaultFacts,
            JsonObject account,
            Path folder,
            boolean overwrite,
            LayerOptions options) {
        Map<String, String> texts = new LinkedHashMap<>();
        texts.put(JSON, account.write());
        texts.put(
                CALENDAR,
                CalendarFile.text(AnnualEvents.of(results), results.rules().readyOn()));
        ProgramWriter.write(GEOPACKAGE, tables(network, results, vaultFacts), texts, folder, overwrite, options);
    }

    private static boolean isWritten(Table<?> table, ProgramResults results) {
        return !table.equals(AnnualFigureColumns.PRICES) || !results.prices().isEmpty();
    }

    private static List<ProgramWriter.Rows<?>> tables(
            DuctNetwork network, ProgramResults results, Map<String, Map<String, Object>> vaultFacts) {
        List<ReserveColumns.Row> reserve = results.reserve().stream()
                .map(item -> new ReserveColumns.Row(item, network.samples()))
                .toList();
        List<AnnualFigureColumns.TotalsRow> totals = results.totals().stream()
                .map(sums -> AnnualFigureColumns.TotalsRow.of(sums, results.spreads()))
                .toList();
        List<ProgramWriter.Rows<?>> all = List.of(
                new ProgramWriter.Rows<>(AnnualColumns.PROGRAM, results.items()),
                new ProgramWriter.Rows<>(
                        AnnualVaultColumns.VAULTS, VaultWork.all(results.items(), network, vaultFacts)),
                new ProgramWriter.Rows<>(AnnualNetworkColumns.NEW_DUCTS, results.ducts()),
                new ProgramWriter.Rows<>(AnnualNetworkColumns.CONNECTIONS, results.connections()),
                new ProgramWriter.Rows<>(ReserveColumns.RESERVE, reserve),
                new ProgramWriter.Rows<>(AnnualFigureColumns.TOTALS, totals),
                new ProgramWriter.Rows<>(AnnualFigureColumns.CURVE, results.curve()),
                new ProgramWriter.Rows<>(AnnualFigureColumns.PRICES, results.prices()));
        return all.stream().filter(rows -> isWritten(rows.table(), results)).toList();
    }
}
