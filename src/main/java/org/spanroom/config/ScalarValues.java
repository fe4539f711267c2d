package org.spanroom.config;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.regex.Pattern;
import org.spanroom.finding.FileName;
import org.spanroom.model.Unit;
import org.spanroom.model.Worded;

/** Makes simple values of config nodes: texts, numbers in their ranges, switches, words, names of files, units. */
final class ScalarValues {
    private static final Pattern WHOLE = Pattern.compile("[-+]?[0-9]+");

    private ScalarValues() {}

    static Object simple(ConfigNode.Scalar node, Class<?> raw, String key) {
        if (raw == String.class) {
            return node.text();
        }
        if (raw.isEnum() && raw != Unit.class) {
            return constant(node, raw, key);
        }
        return switch (raw.getSimpleName()) {
            case "double", "Double" -> number(node, key);
            case "OptionalDouble" -> OptionalDouble.of(number(node, key));
            case "int", "Integer" -> wholeNumber(node, key);
            case "OptionalInt" -> OptionalInt.of(wholeNumber(node, key));
            case "boolean", "Boolean" -> flag(node, key);
            case "Path" -> path(node, key);
            case "Unit" -> unit(node, key);
            default -> throw new IllegalStateException("no binding for type " + raw.getName() + " of key " + key);
        };
    }

    private static Object constant(ConfigNode.Scalar node, Class<?> type, String key) {
        List<?> constants = Arrays.asList(type.getEnumConstants());
        String wanted = node.text().strip().replace('-', '_').replace(' ', '_');
        return constants.stream()
                .filter(constant -> isNamed(constant, wanted))
                .findFirst()
                .map(Object.class::cast)
                .orElseThrow(() -> new ConfigProblem(
                        node.line(),
                        "'" + node.text() + "' is not a valid value for " + key,
                        NearestWord.remedy(
                                node.text(),
                                constants.stream().map(RecordParts::word).toList())));
    }

    private static boolean isNamed(Object constant, String wanted) {
        return RecordParts.word(constant).equalsIgnoreCase(wanted)
                || (constant instanceof Worded choice && choice.words().contains(wanted.toLowerCase(Locale.ROOT)));
    }

    private static double number(ConfigNode.Scalar node, String key) {
        try {
            double number = Double.parseDouble(node.text().strip());
            if (Double.isFinite(number) && !node.text().matches(".*[dDfF]\\s*")) {
                return inRange(number, node, key);
            }
        } catch (NumberFormatException e) {
            // Falls through to the message below.
        }
        throw new ConfigProblem(
                node.line(), key + " must be a number, is " + node.kind(), DecimalComma.remedy(node.text()));
    }

    private static double inRange(double number, ConfigNode.Scalar node, String key) {
        NumberRange range = NumberRanges.of(key);
        if (!range.contains(number)) {
            throw outside(node, key, range.words(), range);
        }
        // Zero with a sign is zero.
        return number == 0 ? 0 : number;
    }

    private static int wholeNumber(ConfigNode.Scalar node, String key) {
        String text = node.text().strip();
        if (!WHOLE.matcher(text).matches()) {
            throw wrongType(node, key, "a whole number");
        }
        NumberRange range = NumberRanges.of(key);
        double number = Double.parseDouble(text);
        if (!range.contains(number)) {
            throw outside(node, key, range.wholeWords(), range);
        }
        return (int) number;
    }

    /** @param wanted the range in words */
    static ConfigProblem outside(ConfigNode node, String key, String wanted, NumberRange range) {
        return new ConfigProblem(node.line(), key + " must be " + wanted + ", is " + node.kind(), range.remedy());
    }

    static boolean flag(ConfigNode.Scalar node, String key) {
        return switch (node.text().strip().toLowerCase(Locale.ROOT)) {
            case "true", "yes" -> true;
            case "false", "no" -> false;
            default -> throw wrongType(node, key, "true or false");
        };
    }

    static Path path(ConfigNode.Scalar node, String key) {
        FileName.remedy(node.text()).ifPresent(remedy -> {
            throw new ConfigProblem(node.line(), key + ": the name " + node.kind() + " cannot be used: " + remedy, "");
        });
        try {
            if (!node.text().isBlank()) {
                return Path.of(node.text().strip());
            }
        } catch (InvalidPathException e) {
            // Falls through to the message below.
        }
        throw wrongType(node, key, "the name of a file or folder");
    }

    private static Unit unit(ConfigNode.Scalar node, String key) {
        return Unit.findBySymbol(node.text())
                .orElseThrow(() -> new ConfigProblem(
                        node.line(),
                        "'" + node.text() + "' is not a known unit (" + key + ")",
                        NearestWord.remedy(
                                node.text(),
                                Arrays.stream(Unit.values()).map(Unit::symbol).toList())));
    }

    static ConfigProblem wrongType(ConfigNode node, String key, String wanted) {
        return new ConfigProblem(node.line(), key + " must be " + wanted + ", is " + node.kind(), "");
    }
}
