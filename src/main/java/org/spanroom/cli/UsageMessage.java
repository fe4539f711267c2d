package org.spanroom.cli;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.spanroom.config.NearestWord;
import picocli.CommandLine;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** What is wrong with a command line, in one line that says how to fix it. */
final class UsageMessage {
    private final CommandSpec spec;
    private final List<String> arguments;

    private UsageMessage(CommandSpec spec, List<String> arguments) {
        this.spec = spec;
        this.arguments = arguments;
    }

    /** Returns the line for a command line that could not be parsed, or whose options contradict each other. */
    static String of(ParameterException exception, String... arguments) {
        var message = new UsageMessage(exception.getCommandLine().getCommandSpec(), List.of(arguments));
        if (exception instanceof UnmatchedArgumentException unmatched) {
            return message.unmatched(unmatched.getUnmatched());
        }
        if (exception instanceof MissingParameterException missing) {
            return message.missing(missing);
        }
        String text = String.valueOf(exception.getMessage());
        String unknownCommand = "Unknown subcommand '";
        if (text.startsWith(unknownCommand)) {
            return message.unknownCommand(text.substring(unknownCommand.length(), text.lastIndexOf('\'')));
        }
        return text.substring(0, 1).toLowerCase(Locale.ROOT) + text.substring(1);
    }

    /** The first unknown option counts: what follows it may be its value. */
    private String unmatched(List<String> unmatched) {
        return unmatched.stream()
                .filter(UsageMessage::isOption)
                .findFirst()
                .map(this::unknownOption)
                .orElseGet(() -> isTop() ? unknownCommand(unmatched.get(0)) : unexpected(unmatched.get(0)));
    }

    private String unknownOption(String argument) {
        String name = nameOf(argument);
        String unknown = "unknown option '" + name + "'";
        List<String> elsewhere = commands().values().stream()
                .map(CommandLine::getCommandSpec)
                .filter(other -> !isTop() && other.optionsMap().containsKey(name))
                .map(CommandSpec::name)
                .toList();
        if (!elsewhere.isEmpty()) {
            return unknown + " of '" + spec.name() + "'; it is an option of '" + String.join("', '", elsewhere) + "'";
        }
        List<String> names = longNames(spec).map(option -> option.substring(2)).toList();
        return unknown
                + nearest(name.replaceFirst("^-+", ""), names)
                        .map(near -> "; did you mean '--" + near + "'?")
                        .orElse("");
    }

    /** A similar word, or one that begins in this way, or one of the same letters, since one wrong letter is half of a short word. */
    private static Optional<String> nearest(String wrong, Collection<String> words) {
        return NearestWord.find(wrong, words)
                .or(() -> words.stream()
                        .filter(word -> !wrong.isEmpty() && word.startsWith(wrong.toLowerCase(Locale.ROOT)))
                        .min(Comparator.comparingInt(String::length)))
                .or(() -> words.stream()
                        .filter(word -> letters(word).equals(letters(wrong)))
                        .findFirst());
    }

    private static String letters(String word) {
        return word.chars()
                .sorted()
                .mapToObj(letter -> String.valueOf((char) letter))
                .collect(Collectors.joining());
    }

    private String unknownCommand(String word) {
        Collection<String> names = commands().keySet();
        return "unknown command '" + word + "'"
                + nearest(word, names)
                        .map(near -> "; did you mean '" + near + "'?")
                        .orElse("; the commands are " + String.join(", ", names));
    }

    private String unexpected(String argument) {
        String takes = spec.positionalParameters().isEmpty()
                ? "options only"
                : "options and "
                        + spec.positionalParameters().stream()
                                .map(ArgSpec::paramLabel)
                                .collect(Collectors.joining(" "));
        return "unexpected argument '" + argument + "'; '" + spec.name() + "' takes " + takes + remedy(argument);
    }

    private String remedy(String argument) {
        boolean isConfig = argument.toLowerCase(Locale.ROOT).matches(".*\\.ya?ml");
        if (isConfig && spec.optionsMap().containsKey("--config")) {
            return "; did you mean '--config " + argument + "'?";
        }
        return longNames(spec)
                .filter(name -> name.equals("--" + argument.toLowerCase(Locale.ROOT)))
                .findFirst()
                .map(name -> "; did you mean '" + name + "'?")
                .orElse("");
    }

    private String missing(MissingParameterException exception) {
        String text = String.valueOf(exception.getMessage());
        List<ArgSpec> missing = exception.getMissing();
        if (missing.size() == 1 && missing.get(0) instanceof OptionSpec option) {
            String used = option.longestName() + " " + option.paramLabel();
            int found = text.indexOf(" but found '");
            if (found >= 0) {
                String next = text.substring(found + " but found '".length(), text.lastIndexOf('\''));
                return "option '" + option.longestName() + "' needs a value (" + used + "), but '" + next
                        + "' follows it";
            }
            return text.startsWith("Missing required option")
                    ? misspelled().orElse("option '" + used + "' is missing")
                    : "option '" + option.longestName() + "' needs a value (" + used + ")";
        }
        return misspelled().orElseGet(() -> lacking(missing));
    }

    /** What is missing may be there under a wrong name, which is then the mistake to report. */
    private Optional<String> misspelled() {
        return arguments.stream()
                .takeWhile(argument -> !argument.equals("--"))
                .filter(argument -> argument.startsWith("--"))
                .filter(argument -> !spec.optionsMap().containsKey(nameOf(argument)))
                .findFirst()
                .map(this::unknownOption);
    }

    private static String lacking(List<ArgSpec> missing) {
        return missing.stream()
                        .map(argument -> argument instanceof OptionSpec option
                                ? "option '" + option.longestName() + " " + option.paramLabel() + "'"
                                : argument.paramLabel())
                        .collect(Collectors.joining(" and "))
                + (missing.size() == 1 ? " is missing" : " are missing");
    }

    private Map<String, CommandLine> commands() {
        return spec.root().subcommands();
    }

    private boolean isTop() {
        return spec.parent() == null;
    }

    private static Stream<String> longNames(CommandSpec spec) {
        return spec.options().stream()
                .filter(option -> !option.hidden())
                .map(OptionSpec::longestName)
                .filter(name -> name.startsWith("--"));
    }

    private static boolean isOption(String argument) {
        return argument.length() > 1 && argument.startsWith("-");
    }

    private static String nameOf(String argument) {
        int equals = argument.indexOf('=');
        return equals < 0 ? argument : argument.substring(0, equals);
    }
}
