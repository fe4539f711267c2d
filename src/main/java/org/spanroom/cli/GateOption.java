package org.spanroom.cli;

import java.util.Set;
import org.spanroom.config.NearestWord;
import org.spanroom.model.rank.GateEffect;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads the name of a gate, as in the column {@code exclusion}. */
final class GateOption implements ITypeConverter<String> {
    @Override
    public String convert(String text) {
        String word = text.strip();
        Set<String> gates = GateEffect.gates();
        if (!gates.contains(word)) {
            throw new TypeConversionException("'" + word + "' is not a gate"
                    + NearestWord.find(word, gates)
                            .map(near -> "; did you mean '" + near + "'?")
                            .orElseGet(() -> "; the gates are " + String.join(", ", gates)));
        }
        return word;
    }
}
