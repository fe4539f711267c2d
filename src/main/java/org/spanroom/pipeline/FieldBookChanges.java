package org.spanroom.pipeline;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.spanroom.config.ConfigReader;
import org.spanroom.config.RunConfig;
import org.spanroom.finding.InputException;
import org.spanroom.input.fieldbook.FieldBookReader;
import org.spanroom.model.fieldwork.FactUse;
import org.spanroom.model.fieldwork.FieldBook;
import org.spanroom.model.fieldwork.FieldEntry;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.model.network.SpanName;
import org.spanroom.output.RecordedRun;
import org.spanroom.output.RunRecord;

/** The entries of the field book that one of two runs counts and the other does not. */
final class FieldBookChanges {
    private final FieldBook before;
    private final FieldBook after;
    private final Set<FieldEntry> only;
    private final Set<FieldEntry> gone;

    FieldBookChanges(FieldBook before, FieldBook after) {
        this.before = before;
        this.after = after;
        only = standing(after);
        only.removeAll(standing(before));
        gone = standing(before);
        gone.removeAll(standing(after));
    }

    /**
     * Reads what two runs have read of their field books. A book that is gone or was changed is reported and counts as empty in both.
     *
     * @param differences takes a line where a book cannot be read
     */
    static FieldBookChanges of(
            Path first, RecordedRun firstRun, Path second, RecordedRun secondRun, List<String> differences) {
        try {
            return new FieldBookChanges(read(first, firstRun), read(second, secondRun));
        } catch (InputException unreadable) {
            differences.add("the entries of the field books are not compared: " + unreadable.getMessage());
            return new FieldBookChanges(FieldBook.EMPTY, FieldBook.EMPTY);
        }
    }

    private static FieldBook read(Path folder, RecordedRun run) {
        Optional<RunRecord.Input> input =
                run.inputs().stream().filter(RunRecord.Input::isFieldBook).findFirst();
        if (input.isEmpty()) {
            return FieldBook.EMPTY;
        }
        RunConfig config = ConfigReader.readRecorded(run.file());
        Path file = new RecordedFiles(folder, config.output())
                .find(config.inputs())
                .fieldBook()
                .file()
                .orElseThrow();
        FieldBook book = new FieldBookReader(config.plausible())
                .readBeginning(file, input.get().sha256())
                .book();
        return config.inputs().fieldBook().findAsOf().map(book::asOf).orElse(book);
    }

    private static Set<FieldEntry> standing(FieldBook book) {
        Set<FieldEntry> entries = new HashSet<>();
        book.spans().forEach(span -> entries.addAll(book.ofSpan(span)));
        book.vaults().forEach(vault -> entries.addAll(book.ofVault(vault)));
        return entries;
    }

    /** Returns what only the second run has of a span and of the two vaults at its ends, then what only the first has. */
    List<String> of(String spanId) {
        var words = new ArrayList<String>();
        about(after, spanId).filter(only::contains).map(FieldBookChanges::words).forEach(words::add);
        about(before, spanId)
                .filter(gone::contains)
                .filter(entry -> after.all().stream().noneMatch(later -> corrects(later, entry)))
                .map(entry -> "without " + words(entry))
                .forEach(words::add);
        return words;
    }

    private static boolean corrects(FieldEntry later, FieldEntry entry) {
        return later.supersedes().isPresent() && later.supersedes().getAsInt() == entry.number();
    }

    /** Entries that are kept for people only explain no change. */
    private static Stream<FieldEntry> about(FieldBook book, String spanId) {
        Stream<FieldEntry> ofVaults = SpanName.parse(spanId).stream()
                .flatMap(name -> Stream.of(name.vaultA(), name.vaultB()).distinct())
                .flatMap(vault -> book.ofVault(vault).stream());
        return Stream.concat(book.ofSpan(spanId).stream(), ofVaults)
                .filter(entry ->
                        entry.fact().use() != FactUse.RECORD && entry.fact().use() != FactUse.PRODUCTION);
    }

    private static String words(FieldEntry entry) {
        FieldFact fact = entry.fact();
        String name = fact == FieldFact.STATUS ? "" : fact.key().replace('_', ' ') + " ";
        String item = entry.item().isEmpty() ? "" : "(" + entry.item() + ") ";
        String vault = fact.use() == FactUse.VAULT ? "vault " + entry.subject() + ": " : "";
        String unit = entry.value().unit().symbol();
        return vault + name.replaceFirst("^vault ", "") + item
                + entry.value().text().replace('_', ' ')
                + (unit.isEmpty() ? "" : " " + unit)
                + " (entry " + entry.number() + ")";
    }

    /** Returns how many entries only the second run has, by what they change. */
    Map<FactUse, Long> counts() {
        return only.stream()
                .collect(Collectors.groupingBy(
                        entry -> entry.fact().use(), () -> new EnumMap<>(FactUse.class), Collectors.counting()));
    }

    /** Returns how many of them set each state of the work, by its word. */
    Map<String, Long> statuses() {
        return only.stream()
                .filter(entry -> entry.fact() == FieldFact.STATUS)
                .collect(Collectors.groupingBy(entry -> entry.value().text(), TreeMap::new, Collectors.counting()));
    }
}
