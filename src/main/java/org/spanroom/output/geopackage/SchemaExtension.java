package org.spanroom.output.geopackage;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.ColumnAliases;
import org.spanroom.output.table.GeometryKind;
import org.spanroom.output.table.Table;

/** The Schema extension of OGC 12-128r18 (annex F.9): what every column is called in words, and what it means. */
final class SchemaExtension {
    static final String DATA_COLUMNS = "gpkg_data_columns";
    static final String CONSTRAINTS = "gpkg_data_column_constraints";

    private static final String DATA_COLUMNS_SQL = """
            CREATE TABLE gpkg_data_columns (
              table_name TEXT NOT NULL,
              column_name TEXT NOT NULL,
              name TEXT,
              title TEXT,
              description TEXT,
              mime_type TEXT,
              constraint_name TEXT,
              CONSTRAINT pk_gdc PRIMARY KEY (table_name, column_name),
              CONSTRAINT gdc_tn UNIQUE (table_name, name)
            )""";

    private static final String CONSTRAINTS_SQL = """
            CREATE TABLE gpkg_data_column_constraints (
              constraint_name TEXT NOT NULL,
              constraint_type TEXT NOT NULL,
              value TEXT,
              min NUMERIC,
              min_is_inclusive BOOLEAN,
              max NUMERIC,
              max_is_inclusive BOOLEAN,
              description TEXT,
              CONSTRAINT gdcc_ntv UNIQUE (constraint_name, constraint_type, value)
            )""";

    private static final String ROW_NUMBER = "row number";
    private static final String SHAPE = "geometry";

    private SchemaExtension() {}

    /** Adds the extension to a file that has no other one of its kind. */
    static void write(Connection connection, List<? extends Table<?>> tables) throws SQLException {
        GeoPackageWriter.execute(
                connection,
                List.of(
                        DATA_COLUMNS_SQL,
                        CONSTRAINTS_SQL,
                        GeoPackageSchema.extension(DATA_COLUMNS, "schema"),
                        GeoPackageSchema.extension(CONSTRAINTS, "schema")));
        try (PreparedStatement insert =
                connection.prepareStatement("INSERT INTO gpkg_data_columns VALUES (?, ?, ?, ?, ?, NULL, NULL)")) {
            for (Table<?> table : tables) {
                columns(insert, table);
            }
            insert.executeBatch();
        }
    }

    private static void columns(PreparedStatement insert, Table<?> table) throws SQLException {
        insert.setString(1, table.name());
        add(insert, "fid", ROW_NUMBER, "Number of the row, from 1, in the order in which the rows were written.");
        if (table.geometry() != GeometryKind.NONE) {
            add(insert, "geom", SHAPE, "Where the row is on the map.");
        }
        List<String> aliases = ColumnAliases.of(table, Set.of(ROW_NUMBER, SHAPE));
        for (int i = 0; i < aliases.size(); i++) {
            Column<?> column = table.columns().get(i);
            add(insert, column.name(), aliases.get(i), column.meaning());
        }
    }

    private static void add(PreparedStatement insert, String column, String alias, String meaning) throws SQLException {
        insert.setString(2, column);
        insert.setString(3, alias);
        insert.setString(4, alias.substring(0, 1).toUpperCase(Locale.ROOT) + alias.substring(1));
        insert.setString(5, meaning);
        insert.addBatch();
    }
}
