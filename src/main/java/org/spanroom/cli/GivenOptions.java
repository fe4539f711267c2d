package org.spanroom.cli;

import java.util.HashSet;
import java.util.Iterator;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;

/**
 * Checks what the parser lets pass: an option with one value that is given twice, of which only the last would count, and an empty
 * value, which most often comes from a shell variable that is not set.
 */
final class GivenOptions {
    private final Set<String> seen = new HashSet<>();
    private CommandLine command;

    private GivenOptions(CommandLine command) {
        this.command = command;
    }

    /**
     * Checks a command line that was parsed.
     *
     * @throws ParameterException if it gives an option twice or leaves a value empty
     */
    static void check(ParseResult parsed) {
        var given = new GivenOptions(parsed.commandSpec().commandLine());
        Iterator<String> arguments = parsed.originalArgs().iterator();
        // What follows two dashes is no option, whatever it looks like.
        for (String next = ""; arguments.hasNext() && !next.equals("--"); ) {
            next = arguments.next();
            given.argument(next, arguments);
        }
    }

    private void argument(String argument, Iterator<String> next) {
        CommandSpec spec = command.getCommandSpec();
        CommandLine below = spec.subcommands().get(argument);
        if (below != null) {
            command = below;
            return;
        }
        int equals = argument.startsWith("--") ? argument.indexOf('=') : -1;
        @Nullable OptionSpec option = spec.optionsMap().get(equals < 0 ? argument : argument.substring(0, equals));
        if (option == null) {
            if (argument.isBlank()) {
                throw new ParameterException(command, "an argument is empty");
            }
            return;
        }
        if (option.arity().max() > 0) {
            String value = equals >= 0 ? argument.substring(equals + 1) : next.hasNext() ? next.next() : "";
            value(option, value);
        }
    }

    private void value(OptionSpec option, String value) {
        if (!option.isMultiValue() && !seen.add(option.longestName())) {
            throw new ParameterException(
                    command, "option '" + option.longestName() + "' is given twice; it takes one value");
        }
        if (value.isBlank()) {
            throw new ParameterException(
                    command,
                    "option '" + option.longestName() + "' has an empty value; it needs a " + option.paramLabel());
        }
    }

    /** Runs a command line that was parsed, or shows the help that it asks for. */
    static int run(ParseResult parsed) {
        Integer help = CommandLine.executeHelpRequest(parsed);
        if (help != null) {
            return help;
        }
        check(parsed);
        return new CommandLine.RunLast().execute(parsed);
    }
}
