package org.spanroom.output.folder;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.List;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** The hidden folders beside a folder of results: their names, what a killed run left in them, and how they go away. */
final class SiblingFolders {
    private static final int MOST_ATTEMPTS = 10;
    private static final SecureRandom NAMES = new SecureRandom();

    private SiblingFolders() {}

    /** Puts right what a run that was killed left: results that were moved away come back, its unfinished ones go. */
    static void restore(Path whole, List<String> left) throws IOException {
        Pattern ours =
                Pattern.compile(Pattern.quote("." + whole.getFileName()) + "\\.(?:writing|dropped|old)-[0-9a-f]{1,16}");
        for (String name : left) {
            Path beside = whole.resolveSibling(name);
            if (!ours.matcher(name).matches() || !Files.isDirectory(beside, LinkOption.NOFOLLOW_LINKS)) {
                continue;
            }
            if (!name.contains(".old-")) {
                deleteQuietly(beside);
            } else if (Files.exists(whole, LinkOption.NOFOLLOW_LINKS)) {
                remove(beside, whole);
            } else {
                Files.move(beside, whole, StandardCopyOption.ATOMIC_MOVE);
            }
        }
    }

    /** Removes replaced results. What came to them while the run was at work moves on to the new ones. */
    static void remove(Path old, Path target) {
        try {
            OwnFiles.delete(old);
            if (!Files.exists(old)) {
                return;
            }
            try (DirectoryStream<Path> rest = Files.newDirectoryStream(old)) {
                for (Path entry : rest) {
                    Files.move(entry, target.resolve(entry.getFileName()));
                }
            }
            Files.delete(old);
        } catch (IOException failure) {
            // The new results are in place; what could not be moved stays where it is.
        }
    }

    /**
     * Returns a name that no run had before: one that a killed run noted and did not come to use may be in its notes still, and what notes
     * name is removed.
     */
    static Path freeName(Path target, String purpose) throws IOException {
        for (int attempt = 0; attempt < MOST_ATTEMPTS; attempt++) {
            String unique = HexFormat.of().toHexDigits(NAMES.nextLong());
            Path beside = target.resolveSibling("." + target.getFileName() + "." + purpose + "-" + unique);
            if (!Files.exists(beside, LinkOption.NOFOLLOW_LINKS)) {
                return beside;
            }
        }
        throw new IOException("no free name beside it");
    }

    static void deleteEmpty(Path folder) {
        try {
            if (OwnFiles.isEmpty(folder)) {
                Files.delete(folder);
            }
        } catch (IOException failure) {
            // Another program uses it by now, or has removed it.
        }
    }

    /** Deletes what can be deleted; what cannot be deleted is left, since no caller is there to report to. */
    static void deleteQuietly(Path folder) {
        try {
            Files.walkFileTree(folder, new SimpleFileVisitor<>() {
                @Override
                public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
                    Files.deleteIfExists(file);
                    return FileVisitResult.CONTINUE;
                }

                @Override
                public FileVisitResult postVisitDirectory(Path directory, @Nullable IOException failure)
                        throws IOException {
                    Files.deleteIfExists(directory);
                    return FileVisitResult.CONTINUE;
                }
            });
        } catch (IOException failure) {
            // Nothing to be done: the caller is already on its way out, or the results are in place.
        }
    }
}
