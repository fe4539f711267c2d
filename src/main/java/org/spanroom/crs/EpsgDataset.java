package org.spanroom.crs;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.geotools.api.referencing.FactoryException;
import org.geotools.api.referencing.NoSuchAuthorityCodeException;
import org.geotools.api.referencing.crs.CompoundCRS;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.referencing.CRS;
import org.jspecify.annotations.Nullable;
import org.spanroom.parallel.BackgroundTask;
import org.spanroom.unpack.PrivateDirectory;

/**
 * The EPSG dataset that GeoTools carries, opened when first requested.
 *
 * <p>It is unpacked into files, which go to a {@link PrivateDirectory}.
 */
final class EpsgDataset {
    private static final String DIRECTORY_PROPERTY = "EPSG-HSQL.directory";
    private static final String DATABASE = "EPSG";

    /** On the same datum, or on it from another meridian: "NTF", "NTF (Paris)". */
    private static final String PROJECTED_ON = """
            SELECT P.COORD_REF_SYS_CODE, P.COORD_REF_SYS_NAME FROM EPSG_COORDINATEREFERENCESYSTEM P
            WHERE P.COORD_REF_SYS_KIND = 'projected' AND P.DEPRECATED = 0 AND (P.BASE_CRS_CODE = ? OR P.BASE_CRS_CODE IN (
                SELECT OTHER.COORD_REF_SYS_CODE FROM EPSG_COORDINATEREFERENCESYSTEM G, EPSG_COORDINATEREFERENCESYSTEM OTHER
                WHERE G.COORD_REF_SYS_CODE = ? AND OTHER.COORD_REF_SYS_KIND = G.COORD_REF_SYS_KIND
                AND OTHER.COORD_REF_SYS_NAME LIKE G.COORD_REF_SYS_NAME || ' (%'))""";

    private static final Map<Integer, ReferenceSystem> FOUND = new ConcurrentHashMap<>();

    private static boolean opened;
    private static volatile @Nullable BackgroundTask<?> opening;

    static {
        Quiet.install();
    }

    private EpsgDataset() {}

    /**
     * Begins to open the dataset beside other work. Its failure has no effect: whatever asks for a system meets it too.
     */
    static void beginToOpen() {
        opening = BackgroundTask.run("epsg", () -> decoded(KnownSystems.WEB_MERCATOR_CODE));
    }

    /**
     * Waits until the dataset is open, if that has begun. Nothing else may use GeoTools before: two threads that load classes which need
     * one another would wait for each other without end.
     */
    static void awaitOpening() {
        BackgroundTask<?> begun = opening;
        if (begun != null) {
            begun.awaitQuietly();
            opening = null;
        }
    }

    /**
     * Opens the dataset when first called. In a directory that the user names, GeoTools unpacks it itself when it is first asked for a
     * system: so for that one, since another takes as long again. The end of the program waits for both.
     */
    private static synchronized void open(int code) {
        if (!opened) {
            boolean ours = System.getProperty(DIRECTORY_PROPERTY) == null;
            PrivateDirectory.unpack(DIRECTORY_PROPERTY, "epsg", () -> {
                if (ours) {
                    EpsgFiles.place(Path.of(System.getProperty(DIRECTORY_PROPERTY, "")));
                }
                CRS.decode("EPSG:" + code, true);
            });
            opened = true;
        }
    }

    static ReferenceSystem findByCode(int code) {
        ReferenceSystem known = FOUND.get(code);
        if (known == null) {
            known = read(code);
            FOUND.put(code, known);
        }
        return known;
    }

    /** The parts of a compound system come with latitude first whatever was requested, so that they are fetched themselves. */
    private static ReferenceSystem read(int code) {
        CoordinateReferenceSystem any = decode(code);
        if (any instanceof CompoundCRS) {
            Optional<Integer> horizontal = Transforms.horizontal(any).getIdentifiers().stream()
                    .map(identifier -> Integer.valueOf(identifier.getCode()))
                    .findFirst()
                    .filter(part -> part != code);
            if (horizontal.isPresent()) {
                return findByCode(horizontal.get());
            }
        }
        return Transforms.systemOf(any, OptionalInt.of(code), Optional.empty());
    }

    /**
     * Returns the names of the projected systems on the datum of a geographic one, by their codes, without those that the dataset has
     * withdrawn. Asks the database itself: the library would make an object of each of some thousand systems to find its datum, and does
     * not say which are withdrawn.
     */
    static Map<Integer, String> projectedOn(int geographicCode) {
        findByCode(KnownSystems.WEB_MERCATOR_CODE); // the library unpacks the database when it is first used
        var names = new TreeMap<Integer, String>();
        Optional<Path> database = database();
        if (database.isEmpty()) {
            return names;
        }
        try (Connection connection = DriverManager.getConnection("jdbc:hsqldb:file:" + database.get(), "SA", "");
                PreparedStatement query = connection.prepareStatement(PROJECTED_ON)) {
            query.setInt(1, geographicCode);
            query.setInt(2, geographicCode);
            try (ResultSet row = query.executeQuery()) {
                while (row.next()) {
                    names.put(row.getInt(1), row.getString(2));
                }
            }
            return names;
        } catch (SQLException e) {
            throw new IllegalArgumentException("the EPSG dataset cannot be queried for its systems", e);
        }
    }

    private static Optional<Path> database() {
        Path unpacked = Path.of(System.getProperty(DIRECTORY_PROPERTY, ""));
        try (Stream<Path> versions = Files.list(unpacked)) {
            return versions.map(version -> version.resolve(DATABASE))
                    .filter(database -> Files.isRegularFile(database.resolveSibling(DATABASE + ".properties")))
                    .findFirst();
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    /** Returns GeoTools's own object for a code, easting or longitude first. */
    static CoordinateReferenceSystem decode(int code) {
        awaitOpening();
        return decoded(code);
    }

    private static CoordinateReferenceSystem decoded(int code) {
        open(code);
        try {
            return CRS.decode("EPSG:" + code, true);
        } catch (NoSuchAuthorityCodeException e) {
            throw new IllegalArgumentException("the EPSG dataset has no reference system EPSG:" + code, e);
        } catch (FactoryException e) {
            throw new IllegalArgumentException(
                    "EPSG:" + code + " is not usable" + DefinitionParser.inParentheses(String.valueOf(e.getMessage())),
                    e);
        }
    }
}
