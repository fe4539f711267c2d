package org.spanroom.output.geopackage;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.SortedMap;
import org.spanroom.output.style.LayerStyle;

/**
 * The table {@code layer_styles}, in which desktop GIS look for the style of a layer that they open: a convention among them, no part of
 * the standard (from memory). To the standard it is a table of attributes, so that it stands among the contents.
 */
final class StyleTable {
    static final String NAME = "layer_styles";

    private static final String SQL = """
            CREATE TABLE layer_styles (
              id INTEGER PRIMARY KEY NOT NULL,
              f_table_catalog TEXT,
              f_table_schema TEXT,
              f_table_name TEXT,
              f_geometry_column TEXT,
              styleName TEXT,
              styleQML TEXT,
              styleSLD TEXT,
              useAsDefault BOOLEAN,
              description TEXT,
              owner TEXT,
              ui TEXT,
              update_time DATETIME
            )""";

    private static final String CONTENTS = "INSERT INTO gpkg_contents (table_name, data_type, identifier, description, "
            + "last_change) VALUES ('layer_styles', 'attributes', 'layer_styles', "
            + "'How the layers look: the styles that a desktop GIS applies by itself.', ?)";

    /** Readers ask for a catalog and a schema of no name, not for missing ones. */
    private static final String STYLE =
            "INSERT INTO layer_styles VALUES (?, '', '', ?, 'geom', 'default', ?, ?, 1, ?, '', NULL, ?)";

    private StyleTable() {}

    /**
     * Adds the table; none where no layer has a style.
     *
     * @param styles by the name of the layer
     */
    static void write(Connection connection, SortedMap<String, LayerStyle> styles, Instant writtenAt)
            throws SQLException {
        if (styles.isEmpty()) {
            return;
        }
        String time = GeoPackageSchema.timestamp(writtenAt);
        GeoPackageWriter.execute(connection, List.of(SQL));
        try (PreparedStatement contents = connection.prepareStatement(CONTENTS)) {
            contents.setString(1, time);
            contents.executeUpdate();
        }
        try (PreparedStatement insert = connection.prepareStatement(STYLE)) {
            int id = 0;
            for (var style : styles.entrySet()) {
                insert.setInt(1, ++id);
                insert.setString(2, style.getKey());
                insert.setString(3, style.getValue().qml());
                insert.setString(4, style.getValue().sld());
                insert.setString(5, "Style of " + style.getKey());
                insert.setString(6, time);
                insert.addBatch();
            }
            insert.executeBatch();
        }
    }
}
