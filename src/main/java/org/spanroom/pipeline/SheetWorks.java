package org.spanroom.pipeline;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.spanroom.config.RunConfig;
import org.spanroom.effort.EffortAssessor;
import org.spanroom.effort.VaultAssessor;
import org.spanroom.model.effort.Effort;
import org.spanroom.model.effort.EffortQuantities;
import org.spanroom.model.effort.SharedShift;
import org.spanroom.model.network.Network;
import org.spanroom.model.network.SectionKey;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.Vault;
import org.spanroom.model.network.VaultUse;
import org.spanroom.model.permit.Zone;
import org.spanroom.model.program.RecordedProgram;
import org.spanroom.model.rank.RecordedStanding;
import org.spanroom.output.sheet.DuctWork;
import org.spanroom.output.sheet.SectionWork;
import org.spanroom.output.table.Text;
import org.spanroom.parallel.ParallelRanges;
import org.spanroom.permit.PermitAssessor;

/** Calculates the sections that sheets are made of, one after another: the ducts of each side by side. */
final class SheetWorks {
    private final List<RecordedStanding> standings;
    private final Optional<RecordedProgram> program;
    private final SheetSurroundings surroundings;
    private final SpanCalculator calculator;
    private final EffortAssessor efforts;
    private final VaultAssessor vaults;
    private final PermitAssessor permits;
    private final int threads;

    SheetWorks(
            RecordedInputs read,
            Network network,
            List<SheetSpans.Found> found,
            List<RecordedStanding> standings,
            Optional<RecordedProgram> program,
            SheetSurroundings surroundings) {
        RunConfig config = read.config();
        this.standings = standings;
        this.program = program;
        this.surroundings = surroundings;
        calculator = new SpanCalculator(
                config,
                read.inputs().zones(),
                network.spans(),
                found.size(),
                LearnedOfRun.chances(config, read.inputs()));
        efforts = SpanAssessor.effortAssessor(config);
        vaults = new VaultAssessor(config.rates(), config.vaultKinds());
        permits = new PermitAssessor(read.inputs().zones(), config.permit(), ConfiguredParts.access(config));
        threads = SpanRun.threads(config);
    }

    /** Returns a section with the spans that are asked for. */
    SectionWork of(int number, List<SheetSpans.Found> spans) {
        var ducts = new DuctWork[spans.size()];
        new ParallelRanges(threads, 1).run(spans.size(), () -> (from, to) -> {
            for (int place = from; place < to; place++) {
                ducts[place] = duct(spans.get(place));
            }
        });
        Span first = ducts[0].explained().span();
        return new SectionWork(
                number,
                SectionKey.of(first).id(),
                Arrays.asList(ducts),
                use(first.from()),
                use(first.to()),
                together(ducts),
                surroundings.of(spans));
    }

    private DuctWork duct(SheetSpans.Found span) {
        return new DuctWork(
                calculator.explain(span.place(), span.number(), standings.get(span.place())),
                program.map(all -> all.planned().get(Text.clean(span.id()))));
    }

    private VaultUse use(Vault vault) {
        List<Zone> zones = permits.zonesAt(vault);
        return new VaultUse(vault, List.of(), 0).with(zones, vaults.assess(vault, zones));
    }

    private Optional<SharedShift> together(DuctWork[] ducts) {
        List<EffortQuantities> quantities = Arrays.stream(ducts)
                .flatMap(duct -> duct.explained().assessment().effort().stream())
                .map(Effort::quantities)
                .toList();
        return quantities.size() < 2 ? Optional.empty() : Optional.of(efforts.inOneShift(quantities));
    }
}
