package org.spanroom.input.shapefile;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.StandardCharsets;
import java.nio.charset.UnsupportedCharsetException;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * The text encoding of a .dbf table: the one that its .cpg or .cst file or its language byte states, or, where nothing is
 * stated, UTF-8 for every text that is valid UTF-8 and Windows-1252 for the others.
 *
 * <p>Language bytes from the table that is common to dBASE and its successors (from memory). 0x57 says "the system's own
 * encoding" and therefore is treated as nothing stated.
 */
final class DbfEncoding {
    private static final Charset WINDOWS_1252 = Charset.forName("windows-1252");

    private static final Map<Integer, String> BY_LANGUAGE_BYTE = languageBytes();

    /** Names that programs write, without spaces, hyphens and underscores, and that Java knows under another spelling. */
    private static final Map<String, String> SPELLINGS = Map.ofEntries(
            Map.entry("LATIN1", "ISO-8859-1"),
            Map.entry("LATIN2", "ISO-8859-2"),
            Map.entry("LATIN3", "ISO-8859-3"),
            Map.entry("LATIN4", "ISO-8859-4"),
            Map.entry("LATIN5", "ISO-8859-9"),
            Map.entry("LATIN7", "ISO-8859-13"),
            Map.entry("LATIN9", "ISO-8859-15"),
            Map.entry("ASCII", "US-ASCII"),
            Map.entry("USASCII", "US-ASCII"),
            Map.entry("SHIFTJIS", "Shift_JIS"),
            Map.entry("SJIS", "Shift_JIS"),
            Map.entry("EUCJP", "EUC-JP"),
            Map.entry("EUCKR", "EUC-KR"),
            Map.entry("EUCCN", "GB2312"),
            Map.entry("BIG5", "Big5"),
            Map.entry("GB2312", "GB2312"),
            Map.entry("GBK", "GBK"),
            Map.entry("GB18030", "GB18030"),
            Map.entry("KOI8R", "KOI8-R"),
            Map.entry("KOI8U", "KOI8-U"),
            Map.entry("MACINTOSH", "x-MacRoman"),
            Map.entry("MACROMAN", "x-MacRoman"));

    private final Optional<Charset> stated;
    private boolean guessed;

    private DbfEncoding(Optional<Charset> stated) {
        this.stated = stated;
    }

    static DbfEncoding unstated() {
        return new DbfEncoding(Optional.empty());
    }

    /** Returns the encoding that the text of a .cpg or .cst file names; empty if it names none that we know. */
    static Optional<DbfEncoding> named(String text) {
        String name =
                text.strip().toUpperCase(Locale.ROOT).replaceFirst("^(ANSI|OEM|CP|IBM|MS|LDID/)[ _-]?(?=\\d)", "");
        if (text.strip().toUpperCase(Locale.ROOT).startsWith("LDID/")) {
            return name.matches("\\d{1,3}") ? languageByte(Integer.parseInt(name)) : Optional.empty();
        }
        if (name.equals("65001") || name.matches("UTF[ _-]?8([ _-]?BOM)?")) {
            return charset("UTF-8");
        }
        if (SPELLINGS.containsKey(name.replaceAll("[ _-]", ""))) {
            return charset(SPELLINGS.get(name.replaceAll("[ _-]", "")));
        }
        if (name.matches("WIN(DOWS)?[ _-]?(125[0-8]|874)")) {
            return charset("windows-" + name.replaceFirst("^WIN(DOWS)?[ _-]?", ""));
        }
        if (name.matches("125[0-8]|874")) {
            return charset("windows-" + name);
        }
        if (name.matches("(ISO)?[ _-]?8859[ _-]?\\d{1,2}")) {
            return charset("ISO-8859-" + name.replaceFirst(".*8859[ _-]?", ""));
        }
        if (name.matches("932|936|949|950")) {
            return charset("MS" + name);
        }
        return name.matches("\\d{3}") ? charset("IBM" + name) : charset(name);
    }

    /** Returns the encoding that a table's language byte states, if it states one. */
    static Optional<DbfEncoding> languageByte(int code) {
        return Optional.ofNullable(BY_LANGUAGE_BYTE.get(code)).flatMap(DbfEncoding::charset);
    }

    /** Returns true if a text that is not plain ASCII had to be read without a stated encoding. */
    boolean guessed() {
        return guessed;
    }

    /** Returns the name of the encoding. */
    String name() {
        return stated.map(Charset::name).orElse("Windows-1252");
    }

    String decode(byte[] bytes, int from, int length) {
        boolean ascii = true;
        for (int i = from; i < from + length && ascii; i++) {
            ascii = bytes[i] >= 0;
        }
        if (stated.isPresent()) {
            return new String(bytes, from, length, stated.get());
        }
        if (ascii) {
            return new String(bytes, from, length, StandardCharsets.ISO_8859_1);
        }
        guessed = true;
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .onMalformedInput(CodingErrorAction.REPORT)
                    .decode(ByteBuffer.wrap(bytes, from, length))
                    .toString();
        } catch (CharacterCodingException e) {
            return new String(bytes, from, length, WINDOWS_1252);
        }
    }

    private static Optional<DbfEncoding> charset(String name) {
        try {
            return Optional.of(new DbfEncoding(Optional.of(Charset.forName(name))));
        } catch (IllegalCharsetNameException | UnsupportedCharsetException e) {
            return Optional.empty();
        }
    }

    private static Map<Integer, String> languageBytes() {
        var table = new TreeMap<Integer, String>();
        put(table, "IBM437", 0x01, 0x09, 0x0B, 0x0D, 0x0F, 0x11, 0x15, 0x18, 0x19, 0x1B);
        put(table, "IBM850", 0x02, 0x0A, 0x0E, 0x10, 0x12, 0x14, 0x16, 0x1A, 0x1D, 0x25, 0x37);
        put(table, "windows-1252", 0x03, 0x58, 0x59);
        put(table, "x-MacRoman", 0x04);
        put(table, "IBM865", 0x08, 0x17, 0x66);
        put(table, "MS932", 0x13, 0x7B);
        put(table, "IBM863", 0x1C, 0x6C);
        put(table, "IBM852", 0x1F, 0x22, 0x23, 0x40, 0x64, 0x87);
        put(table, "IBM860", 0x24);
        put(table, "IBM866", 0x26, 0x65);
        put(table, "MS936", 0x4D, 0x7A);
        put(table, "MS949", 0x4E, 0x79);
        put(table, "MS950", 0x4F, 0x78);
        put(table, "x-windows-874", 0x50, 0x7C);
        put(table, "IBM861", 0x67);
        put(table, "IBM737", 0x6A, 0x86);
        put(table, "IBM857", 0x6B, 0x88);
        put(table, "windows-1255", 0x7D);
        put(table, "windows-1256", 0x7E);
        put(table, "windows-1250", 0xC8);
        put(table, "windows-1251", 0xC9);
        put(table, "windows-1254", 0xCA);
        put(table, "windows-1253", 0xCB);
        put(table, "windows-1257", 0xCC);
        return table;
    }

    private static void put(Map<Integer, String> table, String name, int... codes) {
        for (int code : codes) {
            table.put(code, name);
        }
    }
}
