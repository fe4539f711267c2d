package org.spanroom.output;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.spanroom.finding.FileName;
import org.spanroom.finding.InputException;

/**
 * A part of the record of an earlier run, member by member. Anyone can edit the file, so a member that does not hold what the program writes
 * there ends the command with one line.
 */
final class RecordJson {
    static final String NAME_A_RUN = "Name the folder of a run.";
    static final String RUN_AGAIN = "Make the run again with this version.";

    /** More than any run counts; whole numbers up to here are exact. */
    private static final double MOST = 1e15;

    private static final String TIME = "a time such as 2027-01-15T08:00:00Z";
    private static final int FIRST_YEAR = 1970;
    private static final int LAST_YEAR = 9999;
    private static final Pattern VERSION = Pattern.compile("development|[0-9][0-9A-Za-z.+-]{0,39}");
    private static final ObjectMapper MAPPER =
            new ObjectMapper().enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS);

    private final Path file;
    private final String name;
    private final JsonNode node;

    private RecordJson(Path file, String name, JsonNode node) {
        this.file = file;
        this.name = name;
        this.node = node;
    }

    /**
     * Reads the whole record.
     *
     * @throws InputException if it is not a JSON object
     */
    static RecordJson read(Path file) {
        try {
            JsonNode root = MAPPER.readTree(Files.readString(file));
            if (!root.isObject()) {
                throw new InputException(file, "it is not the record of a run (not a JSON object)", NAME_A_RUN);
            }
            return new RecordJson(file, "", root);
        } catch (JsonProcessingException | CharacterCodingException failure) {
            throw new InputException(file, "it is not the record of a run (not JSON)", NAME_A_RUN, failure);
        } catch (IOException failure) {
            throw new InputException(file, "it cannot be read", NAME_A_RUN, failure);
        }
    }

    boolean has(String member) {
        return node.has(member);
    }

    /** Returns a section; one that is missing has no members. */
    RecordJson section(String member) {
        JsonNode section = node.path(member);
        if (!section.isMissingNode() && !section.isObject()) {
            throw wrong(member, "a JSON object");
        }
        return new RecordJson(file, path(member), section);
    }

    /** Returns a section as JSON. */
    JsonNode json(String member) {
        return section(member).node;
    }

    /** Returns the sections of a list; none where it is missing. */
    List<RecordJson> items(String member) {
        var items = new ArrayList<RecordJson>();
        for (JsonNode item : list(member)) {
            if (!item.isObject()) {
                throw new InputException(
                        file, path(member) + " must hold JSON objects only, and holds " + shown(item), RUN_AGAIN);
            }
            items.add(new RecordJson(file, path(member), item));
        }
        return items;
    }

    /** Returns the sections of a list that must be there. */
    List<RecordJson> demandedItems(String member) {
        if (!has(member)) {
            throw wrong(member, "a list");
        }
        return items(member);
    }

    /** Returns a list of texts; none where it is missing. */
    List<String> texts(String member) {
        var texts = new ArrayList<String>();
        for (JsonNode text : list(member)) {
            if (!text.isTextual()) {
                throw wrong(member, "a list of texts");
            }
            texts.add(text.asText());
        }
        return texts;
    }

    /** Returns a text; "" where it is missing. */
    String text(String member) {
        JsonNode text = node.path(member);
        if (!text.isMissingNode() && !text.isTextual()) {
            throw wrong(member, "a text");
        }
        return text.asText();
    }

    /** Returns a text that must not be blank. */
    String someText(String member) {
        String text = text(member);
        if (text.isBlank()) {
            throw wrong(member, "a text");
        }
        return text;
    }

    /** Returns the version of a program; it must be there. */
    String version(String member) {
        String text = someText(member);
        if (!VERSION.matcher(text).matches()) {
            throw wrong(member, "a version such as 1.0.0");
        }
        return text;
    }

    /** Returns a time of the years 1970 to 9999 as the record has it; it must be there. */
    String time(String member) {
        String text = someText(member);
        try {
            int year = Instant.parse(text).atOffset(ZoneOffset.UTC).getYear();
            if (year >= FIRST_YEAR && year <= LAST_YEAR) {
                return text;
            }
        } catch (DateTimeException notATime) {
            throw wrong(member, TIME);
        }
        throw wrong(member, TIME);
    }

    /** Returns a text that names a file on this system. */
    String fileName(String member) {
        String text = someText(member);
        FileName.remedy(text).ifPresent(remedy -> {
            throw new InputException(file, path(member) + ": the name '" + text + "' cannot be used: " + remedy, "");
        });
        try {
            return Path.of(text).toString();
        } catch (InvalidPathException notAPath) {
            throw wrong(member, "the name of a file");
        }
    }

    /** Returns a whole number, 0 or more; it must be there. */
    long count(String member) {
        return count(member, node.path(member));
    }

    private long count(String member, JsonNode number) {
        if (!number.isIntegralNumber() || number.asDouble() < 0 || number.asDouble() > MOST) {
            throw wrong(member, "a whole number from 0 to 1e15");
        }
        return number.asLong();
    }

    /** Returns a number; it must be there. */
    double amount(String member) {
        JsonNode number = node.path(member);
        if (!number.isNumber() || !(Math.abs(number.asDouble()) <= MOST)) {
            throw wrong(member, "a number of at most 1e15");
        }
        return number.asDouble();
    }

    /** Returns all members as counts; none where the section is missing. */
    SortedMap<String, Long> counts() {
        return members(member -> count(member, node.path(member)), Set.of());
    }

    /** Returns the members as texts, other than those of the given names; none where the section is missing. */
    SortedMap<String, String> textsWithout(Set<String> names) {
        return members(this::text, names);
    }

    private <T> SortedMap<String, T> members(Function<String, T> value, Set<String> without) {
        var members = new TreeMap<String, T>();
        node.properties().stream()
                .map(Map.Entry::getKey)
                .filter(name -> !without.contains(name))
                .forEach(name -> members.put(name, value.apply(name)));
        return members;
    }

    private JsonNode list(String member) {
        JsonNode list = node.path(member);
        if (!list.isMissingNode() && !list.isArray()) {
            throw wrong(member, "a list");
        }
        return list;
    }

    private String path(String member) {
        return name.isEmpty() ? member : name + "." + member;
    }

    private InputException wrong(String member, String wanted) {
        JsonNode found = node.path(member);
        return new InputException(
                file,
                path(member) + " must be " + wanted + ", "
                        + (found.isMissingNode() ? "and is missing" : "is " + shown(found)),
                RUN_AGAIN);
    }

    private static String shown(JsonNode found) {
        return found.isArray() ? "a list" : found.isObject() ? "an object" : found.toString();
    }
}
