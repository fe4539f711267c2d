package org.spanroom.input.layer;

import java.io.CharConversionException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.spanroom.finding.InputException;

/** The file formats that layers are read from, known by a file's first bytes and only then by its ending. */
public enum LayerFormat {
    GEOJSON("GeoJSON", "geojson json geojsonl geojsons geojsonseq ndjson jsonl"),
    SHAPEFILE("Shapefile", "shp shx dbf prj cpg cst sbn sbx"),
    GEOPACKAGE("GeoPackage", "gpkg");

    /** Begins each text of a GeoJSON text sequence (RFC 8142). */
    public static final byte RECORD_SEPARATOR = 0x1E;

    private static final int HEAD = 1 << 16;
    private static final byte[] SQLITE = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);
    private static final byte[] SHAPES = {0, 0, 0x27, 0x0A};
    private static final List<byte[]> COMPRESSED = List.of(
            new byte[] {'P', 'K', 3, 4}, new byte[] {0x1F, (byte) 0x8B}, new byte[] {'7', 'z', (byte) 0xBC, (byte) 0xAF
            });

    private final String title;
    private final String endings;

    /** Takes the format's name and, between spaces, the endings of its files. */
    LayerFormat(String title, String endings) {
        this.title = title;
        this.endings = endings;
    }

    public String title() {
        return title;
    }

    private boolean hasEnding(String ending) {
        return List.of(endings.split(" ", -1)).contains(ending);
    }

    /** Returns the format of a file, or ends with an exception that says why there is none. */
    public static LayerFormat of(Path file) {
        byte[] head = head(file);
        if (beginsWith(head, SQLITE)) {
            return GEOPACKAGE;
        }
        if (beginsWith(head, SHAPES)) {
            return SHAPEFILE;
        }
        if (looksLikeJson(head)) {
            return GEOJSON;
        }
        if (COMPRESSED.stream().anyMatch(magic -> beginsWith(head, magic))) {
            throw new InputException(file, "it is compressed", "Unpack it first");
        }
        String ending = ending(file);
        return Arrays.stream(values())
                .filter(format -> format.hasEnding(ending))
                .findFirst()
                .orElseThrow(() -> new InputException(
                        file,
                        "neither its first bytes nor its file extension is that of GeoJSON, Shapefile or GeoPackage",
                        "Convert it to one of them"));
    }

    /** Returns the file's name without its ending. */
    public static String stem(Path file) {
        String name = String.valueOf(file.getFileName());
        int dot = name.lastIndexOf('.');
        return dot > 0 ? name.substring(0, dot) : name;
    }

    /** Returns the file's ending in lower case, without the dot; empty if it has none. */
    public static String ending(Path file) {
        String name = String.valueOf(file.getFileName());
        int dot = name.lastIndexOf('.');
        return dot > 0 ? name.substring(dot + 1).toLowerCase(Locale.ROOT) : "";
    }

    /** Returns the exception for a file that the system does not let us read. */
    public static InputException unreadable(Path file, IOException cause) {
        if (cause instanceof CharConversionException || cause instanceof CharacterCodingException) {
            return new InputException(
                    file, "the text is not in the encoding that it starts with", "Save it as UTF-8", cause);
        }
        String reason =
                cause instanceof AccessDeniedException ? "access is denied" : String.valueOf(cause.getMessage());
        return new InputException(file, "it cannot be read (" + reason + ")", "Check the file and the disk", cause);
    }

    private static byte[] head(Path file) {
        if (!Files.exists(file)) {
            throw new InputException(file, "there is no such file", "Check its name and folder");
        }
        RegularFile.demandIfThere(file);
        try (InputStream in = Files.newInputStream(file)) {
            byte[] head = in.readNBytes(HEAD);
            if (head.length == 0) {
                throw new InputException(file, "it is empty", "Export it again");
            }
            return head;
        } catch (IOException e) {
            throw unreadable(file, e);
        }
    }

    private static boolean beginsWith(byte[] head, byte[] magic) {
        return head.length >= magic.length && Arrays.equals(head, 0, magic.length, magic, 0, magic.length);
    }

    /** A text that begins, after white space and marks, as an object, a list or a record does. */
    private static boolean looksLikeJson(byte[] head) {
        Charset charset = Utf8Stream.charset(head);
        int mark = Utf8Stream.markLength(head, charset);
        String text = new String(head, mark, head.length - mark, charset).stripLeading();
        return !text.isEmpty()
                && (text.charAt(0) == '{' || text.charAt(0) == '[' || text.charAt(0) == RECORD_SEPARATOR);
    }
}
