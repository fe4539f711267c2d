package org.spanroom.unpack;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.util.Optional;

/** The folder for temporary files, into which libraries unpack theirs, cannot be used: it is missing, read-only or full. */
public final class TemporaryFolderException extends UncheckedIOException {
    private static final long serialVersionUID = 1L;
    private static final int DEEPEST = 50;

    TemporaryFolderException(IOException why) {
        super(
                "the temporary folder " + System.getProperty("java.io.tmpdir") + " cannot be used (" + reason(why)
                        + "), and libraries unpack files there. Make room in it, or name another: set JAVA_TOOL_OPTIONS to"
                        + " -Djava.io.tmpdir=FOLDER",
                why);
    }

    /** Returns the one line of such a failure where it is the cause of another, as of a library that cannot begin. */
    public static Optional<String> find(Throwable failure) {
        Throwable cause = failure;
        for (int depth = 0; cause != null && depth < DEEPEST; depth++) {
            if (cause instanceof TemporaryFolderException) {
                return Optional.ofNullable(cause.getMessage());
            }
            cause = cause.getCause();
        }
        return Optional.empty();
    }

    private static String reason(IOException why) {
        if (why instanceof NoSuchFileException) {
            return "it does not exist";
        }
        if (why instanceof AccessDeniedException) {
            return "no permission to write";
        }
        if (why instanceof FileSystemException failure && failure.getReason() != null) {
            return failure.getReason();
        }
        return String.valueOf(why.getMessage());
    }
}
