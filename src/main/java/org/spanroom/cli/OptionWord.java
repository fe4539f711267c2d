package org.spanroom.cli;

import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import org.spanroom.config.NearestWord;
import org.spanroom.model.ColumnGroup;
import org.spanroom.model.OutputFormat;
import org.spanroom.model.UnitSystem;
import org.spanroom.output.sheet.SheetPaper;
import org.spanroom.pipeline.ProgramRun;
import org.spanroom.sample.DemoCity;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads the word that an option takes, such as a file format, and lists the words that there are. */
abstract class OptionWord<T extends Enum<T>> implements ITypeConverter<T>, Iterable<String> {
    private final String noun;
    private final String plural;
    private final List<T> values;

    private OptionWord(String noun, String plural, T[] values) {
        this.noun = noun;
        this.plural = plural;
        this.values = List.of(values);
    }

    /** Returns the words for a value, the one that is shown first. */
    abstract List<String> wordsOf(T value);

    @Override
    public T convert(String text) {
        String word = text.strip().toLowerCase(Locale.ROOT);
        return values.stream()
                .filter(value -> wordsOf(value).contains(word))
                .findFirst()
                .orElseThrow(() -> new TypeConversionException("'" + text + "' is not a " + noun + remedy(word)));
    }

    private String remedy(String wrong) {
        List<String> all =
                values.stream().flatMap(value -> wordsOf(value).stream()).toList();
        return NearestWord.find(wrong, all)
                .map(near -> "; did you mean '" + near + "'?")
                .orElseGet(() -> "; the " + plural + " are " + String.join(", ", this));
    }

    @Override
    public Iterator<String> iterator() {
        return values.stream().map(value -> wordsOf(value).get(0)).iterator();
    }

    /** Formats of results. */
    static final class OfResults extends OptionWord<OutputFormat> {
        OfResults() {
            super("format", "formats", OutputFormat.values());
        }

        @Override
        List<String> wordsOf(OutputFormat format) {
            return format.words();
        }
    }

    /** Formats that the demo city is written in. */
    static final class OfSample extends OptionWord<DemoCity.Format> {
        OfSample() {
            super("format", "formats", DemoCity.Format.values());
        }

        @Override
        List<String> wordsOf(DemoCity.Format format) {
            String word = format.name().toLowerCase(Locale.ROOT);
            return Arrays.stream(OutputFormat.values())
                    .map(OutputFormat::words)
                    .filter(words -> words.contains(word))
                    .findFirst()
                    .orElse(List.of(word));
        }
    }

    /** Groups of columns. */
    static final class OfColumns extends OptionWord<ColumnGroup> {
        OfColumns() {
            super("group of columns", "groups", ColumnGroup.values());
        }

        @Override
        List<String> wordsOf(ColumnGroup group) {
            return List.of(group.key());
        }
    }

    /** Systems of units. */
    static final class OfUnits extends OptionWord<UnitSystem> {
        OfUnits() {
            super("system of units", "systems", UnitSystem.values());
        }

        @Override
        List<String> wordsOf(UnitSystem system) {
            return List.of(system.name().toLowerCase(Locale.ROOT));
        }
    }

    /** Sizes of paper. */
    static final class OfPaper extends OptionWord<SheetPaper> {
        OfPaper() {
            super("size of paper", "sizes", SheetPaper.values());
        }

        @Override
        List<String> wordsOf(SheetPaper paper) {
            return List.of(paper.key());
        }
    }

    /** Which connections are served. */
    static final class OfServed extends OptionWord<ConnectCommand.Served> {
        OfServed() {
            super("word for what is served", "words", ConnectCommand.Served.values());
        }

        @Override
        List<String> wordsOf(ConnectCommand.Served served) {
            return List.of(served.name().toLowerCase(Locale.ROOT));
        }
    }

    /** Parts of an annual program that can be left out. */
    static final class OfParts extends OptionWord<ProgramRun.Part> {
        OfParts() {
            super("part of the program", "parts", ProgramRun.Part.values());
        }

        @Override
        List<String> wordsOf(ProgramRun.Part part) {
            return List.of(part.name().toLowerCase(Locale.ROOT));
        }
    }
}
