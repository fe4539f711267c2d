package org.spanroom.cli;

import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The numbers in a YAML text, with or without a unit, each at its place, so that one can be replaced and all else stays. */
final class YamlNumbers {
    private static final Pattern NUMBER = Pattern.compile("([-+]?[0-9][0-9.]*(?:[eE][-+]?[0-9]+)?)( [a-z0-9/]+)?");

    private YamlNumbers() {}

    /**
     * A number.
     *
     * @param key the keys that lead to it, without the positions in lists
     * @param at where it begins in the text
     * @param unit the unit behind it, with a blank before it; empty for none
     */
    record Place(String key, int at, String digits, String unit) {
        /** Returns the text with something else in place of the number. */
        String replaced(String text, String other) {
            return text.substring(0, at) + other + text.substring(at + digits.length());
        }
    }

    static List<Place> in(String text) {
        var places = new ArrayList<Place>();
        Deque<String> keys = new ArrayDeque<>();
        try (var tokens = new YAMLFactory().createParser(text)) {
            for (JsonToken token = tokens.nextToken(); token != null; token = tokens.nextToken()) {
                switch (token) {
                    case START_OBJECT, START_ARRAY -> keys.addLast(name(tokens.currentName()));
                    case END_OBJECT, END_ARRAY -> keys.removeLast();
                    case FIELD_NAME -> {
                        // The value says its key.
                    }
                    default -> {
                        int at = (int) tokens.currentTokenLocation().getCharOffset();
                        Matcher number = NUMBER.matcher(tokens.getText());
                        if (number.matches() && text.startsWith(number.group(), at)) {
                            String key = String.join(".", keys) + "." + name(tokens.currentName());
                            String unit = number.group(2) == null ? "" : number.group(2);
                            places.add(new Place(
                                    key.replaceAll("\\.{2,}", ".").replaceAll("^\\.", ""), at, number.group(1), unit));
                        }
                    }
                }
            }
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
        return places;
    }

    private static String name(String key) {
        return key == null ? "" : key;
    }
}
