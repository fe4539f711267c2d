package org.spanroom.crs;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.geotools.api.referencing.FactoryException;
import org.geotools.api.referencing.NoSuchAuthorityCodeException;
import org.geotools.api.referencing.crs.CompoundCRS;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.referencing.CRS;

/**
 * The EPSG dataset that GeoTools carries, opened when first asked for, which takes about a second.
 *
 * <p>GeoTools unpacks it into files. They go to a directory of this run's own rather than to the temporary place that all
 * users of a machine share, where another could have laid files in wait, and are removed when the run ends.
 */
final class EpsgDataset {
    private static final String DIRECTORY_PROPERTY = "EPSG-HSQL.directory";
    private static final Map<Integer, ReferenceSystem> FOUND = new ConcurrentHashMap<>();

    static {
        Quiet.install();
        if (System.getProperty(DIRECTORY_PROPERTY) == null) {
            System.setProperty(DIRECTORY_PROPERTY, privateDirectory().toString());
        }
    }

    private EpsgDataset() {}

    static ReferenceSystem findByCode(int code) {
        ReferenceSystem known = FOUND.get(code);
        if (known == null) {
            known = read(code);
            FOUND.put(code, known);
        }
        return known;
    }

    /** The parts of a compound system come with latitude first whatever was asked for, so that they are fetched themselves. */
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

    /** Returns GeoTools's own object for a code, easting or longitude first. */
    static CoordinateReferenceSystem decode(int code) {
        try {
            return CRS.decode("EPSG:" + code, true);
        } catch (NoSuchAuthorityCodeException e) {
            throw new IllegalArgumentException("the EPSG dataset has no reference system EPSG:" + code, e);
        } catch (FactoryException e) {
            throw new IllegalArgumentException(
                    "EPSG:" + code + " cannot be used: " + DefinitionParser.abridged(String.valueOf(e.getMessage())),
                    e);
        }
    }

    private static Path privateDirectory() {
        try {
            Path directory = Files.createTempDirectory("spanroom-epsg");
            Runtime.getRuntime().addShutdownHook(new Thread(() -> remove(directory), "remove-epsg-files"));
            return directory;
        } catch (IOException e) {
            throw new UncheckedIOException("no temporary directory for the EPSG dataset", e);
        }
    }

    private static void remove(Path directory) {
        try (Stream<Path> inside = Files.walk(directory)) {
            for (Path path : inside.sorted(Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(path);
            }
        } catch (IOException e) {
            // Nothing more can be done while the process ends; the system clears its temporary place in time.
        }
    }
}
