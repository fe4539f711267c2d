package org.spanroom.pipeline;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.spanroom.finding.UsageException;
import org.spanroom.output.folder.OutputException;

/** Keeps what a command reads apart from the folder that it writes. */
final class ProgramFolder {
    private ProgramFolder() {}

    /**
     * Checks that a folder of results is neither in that of the run nor around it, and around none of the files that are read.
     *
     * @param run folder that is read and stays as it is
     * @param inputs files that are read
     * @throws UsageException if it is
     */
    static void check(Path run, Path output, List<Path> inputs) {
        Path target = whole(output);
        Path source = whole(run);
        if (target.startsWith(source) || source.startsWith(target)) {
            throw new UsageException("--output " + output + (target.startsWith(source) ? " is in" : " holds")
                    + " the folder of the run, " + run + ", which stays as it is; choose a folder outside it");
        }
        demandOutside(output, inputs);
    }

    /**
     * Checks that a folder of results holds none of the files that are read: replacing it would lose them.
     *
     * @throws UsageException if it does
     */
    static void demandOutside(Path output, List<Path> inputs) {
        Path target = whole(output);
        for (Path input : inputs) {
            if (whole(input).startsWith(target)) {
                throw new UsageException("the results folder " + output + " (--output, or output.folder in the config) "
                        + (whole(input).equals(target)
                                ? "is a file that is read"
                                : "holds the file that is read, " + input)
                        + "; choose another folder");
            }
        }
    }

    /** Returns a path with links followed as far as it exists. */
    static Path whole(Path path) {
        Path absolute = path.toAbsolutePath().normalize();
        try {
            for (Path above = absolute; above != null; above = above.getParent()) {
                if (Files.exists(above)) {
                    return above.toRealPath()
                            .resolve(above.relativize(absolute))
                            .normalize();
                }
            }
            return absolute;
        } catch (IOException failure) {
            throw OutputException.of(path, failure);
        }
    }
}
