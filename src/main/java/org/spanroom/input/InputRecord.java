package org.spanroom.input;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.spanroom.finding.FindingCode;
import org.spanroom.input.layer.FileDigest;
import org.spanroom.input.layer.LayerHeader;

/**
 * What was read from one file: for the run's record.
 *
 * @param role routes, vaults, contents or zones
 * @param layer the layer's name; empty for a table
 * @param crsName the reference system that the ordinates were read in; empty for a table
 * @param featuresRead features, or rows, met
 * @param featuresUsed those of which at least a part is in the results
 * @param rejectedByCode all others, counted by the reason; findings list at most a thousand of each
 * @param digests the file and those that belong to it
 */
public record InputRecord(
        String role,
        Path file,
        String layer,
        String crsName,
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

    /** Returns the words that findings use for this file or layer. */
    public String source() {
        return role.equals("contents")
                ? String.valueOf(file.getFileName())
                : new LayerHeader(file, layer, List.of(), Optional.empty(), -1).source();
    }

    /** Returns how many features, or rows, are not in the results; findings say why. */
    public long featuresRejected() {
        return featuresRead - featuresUsed;
    }
}
