package org.spanroom.output.shapefile;

import java.nio.file.Path;
import org.spanroom.output.table.LayerOptions;
import org.spanroom.output.table.OneFileWriter;
import org.spanroom.output.table.RowWriter;
import org.spanroom.output.table.Table;

/** Writes a layer as a Shapefile, as {@link ShapefileFiles} describes. */
public final class ShapefileWriter<R> implements RowWriter<R> {
    private final ShapefileFiles files;
    private final RowWriter<R> writer;

    /** Opens a Shapefile; the other files lie beside the named one. */
    public ShapefileWriter(Path shpFile, Table<R> table, LayerOptions options) {
        this(shpFile, table, options, ShapefileFiles.MOST_BYTES);
    }

    ShapefileWriter(Path shpFile, Table<R> table, LayerOptions options, long mostBytes) {
        files = new ShapefileFiles(shpFile, table, options, mostBytes, 0);
        writer = new OneFileWriter<>(files, table, options.frame());
    }

    @Override
    public void write(R row) {
        writer.write(row);
    }

    /** Returns how many texts were longer than the format allows and have been cut. */
    public long cutTexts() {
        return files.cutTexts();
    }

    /** Removes all files of a Shapefile that cannot be completed; after closing. */
    void delete() {
        files.delete();
    }

    @Override
    public void close() {
        writer.close();
    }
}
