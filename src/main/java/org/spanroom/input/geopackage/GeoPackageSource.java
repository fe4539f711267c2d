package org.spanroom.input.geopackage;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.spanroom.config.NearestWord;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.FindingLog;
import org.spanroom.finding.InputException;
import org.spanroom.input.geopackage.GeoPackageCatalog.Column;
import org.spanroom.input.geopackage.GeoPackageCatalog.Layer;
import org.spanroom.input.layer.FeatureFault;
import org.spanroom.input.layer.FeatureOutlet;
import org.spanroom.input.layer.LayerFormat;
import org.spanroom.input.layer.LayerHeader;
import org.spanroom.input.layer.LayerInfo;
import org.spanroom.input.layer.LayerLog;
import org.spanroom.input.layer.LayerSource;
import org.spanroom.input.layer.SourceFeature;
import org.spanroom.input.layer.WantedFields;
import org.spanroom.input.layer.WorkLimit;

/** One layer of features of a GeoPackage: a table or view, read in the order of its key where it has one. */
public final class GeoPackageSource implements LayerSource {
    private static final int MOST_NAMES = 20;

    private final Connection connection;
    private final Layer layer;
    private final List<Column> columns;
    private final LayerHeader header;
    private final LayerLog log;

    private GeoPackageSource(
            Connection connection, Layer layer, List<Column> columns, LayerHeader header, LayerLog log) {
        this.connection = connection;
        this.layer = layer;
        this.columns = columns;
        this.header = header;
        this.log = log;
    }

    public static GeoPackageSource open(Path file, Optional<String> layerName, FindingLog findings) {
        return connected(
                file,
                connection -> open(
                        file,
                        connection,
                        choose(file, GeoPackageCatalog.layers(file, connection), layerName),
                        findings));
    }

    /** Opens a layer, or a table without shapes, if the file has it. */
    public static Optional<GeoPackageSource> find(Path file, String table, FindingLog findings) {
        return connected(file, connection -> {
            List<Layer> all = new ArrayList<>(GeoPackageCatalog.layers(file, connection));
            all.addAll(GeoPackageCatalog.tablesWithoutShapes(connection));
            Optional<Layer> found =
                    all.stream().filter(layer -> layer.table().equals(table)).findFirst();
            if (found.isEmpty()) {
                connection.close();
                return Optional.empty();
            }
            return Optional.of(open(file, connection, found.get(), findings));
        });
    }

    /** What is done with a connection, which is closed if it fails. */
    private interface Work<T> {
        T with(Connection connection) throws SQLException, IOException;
    }

    private static <T> T connected(Path file, Work<T> work) {
        try {
            Connection connection = GeoPackageCatalog.connect(file);
            try {
                return work.with(connection);
            } catch (SQLException | RuntimeException e) {
                connection.close();
                throw e;
            }
        } catch (SQLException e) {
            throw GeoPackageCatalog.unreadable(file, "its tables cannot be read", e);
        } catch (IOException e) {
            throw LayerFormat.unreadable(file, e);
        }
    }

    private static GeoPackageSource open(Path file, Connection connection, Layer layer, FindingLog findings)
            throws SQLException, IOException {
        List<Column> columns = GeoPackageCatalog.columns(connection, layer.table());
        if (layer.hasShapes() && columns.stream().noneMatch(column -> isGeometry(column, layer))) {
            throw new InputException(
                    file,
                    "its layer \"" + layer.table() + "\" declares the geometry column \"" + layer.geometryColumn()
                            + "\", but its table does not have it",
                    "Export it again");
        }
        List<String> fields = columns.stream()
                .filter(column -> !isGeometry(column, layer))
                .map(Column::name)
                .toList();
        var unread = new LayerHeader(file, layer.table(), fields, Optional.empty(), -1);
        var log = new LayerLog(unread.source(), findings);
        GeoPackageCatalog.checkApplicationId(connection, log);
        var header = new LayerHeader(
                file,
                layer.table(),
                fields,
                GeoPackageCatalog.crs(connection, layer.srsId(), log),
                GeoPackageCatalog.announcedCount(connection, layer, Files.size(file)));
        return new GeoPackageSource(connection, layer, columns, header, log);
    }

    public static List<LayerInfo> list(Path file) {
        try (Connection connection = GeoPackageCatalog.connect(file);
                Statement statement = connection.createStatement()) {
            var infos = new ArrayList<LayerInfo>();
            for (Layer layer : GeoPackageCatalog.layers(file, connection)) {
                try (ResultSet row =
                        statement.executeQuery("SELECT count(*) FROM " + GeoPackageCatalog.quoted(layer.table()))) {
                    infos.add(new LayerInfo(layer.table(), layer.geometryType(), row.next() ? row.getLong(1) : 0));
                }
            }
            return List.copyOf(infos);
        } catch (SQLException e) {
            throw GeoPackageCatalog.unreadable(file, "its layers cannot be counted", e);
        } catch (IOException e) {
            throw LayerFormat.unreadable(file, e);
        }
    }

    @Override
    public LayerHeader header() {
        return header;
    }

    @Override
    public long read(List<String> wantedFields, Consumer<SourceFeature> sink) {
        log.rejections().clear();
        var fields = new WantedFields(wantedFields);
        var outlet = new FeatureOutlet(log, fields, sink);
        List<Optional<Column>> wanted = fields.names().stream()
                .map(name -> columns.stream()
                        .filter(column -> column.name().equals(name) && !isGeometry(column, layer))
                        .findFirst())
                .toList();
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(query(wanted))) {
            var decoder = new WkbDecoder();
            var limit = WorkLimit.of(GeoPackageCatalog.sizeWithLog(header.file()));
            while (rows.next()) {
                demandEnd(limit, outlet.next());
                String key = Optional.ofNullable(rows.getString(2)).orElse("");
                for (int slot = 0; slot < wanted.size(); slot++) {
                    fields.set(slot, value(rows, slot + 3, wanted.get(slot)));
                }
                handOn(rows.getObject(1), key, decoder, outlet);
            }
        } catch (SQLException e) {
            throw GeoPackageCatalog.unreadable(
                    header.file(),
                    "its layer \"" + layer.table() + "\" cannot be read beyond feature " + outlet.met(),
                    e);
        }
        log.close(outlet.met());
        return outlet.met();
    }

    @Override
    public Map<FindingCode, Long> rejected() {
        return log.rejections().byCode();
    }

    private void demandEnd(WorkLimit limit, long rows) {
        if (limit.isExceededBy(rows)) {
            throw new InputException(
                    header.file(),
                    "its layer \"" + layer.table()
                            + "\" has more rows than the file has bytes; it may be an endless view",
                    "Export the view as a table");
        }
    }

    @Override
    public void close() {
        try {
            connection.close();
        } catch (SQLException e) {
            throw GeoPackageCatalog.unreadable(header.file(), "it cannot be closed", e);
        }
    }

    private void handOn(@Nullable Object blob, String key, WkbDecoder decoder, FeatureOutlet outlet) {
        try {
            if (blob != null && !(blob instanceof byte[])) {
                throw FeatureFault.unreadable("its geometry column holds a number or text");
            }
            decoder.decode((byte[]) blob);
        } catch (FeatureFault fault) {
            outlet.reject(key, fault);
            return;
        }
        reportOtherSystem(key, decoder.srsId(), outlet.met() + 1);
        outlet.handOn(key, decoder.typeName(), decoder.kind(), decoder.vertices());
    }

    /**
     * A geometry must name the reference system of its layer (OGC 12-128r19, requirement 33). One that names none, as some programs write,
     * contradicts nothing.
     */
    private void reportOtherSystem(String key, int srsId, long number) {
        if (srsId != layer.srsId() && srsId != 0 && srsId != -1) {
            log.feature(
                    FindingCode.GEOMETRY_SRS_DIFFERS,
                    number,
                    key,
                    "its geometry names the reference system " + srsId + " (srs_id), its layer " + layer.srsId()
                            + "; it was read in that of the layer. Check where it lies, and export the layer again");
        }
    }

    /** The geometry, the key, and the wanted columns; a fixed null for what the layer does not have. */
    private String query(List<Optional<Column>> wanted) {
        Optional<String> key = columns.stream()
                .filter(Column::primaryKey)
                .map(column -> GeoPackageCatalog.quoted(column.name()))
                .findFirst();
        String values = wanted.stream()
                .map(column -> ", "
                        + column.map(c -> GeoPackageCatalog.quoted(c.name())).orElse("NULL"))
                .collect(Collectors.joining());
        String shape = layer.hasShapes() ? GeoPackageCatalog.quoted(layer.geometryColumn()) : "NULL";
        return "SELECT " + shape + ", " + key.orElse("NULL") + values
                + " FROM " + GeoPackageCatalog.quoted(layer.table())
                + key.map(name -> " ORDER BY " + name).orElse("");
    }

    private static @Nullable Object value(ResultSet rows, int index, Optional<Column> column) throws SQLException {
        if (column.isEmpty()) {
            return null;
        }
        Object value = rows.getObject(index);
        if (value instanceof Integer || value instanceof Long) {
            long whole = ((Number) value).longValue();
            boolean truth = column.get().declaredType().startsWith("BOOL") && (whole == 0 || whole == 1);
            return truth ? (Object) (whole == 1) : (Object) whole;
        }
        if (value instanceof Double number) {
            return Double.isFinite(number) ? number : number.toString();
        }
        return value instanceof String text ? text : null;
    }

    private static boolean isGeometry(Column column, Layer layer) {
        return layer.hasShapes() && column.name().equalsIgnoreCase(layer.geometryColumn());
    }

    private static Layer choose(Path file, List<Layer> layers, Optional<String> wanted) {
        if (layers.isEmpty()) {
            throw new InputException(file, "it has no layer of features", "Give a GeoPackage with one");
        }
        if (wanted.isEmpty()) {
            if (layers.size() > 1) {
                throw new InputException(
                        file,
                        "it has " + layers.size() + " layers",
                        "Name one with the key "
                                + "layer of its input, or with --routes-layer, --vaults-layer or --zones-layer: "
                                + names(layers));
            }
            return layers.get(0);
        }
        return layers.stream()
                .filter(layer -> layer.table().equals(wanted.get()))
                .findFirst()
                .orElseThrow(() -> new InputException(
                        file,
                        "it has no layer \"" + wanted.get() + "\"" + nearest(wanted.get(), layers),
                        "Name one of these: " + names(layers)));
    }

    private static String nearest(String wrong, List<Layer> layers) {
        return NearestWord.find(wrong, layers.stream().map(Layer::table).toList())
                .map(near -> "; did you mean \"" + near + "\"?")
                .orElse("");
    }

    private static String names(List<Layer> layers) {
        return layers.stream().limit(MOST_NAMES).map(Layer::table).collect(Collectors.joining(", "))
                + (layers.size() > MOST_NAMES ? ", ..." : "");
    }
}
