package org.spanroom.output.folder;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.charset.CharacterCodingException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Which files of a results folder a run wrote: a hidden list in the folder. Whatever else lies there belongs to somebody, and
 * is never deleted.
 */
final class OwnFiles {
    static final String LIST = ".results";

    /** What runs wrote before they kept a list. */
    private static final Set<String> BEFORE_LISTS = Set.of(
            "findings.csv",
            "pulls.csv",
            "run.json",
            "spanroom.gpkg",
            "spans.cpg",
            "spans.csv",
            "spans.dbf",
            "spans.geojson",
            "spans.prj",
            "spans.shp",
            "spans.shx");

    private static final long LONGEST_LIST = 10_000_000;

    private OwnFiles() {}

    /** Lists all files that are in the folder now as ours. */
    static void list(Path folder) throws IOException {
        String text = entries(folder).stream()
                .filter(entry -> !entry.endsWith("/"))
                .map(entry -> entry + "\n")
                .collect(Collectors.joining());
        Files.writeString(folder.resolve(LIST), text);
    }

    /** Returns what lies in the folder and was not written by a run, sorted, folders with a slash at their end. */
    static List<String> foreign(Path folder) throws IOException {
        Set<String> ours = ours(folder);
        return entries(folder).stream()
                .filter(entry -> entry.endsWith("/")
                        ? ours.stream().noneMatch(own -> own.startsWith(entry))
                        : !ours.contains(entry))
                .toList();
    }

    /** Deletes our files, and the folder with those in it as far as they are empty then. */
    static void delete(Path folder) throws IOException {
        Set<String> ours = ours(folder);
        visit(folder, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
                if (attributes.isRegularFile() && ours.contains(name(folder, file))) {
                    Files.deleteIfExists(file);
                }
                return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult postVisitDirectory(Path directory, @Nullable IOException failure)
                    throws IOException {
                if (isEmpty(directory)) {
                    Files.deleteIfExists(directory);
                }
                return FileVisitResult.CONTINUE;
            }
        });
    }

    /** Waits until all files are on the disk, so that a power cut cannot take old and new results together. */
    static void force(Path folder) throws IOException {
        visit(folder, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
                try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
                    channel.force(true);
                }
                return FileVisitResult.CONTINUE;
            }
        });
    }

    static boolean isEmpty(Path folder) throws IOException {
        try (Stream<Path> entries = Files.list(folder)) {
            return entries.findAny().isEmpty();
        }
    }

    private static Set<String> ours(Path folder) throws IOException {
        Path list = folder.resolve(LIST);
        if (!Files.isRegularFile(list, LinkOption.NOFOLLOW_LINKS) || Files.size(list) > LONGEST_LIST) {
            return BEFORE_LISTS;
        }
        try {
            var ours = new TreeSet<>(Files.readAllLines(list));
            ours.add(LIST);
            return ours;
        } catch (CharacterCodingException noText) {
            // No run wrote it.
            return BEFORE_LISTS;
        }
    }

    private static List<String> entries(Path folder) throws IOException {
        var found = new ArrayList<String>();
        visit(folder, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult preVisitDirectory(Path directory, BasicFileAttributes attributes) {
                if (!directory.equals(folder)) {
                    found.add(name(folder, directory) + "/");
                }
                return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
                // A link or a pipe of one of our names was laid there by somebody else.
                found.add(name(folder, file) + (attributes.isRegularFile() ? "" : " (no plain file)"));
                return FileVisitResult.CONTINUE;
            }
        });
        return found.stream().sorted().toList();
    }

    private static void visit(Path folder, SimpleFileVisitor<Path> visitor) throws IOException {
        Files.walkFileTree(folder, visitor);
    }

    private static String name(Path folder, Path inside) {
        return folder.relativize(inside).toString().replace('\\', '/');
    }
}
