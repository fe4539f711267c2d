package org.spanroom.cli;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.spanroom.finding.FileName;
import org.spanroom.finding.InputException;
import org.spanroom.finding.UsageException;
import org.spanroom.output.folder.OutputException;
import org.spanroom.pipeline.NotEnoughMemoryException;
import org.spanroom.unpack.TemporaryFolderException;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ScopeType;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;

/** The top of the command line: holds the subcommands, and turns every failure into a line and an exit code. */
@Command(
        name = "spanroom",
        versionProvider = SpanroomCommand.Version.class,
        mixinStandardHelpOptions = true,
        usageHelpWidth = 80,
        synopsisSubcommandLabel = "COMMAND",
        description = {
            "Finds the vault-to-vault duct spans of a city where pulling rigid",
            "innerducts out from around live cables makes room, and ranks them."
        },
        commandListHeading = "%nCommands:%n",
        optionListHeading = "%nOptions:%n",
        exitCodeListHeading = SpanroomCommand.EXIT_HEADING,
        exitCodeList = {
            SpanroomCommand.EXIT_0,
            SpanroomCommand.EXIT_1,
            SpanroomCommand.EXIT_2,
            SpanroomCommand.EXIT_3,
            SpanroomCommand.EXIT_4,
            SpanroomCommand.EXIT_5,
            SpanroomCommand.EXIT_6,
            SpanroomCommand.EXIT_130,
            SpanroomCommand.EXIT_143
        },
        footerHeading = SpanroomCommand.EXAMPLES_HEADING,
        footer = {
            "  spanroom sample --output city",
            "  spanroom rank --config city/spanroom.yaml --output output/city",
            "",
            "'spanroom COMMAND --help' lists the options of a command.",
            "",
            "Results are planning figures. They do not authorize vault entry or pulling:",
            "local codes, the owner's rules and licensed practice govern."
        })
final class SpanroomCommand implements Runnable {
    static final String EXIT_HEADING = "%nExit codes:%n";
    static final String EXAMPLES_HEADING = "%nExamples:%n";
    static final String EXIT_0 = "0:done";
    static final String EXIT_1 = "1:internal error; please report it with its stack trace";
    static final String EXIT_2 = "2:wrong options";
    static final String EXIT_3 = "3:an input file or the config cannot be used";
    static final String EXIT_4 = "4:done, but --strict found findings to fix";
    static final String EXIT_5 = "5:results cannot be written";
    static final String EXIT_6 = "6:not enough memory";
    static final String EXIT_130 = "130:stopped by Ctrl-C; no results were written";
    static final String EXIT_143 = "143:stopped by the system (SIGTERM), the same way";

    @Spec
    @Nullable
    CommandSpec spec;

    private final Console console;

    SpanroomCommand(Console console) {
        this.console = console;
    }

    @Option(
            names = "--quiet",
            scope = ScopeType.INHERIT,
            description = "Print no progress and no summary, only errors and what was asked for.")
    void quiet(boolean quiet) {
        if (quiet) {
            console.beQuiet();
        }
    }

    /** Runs a command line to its end and returns the exit code. */
    static int execute(Console console, String... args) {
        try {
            return console.end(commandLine(console, args).execute(args));
        } catch (OutOfMemoryError | LinkageError | StackOverflowError error) {
            return failure(error, console);
        }
    }

    /** Returns the command line with all commands, ready to execute; nothing of it touches the process's own streams. */
    static CommandLine commandLine(PrintWriter out, PrintWriter err, boolean onTerminal) {
        return commandLine(new Console(out, err, onTerminal));
    }

    /** Ends the program with a message if a thread dies that no other waits for: it may have held a part of the work. */
    static void endWithAnyThread(Console console, Stopping stopping) {
        Thread.setDefaultUncaughtExceptionHandler((thread, failure) -> {
            if (Stopping.isUnderWay()) {
                // The end waits for this very thread where it is one that clears up; to ask for an end again would wait
                // for ever.
                return;
            }
            int code = failure(failure, console);
            stopping.endListening();
            System.exit(code);
        });
    }

    private static CommandLine commandLine(Console console, String... args) {
        var line = new CommandLine(new SpanroomCommand(console));
        Subcommands.add(line, console, args);
        line.setOut(console.out());
        line.setErr(console.err());
        line.registerConverter(Path.class, SpanroomCommand::path);
        // A span's id may begin with an at sign, and is not the name of a file with more options.
        line.setExpandAtFiles(false);
        line.setCaseInsensitiveEnumValuesAllowed(true);
        // Our own check says it better, and for options in groups too.
        line.setOverwrittenOptionsAllowed(true);
        line.setExecutionStrategy(GivenOptions::run);
        line.setParameterExceptionHandler((exception, given) -> {
            // Advice names what the other commands have.
            Subcommands.addOthers(line, console);
            return usageError(exception, given);
        });
        line.setExecutionExceptionHandler((exception, command, parsed) -> failure(exception, console));
        return line;
    }

    @Override
    public void run() {
        throw new ParameterException(
                commandLineOf(spec),
                "a command is missing; the commands are "
                        + String.join(", ", commandLineOf(spec).getSubcommands().keySet()));
    }

    private static Path path(String name) {
        Optional<String> remedy = FileName.remedy(name);
        if (remedy.isPresent()) {
            throw new TypeConversionException("the name '" + name + "' cannot be used: " + remedy.get());
        }
        try {
            return Path.of(name);
        } catch (InvalidPathException notAName) {
            throw new TypeConversionException("'" + name + "' is not the name of a file or folder");
        }
    }

    private static CommandLine commandLineOf(@Nullable CommandSpec spec) {
        if (spec == null) {
            throw new IllegalStateException("picocli has not injected the command's spec");
        }
        return spec.commandLine();
    }

    private static int usageError(ParameterException exception, String[] args) {
        CommandLine command = exception.getCommandLine();
        PrintWriter err = command.getErr();
        err.println(Printable.line("spanroom: " + UsageMessage.of(exception, args)));
        err.println("Try '" + command.getCommandSpec().qualifiedName() + " --help'.");
        return ExitCode.USAGE;
    }

    /** Several threads may fail for one reason, as for lack of memory: the first failure is reported and decides the code. */
    private static int failure(Throwable exception, Console console) {
        return console.failedOnce(() -> Stopping.isUnderWay() ? ExitCode.INTERNAL : report(exception, console));
    }

    private static int report(Throwable exception, Console console) {
        Optional<String> outOfMemory = MemoryShortage.find(exception);
        if (outOfMemory.isPresent()) {
            return outOfMemory(outOfMemory.get(), console);
        }
        console.giveUp();
        PrintWriter err = console.err();
        Optional<String> noRoom = TemporaryFolderException.find(exception);
        if (noRoom.isPresent()) {
            err.println(Printable.line("spanroom: " + noRoom.get()));
            return ExitCode.OUTPUT;
        }
        if (exception instanceof NotEnoughMemoryException) {
            err.println(Printable.line("spanroom: " + exception.getMessage()));
            return ExitCode.MEMORY;
        }
        if (exception instanceof UsageException) {
            err.println(Printable.line("spanroom: " + exception.getMessage()));
            return ExitCode.USAGE;
        }
        if (exception instanceof InputException problem) {
            err.println(Printable.line("spanroom: " + problem.getMessage()));
            problem.reasons().forEach(reason -> err.println(Printable.line(reason)));
            return ExitCode.INPUT;
        }
        if (exception instanceof OutputException) {
            err.println(Printable.line("spanroom: " + exception.getMessage()));
            return ExitCode.OUTPUT;
        }
        var trace = new StringWriter();
        exception.printStackTrace(new PrintWriter(trace));
        err.println("spanroom: internal error, please report it with what follows");
        err.println(Printable.of(trace.toString().replace("\t", "    ")));
        return ExitCode.INTERNAL;
    }

    private static int outOfMemory(String reason, Console console) {
        String stage = console.giveUp();
        console.err()
                .println("spanroom: "
                        + MemoryShortage.message(
                                reason, stage, Runtime.getRuntime().maxMemory()));
        return ExitCode.MEMORY;
    }

    /** Reads the version that the build wrote into the jar. */
    static final class Version implements IVersionProvider {
        @Override
        public String[] getVersion() {
            return new String[] {"spanroom " + text()};
        }

        static String text() {
            String version = Version.class.getPackage().getImplementationVersion();
            return version == null ? "development" : version;
        }
    }
}
