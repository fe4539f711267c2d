package org.spanroom.testing;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/** What is in a folder, so that two moments can be compared. */
public final class FolderState {
    private FolderState() {}

    /** Returns every file below the folder with the hash of what it holds. */
    public static Map<String, String> of(Path folder) {
        try (Stream<Path> files = Files.walk(folder)) {
            var state = new TreeMap<String, String>();
            for (Path file : files.filter(path -> Files.isRegularFile(path, LinkOption.NOFOLLOW_LINKS))
                    .toList()) {
                byte[] hash = MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file));
                state.put(folder.relativize(file).toString(), HexFormat.of().formatHex(hash));
            }
            return state;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (NoSuchAlgorithmException e) {
            throw new AssertionError(e);
        }
    }

    /** Returns the names in the folder, sorted; none if there is no folder. */
    public static List<String> names(Path folder) {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Returns whether a folder holds something whose name begins so, with a file in it of the other name; "" for none. */
    public static boolean holds(Path folder, String beginning, String file) {
        return names(folder).stream()
                .filter(name -> name.startsWith(beginning))
                .anyMatch(name -> Files.exists(folder.resolve(name).resolve(file)));
    }
}
