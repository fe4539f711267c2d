package org.spanroom.input.geojson;

import com.fasterxml.jackson.core.JsonProcessingException;

/** What is wrong with a JSON text, in words that do not speak of the library's settings. */
final class JsonProblem {
    private static final int LONGEST = 200;

    private JsonProblem() {}

    static String words(JsonProcessingException broken) {
        String message = String.valueOf(broken.getOriginalMessage());
        if (message.contains("comment")) {
            return "a comment, which JSON does not have";
        }
        if (message.contains("nesting depth")) {
            return "lists or objects are nested too deeply";
        }
        if (message.startsWith("Unexpected character ('<'")) {
            return "a '<': is it a web page, KML or GML?";
        }
        if (message.startsWith("Unexpected end-of-input")) {
            return "the text ends too early; is the file cut off?";
        }
        if (message.startsWith("Invalid UTF-8")) {
            return "a byte that is not UTF-8; save the file as UTF-8";
        }
        String plain = message.replaceFirst(" \\(not recognized as .*", "")
                .replaceFirst(": (was expecting|expected a valid value) \\(JSON String, .*", "")
                .replaceFirst(", from `StreamReadConstraints[^`]*`", "")
                .replaceFirst("; reported by .*", "");
        return plain.length() <= LONGEST ? plain : plain.substring(0, LONGEST) + "...";
    }
}
