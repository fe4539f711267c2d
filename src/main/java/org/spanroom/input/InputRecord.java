package org.spanroom.input;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.spanroom.finding.FindingCode;
import org.spanroom.input.layer.FileDigest;

/**
 * What was read from one file: for the run's record.
 *
 * @param role routes, vaults, contents, zones or field_book
 * @param source the words that findings use for this file or layer
 * @param layer the layer's name; empty for a table
 * @param crsName the reference system that the ordinates were read in; empty for a table
 * @param firstItem the number of the first route, vault or zone that was made of this file, where there are several
 * @param featuresRead features, or rows, met
 * @param featuresUsed those of which at least a part is in the results
 * @param rejectedByCode all others, counted by the reason; findings list at most a thousand of each
 * @param digests the file and those that belong to it
 */
public record InputRecord(
        String role,
        String source,
        Path file,
        String layer,
        String crsName,
        int firstItem,
        long featuresRead,
        long featuresUsed,
        Map<FindingCode, Long> rejectedByCode,
        List<FileDigest> digests) {
    public InputRecord {
        rejectedByCode = Map.copyOf(rejectedByCode);
        digests = List.copyOf(digests);
        long rejected =
                rejectedByCode.values().stream().mapToLong(Long::longValue).sum();
        if (featuresRead != featuresUsed + rejected) {
            throw new IllegalStateException(role + ": features read must be those used and those rejected, but "
                    + featuresRead + " is not " + featuresUsed + " + " + rejectedByCode);
        }
    }

    /** Returns how many features, or rows, are not in the results; findings say why. */
    public long featuresRejected() {
        return featuresRead - featuresUsed;
    }
}
