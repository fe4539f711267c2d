package org.spanroom.output.geopackage;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;

/** The Metadata extension of OGC 12-128r18 (annex F.8), with one record: where the contents of the whole file are from. */
final class MetadataExtension {
    static final String METADATA = "gpkg_metadata";
    static final String REFERENCE = "gpkg_metadata_reference";

    private static final String METADATA_SQL = """
            CREATE TABLE gpkg_metadata (
              id INTEGER CONSTRAINT m_pk PRIMARY KEY ASC NOT NULL,
              md_scope TEXT NOT NULL DEFAULT 'dataset',
              md_standard_uri TEXT NOT NULL,
              mime_type TEXT NOT NULL DEFAULT 'text/xml',
              metadata TEXT NOT NULL DEFAULT ''
            )""";

    private static final String REFERENCE_SQL = """
            CREATE TABLE gpkg_metadata_reference (
              reference_scope TEXT NOT NULL,
              table_name TEXT,
              column_name TEXT,
              row_id_value INTEGER,
              timestamp DATETIME NOT NULL DEFAULT (strftime('%Y-%m-%dT%H:%M:%fZ','now')),
              md_file_id INTEGER NOT NULL,
              md_parent_id INTEGER,
              CONSTRAINT crmr_mfi_fk FOREIGN KEY (md_file_id) REFERENCES gpkg_metadata(id),
              CONSTRAINT crmr_mpi_fk FOREIGN KEY (md_parent_id) REFERENCES gpkg_metadata(id)
            )""";

    /** The record is of no standard of metadata: JSON, as its own standard has it. */
    private static final String RECORD =
            "INSERT INTO gpkg_metadata VALUES (1, 'dataset', 'https://www.rfc-editor.org/rfc/rfc8259', "
                    + "'application/json', ?)";

    private MetadataExtension() {}

    /** Adds the extension to a file that has no other one of its kind. */
    static void write(Connection connection, String json, Instant writtenAt) throws SQLException {
        GeoPackageWriter.execute(
                connection,
                List.of(
                        METADATA_SQL,
                        REFERENCE_SQL,
                        GeoPackageSchema.extension(METADATA, "metadata"),
                        GeoPackageSchema.extension(REFERENCE, "metadata")));
        try (PreparedStatement insert = connection.prepareStatement(RECORD)) {
            insert.setString(1, json);
            insert.executeUpdate();
        }
        GeoPackageWriter.execute(
                connection,
                List.of("INSERT INTO gpkg_metadata_reference VALUES ('geopackage', NULL, NULL, NULL, '"
                        + GeoPackageSchema.timestamp(writtenAt) + "', 1, NULL)"));
    }
}
