package org.spanroom.pipeline;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.spanroom.bore.RoomAssessor;
import org.spanroom.config.OutputConfig;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.FindingLog;
import org.spanroom.finding.InputException;
import org.spanroom.model.bore.KnownPacking;
import org.spanroom.output.PackingFile;

/** What packing found, carried from one run to the next by a file; a run without one, or with a damaged one, only takes longer. */
final class PackingMemory {
    private final Optional<Path> path;
    private final FindingLog findings;
    private List<KnownPacking> recalled = List.of();

    PackingMemory(OutputConfig output, FindingLog findings) {
        this.path = output.packingFile();
        this.findings = findings;
    }

    /** Refuses a file within the folder of results, which is replaced whole, and one that holds something else. */
    static void check(OutputConfig output) {
        Path folder = output.resultsFolder().toAbsolutePath().normalize();
        output.packingFile().ifPresent(file -> {
            if (file.toAbsolutePath().normalize().startsWith(folder)) {
                throw new InputException(
                        file,
                        "the packing file is in the results folder",
                        "Set output.packing_file to a file outside of it.");
            }
            demandOurs(file);
        });
    }

    private static void demandOurs(Path file) {
        boolean ours;
        try {
            ours = PackingFile.mayReplace(file);
        } catch (IOException unreadable) {
            // A run without the file only takes longer; recall() reports it.
            return;
        }
        if (!ours) {
            throw new InputException(
                    file,
                    "output.packing_file names a file that is not a packing file, and it would be replaced",
                    "Name a new file, or one that an earlier run wrote.");
        }
    }

    void recall(RoomAssessor assessor) {
        path.ifPresent(file -> {
            try {
                recalled = new PackingFile(file, RoomAssessor.METHOD).read();
                assessor.recall(recalled);
            } catch (IOException e) {
                doubt(file, "it was not used", e);
            }
        });
    }

    /** Writes the file, unless it holds all that is known. */
    void keep(RoomAssessor assessor) {
        path.ifPresent(file -> {
            List<KnownPacking> known = assessor.known();
            if (!known.isEmpty() && known.equals(recalled)) {
                return;
            }
            try {
                new PackingFile(file, RoomAssessor.METHOD).write(known);
            } catch (IOException e) {
                doubt(file, "it was not written", e);
            }
        });
    }

    private void doubt(Path file, String what, IOException e) {
        findings.add(Finding.of(
                FindingCode.PACKING_FILE_UNUSABLE, "packings", file.toString(), what + ": " + e.getMessage()));
    }
}
