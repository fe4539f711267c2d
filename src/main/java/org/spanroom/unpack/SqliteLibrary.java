package org.spanroom.unpack;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.sqlite.SQLiteJDBCLoader;
import org.sqlite.util.LibraryLoaderUtil;

/**
 * The native library of SQLite.
 *
 * <p>Left to itself, its loader writes the library, reads it again and compares each byte, which takes a twentieth of a small run. It is
 * written here, and named to the loader, which looks there first and does as before where that fails.
 */
public final class SqliteLibrary {
    private static final String DIRECTORY_PROPERTY = "org.sqlite.tmpdir";
    private static final String PLACED_PROPERTY = "org.sqlite.lib.path";

    private SqliteLibrary() {}

    /**
     * Loads it; nothing more happens the second time, and a second thread waits for the first.
     *
     * @throws TemporaryFolderException if the temporary folder cannot be used
     */
    public static synchronized void load() {
        // A directory that the user names is left to the loader, which gives its files names that cannot be guessed.
        boolean ours = System.getProperty(DIRECTORY_PROPERTY) == null && System.getProperty(PLACED_PROPERTY) == null;
        PrivateDirectory.unpack(DIRECTORY_PROPERTY, "sqlite", () -> {
            if (ours) {
                place(Path.of(System.getProperty(DIRECTORY_PROPERTY, "")));
            }
            SQLiteJDBCLoader.initialize();
        });
    }

    private static void place(Path directory) throws IOException {
        String name = LibraryLoaderUtil.getNativeLibName();
        String resource = LibraryLoaderUtil.getNativeLibResourcePath() + "/" + name;
        try (InputStream library = SQLiteJDBCLoader.class.getResourceAsStream(resource)) {
            if (library != null) {
                Files.copy(library, directory.resolve(name));
                System.setProperty(PLACED_PROPERTY, directory.toString());
            }
        }
    }
}
