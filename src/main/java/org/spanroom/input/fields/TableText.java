package org.spanroom.input.fields;

import java.io.BufferedReader;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.StandardCharsets;
import java.nio.charset.UnsupportedCharsetException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.FindingLog;
import org.spanroom.finding.InputException;
import org.spanroom.input.layer.LayerFormat;
import org.spanroom.input.layer.RegularFile;
import org.spanroom.input.layer.Utf8Stream;

/**
 * The text of a table, whatever it is encoded in.
 *
 * <p>A byte order mark counts first, then the encoding that the config names, then UTF-8; a text that is no UTF-8 is treated as
 * windows-1252, with a finding. It is read as a stream: a table may be larger than any text in memory.
 */
public final class TableText {
    private static final long LARGEST_BYTES = 8_000_000_000L;
    private static final int LONGEST_HEADER = 1 << 16;
    private static final String SEPARATORS = ",;\t|";
    private static final String SEPARATOR_LINE = "sep=";
    private static final Charset FALLBACK = Charset.forName("windows-1252");

    private final Source source;
    private final Charset charset;
    private final int markBytes;

    private TableText(Source source, Charset charset, int markBytes) {
        this.source = source;
        this.charset = charset;
        this.markBytes = markBytes;
    }

    /** Opens the bytes of a table, from their beginning each time. */
    private interface Source {
        InputStream open() throws IOException;
    }

    /** Finds out how a table is encoded, where need be by reading all of it. */
    static TableText of(Path file, Optional<String> encoding, FindingLog findings) {
        demandTable(file);
        Source source = () -> Files.newInputStream(file);
        try {
            return stated(file, source, encoding).orElseGet(() -> {
                findings.add(Finding.of(
                        FindingCode.ENCODING_ASSUMED,
                        String.valueOf(file.getFileName()),
                        "",
                        "the table is not UTF-8; read as " + FALLBACK.name()
                                + " (set inputs.contents.encoding to change this)"));
                return new TableText(source, FALLBACK, 0);
            });
        } catch (IOException e) {
            throw LayerFormat.unreadable(file, e);
        }
    }

    /**
     * Finds out how the bytes of a table that were read already are encoded.
     *
     * @param file that they are of, for messages
     */
    public static TableText of(Path file, byte[] bytes) {
        Source source = () -> new ByteArrayInputStream(bytes);
        try {
            return stated(file, source, Optional.empty()).orElseGet(() -> new TableText(source, FALLBACK, 0));
        } catch (IOException e) {
            throw LayerFormat.unreadable(file, e);
        }
    }

    /** Returns the text where the bytes or the config say how they are encoded, or they are UTF-8. */
    private static Optional<TableText> stated(Path file, Source source, Optional<String> encoding) throws IOException {
        byte[] head;
        try (InputStream in = source.open()) {
            head = in.readNBytes(4);
        }
        PackedFile.demandNone(file, head);
        Charset marked = Utf8Stream.charset(head);
        int mark = Utf8Stream.markLength(head, marked);
        if (mark > 0 || !marked.equals(StandardCharsets.UTF_8)) {
            return Optional.of(new TableText(source, marked, mark));
        }
        if (encoding.isPresent()) {
            return Optional.of(new TableText(source, charset(file, encoding.get()), 0));
        }
        return isUtf8(source) ? Optional.of(new TableText(source, StandardCharsets.UTF_8, 0)) : Optional.empty();
    }

    /** Returns whether the text is UTF-8. */
    public boolean isUtf8() {
        return charset.equals(StandardCharsets.UTF_8);
    }

    private static boolean isUtf8(Source source) throws IOException {
        var strict = StandardCharsets.UTF_8
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT);
        try (Reader reader = new InputStreamReader(source.open(), strict)) {
            reader.transferTo(Writer.nullWriter());
            return true;
        } catch (CharacterCodingException e) {
            return false;
        }
    }

    /**
     * Returns the text from its beginning, without a mark; what is not in the encoding comes as U+FFFD. Where the first line states the
     * separator it comes empty, so that the lines keep their numbers.
     */
    public Reader open() throws IOException {
        int skipped = statedSeparator().isPresent() ? SEPARATOR_LINE.length() + 1 : 0;
        Reader reader = openWhole();
        try {
            for (int i = 0; i < skipped; i++) {
                reader.read();
            }
            return reader;
        } catch (IOException e) {
            reader.close();
            throw e;
        }
    }

    private Reader openWhole() throws IOException {
        InputStream in = source.open();
        try {
            in.skipNBytes(markBytes);
            return new BufferedReader(new InputStreamReader(in, charset));
        } catch (IOException e) {
            in.close();
            throw e;
        }
    }

    /** Returns the separator that a line before the header states; spreadsheets read such a line, and some write it. */
    public Optional<Character> statedSeparator() throws IOException {
        var first = new char[SEPARATOR_LINE.length() + 2];
        Arrays.fill(first, '\n');
        try (Reader reader = openWhole()) {
            for (int i = 0; i < first.length; i++) {
                int c = reader.read();
                first[i] = c < 0 ? '\n' : (char) c;
            }
        }
        String text = new String(first);
        char separator = text.charAt(SEPARATOR_LINE.length());
        boolean stated = text.startsWith(SEPARATOR_LINE) && SEPARATORS.indexOf(separator) >= 0;
        return stated && "\r\n".indexOf(text.charAt(text.length() - 1)) >= 0
                ? Optional.of(separator)
                : Optional.empty();
    }

    /** Returns the separator that is stated, or that the first line has most of; a comma where it has none. */
    public char separator() throws IOException {
        Optional<Character> stated = statedSeparator();
        if (stated.isPresent()) {
            return stated.get();
        }
        String header = firstLine();
        char best = ',';
        for (int i = 0; i < SEPARATORS.length(); i++) {
            char candidate = SEPARATORS.charAt(i);
            if (count(header, candidate) > count(header, best)) {
                best = candidate;
            }
        }
        return best;
    }

    /** Returns the first line that is not blank, or as much of it as a header may have. */
    private String firstLine() throws IOException {
        var line = new StringBuilder();
        try (Reader reader = openWhole()) {
            for (int c = reader.read(); c >= 0 && line.length() < LONGEST_HEADER; c = reader.read()) {
                if (c != '\n' && c != '\r') {
                    line.append((char) c);
                } else if (line.toString().isBlank()) {
                    line.setLength(0);
                } else {
                    break;
                }
            }
        }
        return line.toString();
    }

    /** Returns what went wrong while a table was read, without the names of our libraries. */
    public static String words(Exception failure) {
        Throwable cause = failure.getCause();
        if (failure instanceof UncheckedIOException && cause != null) {
            return String.valueOf(cause.getMessage());
        }
        return String.valueOf(failure.getMessage());
    }

    private static long count(String line, char wanted) {
        return line.chars().filter(c -> c == wanted).count();
    }

    private static void demandTable(Path file) {
        try {
            RegularFile.demandIfThere(file);
            if (!Files.exists(file)) {
                throw new InputException(file, "there is no such file", "Check its name and folder.");
            }
            if (Files.size(file) > LARGEST_BYTES) {
                throw new InputException(
                        file,
                        "the table has more than " + LARGEST_BYTES + " bytes",
                        "Remove unused columns, or ducts that are not needed.");
            }
        } catch (IOException e) {
            throw LayerFormat.unreadable(file, e);
        }
    }

    private static Charset charset(Path file, String name) {
        try {
            return Charset.forName(name.strip());
        } catch (IllegalCharsetNameException | UnsupportedCharsetException e) {
            throw new InputException(
                    file, "the encoding '" + name + "' is not known", "Possible: UTF-8, windows-1252, ISO-8859-1.", e);
        }
    }
}
