package org.spanroom.finding;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;

/**
 * Names of files as texts. Java turns them into bytes by the charset of the locale that the program is started in, so a file with a valid name
 * may still not open.
 */
public final class FileName {
    /** Stands for bytes that are not text in the charset of the locale. */
    private static final char UNREADABLE = '\uFFFD';

    private static final int LAST_ASCII = 0x7F;

    private FileName() {}

    /** Returns what to do about a name that this locale cannot express; empty for a name that it can. */
    public static Optional<String> remedy(String name) {
        boolean isUnreadable = name.indexOf(UNREADABLE) >= 0;
        boolean isAscii = name.chars().allMatch(c -> c <= LAST_ASCII);
        if (isAscii || (isPath(name) && !(isUnreadable && isMissing(name)))) {
            return Optional.empty();
        }
        String charset = System.getProperty("sun.jnu.encoding", "");
        boolean isUnicode = charset.equalsIgnoreCase("UTF-8");
        return Optional.of(
                isUnicode
                        ? "it has bytes that are not text in UTF-8, the charset of this locale; rename it"
                        : "it has letters that the charset of this locale, " + charset
                                + ", lacks; set LC_ALL=C.UTF-8 before you start the program, or rename it");
    }

    private static boolean isPath(String name) {
        try {
            return !Path.of(name).toString().isEmpty();
        } catch (InvalidPathException unmappable) {
            return false;
        }
    }

    private static boolean isMissing(String name) {
        return !Files.exists(Path.of(name));
    }
}
