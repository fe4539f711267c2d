package org.spanroom.output;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.spanroom.model.learn.LearnResults;
import org.spanroom.output.columns.LearnedColumns;
import org.spanroom.output.columns.RateChangeColumns;
import org.spanroom.output.columns.TotalsColumns;
import org.spanroom.output.folder.OutputException;
import org.spanroom.output.folder.OutputFolder;
import org.spanroom.output.table.Table;
import org.spanroom.output.text.CsvWriter;

/** Writes what was learned into a folder of its own: proposals as parts of a config, tables as CSV. */
public final class LearnWriter {
    /** The proposed rates. */
    public static final String RATES = "rates.yaml";

    /** The proposed friction; not written where nothing is proposed. */
    public static final String FRICTION = "friction.yaml";

    /** The file by which a folder of ours is known. */
    private static final String MARKER = RateChangeColumns.TABLE.name() + ".csv";

    private static final List<Table<?>> TABLES = List.of(
            RateChangeColumns.TABLE,
            LearnedColumns.FRICTION,
            LearnedColumns.CHANCES,
            TotalsColumns.TABLE,
            LearnedColumns.LEFT_OUT);

    private LearnWriter() {}

    /** Returns all tables, in the order of the data dictionary. */
    static List<Table<?>> tables() {
        return TABLES;
    }

    /** Checks, before the work, that the results may be written. */
    public static void check(Path folder, boolean overwrite) {
        OutputFolder.check(folder, overwrite, MARKER);
    }

    /**
     * Writes all of it.
     *
     * @throws OutputException if the folder exists and may not be replaced, or cannot be written
     */
    public static List<Path> write(LearnResults results, Path folder, boolean overwrite) {
        var names = new ArrayList<String>();
        try (var output = OutputFolder.create(folder, overwrite, MARKER)) {
            Path into = output.path();
            names.add(text(into, RATES, RatesYaml.text(results.rates(), results.rateChanges())));
            FrictionYaml.text(results).ifPresent(text -> names.add(text(into, FRICTION, text)));
            names.add(csv(into, RateChangeColumns.TABLE, results.rateChanges()));
            names.add(csv(into, LearnedColumns.FRICTION, LearnedColumns.FrictionRow.of(results.frictionChanges())));
            names.add(csv(into, LearnedColumns.CHANCES, results.chanceChanges()));
            names.add(csv(into, TotalsColumns.TABLE, results.totals()));
            names.add(csv(into, LearnedColumns.LEFT_OUT, results.leftOut()));
            output.commit();
        }
        return names.stream().map(folder::resolve).toList();
    }

    private static String text(Path folder, String name, String text) {
        Path file = folder.resolve(name);
        try {
            Files.writeString(file, text);
            return name;
        } catch (IOException failure) {
            throw OutputException.of(file, failure);
        }
    }

    private static <R> String csv(Path folder, Table<R> table, List<R> rows) {
        String name = table.name() + ".csv";
        try (var csv = new CsvWriter<>(folder.resolve(name), table)) {
            rows.forEach(csv::write);
        }
        return name;
    }
}
