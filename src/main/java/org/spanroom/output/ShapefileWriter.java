package org.spanroom.output;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.List;

/**
 * Writes a layer as a Shapefile: .shp, .shx, .dbf, .prj and .cpg, with the columns' short names and UTF-8 text.
 *
 * <p>The format ends at 2 GB a file, which is noticed, and at 254 bytes a text, which are cut and counted.
 */
public final class ShapefileWriter<R> implements RowWriter<R> {
    private static final List<String> ENDINGS = List.of("shp", "shx", "dbf", "dbf.cells", "prj", "cpg");

    /** Offsets count 16-bit words in a signed integer, but most readers stop at 2 GiB of bytes. */
    private static final long MOST_BYTES = Integer.MAX_VALUE;

    private final Path shpFile;
    private final Table<R> table;
    private final Frame frame;
    private final ShpFiles shapes;
    private final DbfFile cells;

    /** Opens a Shapefile; the other files lie beside the named one. */
    public ShapefileWriter(Path shpFile, Table<R> table, LayerOptions options) {
        this(shpFile, table, options, MOST_BYTES);
    }

    ShapefileWriter(Path shpFile, Table<R> table, LayerOptions options, long mostBytes) {
        if (table.geometry() == GeometryKind.NONE) {
            throw new IllegalArgumentException("a Shapefile needs shapes; " + table.name() + " has none");
        }
        this.shpFile = shpFile;
        this.table = table;
        this.frame = options.frame();
        this.shapes = new ShpFiles(shpFile, sibling(shpFile, "shx"), table, mostBytes);
        this.cells = new DbfFile(
                sibling(shpFile, "dbf"),
                table,
                options.writtenAt().atOffset(ZoneOffset.UTC).toLocalDate(),
                mostBytes);
        put(sibling(shpFile, "prj"), frame.esriWkt());
        put(sibling(shpFile, "cpg"), "UTF-8");
    }

    @Override
    public void write(R row) {
        shapes.write(frame.place(table.shape().apply(row)));
        table.putCells(row, cells);
        cells.endRow();
    }

    /** Returns how many texts were longer than the format allows and have been cut. */
    public long cutTexts() {
        return cells.cutTexts();
    }

    /** Removes all files of a Shapefile that cannot be completed; after closing. */
    void delete() {
        for (String ending : ENDINGS) {
            Path file = sibling(shpFile, ending);
            try {
                Files.deleteIfExists(file);
            } catch (IOException failure) {
                throw OutputException.of(file, failure);
            }
        }
    }

    @Override
    public void close() {
        try (cells) {
            shapes.close();
        }
    }

    private static Path sibling(Path shpFile, String ending) {
        String name = shpFile.getFileName().toString();
        String stem = name.endsWith(".shp") ? name.substring(0, name.length() - 4) : name;
        return shpFile.resolveSibling(stem + "." + ending);
    }

    private static void put(Path file, String text) {
        try {
            Files.writeString(file, text, StandardCharsets.UTF_8);
        } catch (IOException failure) {
            throw OutputException.of(file, failure);
        }
    }
}
