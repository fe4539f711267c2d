package org.spanroom.output;

import java.time.Instant;
import java.util.List;
import java.util.Map;

/**
 * What there is to know of a run besides its results, so that it can be repeated.
 *
 * @param version of the program
 * @param config the configuration as used, defaults and overriding options included: texts, numbers, Booleans, lists and maps
 */
public record RunRecord(String version, Instant startedAt, Map<String, ?> config, List<Input> inputs) {
    /**
     * One layer or table that was read.
     *
     * @param role what it was read as: routes, vaults, contents
     * @param file as the user named it
     * @param layer name of the layer, or empty
     * @param crs name or definition of the reference system, or empty
     * @param sha256 hash of the file's bytes, in hexadecimal
     * @param featuresUsed how many had at least a part taken into the run
     */
    public record Input(
            String role,
            String file,
            String layer,
            String crs,
            String sha256,
            long featuresRead,
            long featuresUsed,
            long featuresRejected) {}

    public RunRecord {
        inputs = List.copyOf(inputs);
    }
}
