package org.spanroom.output.style;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.regex.Pattern;
import java.util.zip.ZipInputStream;
import org.junit.jupiter.api.Test;
import org.spanroom.output.ResultTables;
import org.spanroom.output.columns.CorridorColumns;
import org.spanroom.output.columns.SpanLayout;
import org.spanroom.output.table.Extent;
import org.spanroom.output.table.OutputCrs;
import org.spanroom.output.table.Shape;
import org.spanroom.output.table.Table;

class QgisProjectTest {
    private static final Pattern ENTRY = Pattern.compile("<layer-tree-layer [^>]*source=\"([^\"]*)\"");

    @Test
    void layersAreFoundBesideTheProjectPointsAboveLines() throws IOException {
        List<String> sources = ENTRY.matcher(text(project(ofRun())))
                .results()
                .map(found -> found.group(1))
                .toList();

        assertEquals(
                List.of(
                                "vault_survey",
                                "field_checks",
                                "findings",
                                "bends",
                                "vaults",
                                "spans",
                                "sections",
                                "permits",
                                "zones")
                        .stream()
                        .map(name -> "./spanroom.gpkg|layername=" + name)
                        .toList(),
                sources);
    }

    @Test
    void theOrderOfTheTablesDoesNotMatter() {
        List<Table<?>> reversed = new ArrayList<>(ofRun());
        Collections.reverse(reversed);

        assertArrayEquals(project(ofRun()), project(reversed));
    }

    /** The bytes of a zip have the time of its entries, which would differ from run to run. */
    @Test
    void theTimeOfTheEntryIsFixed() throws IOException {
        try (var zip = new ZipInputStream(new ByteArrayInputStream(project(ofRun())))) {
            var entry = zip.getNextEntry();

            assertEquals("spanroom.qgs", entry.getName());
            assertEquals("1980-01-01T00:00", entry.getTimeLocal().toString());
        }
    }

    @Test
    void spansFollowSectionsAsTheMapComesNearer() throws IOException {
        String text = text(project(ofRun()));

        assertTrue(text.contains("minScale=\"4000\" maxScale=\"0\""), text);
        assertTrue(text.contains("minScale=\"100000000\" maxScale=\"4000\""), text);
    }

    @Test
    void sectionsWithoutSpansAreShownAtEveryScale() throws IOException {
        assertFalse(text(project(List.of(CorridorColumns.SECTIONS))).contains("maxScale=\"4000\""));
    }

    @Test
    void theMapShowsTheExtent() throws IOException {
        String text = text(project(ofRun()));

        assertTrue(text.replaceAll("\\s+", "")
                .contains("<xmin>-1.5</xmin><ymin>2.0</ymin><xmax>3.0</xmax><ymax>4.25</ymax>"));
        assertTrue(text.contains("<authid>EPSG:4326</authid>"));
    }

    @Test
    void aMapOfNothingHasNoExtent() throws IOException {
        byte[] bytes = QgisProject.bytes(
                "spanroom",
                "spanroom.gpkg",
                ofRun(),
                OutputCrs.lonLat(),
                new QgisProject.View(OutputCrs.lonLat(), new Extent()));

        assertFalse(text(bytes).contains("<extent>"));
    }

    private static List<Table<?>> ofRun() {
        List<Table<?>> tables = new ArrayList<>();
        ResultTables.ALL.forEach(entry -> tables.add(entry.layout().apply(SpanLayout.PLAIN)));
        return tables;
    }

    private static byte[] project(List<Table<?>> tables) {
        var extent = Extent.of(Shape.point(-1.5, 2));
        extent.add(Shape.point(3, 4.25));
        return QgisProject.bytes(
                "spanroom",
                "spanroom.gpkg",
                tables,
                OutputCrs.lonLat(),
                new QgisProject.View(OutputCrs.lonLat(), extent));
    }

    private static String text(byte[] project) throws IOException {
        try (var zip = new ZipInputStream(new ByteArrayInputStream(project))) {
            zip.getNextEntry();
            return new String(zip.readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
