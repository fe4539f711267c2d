package org.spanroom.input;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.StandardCharsets;
import java.nio.charset.UnsupportedCharsetException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.FindingLog;
import org.spanroom.finding.InputException;

/**
 * The text of a table, whatever it is encoded in.
 *
 * <p>A byte order mark counts first, then the encoding that the config names, then UTF-8; a text that is no UTF-8 is taken as
 * windows-1252, with a finding. The table is held as text while it is read: it is small beside the layers.
 */
final class TableText {
    private static final long LARGEST_BYTES = 1_000_000_000;
    private static final Charset FALLBACK = Charset.forName("windows-1252");

    private TableText() {}

    static String read(Path file, Optional<String> encoding, FindingLog findings) {
        byte[] bytes = bytes(file);
        Charset marked = Utf8Stream.charset(bytes);
        int mark = Utf8Stream.markLength(bytes, marked);
        if (mark > 0 || !marked.equals(StandardCharsets.UTF_8)) {
            return new String(bytes, mark, bytes.length - mark, marked);
        }
        if (encoding.isPresent()) {
            return new String(bytes, charset(file, encoding.get()));
        }
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
        } catch (CharacterCodingException e) {
            findings.add(Finding.of(
                    FindingCode.ENCODING_ASSUMED,
                    String.valueOf(file.getFileName()),
                    "",
                    "the table is not UTF-8; read as " + FALLBACK.name()
                            + " (inputs.contents.encoding says otherwise)"));
            return new String(bytes, FALLBACK);
        }
    }

    /** Returns the separator that the first line has most of; a comma where it has none. */
    static char separator(String text) {
        String header = text.lines().filter(line -> !line.isBlank()).findFirst().orElse("");
        char best = ',';
        for (char candidate : new char[] {';', '\t', '|'}) {
            if (count(header, candidate) > count(header, best)) {
                best = candidate;
            }
        }
        return best;
    }

    private static long count(String line, char wanted) {
        return line.chars().filter(c -> c == wanted).count();
    }

    private static byte[] bytes(Path file) {
        try {
            if (!Files.isRegularFile(file)) {
                throw new InputException(file, "there is no such file", "Check the name.");
            }
            if (Files.size(file) > LARGEST_BYTES) {
                throw new InputException(file, "the table has more than " + LARGEST_BYTES + " bytes", "Split it.");
            }
            return Files.readAllBytes(file);
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
