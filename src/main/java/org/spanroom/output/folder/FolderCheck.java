package org.spanroom.output.folder;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;

/** Whether a folder may be written, and replaced: it is new, empty, or holds results of a run and nothing else. */
final class FolderCheck {
    private static final int NAMED = 3;

    private FolderCheck() {}

    /**
     * Demands that a folder may be written.
     *
     * @param marker name of the file by which a folder of ours is known
     * @throws OutputException if it may not, with what to do
     */
    static void check(Path target, boolean overwrite, String marker) {
        if (!Files.exists(target, LinkOption.NOFOLLOW_LINKS)) {
            return;
        }
        if (Files.isSymbolicLink(target) && !Files.exists(target)) {
            throw new OutputException(
                    target, "is a link that leads to nothing", "Remove the link, or choose another folder.");
        }
        if (!Files.isDirectory(target)) {
            throw new OutputException(target, "exists and is no folder", "Choose another folder.");
        }
        try {
            if (!OwnFiles.isEmpty(target)) {
                checkOurs(target, overwrite, marker);
            }
            if (isMount(target.toRealPath())) {
                throw new OutputException(
                        target,
                        "is where a disk of its own is mounted, which nothing can take the place of",
                        "Choose a folder inside it.");
            }
        } catch (IOException failure) {
            throw OutputException.of(target, failure);
        }
    }

    private static void checkOurs(Path target, boolean overwrite, String marker) throws IOException {
        if (!Files.isRegularFile(target.resolve(marker))) {
            throw new OutputException(
                    target,
                    "exists and holds no results of an earlier run (no " + marker + ")",
                    "Choose another folder.");
        }
        if (!overwrite) {
            throw new OutputException(target, "exists", "Choose another folder, or replace it with --overwrite.");
        }
        List<String> foreign = OwnFiles.foreign(target.toRealPath());
        if (!foreign.isEmpty()) {
            String names = String.join(", ", foreign.subList(0, Math.min(NAMED, foreign.size())));
            String more = foreign.size() > NAMED ? " and " + (foreign.size() - NAMED) + " more" : "";
            throw new OutputException(
                    target,
                    "holds what no run wrote and replacing would lose: " + names + more,
                    "Move it elsewhere (and close the program that has the layers open), or choose another folder.");
        }
    }

    private static boolean isMount(Path folder) throws IOException {
        Path parent = folder.getParent();
        return parent != null && !Files.getFileStore(folder).equals(Files.getFileStore(parent));
    }
}
