package org.spanroom.cli;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgGroupSpec;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;

/**
 * Writes the manual page of the program from the model of its command line, in roff with the macros of man(7). What {@code --help}
 * says is said here too, so that the two cannot differ.
 */
final class ManPage {
    private final StringBuilder page = new StringBuilder();
    private final CommandSpec top;

    private ManPage(CommandSpec top) {
        this.top = top;
    }

    /** Returns the page of the whole program. */
    static String of(CommandSpec top, String version) {
        var page = new ManPage(top);
        page.head(version);
        page.commands().forEach(page::command);
        page.exitCodes();
        page.environment();
        page.examples();
        page.notes();
        return page.page.toString();
    }

    private List<CommandSpec> commands() {
        return top.subcommands().values().stream()
                .map(CommandLine::getCommandSpec)
                .filter(spec -> !spec.name().equals("help"))
                .toList();
    }

    private void head(String version) {
        macro(".TH " + top.name().toUpperCase(Locale.ROOT) + " 1 \"\" \"" + escaped(top.name() + " " + version)
                + "\" \"User Commands\"");
        macro(".SH NAME");
        text(top.name() + " - rank telecom duct spans by the room that recovering innerducts gives back");
        macro(".SH SYNOPSIS");
        macro("\\fB" + escaped(top.name()) + "\\fR \\fICOMMAND\\fR [\\fIOPTION\\fR]...");
        macro(".SH DESCRIPTION");
        paragraphs(top.usageMessage().description());
        macro(".SH OPTIONS");
        top.options().forEach(this::argument);
        macro(".SH COMMANDS");
    }

    private void command(CommandSpec spec) {
        macro(".SS " + escaped(spec.name()));
        paragraphs(spec.usageMessage().header());
        macro(".PP");
        String positional = spec.positionalParameters().stream()
                .map(parameter ->
                        " \\fI" + escaped(parameter.paramLabel()) + "\\fR" + (parameter.isMultiValue() ? "..." : ""))
                .collect(Collectors.joining());
        macro("\\fB" + escaped(top.name() + " " + spec.name()) + "\\fR [\\fIOPTION\\fR]..." + positional);
        macro(".PP");
        paragraphs(spec.usageMessage().description());
        spec.positionalParameters().forEach(this::argument);
        Stream<OptionSpec> ungrouped = spec.options().stream()
                .filter(option -> option.group() == null)
                .filter(option -> !top.optionsMap().containsKey(option.longestName()));
        ungrouped.forEach(this::argument);
        for (ArgGroupSpec group : spec.argGroups()) {
            macro(".PP");
            text(String.format(Locale.ROOT, group.heading()).strip());
            group.allOptionsNested().forEach(this::argument);
        }
    }

    private void argument(ArgSpec argument) {
        macro(".TP");
        if (argument instanceof OptionSpec option) {
            String names = Stream.of(option.names())
                    .map(name -> "\\fB" + escaped(name) + "\\fR")
                    .collect(Collectors.joining(", "));
            macro(names + (option.arity().max() > 0 ? " \\fI" + escaped(option.paramLabel()) + "\\fR" : ""));
        } else {
            macro("\\fI" + escaped(argument.paramLabel()) + "\\fR");
        }
        // Unlike the texts of a command these come with their percent signs and variables filled in.
        Stream.of(argument.description()).forEach(this::text);
    }

    private void exitCodes() {
        macro(".SH EXIT STATUS");
        Map<Integer, String> codes = new TreeMap<>();
        top.usageMessage().exitCodeList().forEach((code, meaning) -> codes.put(Integer.valueOf(code.strip()), meaning));
        codes.forEach((code, meaning) -> item(String.valueOf(code), meaning));
    }

    private void environment() {
        macro(".SH ENVIRONMENT");
        item(
                "JAVA_HOME",
                "Folder of the Java that runs the program, version 17 or later. Without it, the java on the PATH.");
        item(
                "SPANROOM_JAVA_OPTS",
                "Additional options for Java, such as -Xmx8g. They override what the launcher chooses.");
        item("COLUMNS", "Width of the terminal, for the line of progress.");
    }

    private void item(String name, String meaning) {
        macro(".TP");
        macro("\\fB" + escaped(name) + "\\fR");
        text(meaning);
    }

    private void examples() {
        macro(".SH EXAMPLES");
        for (CommandSpec spec : commands()) {
            macro(".PP");
            macro(".nf");
            Stream.of(spec.usageMessage().footer()).forEach(line -> text(plain(line)));
            macro(".fi");
        }
    }

    private void notes() {
        macro(".SH NOTES");
        String[] footer = top.usageMessage().footer();
        int last = footer.length;
        int first = last;
        while (first > 0 && !footer[first - 1].isEmpty()) {
            first--;
        }
        for (int i = first; i < last; i++) {
            text(plain(footer[i]));
        }
    }

    private void paragraphs(String... lines) {
        for (String line : lines) {
            if (!line.isBlank()) {
                text(plain(line));
            }
        }
    }

    /** Texts of a command are formats: a percent sign stands in them twice. */
    private static String plain(String format) {
        return String.format(Locale.ROOT, format);
    }

    /** Appends a line as it is. */
    private void macro(String line) {
        page.append(line).append('\n');
    }

    /** Appends a line of text, which must not be taken for a request. */
    private void text(String line) {
        String safe = escaped(line);
        page.append(safe.startsWith(".") || safe.startsWith("'") ? "\\&" : "")
                .append(safe)
                .append('\n');
    }

    /** A plain hyphen would be shown as another character, which cannot be copied into a command. */
    private static String escaped(String text) {
        return text.replace("\\", "\\e")
                .replace("-", "\\-")
                .replace("'", "\\(aq")
                .replace("\"", "\\(dq");
    }
}
