package org.spanroom.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import picocli.CommandLine;

/** Writes the files of a distribution that go with the program: the manual page and the completion script. The build runs it. */
public final class DistributionFiles {
    private DistributionFiles() {}

    /**
     * Writes {@code man/man1/spanroom.1} and {@code completion/spanroom} into a folder.
     *
     * @param args the folder, and the version of the program
     */
    public static void main(String[] args) throws IOException {
        if (args.length != 2) {
            throw new IllegalArgumentException("two arguments are needed: a folder and the version");
        }
        var nowhere = new PrintWriter(Writer.nullWriter());
        CommandLine line = SpanroomCommand.commandLine(nowhere, nowhere, false);
        write(Path.of(args[0], "man", "man1", "spanroom.1"), ManPage.of(line.getCommandSpec(), args[1]));
        write(Path.of(args[0], "completion", "spanroom"), CompletionCommand.script(line.getCommandSpec()));
    }

    private static void write(Path file, String text) throws IOException {
        Path folder = file.getParent();
        if (folder != null) {
            Files.createDirectories(folder);
        }
        Files.writeString(file, text);
    }
}
