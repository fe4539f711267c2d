package org.spanroom.pipeline;

import java.nio.file.Files;
import java.nio.file.Path;
import org.spanroom.config.InputConfig;
import org.spanroom.config.OutputConfig;
import org.spanroom.output.RunRecord;

/**
 * The files that an earlier run read, found again from any directory: their recorded names are relative to the directory that the
 * run was started in, and so is the recorded name of its results, which lie where they are now.
 */
final class RecordedFiles {
    private final Path startedIn;

    /**
     * Finds the directory that the run was started in; takes the present one where the results' names do not give it away.
     *
     * @param folder the results as they are now
     * @param output what the run recorded of them
     */
    RecordedFiles(Path folder, OutputConfig output) {
        Path here = Path.of("").toAbsolutePath();
        Path now = here.resolve(folder).normalize();
        Path then = output.resultsFolder().normalize();
        boolean found = !then.isAbsolute() && now.endsWith(then) && now.getNameCount() > then.getNameCount();
        startedIn =
                found ? now.resolve(Path.of("../".repeat(then.getNameCount()))).normalize() : here;
    }

    InputConfig find(InputConfig inputs) {
        return inputs.withFiles(this::find);
    }

    RunRecord.Part find(RunRecord.Part part) {
        return new RunRecord.Part(find(Path.of(part.file())).toString(), part.sha256());
    }

    /** A file that is below the present directory keeps its short name. */
    private Path find(Path recorded) {
        Path there = startedIn.resolve(recorded);
        boolean isElsewhere = !startedIn.equals(Path.of("").toAbsolutePath()) && Files.exists(there);
        return isElsewhere ? there : recorded;
    }
}
