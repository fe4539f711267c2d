package org.spanroom.pipeline;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.spanroom.finding.UsageException;
import org.spanroom.output.folder.OutputException;
import org.spanroom.output.folder.TextKind;

/** Keeps a page or a drawing out of the folders that it is made of: a run that replaces its results would lose it, or refuse. */
public final class ReportPlace {
    /** Titles of pages begin with this. */
    static final String TITLE = "Room to recover in ";

    static final TextKind PAGE = new TextKind("a page that report wrote", "<title>" + TITLE);

    private ReportPlace() {}

    /**
     * Checks where a page or a drawing is to be written.
     *
     * @param option that names the file
     * @throws UsageException if that is in the folder of the run or of the program
     */
    public static void check(String option, Path file, Path run, Optional<Path> program) {
        demandOutside(option, file, run, "the run");
        program.ifPresent(folder -> demandOutside(option, file, folder, "the program"));
    }

    private static void demandOutside(String option, Path file, Path folder, String what) {
        if (ProgramFolder.whole(file).startsWith(ProgramFolder.whole(folder))) {
            throw new UsageException(option + " " + file + " is in the folder of " + what + ", " + folder
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
