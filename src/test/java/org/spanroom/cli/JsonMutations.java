package org.spanroom.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.BigIntegerNode;
import com.fasterxml.jackson.databind.node.DoubleNode;
import com.fasterxml.jackson.databind.node.IntNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.NullNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/** Every change of one member of a JSON text that a damaged or foreign file could have. */
final class JsonMutations {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private final Predicate<String> wanted;
    private final List<Mutation> mutations = new ArrayList<>();
    private final JsonNode root;

    /**
     * A changed text.
     *
     * @param what the path of the member and what is there now
     */
    record Mutation(String what, String text) {}

    private JsonMutations(JsonNode root, Predicate<String> wanted) {
        this.root = root;
        this.wanted = wanted;
    }

    /** @param wanted the paths to be changed, such as {@code /inputs/0/file} */
    static List<Mutation> of(String text, Predicate<String> wanted) {
        try {
            JsonNode root = new ObjectMapper().readTree(text);
            var all = new JsonMutations(root, wanted);
            all.within(root, "");
            return all.mutations;
        } catch (com.fasterxml.jackson.core.JsonProcessingException broken) {
            throw new IllegalArgumentException(broken);
        }
    }

    private void within(JsonNode node, String path) {
        if (node instanceof ObjectNode object) {
            for (String name : names(object)) {
                JsonNode member = object.get(name);
                String at = path + "/" + name;
                if (wanted.test(at)) {
                    change(at + " removed", () -> object.remove(name), () -> object.set(name, member));
                    others(member)
                            .forEach(other -> change(
                                    at + " = " + shown(other),
                                    () -> object.set(name, other),
                                    () -> object.set(name, member)));
                }
                within(member, at);
            }
        }
        if (node instanceof ArrayNode array) {
            // Items of a list are read alike.
            for (int i = 0; i < Math.min(1, array.size()); i++) {
                int index = i;
                JsonNode item = array.get(i);
                String at = path + "/" + i;
                if (wanted.test(at)) {
                    others(item)
                            .forEach(other -> change(
                                    at + " = " + shown(other),
                                    () -> array.set(index, other),
                                    () -> array.set(index, item)));
                }
                within(item, at);
            }
        }
    }

    private static String shown(JsonNode node) {
        String text = node.toString();
        return text.length() > 60 ? text.substring(0, 60) + "..." : text;
    }

    private static List<String> names(ObjectNode object) {
        var names = new ArrayList<String>();
        object.fieldNames().forEachRemaining(names::add);
        return names;
    }

    private void change(String what, Runnable change, Runnable back) {
        // The order of members may change; it has no meaning.
        change.run();
        mutations.add(new Mutation(what, root.toString()));
        back.run();
    }

    private static List<JsonNode> others(JsonNode member) {
        var others = new ArrayList<JsonNode>(List.of(NullNode.instance));
        if (member.isTextual()) {
            others.addAll(
                    List.of(TextNode.valueOf("\u0000"), TextNode.valueOf(""), IntNode.valueOf(7), NODES.arrayNode()));
        } else if (member.isNumber()) {
            others.addAll(List.of(
                    IntNode.valueOf(-1),
                    IntNode.valueOf(Integer.MAX_VALUE),
                    DoubleNode.valueOf(1e308),
                    DoubleNode.valueOf(1e-320),
                    BigIntegerNode.valueOf(BigInteger.TEN.pow(30)),
                    TextNode.valueOf("x"),
                    NODES.objectNode()));
        } else if (member.isBoolean()) {
            others.addAll(List.of(TextNode.valueOf("perhaps"), IntNode.valueOf(7), NODES.arrayNode()));
        } else {
            others.addAll(List.of(
                    TextNode.valueOf("x"),
                    IntNode.valueOf(7),
                    NODES.objectNode(),
                    NODES.arrayNode(),
                    NODES.arrayNode().add(7)));
        }
        return others;
    }
}
