package org.spanroom.cli;

import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import org.spanroom.config.NearestWord;
import org.spanroom.model.OutputFormat;
import org.spanroom.sample.DemoCity;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads the word for a file format, and lists the words that there are. */
abstract class FormatWord<T extends Enum<T>> implements ITypeConverter<T>, Iterable<String> {
    private final List<T> formats;

    private FormatWord(T[] formats) {
        this.formats = List.of(formats);
    }

    /** Returns the words for a format, the one that is shown first. */
    abstract List<String> wordsOf(T format);

    @Override
    public T convert(String text) {
        String word = text.strip().toLowerCase(Locale.ROOT);
        return formats.stream()
                .filter(format -> wordsOf(format).contains(word))
                .findFirst()
                .orElseThrow(() -> new TypeConversionException("'" + text + "' is not a format" + remedy(word)));
    }

    private String remedy(String wrong) {
        List<String> all =
                formats.stream().flatMap(format -> wordsOf(format).stream()).toList();
        return NearestWord.find(wrong, all)
                .map(near -> "; did you mean '" + near + "'?")
                .orElseGet(() -> "; the formats are " + String.join(", ", this));
    }

    @Override
    public Iterator<String> iterator() {
        return formats.stream().map(format -> wordsOf(format).get(0)).iterator();
    }

    /** Formats of results. */
    static final class OfResults extends FormatWord<OutputFormat> {
        OfResults() {
            super(OutputFormat.values());
        }

        @Override
        List<String> wordsOf(OutputFormat format) {
            return format.words();
        }
    }

    /** Formats that the demo city is written in. */
    static final class OfSample extends FormatWord<DemoCity.Format> {
        OfSample() {
            super(DemoCity.Format.values());
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
}
