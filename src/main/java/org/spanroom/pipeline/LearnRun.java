package org.spanroom.pipeline;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.spanroom.config.RunConfig;
import org.spanroom.config.ShippedConfig;
import org.spanroom.finding.UsageException;
import org.spanroom.input.InputData;
import org.spanroom.learn.LearnedContents;
import org.spanroom.learn.LearnedFriction;
import org.spanroom.learn.LearnedRates;
import org.spanroom.learn.TotalsToDate;
import org.spanroom.model.Counted;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.fieldwork.FieldBook;
import org.spanroom.model.fieldwork.FieldEntry;
import org.spanroom.model.learn.LearnResults;
import org.spanroom.model.learn.LearnSettings;
import org.spanroom.model.learn.LeftOut;
import org.spanroom.model.network.SpanList;
import org.spanroom.model.pull.FrictionSets;
import org.spanroom.output.LearnWriter;
import org.spanroom.output.RecordedRun;
import org.spanroom.output.RunCode;

/**
 * What reports from the field say of the numbers of a run: rates, friction, chances of contents, and totals. All of it is proposed;
 * nothing of the run or its config is changed.
 */
public final class LearnRun {
    private final Path run;
    private final Progress progress;

    public LearnRun(Path run, Progress progress) {
        this.run = run;
        this.progress = progress;
    }

    /**
     * What was learned.
     *
     * @param book the field book that was read
     * @param currency of all money
     */
    public record LearnSummary(Path book, LearnResults results, String currency, UnitSystem units, List<Path> files) {
        public LearnSummary {
            files = List.copyOf(files);
        }
    }

    /**
     * Learns and writes.
     *
     * @param named the field book; empty for that of the run's config
     * @param asOf the last day whose entries count; empty for all
     * @throws UsageException if no field book is named, or the output folder is the run's
     * @throws org.spanroom.finding.InputException if the run, one of its inputs or the field book cannot be read
     * @throws org.spanroom.output.folder.OutputException if the results cannot be written
     */
    public LearnSummary run(Optional<Path> named, Optional<LocalDate> asOf, Path folder, boolean overwrite) {
        RecordedRun recorded = RecordedRun.read(run);
        RunConfig config = RecordedInputs.config(recorded, Optional.empty());
        Path book = named.or(() -> BookOfRun.file(run, config)).orElseThrow(LearnRun::noBook);
        ProgramFolder.check(run, folder, List.of(book));
        LearnWriter.check(folder, overwrite);
        FieldBook all = BookOfRun.read(book, config);
        FieldBook counted = asOf.map(all::asOf).orElse(all);
        RecordedInputs read = RecordedInputs.read(run, recorded, progress, Optional.empty());
        LearnResults results = learn(read.config(), read.inputs(), RunCode.of(recorded), counted);
        return new LearnSummary(
                book,
                results,
                read.config().rates().currency(),
                read.config().units(),
                LearnWriter.write(results, folder, overwrite));
    }

    private static UsageException noBook() {
        return new UsageException("the config of the run names no field book; give one with --field-book");
    }

    private LearnResults learn(RunConfig config, InputData inputs, String runCode, FieldBook book) {
        // What was planned was planned before anything was found.
        SpanList spans =
                new RankRun(config, progress).cut(inputs.withoutFieldBook()).spans();
        progress.begin("learn from reports", -1);
        var figures = new ReportedFigures(config, inputs, spans, book);
        FrictionSets friction = ShippedConfig.get().pull().friction();
        LearnedRates.Proposal rates = LearnedRates.of(
                book, runCode, figures, config.rates(), ShippedConfig.get().rates(), LearnSettings.STANDARD);
        LearnedFriction pulls = LearnedFriction.of(figures.pulls(book, friction), friction, LearnSettings.STANDARD);
        LearnedContents contents = LearnedOfRun.contents(config, inputs, book);
        var leftOut = new ArrayList<>(rates.leftOut());
        leftOut.addAll(pulls.leftOut());
        leftOut.sort(Comparator.comparingInt(LeftOut::entry));
        List<FieldEntry> entries = book.spans().stream()
                .flatMap(span -> book.ofSpan(span).stream())
                .toList();
        progress.end(Counted.of(entries.size(), "entry", "entries") + " of "
                + Counted.of(book.spans().size(), "span"));
        return new LearnResults(
                entries.size(),
                book.spans().size(),
                figures.count(),
                contents.opened(),
                entries.stream().map(FieldEntry::day).max(LocalDate::compareTo),
                rates.after(),
                rates.changes(),
                pulls.changes(),
                contents.changes(),
                TotalsToDate.of(book, figures),
                leftOut);
    }
}
