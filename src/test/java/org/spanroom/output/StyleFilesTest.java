package org.spanroom.output;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanroom.model.OutputFormat;
import org.spanroom.output.style.LayerStyle;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.GeometryKind;
import org.spanroom.output.table.Shape;
import org.spanroom.output.table.Table;

class StyleFilesTest {
    private static final Table<String> TABLE = Table.layer(
            "spans",
            "Lines.",
            GeometryKind.LINE,
            row -> Shape.EMPTY,
            List.of(
                    Column.text("pull_outcome", "pull_out", "One.", row -> row),
                    Column.real("length_m", "length_m", 1, "Two.", row -> 1),
                    Column.real("saving_money", "saving", 1, "Three.", row -> 1)));

    private static final LayerStyle STYLE = new LayerStyle(
            "<ogc:PropertyName>pull_outcome</ogc:PropertyName>",
            "<renderer-v2 attr=\"pull_outcome\" x=\"my_pull_outcome pull_outcome-2 pull_outcome_2\"/>"
                    + "<a b=\"coalesce(&quot;saving_money&quot;,length_m/2)\"/>");

    @TempDir
    Path folder;

    @Test
    void besideAShapefileTheStyleHasItsShortNames() throws IOException {
        StyleFiles.write(folder, TABLE, STYLE, Set.of(OutputFormat.SHAPEFILE, OutputFormat.CSV));

        assertThat(Files.readString(folder.resolve("spans.sld")))
                .isEqualTo("<ogc:PropertyName>pull_out</ogc:PropertyName>");
        assertThat(Files.readString(folder.resolve("spans.qml")))
                .isEqualTo("<renderer-v2 attr=\"pull_out\" x=\"my_pull_outcome pull_outcome-2 pull_outcome_2\"/>"
                        + "<a b=\"coalesce(&quot;saving&quot;,length_m/2)\"/>");
    }

    @Test
    void besideGeoJsonItHasTheNamesOfTheColumns() throws IOException {
        StyleFiles.write(folder, TABLE, STYLE, Set.of(OutputFormat.SHAPEFILE, OutputFormat.GEOJSON));

        assertThat(folder.resolve("spans.sld")).hasContent(STYLE.sld());
        assertThat(folder.resolve("spans.qml")).hasContent(STYLE.qml());
        assertThat(StyleFiles.names("spans")).containsExactly("spans.sld", "spans.qml");
    }
}
