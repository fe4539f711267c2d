package org.spanroom.config;

import java.nio.file.Files;
import java.nio.file.Path;

/**
 * The files that a config names: relative to the config's own folder, so that it reads the same from any directory. A config that comes
 * through a pipe has no folder: what it names is relative to the directory that the program is started in.
 */
final class ConfigFiles {
    private ConfigFiles() {}

    /**
     * Returns a named file as the program opens and records it: relative to the directory that the program is started in where it
     * is below that, otherwise absolute. A file that is named absolutely stays as it is.
     *
     * @param config the file that names it
     */
    static Path beside(Path config, Path named) {
        if (named.isAbsolute()) {
            return named;
        }
        Path here = Path.of("").toAbsolutePath();
        Path folder = isPiped(config) ? here : config.toAbsolutePath().getParent();
        Path file = folder == null ? named : folder.resolve(named).normalize();
        return file.startsWith(here) ? here.relativize(file) : file;
    }

    /** Returns whether a config exists and is not a regular file: a pipe, such as {@code /dev/stdin} or one that a shell makes. */
    private static boolean isPiped(Path config) {
        return Files.exists(config) && !Files.isRegularFile(config);
    }
}
