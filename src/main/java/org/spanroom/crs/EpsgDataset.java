package org.spanroom.crs;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.ConcurrentHashMap;
import org.geotools.api.referencing.FactoryException;
import org.geotools.api.referencing.NoSuchAuthorityCodeException;
import org.geotools.api.referencing.crs.CompoundCRS;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.referencing.CRS;

/**
 * The EPSG dataset that GeoTools carries, opened when first asked for, which takes about a second.
 *
 * <p>GeoTools unpacks it into files, which go to a {@link PrivateDirectory}.
 */
final class EpsgDataset {
    private static final String DIRECTORY_PROPERTY = "EPSG-HSQL.directory";
    private static final Map<Integer, ReferenceSystem> FOUND = new ConcurrentHashMap<>();

    static {
        Quiet.install();
        PrivateDirectory.unpack(
                DIRECTORY_PROPERTY, "epsg", () -> CRS.decode("EPSG:" + KnownSystems.WEB_MERCATOR_CODE, true));
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
}
