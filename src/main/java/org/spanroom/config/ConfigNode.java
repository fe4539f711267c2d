package org.spanroom.config;

import java.util.List;
import java.util.Map;

/** A piece of a config file with its line. */
sealed interface ConfigNode {
    int line();

    /** What it is, for messages. */
    String kind();

    /**
     * A single value, as it is written.
     *
     * @param isNull true for a key without a value, and for the word null unquoted
     */
    record Scalar(String text, boolean isNull, int line) implements ConfigNode {
        @Override
        public String kind() {
            return isNull ? "nothing" : "'" + text + "'";
        }
    }

    /** A list. */
    record Sequence(List<ConfigNode> items, int line) implements ConfigNode {
        @Override
        public String kind() {
            return "a list";
        }
    }

    /** Keys and values, in file order. */
    record Mapping(Map<String, Entry> entries, int line) implements ConfigNode {
        @Override
        public String kind() {
            return "a section of keys";
        }
    }

    /** The value of one key. */
    record Entry(ConfigNode value, int line) {}
}
