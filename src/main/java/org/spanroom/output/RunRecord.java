package org.spanroom.output;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * What a run needs in addition to its results, so that it can be repeated.
 *
 * @param version of the program
 * @param config the configuration as used, defaults and overriding options included: texts, numbers, Booleans, lists and maps
 */
public record RunRecord(String version, Instant startedAt, Map<String, ?> config, List<Input> inputs) {
    /**
     * One layer or table that was read.
     *
     * @param role what it was read as: routes, vaults, contents, zones or field_book
     * @param file as the user named it
     * @param layer name of the layer, or empty
     * @param crs name or definition of the reference system, or empty
     * @param sha256 hash of the file's bytes, in hexadecimal
     * @param parts further files that belong to it
     * @param featuresUsed how many had at least a part taken into the run
     * @param rejectedByCode how many had none, by the finding's code that says why; exact, also where not all are listed
     */
    public record Input(
            String role,
            String file,
            String layer,
            String crs,
            String sha256,
            List<Part> parts,
            long featuresRead,
            long featuresUsed,
            long featuresRejected,
            Map<String, Long> rejectedByCode) {
        public Input {
            rejectedByCode = Map.copyOf(rejectedByCode);
            parts = List.copyOf(parts);
        }

        /** Returns whether it is the field book, to which rows are added after a run. */
        public boolean isFieldBook() {
            return role.equals("field_book");
        }

        /** Returns every file that was read for it, the one that the user named first. */
        public List<Part> files() {
            var files = new ArrayList<>(List.of(new Part(file, sha256)));
            files.addAll(parts);
            return List.copyOf(files);
        }
    }

    /** One file with the hash of its bytes. */
    public record Part(String file, String sha256) {}

    public RunRecord {
        inputs = List.copyOf(inputs);
    }
}
