package org.spanroom.cli;

import java.io.PrintWriter;
import org.jspecify.annotations.Nullable;
import org.spanroom.finding.InputException;
import org.spanroom.output.OutputException;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The top of the command line: holds the subcommands, and turns every failure into a line and an exit code. */
@Command(
        name = "spanroom",
        versionProvider = SpanroomCommand.Version.class,
        mixinStandardHelpOptions = true,
        usageHelpWidth = 80,
        synopsisSubcommandLabel = "COMMAND",
        description = {
            "Finds the vault-to-vault duct spans of a city where pulling rigid",
            "innerducts out from around live cables would give room back, and ranks them.",
            ""
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
            SpanroomCommand.EXIT_5
        },
        footer = {
            "",
            "Results are planning figures. They clear nobody to enter a vault or to pull:",
            "local codes, the owner's rules and licensed practice decide."
        },
        subcommands = {
            RankCommand.class,
            CheckCommand.class,
            ExplainCommand.class,
            SampleCommand.class,
            BendsAccuracyCommand.class,
            PackingQualityCommand.class,
            CommandLine.HelpCommand.class
        })
final class SpanroomCommand implements Runnable {
    static final String EXIT_HEADING = "%nExit codes:%n";
    static final String EXIT_0 = "0:done";
    static final String EXIT_1 = "1:internal error, with a stack trace: please report it";
    static final String EXIT_2 = "2:wrong options";
    static final String EXIT_3 = "3:an input file or the config cannot be used";
    static final String EXIT_4 = "4:done, but --strict found findings to mend";
    static final String EXIT_5 = "5:results cannot be written";

    @Spec
    @Nullable
    CommandSpec spec;

    /** Returns the command line, ready to execute; nothing of it touches the process's own streams. */
    static CommandLine commandLine(PrintWriter out, PrintWriter err, boolean onTerminal) {
        var console = new Console(out, err, onTerminal);
        var line = new CommandLine(new SpanroomCommand(), new CommandFactory(console));
        line.setOut(out);
        line.setErr(err);
        line.setCaseInsensitiveEnumValuesAllowed(true);
        line.setParameterExceptionHandler(SpanroomCommand::usageError);
        line.setExecutionExceptionHandler((exception, command, parsed) -> failure(exception, err));
        return line;
    }

    @Override
    public void run() {
        throw new ParameterException(
                commandLineOf(spec), "Which command? One of rank, check, explain, sample, bends-accuracy, packing-quality.");
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
        err.println("spanroom: " + exception.getMessage());
        err.println("Try '" + command.getCommandSpec().qualifiedName() + " --help'.");
        return ExitCode.USAGE;
    }

    private static int failure(Exception exception, PrintWriter err) {
        if (exception instanceof InputException) {
            err.println(Printable.of("spanroom: " + exception.getMessage()));
            return ExitCode.INPUT;
        }
        if (exception instanceof OutputException) {
            err.println(Printable.of("spanroom: " + exception.getMessage()));
            return ExitCode.OUTPUT;
        }
        err.println("spanroom: internal error, please report it with what follows");
        exception.printStackTrace(err);
        return ExitCode.INTERNAL;
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
