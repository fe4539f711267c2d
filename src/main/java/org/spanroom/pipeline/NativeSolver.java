package org.spanroom.pipeline;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.JarURLConnection;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import org.jspecify.annotations.Nullable;
import org.spanroom.unpack.PrivateDirectory;

/**
 * Loads the native library for integer programs, once, when the first command needs it.
 *
 * <p>The library's own loader unpacks into the shared temporary place and leaves its files behind when the program is killed. This one unpacks
 * into a {@link PrivateDirectory}. Where a platform has no library, or it cannot be loaded, there is a reason instead of a failure.
 */
public final class NativeSolver {
    /** A directory to unpack into, instead of one of the program's own. */
    static final String DIRECTORY_PROPERTY = "spanroom.solver.directory";

    /** Set to {@code none} to work as on a platform without the library. */
    static final String PLATFORM_PROPERTY = "spanroom.solver.platform";

    private static final String LIBRARY = "jniortools";

    /** What Windows does not find by itself beside a library, each after what it needs. */
    private static final List<String> WINDOWS_ORDER = List.of(
            "zlib1", "bz2", "abseil_dll", "re2", "libutf8_validity", "libprotobuf", "highs", "libscip", "ortools");

    /** Why the library is missing, "" where it can be used, null as long as that has not been tried. */
    private static @Nullable String outcome;

    private NativeSolver() {}

    /** Loads the library if that has not been tried, and returns why it is missing; empty where it can be used. */
    public static synchronized Optional<String> load() {
        String known = outcome;
        if (known == null) {
            known = tryToLoad(platform()).orElse("");
            outcome = known;
        }
        return Optional.of(known).filter(reason -> !reason.isEmpty());
    }

    /** Returns the name of this platform as the library's files have it. */
    static String platform() {
        String given = System.getProperty(PLATFORM_PROPERTY);
        if (given != null) {
            return given;
        }
        String system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
        String processor = System.getProperty("os.arch", "").toLowerCase(Locale.ROOT);
        String family = system.startsWith("windows") ? "win32" : system.startsWith("mac") ? "darwin" : system;
        String kind = processor.equals("amd64") || processor.equals("x86_64") ? "x86-64" : processor;
        return family + "-" + kind;
    }

    static Optional<String> tryToLoad(String platform) {
        String folder = "ortools-" + platform + "/";
        URL file = NativeSolver.class.getClassLoader().getResource(folder + System.mapLibraryName(LIBRARY));
        if (file == null) {
            return Optional.of("there is no library for integer programs on " + platform);
        }
        var failure = new String[1];
        try {
            PrivateDirectory.unpack(DIRECTORY_PROPERTY, "solver", () -> failure[0] = unpackAndLoad(file, folder));
        } catch (UncheckedIOException e) {
            failure[0] = e.getMessage();
        }
        return Optional.ofNullable(failure[0])
                .map(reason -> "the library for integer programs cannot be loaded: " + reason);
    }

    /** Returns why that failed, or null. A library that does not suit the system is an error to Java, and only a reason here. */
    private static @Nullable String unpackAndLoad(URL file, String folder) {
        Path directory = Path.of(System.getProperty(DIRECTORY_PROPERTY, "")).toAbsolutePath();
        try {
            unpack(file, folder, directory);
            if (folder.contains("win32")) {
                WINDOWS_ORDER.forEach(name -> loadIfThere(directory.resolve(System.mapLibraryName(name))));
            }
            System.load(directory.resolve(System.mapLibraryName(LIBRARY)).toString());
            return null;
        } catch (IOException | LinkageError | SecurityException e) {
            return String.valueOf(e.getMessage());
        }
    }

    private static void loadIfThere(Path library) {
        if (Files.exists(library)) {
            System.load(library.toString());
        }
    }

    private static void unpack(URL file, String folder, Path directory) throws IOException {
        if (!(file.openConnection() instanceof JarURLConnection connection)) {
            throw new IOException(file + " is not in an archive");
        }
        try (JarFile archive = new JarFile(Path.of(pathOf(connection)).toFile())) {
            for (JarEntry entry : archive.stream().toList()) {
                String name = entry.getName();
                if (name.startsWith(folder) && !entry.isDirectory() && name.indexOf('/', folder.length()) < 0) {
                    try (InputStream content = archive.getInputStream(entry)) {
                        Files.copy(content, directory.resolve(name.substring(folder.length())));
                    }
                }
            }
        }
    }

    private static URI pathOf(JarURLConnection connection) throws IOException {
        try {
            return connection.getJarFileURL().toURI();
        } catch (URISyntaxException e) {
            throw new IOException("the archive has no usable name: " + connection.getJarFileURL(), e);
        }
    }
}
