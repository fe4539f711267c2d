package org.spanroom.output.shapefile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanroom.output.Sample;
import org.spanroom.output.table.LayerOptions;

class ShapefileWriterTest {
    private static final LayerOptions OPTIONS = LayerOptions.lonLat(Sample.WRITTEN);

    @TempDir
    Path folder;

    @Test
    void encodingAndReferenceSystemLieBesideTheShapes() throws IOException {
        try (var writer = new ShapefileWriter<>(folder.resolve("x.shp"), Sample.LINES, OPTIONS)) {
            writer.write(Sample.of("x", 0, 0, 1, 1));
        }

        assertThat(names()).containsExactly("x.cpg", "x.dbf", "x.prj", "x.shp", "x.shx");
        assertThat(folder.resolve("x.cpg")).hasContent("UTF-8");
        assertThat(Files.readString(folder.resolve("x.prj"))).startsWith("GEOGCS[\"GCS_WGS_1984\"");
    }

    /** The header fields of the ESRI Shapefile Technical Description (July 1998), table 1. */
    @Test
    void headersTellFileLengthsInWords() throws IOException {
        try (var writer = new ShapefileWriter<>(folder.resolve("x.shp"), Sample.LINES, OPTIONS)) {
            Sample.many(100, 1).forEach(writer::write);
        }

        for (String name : List.of("x.shp", "x.shx")) {
            byte[] bytes = Files.readAllBytes(folder.resolve(name));
            assertThat(ByteBuffer.wrap(bytes).getInt(0)).isEqualTo(9994);
            assertThat(ByteBuffer.wrap(bytes).getInt(24) * 2).isEqualTo(bytes.length);
        }
        assertThat(Files.size(folder.resolve("x.shx"))).isEqualTo(100 + 8 * 100);
    }

    @Test
    void moreThanTheFormatHoldsIsNoticed() {
        assertThatThrownBy(() -> write(10_000, 200_000))
                .isInstanceOf(FormatLimitException.class)
                .hasMessageContaining("at most 2 GB of geometry")
                .hasMessageEndingWith("Use the GeoPackage or the GeoJSON file instead.");
        assertThatThrownBy(() -> writePoints(10_000, 290_000))
                .isInstanceOf(FormatLimitException.class)
                .hasMessageContaining("at most 2 GB of attributes");
    }

    @Test
    void whatCannotBeCompletedCanBeRemoved() throws IOException {
        var writer = new ShapefileWriter<>(folder.resolve("x.shp"), Sample.POINTS, OPTIONS, 290_000);
        assertThatThrownBy(() -> Sample.many(10_000, 1).forEach(writer::write))
                .isInstanceOf(FormatLimitException.class);
        assertThatThrownBy(writer::close).isInstanceOf(FormatLimitException.class);

        writer.delete();

        assertThat(names()).isEmpty();
    }

    private void write(int rows, long mostBytes) {
        try (var writer = new ShapefileWriter<>(folder.resolve("x.shp"), Sample.LINES, OPTIONS, mostBytes)) {
            Sample.many(rows, 1).forEach(writer::write);
        }
    }

    private void writePoints(int rows, long mostBytes) {
        try (var writer = new ShapefileWriter<>(folder.resolve("y.shp"), Sample.POINTS, OPTIONS, mostBytes)) {
            Sample.many(rows, 1).forEach(writer::write);
        }
    }

    private List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }
}
