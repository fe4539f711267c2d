package org.spanroom.cli;

import java.util.List;
import picocli.CommandLine;

/**
 * The commands below the program's name. A command line that begins with a command's name gets that command only: building the models of
 * all of them takes longer than reading the config.
 */
final class Subcommands {
    private static final List<String> NAMES = List.of(
            "rank",
            "check",
            "explain",
            "compare",
            "path",
            "corridors",
            "connect",
            "program",
            "report",
            "sheets",
            "closeout",
            "learn",
            "sample",
            "completion",
            "help");

    /** These describe all the others. */
    private static final List<String> ABOUT_ALL = List.of("completion", "help");

    private Subcommands() {}

    /** Adds the commands that these arguments need. */
    static void add(CommandLine top, Console console, String... args) {
        boolean onlyOne = args.length > 0 && NAMES.contains(args[0]) && !ABOUT_ALL.contains(args[0]);
        if (onlyOne) {
            top.addSubcommand(args[0], command(args[0], console));
        } else {
            addOthers(top, console);
        }
    }

    /** Adds the commands that are not there yet. */
    static void addOthers(CommandLine top, Console console) {
        NAMES.stream()
                .filter(name -> !top.getSubcommands().containsKey(name))
                .forEach(name -> top.addSubcommand(name, command(name, console)));
    }

    private static Object command(String name, Console console) {
        return switch (name) {
            case "rank" -> new RankCommand(console);
            case "check" -> new CheckCommand(console);
            case "explain" -> new ExplainCommand(console);
            case "compare" -> new CompareCommand(console);
            case "path" -> new PathCommand(console);
            case "corridors" -> new CorridorsCommand(console);
            case "connect" -> new ConnectCommand(console);
            case "program" -> new ProgramCommand(console);
            case "report" -> new ReportCommand(console);
            case "sheets" -> new SheetsCommand(console);
            case "closeout" -> new CloseoutCommand(console);
            case "learn" -> new LearnCommand(console);
            case "sample" -> new SampleCommand(console);
            case "completion" -> new CompletionCommand(console);
            case "help" -> new CommandLine.HelpCommand();
            default -> throw new IllegalArgumentException("no command " + name);
        };
    }
}
