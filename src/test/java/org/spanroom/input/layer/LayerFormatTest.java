package org.spanroom.input.layer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.finding.InputException;
import org.spanroom.input.ReadLayer;
import org.spanroom.input.ShapefileBytes;

class LayerFormatTest {
    @TempDir
    private Path folder;

    @ParameterizedTest
    @CsvSource({
        "a.gpkg, '{\"type\":\"Point\"}', GEOJSON",
        "a.txt, '  [', GEOJSON",
        "a, '\u001e{}', GEOJSON",
        "a.json, 'SQLite format 3\u0000...', GEOPACKAGE",
        "a.JSON, rubbish, GEOJSON",
        "a.SHP, rubbish, SHAPEFILE",
        "a.gpkg, rubbish, GEOPACKAGE"
    })
    void contentCountsBeforeTheEnding(String name, String content, LayerFormat expected) throws IOException {
        assertThat(LayerFormat.of(Files.writeString(folder.resolve(name), content)))
                .isEqualTo(expected);
    }

    @Test
    void shapefileIsKnownByItsMagicNumber() throws IOException {
        Path file = Files.write(folder.resolve("a.json"), new ShapefileBytes(1).shp());

        assertThat(LayerFormat.of(file)).isEqualTo(LayerFormat.SHAPEFILE);
    }

    @Test
    void whatIsNoLayerIsRefusedWithAReason() throws IOException {
        Path zip = Files.write(folder.resolve("a.zip"), new byte[] {'P', 'K', 3, 4, 0, 0});
        Path empty = Files.createFile(folder.resolve("empty.geojson"));
        Path text = Files.writeString(folder.resolve("a.txt"), "hello");

        assertRefused(zip, "compressed");
        assertRefused(empty, "is empty");
        assertRefused(text, "GeoJSON, Shapefile or GeoPackage");
        assertRefused(folder, "it is a folder");
        assertRefused(folder.resolve("missing"), "no such file");
    }

    @Test
    void fileOfOneLayerHasNoOther() throws IOException {
        Path file = Files.writeString(folder.resolve("a.json"), "{\"type\":\"Point\",\"coordinates\":[1,2]}");

        assertThat(ReadLayer.of(file, Optional.of("a"), List.of()).met()).isEqualTo(1);
        assertThatThrownBy(() -> ReadLayer.of(file, Optional.of("b"), List.of()))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("no layer \"b\"");
    }

    private static void assertRefused(Path file, String words) {
        assertThatThrownBy(() -> LayerFormat.of(file))
                .isInstanceOf(InputException.class)
                .hasMessageStartingWith(file.toString())
                .hasMessageContaining(words);
    }
}
