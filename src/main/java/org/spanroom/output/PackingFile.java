package org.spanroom.output;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.spanroom.model.bore.KnownPacking;
import org.spanroom.model.network.BoreShape;

/**
 * A file that carries packings from one run to the next: lines of text, one a set of circles, under a heading with the version of
 * the format and the method of the search, above the SHA-256 of all that. It depends on sizes only, not on any setting.
 */
public final class PackingFile {
    /** What every version of this file begins with. */
    private static final String KIND = "packings ";

    private static final String FORMAT = KIND + "2 method ";
    private static final String DIGEST = "sha256 ";
    private static final int FIELDS = 6;
    private static final int FOUND_PARTS = 3;

    private final Path file;
    private final String heading;

    /**
     * A file of packings.
     *
     * @param method the way of searching; packings found in another way are refused
     */
    public PackingFile(Path file, String method) {
        this.file = file;
        this.heading = FORMAT + method;
    }

    /**
     * Returns the packings; none where there is no such file yet.
     *
     * @throws IOException if the file is damaged, of another version or method, or cannot be read
     */
    public List<KnownPacking> read() throws IOException {
        if (!Files.exists(file)) {
            return List.of();
        }
        String text = Files.readString(file);
        int end = text.lastIndexOf(DIGEST);
        if (end < 0 || !text.substring(end).strip().equals(DIGEST + sha256(text.substring(0, end)))) {
            throw new IOException("it is damaged");
        }
        List<String> lines = text.substring(0, end).lines().toList();
        if (!lines.get(0).equals(heading)) {
            throw new IOException("it was written by another version");
        }
        var packings = new ArrayList<KnownPacking>(lines.size());
        for (String line : lines.subList(1, lines.size())) {
            packings.add(parse(line));
        }
        return packings;
    }

    /**
     * Returns whether the file may be written: there is none, an empty one, or one that a run wrote, whatever its version or state.
     *
     * @throws IOException if it cannot be read
     */
    public static boolean mayReplace(Path file) throws IOException {
        if (!Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
            return true;
        }
        if (!Files.isRegularFile(file)) {
            return false;
        }
        byte[] kind = KIND.getBytes(StandardCharsets.UTF_8);
        try (InputStream in = Files.newInputStream(file)) {
            byte[] beginning = in.readNBytes(kind.length);
            return beginning.length == 0 || Arrays.equals(beginning, kind);
        }
    }

    /**
     * Writes the packings; the file is replaced whole or not at all, and only if it {@link #mayReplace may} be.
     *
     * @throws IOException if that fails
     */
    public void write(List<KnownPacking> packings) throws IOException {
        if (!mayReplace(file)) {
            throw new IOException("it holds something else");
        }
        String body = packings.stream().map(PackingFile::line).collect(Collectors.joining("", heading + "\n", ""));
        Path folder = file.toAbsolutePath().normalize().getParent();
        if (folder == null) {
            throw new IOException("it names no file");
        }
        Files.createDirectories(folder);
        Path whole = Files.createTempFile(folder, ".packings", ".part");
        try {
            Files.writeString(whole, body + DIGEST + sha256(body) + "\n");
            Files.move(whole, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(whole);
        }
    }

    private static String line(KnownPacking packing) {
        String found = packing.found().stream()
                .map(one -> one.move() + ":" + one.leastBoreMm() + ":" + joined(one.centersMm()))
                .collect(Collectors.joining(";"));
        return String.join(
                        " ",
                        packing.shape().name(),
                        String.valueOf(packing.slackMm()),
                        joined(packing.diametersMm()),
                        joined(packing.sleeves()),
                        String.valueOf(packing.moves()),
                        found)
                + "\n";
    }

    private static KnownPacking parse(String line) throws IOException {
        String[] fields = line.split(" ", -1);
        try {
            if (fields.length != FIELDS) {
                throw new IllegalArgumentException(fields.length + " fields");
            }
            return new KnownPacking(
                    BoreShape.valueOf(fields[0]),
                    Double.parseDouble(fields[1]),
                    split(fields[2], Double::valueOf),
                    split(fields[3], Integer::valueOf),
                    Integer.parseInt(fields[4]),
                    Arrays.stream(fields[5].split(";", -1))
                            .map(PackingFile::found)
                            .toList());
        } catch (IllegalArgumentException e) {
            throw new IOException("a line of it is no packing: " + e.getMessage(), e);
        }
    }

    private static KnownPacking.Found found(String text) {
        String[] parts = text.split(":", -1);
        if (parts.length != FOUND_PARTS) {
            throw new IllegalArgumentException(parts.length + " parts");
        }
        return new KnownPacking.Found(
                Integer.parseInt(parts[0]), Double.parseDouble(parts[1]), split(parts[2], Double::valueOf));
    }

    private static String joined(List<?> list) {
        return list.stream().map(String::valueOf).collect(Collectors.joining(","));
    }

    private static <T> List<T> split(String text, Function<String, T> read) {
        return Arrays.stream(text.split(",", -1)).map(read).toList();
    }

    private static String sha256(String text) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(digest);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
