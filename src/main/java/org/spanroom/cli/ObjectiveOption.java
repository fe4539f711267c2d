package org.spanroom.cli;

import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.spanroom.config.NearestWord;
import org.spanroom.model.program.PathObjective;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads what makes one way better than another: one word, or words with weights. */
final class ObjectiveOption implements ITypeConverter<PathObjective>, Iterable<String> {
    private static final List<String> WORDS = List.of("cost", "length", "days", "chance");

    @Override
    public PathObjective convert(String text) {
        Map<String, Double> weights = new LinkedHashMap<>();
        for (String part : text.split(",", -1)) {
            String[] sides = part.split("=", -1);
            String word = sides[0].strip();
            if (!WORDS.contains(word)) {
                String near = NearestWord.find(word, WORDS)
                        .map(found -> "; did you mean '" + found + "'?")
                        .orElse("; the objectives are " + String.join(", ", WORDS));
                throw new TypeConversionException("'" + word + "' is not a known objective" + near);
            }
            if (weights.put(word, sides.length == 1 ? 1.0 : weight(part, sides)) != null) {
                throw new TypeConversionException("'" + word + "' has two weights");
            }
        }
        try {
            return new PathObjective(
                    weights.getOrDefault("cost", 0.0),
                    weights.getOrDefault("length", 0.0),
                    weights.getOrDefault("days", 0.0),
                    weights.getOrDefault("chance", 0.0));
        } catch (IllegalArgumentException unusable) {
            throw new TypeConversionException(unusable.getMessage());
        }
    }

    @Override
    public Iterator<String> iterator() {
        return WORDS.iterator();
    }

    private static double weight(String part, String[] sides) {
        try {
            if (sides.length == 2) {
                return Double.parseDouble(sides[1]);
            }
        } catch (NumberFormatException notANumber) {
            // The line below says it.
        }
        throw new TypeConversionException("'" + part + "' is not a word with a weight, such as days=200");
    }
}
