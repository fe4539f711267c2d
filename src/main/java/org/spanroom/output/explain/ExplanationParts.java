package org.spanroom.output.explain;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.function.Function;

/** Collects parts of an explanation in their order. Each fact has a key for programs and a label for people. */
final class ExplanationParts {
    private final List<ExplanationPart> parts = new ArrayList<>();

    ExplanationParts add(ExplanationPart part) {
        parts.add(part);
        return this;
    }

    ExplanationParts value(String key, String label, ExplanationValue value) {
        return add(new ExplanationItem(key, label, value, ""));
    }

    ExplanationParts number(String key, String label, double value, int decimals, String unit) {
        return value(key, label, ExplanationValue.number(value, decimals, unit));
    }

    ExplanationParts whole(String key, String label, int count) {
        return number(key, label, count, 0, "");
    }

    ExplanationParts whole(String key, String label, OptionalInt count) {
        return number(key, label, count.isPresent() ? count.getAsInt() : Double.NaN, 0, "");
    }

    ExplanationParts flag(String key, String label, boolean flag) {
        return value(key, label, new ExplanationValue.Flag(flag));
    }

    /** Adds a text from the data, or a sentence. */
    ExplanationParts text(String key, String label, String text) {
        return value(key, label, ExplanationValue.text(text));
    }

    /** Adds a word of a fixed list, by its key. */
    ExplanationParts word(String key, String label, String word) {
        return value(key, label, ExplanationValue.word(word));
    }

    ExplanationParts word(String key, String label, Enum<?> word) {
        return word(key, label, word.name().toLowerCase(Locale.ROOT));
    }

    ExplanationParts texts(String key, String label, List<String> texts) {
        return several(key, label, texts, ExplanationValue::text);
    }

    /** Adds words of fixed lists, one for each thing, by their keys. */
    <T> ExplanationParts words(String key, String label, Collection<T> things, Function<T, String> word) {
        return several(key, label, things, thing -> ExplanationValue.word(word.apply(thing)));
    }

    private <T> ExplanationParts several(
            String key, String label, Collection<T> things, Function<T, ExplanationValue> value) {
        return value(
                key,
                label,
                new ExplanationValue.Several(things.stream().map(value).toList()));
    }

    /** Says what the fact added last rests on. */
    ExplanationParts because(String evidence) {
        var item = (ExplanationItem) parts.remove(parts.size() - 1);
        return add(new ExplanationItem(item.key(), item.label(), item.value(), evidence));
    }

    ExplanationParts line(String key, String label, Consumer<ExplanationParts> content) {
        return add(new ExplanationLine(key, label, of(content)));
    }

    /** Adds a table of one row for each thing. */
    <T> ExplanationParts table(
            String key, String label, Collection<? extends T> things, BiConsumer<ExplanationParts, T> row) {
        return add(new ExplanationTable(key, label, rows(things, row), false));
    }

    /** Adds a table whose rows people read together where their first fact is the same. */
    <T> ExplanationParts groups(String key, Collection<? extends T> things, BiConsumer<ExplanationParts, T> row) {
        return add(new ExplanationTable(key, "", rows(things, row), true));
    }

    private static <T> List<List<ExplanationPart>> rows(
            Collection<? extends T> things, BiConsumer<ExplanationParts, T> row) {
        List<List<ExplanationPart>> rows = new ArrayList<>();
        things.forEach(thing -> rows.add(of(parts -> row.accept(parts, thing))));
        return rows;
    }

    <T> ExplanationParts sections(String key, Collection<T> things, Function<T, ExplanationSection> section) {
        return add(new ExplanationSections(key, things.stream().map(section).toList()));
    }

    private static List<ExplanationPart> of(Consumer<ExplanationParts> content) {
        var collected = new ExplanationParts();
        content.accept(collected);
        return collected.parts;
    }

    /** Returns a section of all that was added. */
    ExplanationSection section(String key, String title) {
        return new ExplanationSection(key, title, parts);
    }
}
