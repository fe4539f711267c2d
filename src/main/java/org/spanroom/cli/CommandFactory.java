package org.spanroom.cli;

import picocli.CommandLine;
import picocli.CommandLine.IFactory;

/** Makes the command objects, giving each the console to write to. */
final class CommandFactory implements IFactory {
    private final Console console;

    CommandFactory(Console console) {
        this.console = console;
    }

    @Override
    public <K> K create(Class<K> type) throws Exception {
        if (type == RankCommand.class) {
            return type.cast(new RankCommand(console));
        }
        if (type == CheckCommand.class) {
            return type.cast(new CheckCommand(console));
        }
        if (type == ExplainCommand.class) {
            return type.cast(new ExplainCommand(console));
        }
        if (type == CompareCommand.class) {
            return type.cast(new CompareCommand(console));
        }
        if (type == PathCommand.class) {
            return type.cast(new PathCommand(console));
        }
        if (type == ConnectCommand.class) {
            return type.cast(new ConnectCommand(console));
        }
        if (type == ProgramCommand.class) {
            return type.cast(new ProgramCommand(console));
        }
        if (type == CorridorsCommand.class) {
            return type.cast(new CorridorsCommand(console));
        }
        if (type == LearnCommand.class) {
            return type.cast(new LearnCommand(console));
        }
        if (type == ReportCommand.class) {
            return type.cast(new ReportCommand(console));
        }
        if (type == CloseoutCommand.class) {
            return type.cast(new CloseoutCommand(console));
        }
        if (type == SheetsCommand.class) {
            return type.cast(new SheetsCommand(console));
        }
        if (type == SampleCommand.class) {
            return type.cast(new SampleCommand(console));
        }
        if (type == CompletionCommand.class) {
            return type.cast(new CompletionCommand(console));
        }
        return CommandLine.defaultFactory().create(type);
    }
}
