package org.spanroom.config;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import com.fasterxml.jackson.dataformat.yaml.YAMLParser;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;
import org.yaml.snakeyaml.LoaderOptions;

/**
 * Reads YAML into nodes that know their lines.
 *
 * <p>Anchors and aliases are refused: a config needs none, and a few lines of them can mean gigabytes. So are deep nesting,
 * further documents and repeated keys.
 */
final class YamlParser {
    private static final int DEEPEST_NESTING = 20;
    private static final String NOT_JSON = "it is not the record of a run (not valid JSON)";
    private static final String MAKE_AGAIN = "Make the run again with this version.";

    private final YAMLParser tokens;

    private YamlParser(YAMLParser tokens) {
        this.tokens = tokens;
    }

    static ConfigNode parse(String text) {
        try {
            return nodes(text);
        } catch (JsonProcessingException e) {
            throw new ConfigProblem(
                    line(e), "this is not valid YAML: " + problem(e.getOriginalMessage()), "Fix the line.");
        } catch (IOException e) {
            throw new ConfigProblem(0, "this is not valid YAML: " + e.getMessage(), "Fix the file.");
        } catch (org.yaml.snakeyaml.error.YAMLException e) {
            throw new ConfigProblem(
                    0, "this is not valid YAML: " + problem(String.valueOf(e.getMessage())), "Fix the file.");
        }
    }

    /** Reads JSON, which is YAML too; its user knows nothing of YAML, and did not write the file. */
    static ConfigNode parseJson(String text) {
        try {
            return nodes(text);
        } catch (JsonProcessingException e) {
            throw new ConfigProblem(line(e), NOT_JSON, MAKE_AGAIN);
        } catch (IOException | org.yaml.snakeyaml.error.YAMLException e) {
            throw new ConfigProblem(0, NOT_JSON, MAKE_AGAIN);
        }
    }

    private static ConfigNode nodes(String text) throws IOException {
        var options = new LoaderOptions();
        options.setNestingDepthLimit(DEEPEST_NESTING);
        var factory = YAMLFactory.builder().loaderOptions(options).build();
        try (YAMLParser tokens = factory.createParser(text)) {
            return new YamlParser(tokens).document();
        }
    }

    private static int line(JsonProcessingException failure) {
        return failure.getLocation() == null ? 0 : failure.getLocation().getLineNr();
    }

    private ConfigNode document() throws IOException {
        JsonToken first = tokens.nextToken();
        if (first == null) {
            return new ConfigNode.Mapping(Map.of(), 1);
        }
        ConfigNode root = node(first, 0);
        if (tokens.nextToken() != null) {
            throw new ConfigProblem(line(), "a second document begins here", "A config is one document.");
        }
        return root;
    }

    private ConfigNode node(JsonToken token, int depth) throws IOException {
        if (tokens.isCurrentAlias() || tokens.getObjectId() != null) {
            throw new ConfigProblem(line(), "anchors and aliases are not supported", "Write the value itself.");
        }
        if (depth > DEEPEST_NESTING) {
            throw new ConfigProblem(line(), "the nesting is deeper than " + DEEPEST_NESTING, "Fix the indentation.");
        }
        return switch (token) {
            case START_OBJECT -> mapping(depth);
            case START_ARRAY -> sequence(depth);
            case VALUE_NULL -> new ConfigNode.Scalar("null", true, line());
            default -> new ConfigNode.Scalar(tokens.getText(), isNothing(), line());
        };
    }

    /** A key without a value ends where it begins; an empty text in quotes does not. */
    private boolean isNothing() throws IOException {
        return tokens.getText().isEmpty()
                && tokens.currentTokenLocation().getCharOffset()
                        == tokens.currentLocation().getCharOffset();
    }

    private ConfigNode.Mapping mapping(int depth) throws IOException {
        int start = line();
        var entries = new LinkedHashMap<String, ConfigNode.Entry>();
        for (JsonToken token = tokens.nextToken(); token != JsonToken.END_OBJECT; token = tokens.nextToken()) {
            String key = tokens.currentName();
            int keyLine = line();
            ConfigNode value = node(tokens.nextToken(), depth + 1);
            if (entries.put(key, new ConfigNode.Entry(value, keyLine)) != null) {
                throw new ConfigProblem(keyLine, "the key '" + key + "' is repeated here", "Remove one.");
            }
        }
        return new ConfigNode.Mapping(entries, start);
    }

    private ConfigNode.Sequence sequence(int depth) throws IOException {
        int start = line();
        var items = new ArrayList<ConfigNode>();
        for (JsonToken token = tokens.nextToken(); token != JsonToken.END_ARRAY; token = tokens.nextToken()) {
            items.add(node(token, depth + 1));
        }
        return new ConfigNode.Sequence(items, start);
    }

    private int line() {
        return tokens.currentTokenLocation().getLineNr();
    }

    /** Returns what was read and what was wrong with it: the lines of the message that show no place in the text. */
    private static String problem(String message) {
        String words = message.lines()
                .filter(text -> !text.isBlank() && !text.startsWith(" "))
                .limit(2)
                .collect(Collectors.joining(": "));
        return words.isEmpty() ? "unreadable" : words;
    }
}
