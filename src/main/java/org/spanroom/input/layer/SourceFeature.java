package org.spanroom.input.layer;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One feature as its file has it.
 *
 * @param number place in the layer, from 1
 * @param fileId the identifier that the file itself gives (GeoJSON id, GeoPackage key), or empty
 * @param geometryType the type's name in its format, for messages
 * @param values the values of the wanted fields, in the order they were requested: String, Long, Double, Boolean, or null
 *     where the feature has none
 */
public record SourceFeature(
        long number, String fileId, String geometryType, SourceGeometry geometry, List<@Nullable Object> values) {
    /** Returns the feature with x and y of each vertex exchanged. */
    public SourceFeature exchanged() {
        return new SourceFeature(number, fileId, geometryType, geometry.exchanged(), values);
    }
}
