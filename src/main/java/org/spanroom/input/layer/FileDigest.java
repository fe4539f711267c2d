package org.spanroom.input.layer;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;

/**
 * One file as it was read, so that a result can be tied to its input.
 *
 * @param sizeBytes the file's length
 * @param sha256Hex SHA-256 over its bytes (FIPS 180-4), lower-case hexadecimal, as {@code sha256sum} prints it
 */
public record FileDigest(Path file, long sizeBytes, String sha256Hex) {
    private static final int BUFFER_BYTES = 1 << 17;
    private static final List<String> SHAPEFILE_ENDINGS = List.of("shp", "dbf", "dbt", "fpt", "prj", "cpg", "cst");

    /** Returns the digests of a layer's file and, of a Shapefile, of those that belong to it. */
    public static List<FileDigest> ofLayer(Path file) {
        return files(file).stream().map(FileDigest::of).toList();
    }

    /** Returns a layer's file and, of a Shapefile, those that belong to it and count. */
    static List<Path> files(Path file) {
        if (LayerFormat.of(file) != LayerFormat.SHAPEFILE) {
            return List.of(file);
        }
        var files = new ArrayList<Path>();
        for (String ending : SHAPEFILE_ENDINGS) {
            for (String spelling : List.of(ending, ending.toUpperCase(Locale.ROOT))) {
                Path part = file.resolveSibling(LayerFormat.stem(file) + "." + spelling);
                if (Files.isRegularFile(part)) {
                    files.add(part);
                    break;
                }
            }
        }
        return List.copyOf(files);
    }

    /** Returns the digest of bytes that were read of a file. */
    public static FileDigest of(Path file, byte[] bytes) {
        return new FileDigest(file, bytes.length, HexFormat.of().formatHex(sha256().digest(bytes)));
    }

    /**
     * Finds how many of a file's first bytes have a digest: all of them, or those up to the end of one of its lines, with or without
     * the line break. Empty where no such beginning has it.
     */
    public static OptionalInt findBeginning(byte[] bytes, String sha256Hex) {
        MessageDigest sha = sha256();
        int done = 0;
        for (int at = 0; at <= bytes.length; at++) {
            boolean ends =
                    at == bytes.length || bytes[at] == '\n' || bytes[at] == '\r' || (at > 0 && bytes[at - 1] == '\n');
            if (ends) {
                sha.update(bytes, done, at - done);
                done = at;
                if (HexFormat.of().formatHex(copy(sha).digest()).equals(sha256Hex)) {
                    return OptionalInt.of(at);
                }
            }
        }
        return OptionalInt.empty();
    }

    private static MessageDigest copy(MessageDigest sha) {
        try {
            return (MessageDigest) sha.clone();
        } catch (CloneNotSupportedException e) {
            throw new IllegalStateException("the SHA-256 of the Java platform can be copied", e);
        }
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    /** Returns the digest of one file as it is now. */
    public static FileDigest of(Path file) {
        try (InputStream in = Files.newInputStream(file)) {
            MessageDigest sha = sha256();
            byte[] buffer = new byte[BUFFER_BYTES];
            long sizeBytes = 0;
            for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
                sha.update(buffer, 0, read);
                sizeBytes += read;
            }
            return new FileDigest(file, sizeBytes, HexFormat.of().formatHex(sha.digest()));
        } catch (IOException e) {
            throw LayerFormat.unreadable(file, e);
        }
    }
}
