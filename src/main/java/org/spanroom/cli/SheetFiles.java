package org.spanroom.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.spanroom.output.folder.OutputException;
import org.spanroom.output.folder.TextFile;
import org.spanroom.output.folder.TextKind;

/** Where the sheets of explained spans go: the file that the user names, or for several spans one file each in a folder. */
final class SheetFiles {
    private static final int LONGEST_NAME = 100;
    private static final TextKind KIND = new TextKind("a sheet that explain wrote", "<title>Span ");

    private final List<Path> files;
    private final boolean overwrite;

    private SheetFiles(List<Path> files, boolean overwrite) {
        this.files = List.copyOf(files);
        this.overwrite = overwrite;
    }

    /**
     * Checks that the sheets may be written; nothing is worth calculating otherwise.
     *
     * @param named by the user: a file for one span, a folder for several
     * @throws OutputException if a file exists and may not be replaced, or the folder is a file
     */
    static SheetFiles check(Path named, List<String> spanIds, boolean overwrite) {
        if (spanIds.size() > 1 && Files.exists(named) && !Files.isDirectory(named)) {
            throw new OutputException(named, "is a file", "Name a folder with --svg: there are several spans.");
        }
        List<Path> files = spanIds.size() == 1 ? List.of(named) : inFolder(named, spanIds);
        files.forEach(file -> TextFile.check(file, KIND, overwrite));
        return new SheetFiles(files, overwrite);
    }

    private static List<Path> inFolder(Path folder, List<String> spanIds) {
        var files = new ArrayList<Path>();
        Set<String> taken = new HashSet<>();
        for (String spanId : spanIds) {
            String stem = stem(spanId);
            String name = stem;
            // On some systems names differ in more than case.
            for (int copy = 2; !taken.add(name.toLowerCase(Locale.ROOT)); copy++) {
                name = stem + "-" + copy;
            }
            files.add(folder.resolve(name + ".svg"));
        }
        return files;
    }

    /** An id may hold any character, and a name of a file may not. */
    private static String stem(String spanId) {
        String safe = spanId.replaceAll("[^A-Za-z0-9._-]", "_").replaceFirst("^\\.+", "_");
        return safe.isEmpty() ? "_" : safe.length() <= LONGEST_NAME ? safe : safe.substring(0, LONGEST_NAME);
    }

    /** Writes the sheet of one span, by its place in the list of spans. */
    void write(int place, String svg) {
        Path file = files.get(place);
        if (files.size() > 1) {
            makeFolder(file);
        }
        TextFile.write(file, svg, KIND, overwrite);
    }

    private static void makeFolder(Path file) {
        Path folder = file.toAbsolutePath().getParent();
        if (folder == null) {
            return;
        }
        try {
            Files.createDirectories(folder);
        } catch (IOException failure) {
            throw OutputException.of(folder, failure);
        }
    }
}
