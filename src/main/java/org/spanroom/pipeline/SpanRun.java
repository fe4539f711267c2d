package org.spanroom.pipeline;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import org.spanroom.config.RunConfig;
import org.spanroom.finding.FindingLog;
import org.spanroom.finding.InputException;
import org.spanroom.input.InputData;
import org.spanroom.input.InputReader;
import org.spanroom.model.Counted;
import org.spanroom.model.Term;
import org.spanroom.model.network.Network;
import org.spanroom.network.FieldChanges;
import org.spanroom.network.FieldOverlay;
import org.spanroom.network.RecordedField;
import org.spanroom.network.SpanCutter;
import org.spanroom.output.table.Text;

/** The first half of every run: inputs, and the spans that they fall into. */
final class SpanRun {
    private final RunConfig config;
    private final FindingLog findings;
    private final Progress progress;

    SpanRun(RunConfig config, FindingLog findings, Progress progress) {
        this.config = config;
        this.findings = findings;
        this.progress = progress;
    }

    InputData read() {
        return read((routes, isWaiting) -> {});
    }

    /** Reads, and does something with the routes while it waits for other files. */
    InputData read(InputReader.Meanwhile meanwhile) {
        return read(new InputReader(config, findings, this::report).with(meanwhile));
    }

    /** Reads again what an earlier run has read: of its field book no more than the rows that it had then. */
    InputData readAsOf(String bookSha256) {
        return read(new InputReader(config, findings, this::report).withBookOf(bookSha256));
    }

    private InputData read(InputReader reader) {
        if (config.inputs().vaults().file().isEmpty()) {
            throw new InputException(
                    Path.of("vaults"),
                    "no vaults are given, but a span needs two",
                    "Name a file with --vaults or inputs.vaults.file.");
        }
        progress.begin("read inputs", -1);
        InputData inputs = reader.read();
        UsableInputs.demandFeatures(inputs, findings);
        progress.end(String.format(
                Locale.ROOT,
                "%s, %s%s",
                Counted.of(inputs.routes().size(), "route"),
                Counted.of(inputs.vaults().size(), "vault"),
                inputs.zones().isEmpty() ? "" : ", " + Counted.of(inputs.zones().size(), "zone")));
        return inputs;
    }

    private void report(long features, double doneShare) {
        progress.reach(doneShare);
        progress.advance(features);
    }

    Network cut(InputData inputs) {
        progress.begin("cut at vaults", inputs.routes().size());
        FieldOverlay overlay = overlay(inputs);
        Network asRecorded =
                cutter(inputs).cut(inputs.routes(), overlay.vaults(inputs.vaults()), findings, progress::advance);
        Network network = overlay.spans(asRecorded);
        progress.end(String.format(
                Locale.ROOT,
                "%s, %s; %s not assigned to a span",
                Counted.of(network.spans().size(), "span"),
                config.units().words(network.spanLengthM() / 1000, 1, "km"),
                config.units().words(network.remainderLengthM() / 1000, 1, "km")));
        return network;
    }

    /** The one place where the field book meets the data. */
    private FieldOverlay overlay(InputData inputs) {
        return new FieldOverlay(
                inputs.fieldBook(),
                new FieldChanges(AssumedItems.of(config.assumed())),
                Text::clean,
                findings,
                inputs.source(InputReader.FIELD_BOOK, 0));
    }

    private SpanCutter cutter(InputData inputs) {
        return new SpanCutter(
                config.network(),
                threads(config),
                route -> inputs.source("routes", route),
                vault -> inputs.source("vaults", vault),
                recordedLength());
    }

    private Optional<RecordedField> recordedLength() {
        return config.inputs()
                .routes()
                .fields()
                .find(Term.RECORDED_LENGTH)
                .flatMap(source -> source.unit().map(unit -> new RecordedField(source.field(), unit)));
    }

    /** Returns how many threads to compute on: as configured, or one for each processor. */
    static int threads(RunConfig config) {
        return config.threads() > 0 ? config.threads() : Runtime.getRuntime().availableProcessors();
    }
}
