package org.spanroom.pipeline;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.spanroom.finding.UsageException;
import org.spanroom.output.folder.OutputException;

/** Keeps a page out of the folders that it is made of: a run that replaces its results would lose it, or refuse. */
final class ReportPlace {
    private ReportPlace() {}

    /**
     * Checks where a page is to be written.
     *
     * @throws UsageException if that is in the folder of the run or of the program
     */
    static void check(Path page, Path run, Optional<Path> program) {
        demandOutside(page, run, "the run");
        program.ifPresent(folder -> demandOutside(page, folder, "the program"));
    }

    private static void demandOutside(Path page, Path folder, String what) {
        if (ProgramFolder.whole(page).startsWith(ProgramFolder.whole(folder))) {
            throw new UsageException("--output " + page + " is in the folder of " + what + ", " + folder
                    + ", which stays as it is; choose a file outside it");
        }
    }

    /** Returns how many bytes a page has. */
    static long size(Path page) {
        try {
            return Files.size(page);
        } catch (IOException failure) {
            throw OutputException.of(page, failure);
        }
    }
}
