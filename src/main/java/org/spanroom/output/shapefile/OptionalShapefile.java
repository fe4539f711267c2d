package org.spanroom.output.shapefile;

import java.nio.file.Path;
import java.util.Optional;
import org.spanroom.output.folder.OutputFolder;
import org.spanroom.output.table.LayerOptions;
import org.spanroom.output.table.Row;
import org.spanroom.output.table.Table;
import org.spanroom.output.table.TableFile;

/** A Shapefile that is left out where the format ends: other formats hold the same. */
public final class OptionalShapefile implements TableFile {
    private final Path shpFile;
    private final ShapefileFiles files;
    private volatile boolean leftOut;

    public OptionalShapefile(Path shpFile, Table<?> table, LayerOptions options, int expectedRows) {
        this.shpFile = shpFile;
        files = new ShapefileFiles(shpFile, table, options, ShapefileFiles.MOST_BYTES, expectedRows);
    }

    @Override
    public RowBatch newBatch() {
        RowBatch batch = files.newBatch();
        return new RowBatch() {
            @Override
            public void add(Row<?> row) {
                if (!leftOut) {
                    batch.add(row);
                }
            }

            @Override
            public void append() {
                if (leftOut) {
                    return;
                }
                try {
                    batch.append();
                } catch (FormatLimitException limit) {
                    leaveOut();
                }
            }
        };
    }

    /** Returns what the user should know of the file. */
    public Optional<String> note() {
        if (leftOut) {
            return Optional.of(shpFile.getFileName() + " was left out: a Shapefile ends at 2 GB; use "
                    + OutputFolder.GEOPACKAGE + ".");
        }
        return files.cutTexts() == 0
                ? Optional.empty()
                : Optional.of(files.cutTexts() + " texts in "
                        + ShapefileFiles.sibling(shpFile, "dbf").getFileName()
                        + " are cut to the 254 bytes that the format allows.");
    }

    @Override
    public void close() {
        if (leftOut) {
            return;
        }
        try {
            files.close();
        } catch (FormatLimitException limit) {
            leftOut = true;
            files.delete();
        }
    }

    private void leaveOut() {
        close();
        if (!leftOut) {
            leftOut = true;
            files.delete();
        }
    }
}
