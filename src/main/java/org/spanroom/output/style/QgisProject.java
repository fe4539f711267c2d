package org.spanroom.output.style;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.UnaryOperator;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.spanroom.output.table.Extent;
import org.spanroom.output.table.GeometryKind;
import org.spanroom.output.table.OutputCrs;
import org.spanroom.output.table.Table;

/** Writes a QGIS project that opens the layers of a GeoPackage beside it, in order and with their styles. */
public final class QgisProject {
    /** The earliest time that an archive can note. */
    private static final LocalDateTime NO_TIME = LocalDateTime.of(1980, 1, 1, 0, 0);

    private static final String FARTHEST = "100000000";

    private final Xml xml;
    private final String geoPackage;
    private final Map<String, Table<?>> tables;

    private QgisProject(Xml xml, String geoPackage, List<Table<?>> all) {
        this.xml = xml;
        this.geoPackage = geoPackage;
        this.tables = new LinkedHashMap<>();
        all.stream()
                .filter(table -> LayerStyles.look(table).isPresent())
                .forEach(table -> tables.put(table.name(), table));
    }

    /**
     * What the map shows first.
     *
     * @param crs of the map
     * @param extent in that system
     */
    public record View(OutputCrs crs, Extent extent) {}

    /**
     * Returns the file, the same bytes for the same arguments.
     *
     * @param name of the project, without an ending
     * @param geoPackage name of the file in the same folder
     * @param tables those of the GeoPackage, in any order
     * @param crs of its layers
     */
    public static byte[] bytes(String name, String geoPackage, List<Table<?>> tables, OutputCrs crs, View view) {
        String text = Xml.document(xml -> new QgisProject(xml, geoPackage, tables).project(name, crs, view));
        var bytes = new ByteArrayOutputStream();
        try (var zip = new ZipOutputStream(bytes)) {
            var entry = new ZipEntry(name + ".qgs");
            entry.setTimeLocal(NO_TIME);
            zip.putNextEntry(entry);
            zip.write(text.getBytes(StandardCharsets.UTF_8));
            zip.closeEntry();
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
        return bytes.toByteArray();
    }

    private void project(String name, OutputCrs crs, View view) {
        List<ProjectLayer> layers = ProjectLayer.of(List.copyOf(tables.keySet()));
        xml.type(QmlWriter.TYPE);
        xml.open("qgis", "projectname", name, "version", QmlWriter.VERSION);
        xml.text("title", name);
        xml.element("projectCrs", () -> system(view.crs()));
        xml.element("layer-tree-group", () -> layers.forEach(this::entry));
        canvas(view);
        xml.element("projectlayers", () -> layers.forEach(layer -> layer(layer, crs)));
        xml.element("layerorder", () -> layers.forEach(layer -> xml.leaf("layer", "id", id(layer))));
        xml.open("properties");
        xml.element("Paths", () -> xml.text("Absolute", "false", "type", "bool"));
        xml.element("SpatialRefSys", () -> xml.text("ProjectionsEnabled", "1", "type", "int"));
        xml.close();
        xml.close();
    }

    private void entry(ProjectLayer layer) {
        xml.leaf(
                "layer-tree-layer",
                "id",
                id(layer),
                "name",
                look(layer).title(),
                "checked",
                layer.shown() ? "Qt::Checked" : "Qt::Unchecked",
                "expanded",
                layer.shown() ? "1" : "0",
                "providerKey",
                "ogr",
                "source",
                source(layer));
    }

    private void canvas(View view) {
        xml.open("mapcanvas", "name", "theMapCanvas");
        xml.text("units", view.crs().isGeographic() ? "degrees" : "meters");
        if (!view.extent().isEmpty()) {
            xml.element("extent", () -> {
                xml.text("xmin", Double.toString(view.extent().minX()));
                xml.text("ymin", Double.toString(view.extent().minY()));
                xml.text("xmax", Double.toString(view.extent().maxX()));
                xml.text("ymax", Double.toString(view.extent().maxY()));
            });
        }
        xml.text("rotation", "0");
        xml.element("destinationsrs", () -> system(view.crs()));
        xml.close();
    }

    private void layer(ProjectLayer layer, OutputCrs crs) {
        MapStyle look = look(layer);
        ScaleRange scales = layer.scales();
        xml.open(
                "maplayer",
                "type",
                "vector",
                "geometry",
                geometry(look.geometry()),
                "hasScaleBasedVisibilityFlag",
                scales.equals(ScaleRange.ALL) ? "0" : "1",
                "minScale",
                scales.farthest() == 0 ? FARTHEST : Integer.toString(scales.farthest()),
                "maxScale",
                Integer.toString(scales.nearest()),
                "labelsEnabled",
                look.labels().isEmpty() ? "0" : "1");
        xml.text("id", id(layer));
        xml.text("datasource", source(layer));
        xml.text("layername", look.title());
        xml.element("srs", () -> system(crs));
        xml.text("provider", "ogr", "encoding", "UTF-8");
        new QmlWriter(xml, UnaryOperator.identity()).look(look);
        xml.close();
    }

    private void system(OutputCrs crs) {
        xml.open("spatialrefsys", "nativeFormat", "Wkt");
        xml.text("wkt", crs.wkt());
        if ("EPSG".equals(crs.organization())) {
            xml.text("authid", "EPSG:" + crs.srsId());
        }
        xml.text("geographicflag", Boolean.toString(crs.isGeographic()));
        xml.close();
    }

    private MapStyle look(ProjectLayer layer) {
        return LayerStyles.look(Objects.requireNonNull(tables.get(layer.table())))
                .orElseThrow();
    }

    private String source(ProjectLayer layer) {
        return "./" + geoPackage + "|layername=" + layer.table();
    }

    private static String id(ProjectLayer layer) {
        return "spanroom_" + layer.table();
    }

    private static String geometry(GeometryKind kind) {
        return switch (kind) {
            case POINT -> "Point";
            case POLYGON -> "Polygon";
            default -> "Line";
        };
    }
}
