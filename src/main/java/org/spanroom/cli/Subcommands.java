package org.spanroom.cli;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import picocli.CommandLine;

/**
 * The commands below the program's name. A command line that begins with a command's name gets that command only: building the models of
 * all of them takes longer than reading the config.
 */
final class Subcommands {
    /** These describe all the others. */
    private static final List<String> ABOUT_ALL = List.of("completion", "help");

    /** By their names, in the order in which the help lists them. */
    private static final Map<String, Function<Console, Object>> ALL = new LinkedHashMap<>();

    static {
        ALL.put("rank", RankCommand::new);
        ALL.put("check", CheckCommand::new);
        ALL.put("explain", ExplainCommand::new);
        ALL.put("compare", CompareCommand::new);
        ALL.put("path", PathCommand::new);
        ALL.put("corridors", CorridorsCommand::new);
        ALL.put("connect", ConnectCommand::new);
        ALL.put("program", ProgramCommand::new);
        ALL.put("report", ReportCommand::new);
        ALL.put("sheets", SheetsCommand::new);
        ALL.put("closeout", CloseoutCommand::new);
        ALL.put("learn", LearnCommand::new);
        ALL.put("sample", SampleCommand::new);
        ALL.put("completion", CompletionCommand::new);
        ALL.put("help", console -> new CommandLine.HelpCommand());
    }

    private Subcommands() {}

    /** Adds the commands that these arguments need. */
    static void add(CommandLine top, Console console, String... args) {
        if (args.length > 0 && ALL.containsKey(args[0]) && !ABOUT_ALL.contains(args[0])) {
            top.addSubcommand(args[0], ALL.get(args[0]).apply(console));
        } else {
            addOthers(top, console);
        }
    }

    /** Adds the commands that are not there yet. */
    static void addOthers(CommandLine top, Console console) {
        ALL.forEach((name, command) -> {
            if (!top.getSubcommands().containsKey(name)) {
                top.addSubcommand(name, command.apply(console));
            }
        });
    }
}
