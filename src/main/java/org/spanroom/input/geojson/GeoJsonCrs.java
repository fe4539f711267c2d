package org.spanroom.input.geojson;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The "crs" member that GeoJSON had before RFC 7946 (geojson.org specification of 2008, section 3). It is honoured where it
 * stands, because a file that has one most likely uses it; without one the system is CRS84 (RFC 7946 section 4).
 */
final class GeoJsonCrs {
    static final String DEFAULT = "OGC:CRS84";

    private static final int TAIL = 1 << 16;
    private static final int LONGEST_NAME = 1000;
    private static final int MOST_CANDIDATES = 50;
    private static final byte[] MEMBER = "\"crs\"".getBytes(StandardCharsets.US_ASCII);
    private static final Pattern EPSG = Pattern.compile("(?i).*\\bepsg\\b.*?(\\d{3,9})");
    private static final Pattern CRS84 = Pattern.compile("(?i).*\\bcrs:?84");

    private GeoJsonCrs() {}

    /**
     * Reads the member's value and leaves the parser at its end. Empty if it is null or a link, which by the old
     * specification means that no system can be assumed.
     */
    static Optional<String> read(JsonParser parser) throws IOException {
        if (parser.currentToken() != JsonToken.START_OBJECT) {
            parser.skipChildren();
            return Optional.empty();
        }
        Optional<String> stated = Optional.empty();
        for (String name = parser.nextFieldName(); name != null; name = parser.nextFieldName()) {
            JsonToken value = parser.nextToken();
            if (name.equals("properties") && value == JsonToken.START_OBJECT) {
                stated = properties(parser);
            } else {
                parser.skipChildren();
            }
        }
        return stated;
    }

    private static Optional<String> properties(JsonParser parser) throws IOException {
        Optional<String> stated = Optional.empty();
        for (String name = parser.nextFieldName(); name != null; name = parser.nextFieldName()) {
            JsonToken value = parser.nextToken();
            if (name.equals("name") && value == JsonToken.VALUE_STRING) {
                stated = Optional.of(definition(parser.getText()));
            } else if (name.equals("code") && value == JsonToken.VALUE_NUMBER_INT) {
                stated = Optional.of("EPSG:" + parser.getText());
            } else {
                parser.skipChildren();
            }
        }
        return stated;
    }

    /** Returns the short form of a name such as "urn:ogc:def:crs:EPSG::27700"; an unknown form stays as it is. */
    static String definition(String name) {
        String stripped = name.strip();
        if (stripped.length() > LONGEST_NAME) {
            return stripped.substring(0, LONGEST_NAME); // the patterns would take the square of its length
        }
        if (CRS84.matcher(stripped).matches()) {
            return DEFAULT;
        }
        Matcher epsg = EPSG.matcher(stripped);
        return epsg.matches() ? "EPSG:" + epsg.group(1) : stripped;
    }

    /**
     * Returns what a "crs" member states that comes after the features, if the file ends in one. What follows the member's name is
     * parsed to the end of the file: only a member of the outermost object leaves exactly one object there. A member further from
     * the end is found by the reading itself, which then must start again.
     */
    static Optional<Optional<String>> atEndOf(Path file) throws IOException {
        byte[] tail = tail(file);
        int candidates = 0;
        for (int at = tail.length - MEMBER.length; at > 0 && candidates < MOST_CANDIDATES; at--) {
            if (Arrays.equals(tail, at, at + MEMBER.length, MEMBER, 0, MEMBER.length)) {
                candidates++;
                byte before = tail[at - 1];
                tail[at - 1] = '{';
                Optional<Optional<String>> found = memberOfWhole(tail, at - 1);
                tail[at - 1] = before;
                if (found.isPresent()) {
                    return found;
                }
            }
        }
        return Optional.empty();
    }

    private static Optional<Optional<String>> memberOfWhole(byte[] tail, int from) {
        try (JsonParser parser = GeoJsonTexts.FACTORY.createParser(tail, from, tail.length - from)) {
            parser.nextToken();
            parser.nextFieldName();
            parser.nextToken();
            Optional<String> stated = read(parser);
            while (parser.nextFieldName() != null) {
                parser.nextToken();
                parser.skipChildren();
            }
            return parser.nextToken() == null ? Optional.of(stated) : Optional.empty();
        } catch (IOException noMemberOfTheOutermostObject) {
            return Optional.empty();
        }
    }

    private static byte[] tail(Path file) throws IOException {
        try (var access = new RandomAccessFile(file.toFile(), "r")) {
            long from = Math.max(0, access.length() - TAIL);
            var bytes = new byte[(int) (access.length() - from)];
            access.seek(from);
            access.readFully(bytes);
            return bytes;
        }
    }
}
