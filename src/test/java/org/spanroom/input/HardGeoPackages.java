package org.spanroom.input;

import static org.spanroom.input.HardCase.routes;
import static org.spanroom.input.HardCase.vaults;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.FutureTask;
import java.util.stream.Stream;

/** Hard cases in GeoPackages. */
@SuppressWarnings("ByteBufferBackingArray") // every buffer here is allocated here
final class HardGeoPackages {
    private HardGeoPackages() {}

    /** What is done to a GeoPackage with a layer of three routes. */
    private interface Change {
        void to(SmallGeoPackage geoPackage) throws SQLException;
    }

    static List<HardCase> cases() {
        return Stream.of(databases(), layers(), views(), geometries())
                .flatMap(List::stream)
                .toList();
    }

    /** A layer "lines" of three routes, then whatever is done to it. */
    private static HardCase three(String name, Change change) {
        return routes(name, folder -> onWideStack(() -> threeLines(folder.resolve("layer.gpkg"), change)));
    }

    /** To write views that are nested too deep takes the same stack as to read them. */
    private static Path onWideStack(Callable<Path> maker) throws Exception {
        var task = new FutureTask<Path>(maker);
        new Thread(null, task, "maker", 256L << 20).start();
        return task.get();
    }

    private static Path threeLines(Path file, Change change) throws SQLException {
        try (var geoPackage = new SmallGeoPackage(file)) {
            geoPackage.register("lines", 4326);
            geoPackage.run("CREATE TABLE lines (fid INTEGER PRIMARY KEY, geom BLOB, route TEXT)");
            for (int i = 1; i <= 3; i++) {
                geoPackage.insert("lines", i, line(), "R" + i);
            }
            change.to(geoPackage);
        }
        return file;
    }

    /** As above, with the layer replaced by a view of that query. */
    private static HardCase view(String name, String query) {
        return three(name, geoPackage -> {
            geoPackage.run("ALTER TABLE lines RENAME TO base");
            geoPackage.run("CREATE VIEW lines AS " + query);
        });
    }

    private static HardCase geometry(String name, Object geometry) {
        return three(name, geoPackage -> {
            geoPackage.run("DELETE FROM lines");
            geoPackage.insert("lines", 1, geometry, "R1");
        });
    }

    private static List<HardCase> databases() {
        return List.of(
                three("plain", geoPackage -> {}).reads(3, 0),
                routes("UTF-16 inside", folder -> {
                            Path file = folder.resolve("layer.gpkg");
                            try (Connection first = DriverManager.getConnection("jdbc:sqlite:" + file);
                                    Statement statement = first.createStatement()) {
                                statement.execute("PRAGMA encoding = 'UTF-16'");
                                statement.execute("CREATE TABLE first (a)");
                            }
                            return threeLines(file, geoPackage -> {});
                        })
                        .reads(3, 0),
                routes("read-only", folder -> {
                            Path file = threeLines(folder.resolve("layer.gpkg"), geoPackage -> {});
                            Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("r--r--r--"));
                            return file;
                        })
                        .reads(3, 0),
                three("wrong application id", geoPackage -> geoPackage.run("PRAGMA application_id = 7"))
                        .reads(3, 0, "layer_issue: the application id of the file is 0x00000007"),
                three("in write-ahead mode", geoPackage -> geoPackage.run("PRAGMA journal_mode = WAL"))
                        .reads(3, 0),
                routes("with a write-ahead log", folder -> {
                            Path first = folder.resolve("first.gpkg");
                            threeLines(first, geoPackage -> {
                                geoPackage.run("PRAGMA journal_mode = WAL");
                                geoPackage.insert("lines", 4, line(), "R4");
                                copy(first, folder.resolve("layer.gpkg"));
                                copy(Path.of(first + "-wal"), folder.resolve("layer.gpkg-wal"));
                            });
                            return folder.resolve("layer.gpkg");
                        })
                        .reads(4, 0),
                routes("with a write-ahead log of rubbish", folder -> {
                            Files.write(folder.resolve("layer.gpkg-wal"), new byte[5_000]);
                            return threeLines(folder.resolve("layer.gpkg"), geoPackage -> {});
                        })
                        .reads(3, 0),
                routes("in the middle of a change", folder -> {
                            Path first = folder.resolve("first.gpkg");
                            threeLines(first, geoPackage -> {
                                geoPackage.run("PRAGMA cache_size = 1");
                                geoPackage.run("PRAGMA cache_spill = 1");
                                geoPackage.run("BEGIN");
                                geoPackage.run("CREATE TABLE more AS WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT"
                                        + " i + 1 FROM n WHERE i < 3000) SELECT i, hex(randomblob(50)) AS x FROM n");
                                copy(first, folder.resolve("layer.gpkg"));
                                copy(Path.of(first + "-journal"), folder.resolve("layer.gpkg-journal"));
                                geoPackage.run("ROLLBACK");
                            });
                            return folder.resolve("layer.gpkg");
                        })
                        .isRefused("it has changes in a -wal or -journal file", "Open it once"),
                routes("truncated", folder -> cut(threeLines(folder.resolve("layer.gpkg"), geoPackage -> {}), 9_000))
                        .isRefused("layer.gpkg: ", "export it again"),
                routes("header alone", folder -> cut(threeLines(folder.resolve("layer.gpkg"), geoPackage -> {}), 100))
                        .isRefused("layer.gpkg: "),
                routes(
                                "magic alone",
                                folder -> Files.write(
                                        folder.resolve("layer.gpkg"),
                                        "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII)))
                        .isRefused("layer.gpkg: "),
                routes("empty", folder -> Files.write(folder.resolve("layer.gpkg"), new byte[0]))
                        .isRefused("it is empty"),
                routes("page size of nought", folder -> {
                            Path file = threeLines(folder.resolve("layer.gpkg"), geoPackage -> {});
                            byte[] bytes = Files.readAllBytes(file);
                            bytes[16] = 0;
                            bytes[17] = 0;
                            return Files.write(file, bytes);
                        })
                        .isRefused("layer.gpkg: "),
                routes("text that is no database", folder -> Files.writeString(folder.resolve("layer.gpkg"), "hello"))
                        .isRefused("layer.gpkg: "));
    }

    private static List<HardCase> layers() {
        return List.of(
                three("several layers", geoPackage -> geoPackage.pointLayer("points", 4326, 1))
                        .isRefused("--zones-layer: lines, points"),
                three(
                                "database that is no GeoPackage",
                                geoPackage -> geoPackage.run("DROP TABLE gpkg_geometry_columns"))
                        .isRefused("without the table gpkg_geometry_columns", "Export it as GeoPackage"),
                three("no layer", geoPackage -> geoPackage.run("DELETE FROM gpkg_contents"))
                        .isRefused("it has no layer of features"),
                three("layer without its table", geoPackage -> geoPackage.run("DROP TABLE lines"))
                        .isRefused("declares the geometry column"),
                three(
                                "system that is not listed",
                                geoPackage -> geoPackage.run("UPDATE gpkg_geometry_columns SET srs_id = 5"))
                        .isRefused("does not state its reference system"),
                three("system undefined", geoPackage -> geoPackage.run("UPDATE gpkg_geometry_columns SET srs_id = -1"))
                        .isRefused("does not state its reference system", "--crs EPSG:code"),
                three("index that is listed and missing", geoPackage -> {
                            geoPackage.run("CREATE TABLE gpkg_extensions (table_name TEXT, column_name TEXT,"
                                    + " extension_name TEXT, definition TEXT, scope TEXT)");
                            geoPackage.run(
                                    "INSERT INTO gpkg_extensions VALUES ('lines', 'geom', 'gpkg_rtree_index', '', '')");
                            geoPackage.run("CREATE TRIGGER after_insert AFTER INSERT ON lines BEGIN INSERT INTO"
                                    + " rtree_lines_geom VALUES (1, 2); END");
                        })
                        .reads(3, 0),
                three("unknown extension", geoPackage -> {
                            geoPackage.run("CREATE TABLE gpkg_extensions (table_name TEXT, extension_name TEXT)");
                            geoPackage.run("INSERT INTO gpkg_extensions VALUES ('lines', 'acme_compressed')");
                        })
                        .reads(3, 0),
                three("values of odd types", geoPackage -> {
                            geoPackage.insert("lines", 4, line(), new byte[] {1, 2});
                            geoPackage.insert("lines", 5, line(), 1.5);
                            geoPackage.insert("lines", 6, line(), Double.POSITIVE_INFINITY);
                        })
                        .reads(6, 0),
                three("key that is null or text", geoPackage -> {
                            geoPackage.run("DROP TABLE lines");
                            geoPackage.run("CREATE TABLE lines (id TEXT PRIMARY KEY, geom, route)");
                            geoPackage.insert("lines", null, line(), "R1");
                            geoPackage.insert("lines", "x", line(), "R2");
                        })
                        .reads(2, 0),
                three("no rows", geoPackage -> geoPackage.run("DELETE FROM lines"))
                        .reads(0, 0));
    }

    private static List<HardCase> views() {
        return List.of(
                view("view", "SELECT fid, geom, upper(route) AS route FROM base")
                        .reads(3, 0),
                view(
                                "recursive view that ends",
                                "WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 5)"
                                        + " SELECT i AS fid, geom, 'R' || i AS route FROM n, base WHERE fid = 1")
                        .reads(5, 0),
                view(
                                "recursive view of endless rows",
                                "WITH n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n)"
                                        + " SELECT i AS fid, geom, route FROM n, base")
                        .isRefused("more rows than the file has bytes", "Export the view as a table"),
                view(
                                "recursive view of endless work",
                                "WITH n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n)"
                                        + " SELECT max(i) AS fid, geom, route FROM n, base")
                        .isRefused(
                                "cannot be read beyond feature 0: possibly an endless view",
                                "Export the view as a table"),
                view(
                                "view that joins everything with everything",
                                "SELECT count(*) AS fid, a.geom, a.route FROM base a, base b,"
                                        + " base c, base d, base e, base f, base g, base h, base i, base j, base k, base l, base m,"
                                        + " base n, base o, base p, base q, base r, base s, base t")
                        .isRefused("possibly an endless view"),
                view(
                                "view of a text without end",
                                "SELECT fid, geom, replace(hex(zeroblob(200000)), '0', hex(zeroblob(2000)))"
                                        + " AS route FROM base")
                        .isRefused("string or blob too big"),
                view("view of a blob without end", "SELECT fid, zeroblob(1000000000) AS geom, route FROM base")
                        .isRefused("string or blob too big"),
                view(
                                "view with a pattern that takes for ever",
                                "SELECT fid, geom, hex(zeroblob(100000)) LIKE '" + "%0".repeat(200)
                                        + "x' AS route FROM base")
                        .isRefused("pattern too complex"),
                view(
                                "view nested in itself two thousand times",
                                "SELECT * FROM (".repeat(2_000) + "SELECT fid, geom, route FROM base"
                                        + ")".repeat(2_000))
                        .isRefused("its views are nested too deeply for SQLite", "Export the view as a table"),
                view(
                                "view nested in itself fifty thousand times",
                                "SELECT * FROM (".repeat(50_000) + "SELECT fid, geom, route FROM base"
                                        + ")".repeat(50_000))
                        .isRefused("its views are nested too deeply for SQLite"),
                three("three hundred views, each of the one before", geoPackage -> {
                            geoPackage.run("BEGIN");
                            geoPackage.run("CREATE VIEW v0 AS SELECT count(route) AS n FROM lines");
                            for (int i = 1; i <= 300; i++) {
                                geoPackage.run("CREATE VIEW v" + i + " AS SELECT count(n) AS n FROM v" + (i - 1));
                            }
                            geoPackage.run("ALTER TABLE gpkg_contents RENAME TO c");
                            geoPackage.run("CREATE VIEW gpkg_contents AS SELECT c.* FROM c, v300");
                            geoPackage.run("COMMIT");
                        })
                        .isRefused("its views are nested too deeply for SQLite"),
                three("sixty views side by side", geoPackage -> {
                            for (int i = 1; i <= 60; i++) {
                                geoPackage.run("CREATE VIEW v" + i + " AS SELECT (SELECT max(route)) FROM lines");
                            }
                        })
                        .reads(3, 0),
                view("expression without end", "SELECT fid, geom, " + "- ".repeat(900) + "1 AS route FROM base")
                        .reads(3, 0),
                view("view of itself", "SELECT * FROM lines").isRefused("layer.gpkg: "),
                view("view of a table that is gone", "SELECT fid, geom, route FROM gone")
                        .isRefused("layer.gpkg: "),
                view(
                                "view with a function that is not there",
                                "SELECT fid, ST_Buffer(geom, 1) AS geom, route FROM base")
                        .isRefused("no such function: ST_Buffer"),
                three("catalog without end", geoPackage -> {
                            geoPackage.run("ALTER TABLE gpkg_contents RENAME TO c");
                            geoPackage.run(
                                    "CREATE VIEW gpkg_contents AS WITH n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n)"
                                            + " SELECT table_name || i AS table_name, data_type, srs_id FROM n, c");
                        })
                        .isRefused("its tables cannot be read: possibly an endless view"));
    }

    private static List<HardCase> geometries() {
        var cases = new java.util.ArrayList<HardCase>(List.of(
                geometry("LineString Z", iso(1002, 3)).reads(1, 0),
                geometry("LineString M", iso(2002, 3)).reads(1, 0),
                geometry("LineString ZM", iso(3002, 4)).reads(1, 0),
                geometry("LineString Z, extended", iso(0x80000002, 3)).reads(1, 0),
                geometry(
                                "little endian",
                                header(0)
                                        .order(ByteOrder.LITTLE_ENDIAN)
                                        .put((byte) 1)
                                        .putInt(2)
                                        .putInt(2)
                                        .putDouble(-30)
                                        .putDouble(40)
                                        .putDouble(-30)
                                        .putDouble(40.1))
                        .reads(1, 0),
                geometry(
                                "endian that is none",
                                header(0).put((byte) 7).putInt(2).putInt(2))
                        .reads(0, 1, "unreadable_feature: byte order 7"),
                geometry("vertices that lie", header(0).put((byte) 0).putInt(2).putInt(Integer.MAX_VALUE))
                        .reads(0, 1, "unreadable_feature: claims 2,147,483,647 members, more than its"),
                geometry("negative vertices", header(0).put((byte) 0).putInt(2).putInt(-5))
                        .reads(0, 1, "unreadable_feature: claims 4294967291 members"),
                geometry("unknown type", header(0).put((byte) 0).putInt(999).putInt(0))
                        .reads(0, 1, "unreadable_feature: the unknown type 999"),
                geometry("extension of others", header(0x20).put("ACME".getBytes(StandardCharsets.US_ASCII)))
                        .reads(0, 1, "wrong_geometry_type: of type extended geometry"),
                geometry("envelope that is not there", header(8)).reads(0, 1, "unreadable_feature: is incomplete"),
                geometry(
                                "NaN",
                                header(0)
                                        .put((byte) 0)
                                        .putInt(2)
                                        .putInt(2)
                                        .putDouble(Double.NaN)
                                        .putDouble(1)
                                        .putDouble(2)
                                        .putDouble(3))
                        .reads(0, 1, "bad_coordinate: vertex 1 is NaN"),
                geometry("text", "LINESTRING (1 2, 3 4)").reads(0, 1, "unreadable_feature: holds a number or text"),
                geometry("rubbish", new byte[] {1, 2, 3})
                        .reads(0, 1, "unreadable_feature: does not start with a GeoPackage header"),
                geometry("nothing", (Object) null).reads(0, 1, "empty_geometry: "),
                geometry("collections without end", nested(1_000_000)).reads(0, 1, "unreadable_feature: nested")));
        String[] curves = {
            "CircularString", "CompoundCurve", "CurvePolygon", "MultiCurve", "MultiSurface", "Curve", "Surface"
        };
        for (int i = 0; i < curves.length; i++) {
            cases.add(
                    geometry(curves[i], header(0).put((byte) 0).putInt(8 + i).putInt(0))
                            .reads(
                                    0,
                                    1,
                                    "wrong_geometry_type: of type " + curves[i].toLowerCase(java.util.Locale.ROOT)
                                            + ", but this layer needs lines; export it with its curves converted to straight segments"));
        }
        cases.add(vaults("empty point", folder -> {
                    Path file = folder.resolve("layer.gpkg");
                    try (var geoPackage = new SmallGeoPackage(file)) {
                        geoPackage.pointLayer("points", 4326, 2);
                        geoPackage.insert("points", 3, SmallGeoPackage.point(Double.NaN, Double.NaN), "x", 0);
                    }
                    return file;
                })
                .reads(2, 1, "empty_geometry: "));
        return cases;
    }

    static byte[] line() {
        return bytes(header(0)
                .put((byte) 0)
                .putInt(2)
                .putInt(2)
                .putDouble(-30)
                .putDouble(40)
                .putDouble(-30)
                .putDouble(40.001));
    }

    private static ByteBuffer iso(int type, int ordinates) {
        ByteBuffer buffer = header(0).put((byte) 0).putInt(type).putInt(2);
        for (int i = 0; i < 2 * ordinates; i++) {
            buffer.putDouble(i);
        }
        return buffer;
    }

    private static ByteBuffer nested(int depth) {
        ByteBuffer buffer = ByteBuffer.allocate(8 + 9 * depth).put(new byte[] {'G', 'P', 0, 0, 0, 0, 0, 0});
        for (int i = 0; i < depth; i++) {
            buffer.put((byte) 0).putInt(7).putInt(1);
        }
        return buffer;
    }

    static ByteBuffer header(int flags) {
        return ByteBuffer.allocate(200).put(new byte[] {'G', 'P', 0, (byte) flags, 0, 0, 0, 0});
    }

    static byte[] bytes(ByteBuffer buffer) {
        return Arrays.copyOf(buffer.array(), buffer.position());
    }

    private static HardCase geometry(String name, ByteBuffer geometry) {
        return geometry(name, bytes(geometry));
    }

    static Path cut(Path file, int length) throws java.io.IOException {
        return Files.write(file, Arrays.copyOf(Files.readAllBytes(file), length));
    }

    private static void copy(Path from, Path to) {
        try {
            Files.copy(from, to, StandardCopyOption.REPLACE_EXISTING);
        } catch (java.io.IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }
}
