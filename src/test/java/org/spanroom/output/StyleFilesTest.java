package org.spanroom.output;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanroom.model.OutputFormat;
import org.spanroom.output.columns.VaultColumns;
import org.spanroom.output.style.LayerStyle;
import org.spanroom.output.style.LayerStyles;
import org.spanroom.output.table.Table;

class StyleFilesTest {
    private static final Table<?> TABLE = VaultColumns.TABLE;

    @TempDir
    Path folder;

    @Test
    void besideAShapefileTheStyleHasItsShortNames() throws IOException {
        StyleFiles.write(folder, TABLE, Set.of(OutputFormat.SHAPEFILE, OutputFormat.CSV));

        LayerStyle expected = LayerStyles.findForShortNames(TABLE).orElseThrow();
        assertThat(Files.readString(folder.resolve("vaults.sld"))).isEqualTo(expected.sld());
        assertThat(Files.readString(folder.resolve("vaults.qml"))).isEqualTo(expected.qml());
    }

    @Test
    void besideGeoJsonItHasTheNamesOfTheColumns() throws IOException {
        StyleFiles.write(folder, TABLE, Set.of(OutputFormat.SHAPEFILE, OutputFormat.GEOJSON));

        LayerStyle expected = LayerStyles.find(TABLE).orElseThrow();
        assertThat(Files.readString(folder.resolve("vaults.sld"))).isEqualTo(expected.sld());
        assertThat(Files.readString(folder.resolve("vaults.qml"))).isEqualTo(expected.qml());
        assertThat(StyleFiles.names("spans")).containsExactly("spans.sld", "spans.qml");
    }
}
