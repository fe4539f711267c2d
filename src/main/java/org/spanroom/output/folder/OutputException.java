package org.spanroom.output.folder;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Results that cannot be written. Its message is one line for the person who can fix it. */
public class OutputException extends RuntimeException {
    private static final long serialVersionUID = 1;

    /**
     * @param file the file or folder, as the user named it
     * @param problem what is wrong
     * @param remedy what to do about it, as a sentence
     */
    public OutputException(Path file, String problem, String remedy) {
        this(file, problem, remedy, null);
    }

    /** As above, keeping the exception that a library threw. */
    public OutputException(Path file, String problem, String remedy, @Nullable Throwable cause) {
        super(
                (file + ": " + problem + ". " + remedy)
                        .replaceAll("\\s*\\R\\s*", " ")
                        .strip(),
                cause);
    }

    /** Returns what a failed file operation means for the user. */
    public static OutputException of(Path file, IOException failure) {
        String reason = String.valueOf(failure.getMessage());
        if (isFullDisk(reason)) {
            return fullDisk(file, failure);
        }
        if (failure instanceof AccessDeniedException || reason.contains("Permission denied")) {
            return new OutputException(
                    file, "no permission to write here", "Choose another folder or ask for the permission.", failure);
        }
        if (failure instanceof FileAlreadyExistsException) {
            return new OutputException(file, "exists already", "Choose another name or remove it.", failure);
        }
        if (failure instanceof NoSuchFileException missing && hasFolder(missing, file)) {
            return new OutputException(
                    file, "nothing can be written into the folder that it is in", "Choose another folder.", failure);
        }
        if (failure instanceof NoSuchFileException) {
            return new OutputException(file, "its folder does not exist", "Create the folder first.", failure);
        }
        return new OutputException(
                file, "cannot be written (" + reason + ")", "Check the disk and the folder.", failure);
    }

    /** Returns whether the folder is there, as that of a file system which takes no files of ours. */
    private static boolean hasFolder(NoSuchFileException missing, Path file) {
        Path named = missing.getFile() == null ? file : Path.of(missing.getFile());
        Path folder = named.toAbsolutePath().getParent();
        return folder != null && Files.isDirectory(folder);
    }

    public static OutputException fullDisk(Path file, Exception failure) {
        return new OutputException(
                file, "the disk is full", "Free some space or choose a folder on another disk.", failure);
    }

    public static boolean isFullDisk(String reason) {
        String lower = reason.toLowerCase(Locale.ROOT);
        return lower.contains("no space left") || lower.contains("disk is full") || lower.contains("quota exceeded");
    }
}
