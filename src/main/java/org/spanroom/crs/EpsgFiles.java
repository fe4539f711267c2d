package org.spanroom.crs;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.geotools.referencing.factory.epsg.hsql.ThreadedHsqlEpsgFactory;

/**
 * The files of the EPSG dataset, where GeoTools looks for them before it unpacks its own: 33 MB, which it writes a kilobyte at a time.
 * Should a later GeoTools look elsewhere, it unpacks them itself as before.
 */
final class EpsgFiles {
    private static final String ARCHIVE = "EPSG.zip";
    private static final String MARKER = "EPSG_creation_marker.txt";

    private EpsgFiles() {}

    /** Puts the files into the folder that GeoTools makes for its version in a directory of this program's own. */
    static void place(Path directory) throws IOException {
        Path folder = Files.createDirectory(directory.resolve("v" + ThreadedHsqlEpsgFactory.VERSION));
        try (InputStream archive = ThreadedHsqlEpsgFactory.class.getResourceAsStream(ARCHIVE)) {
            if (archive == null) {
                return;
            }
            var files = new ZipInputStream(archive);
            for (ZipEntry file = files.getNextEntry(); file != null; file = files.getNextEntry()) {
                Files.copy(files, folder.resolve(Path.of(file.getName()).getFileName()));
            }
        }
        Files.createFile(folder.resolve(MARKER));
    }
}
