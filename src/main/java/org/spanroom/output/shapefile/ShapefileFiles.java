package org.spanroom.output.shapefile;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.List;
import org.spanroom.output.folder.OutputException;
import org.spanroom.output.table.GeometryKind;
import org.spanroom.output.table.LayerOptions;
import org.spanroom.output.table.Row;
import org.spanroom.output.table.Table;
import org.spanroom.output.table.TableFile;

/**
 * A layer as a Shapefile: .shp, .shx, .dbf, .prj and .cpg, with the columns' short names and UTF-8 text.
 *
 * <p>The format ends at 2 GB a file, which is noticed, and at 254 bytes a text, which are cut and counted.
 */
public final class ShapefileFiles implements TableFile {
    private static final List<String> ENDINGS = List.of("shp", "shx", "dbf", "prj", "cpg");

    /** While cells are collected, which end up in the .dbf. */
    private static final String COLLECTED = "dbf.cells";

    /** Offsets count 16-bit words in a signed integer, but most readers stop at 2 GiB of bytes. */
    static final long MOST_BYTES = Integer.MAX_VALUE;

    private final Path shpFile;
    private final ShpFiles shapes;
    private final DbfFile cells;

    /**
     * Opens a Shapefile; the other files lie beside the named one.
     *
     * @param expectedRows how many rows will come at least, so that a limit is noticed early
     */
    ShapefileFiles(Path shpFile, Table<?> table, LayerOptions options, long mostBytes, int expectedRows) {
        if (table.geometry() == GeometryKind.NONE) {
            throw new IllegalArgumentException("a Shapefile needs shapes; " + table.name() + " has none");
        }
        this.shpFile = shpFile;
        this.shapes = new ShpFiles(shpFile, sibling(shpFile, "shx"), table, mostBytes);
        this.cells = new DbfFile(
                sibling(shpFile, "dbf"),
                table,
                options.writtenAt().atOffset(ZoneOffset.UTC).toLocalDate(),
                mostBytes,
                expectedRows);
        put(sibling(shpFile, "prj"), options.frame().esriWkt());
        put(sibling(shpFile, "cpg"), "UTF-8");
    }

    @Override
    public RowBatch newBatch() {
        RowBatch ofShapes = shapes.newBatch();
        RowBatch ofCells = cells.newBatch();
        return new RowBatch() {
            @Override
            public void add(Row<?> row) {
                ofShapes.add(row);
                ofCells.add(row);
            }

            @Override
            public void append() {
                ofShapes.append();
                ofCells.append();
            }
        };
    }

    /** Returns how many texts were longer than the format allows and have been cut. */
    long cutTexts() {
        return cells.cutTexts();
    }

    @Override
    public void close() {
        try (cells) {
            shapes.close();
        }
    }

    /** Removes all files of a Shapefile that cannot be completed; after closing. */
    void delete() {
        ENDINGS.forEach(ending -> delete(sibling(shpFile, ending)));
        delete(sibling(shpFile, COLLECTED));
    }

    private static void delete(Path file) {
        try {
            Files.deleteIfExists(file);
        } catch (IOException failure) {
            throw OutputException.of(file, failure);
        }
    }

    /** Returns the names of the files of a Shapefile. */
    public static List<String> names(String stem) {
        return ENDINGS.stream().map(ending -> stem + "." + ending).toList();
    }

    /** Returns the file that belongs to a Shapefile under another ending. */
    static Path sibling(Path shpFile, String ending) {
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
