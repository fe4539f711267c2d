package org.spanroom.output;

import java.nio.file.Path;
import java.util.List;

/**
 * What a run left on the disk.
 *
 * @param files names in the folder, in order
 * @param notes what the user should know of them, one sentence each: texts cut, a layer left out
 */
public record WrittenResults(Path folder, List<String> files, List<String> notes) {
    public WrittenResults {
        files = List.copyOf(files);
        notes = List.copyOf(notes);
    }
}
