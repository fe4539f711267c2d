package org.spanroom.pipeline;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.spanroom.config.ProgramConfig;
import org.spanroom.finding.InputException;
import org.spanroom.input.fields.ConnectionsReader;
import org.spanroom.model.Counted;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.program.CalendarRules;
import org.spanroom.model.program.Connection;
import org.spanroom.model.program.CurvePoint;
import org.spanroom.model.program.EligibleSpan;
import org.spanroom.model.program.PriceItem;
import org.spanroom.model.program.ProgramResults;
import org.spanroom.model.program.SpanFacts;
import org.spanroom.output.AnnualWriter;
import org.spanroom.output.ProgramReader;
import org.spanroom.output.ProgramWriter;
import org.spanroom.output.table.LayerOptions;
import org.spanroom.program.IdleYears;
import org.spanroom.program.ProgramAssembler;
import org.spanroom.program.ProgramChanges;
import org.spanroom.program.ProgramInputs;
import org.spanroom.program.ProgramPlanner;
import org.spanroom.program.TakenByRank;
import org.spanroom.program.WhatIfs;
import org.spanroom.program.YearModel;
import org.spanroom.program.calendar.CalendarChecker;

/** The annual program: which spans are recovered in which year, week and by which crew, and what budgets and conditions are worth. */
public final class ProgramRun {
    private final Path run;
    private final Progress progress;

    public ProgramRun(Path run, Progress progress) {
        this.run = run;
        this.progress = progress;
    }

    /** Parts of the results that take time and can be left out. */
    public enum Part {
        CURVE,
        PRICES,
        DRAWS
    }

    /**
     * What is asked for.
     *
     * @param configFile the file of the config; empty for the shipped one
     * @param done names of spans that have been recovered
     * @param failed names of spans whose recovery has failed
     * @param skipped what is left out
     * @param draws in how many draws the program is solved again
     * @param threads how many may work
     */
    public record Request(
            ProgramConfig config,
            Optional<Path> configFile,
            Set<String> done,
            Set<String> failed,
            Set<Part> skipped,
            int draws,
            long seed,
            int threads) {
        public Request {
            done = Set.copyOf(done);
            failed = Set.copyOf(failed);
            skipped = Set.copyOf(skipped);
        }
    }

    /**
     * What was found.
     *
     * @param value what the program is worth
     * @param yearValue what its year plan was worth before the calendar
     * @param boundValue what no year plan can be worth more than
     * @param rounds how often the year plan was repaired until it agreed with the calendar
     * @param notes what else to know, a line each
     */
    public record ProgramSummary(
            Request request,
            ProgramResults results,
            double value,
            double yearValue,
            double boundValue,
            int rounds,
            List<String> notes,
            String currency,
            UnitSystem units,
            List<Path> files) {
        public ProgramSummary {
            notes = List.copyOf(notes);
            files = List.copyOf(files);
        }

        /** Returns the positions that money buys where spans are taken by rank alone. */
        public int positionsByRank(double money) {
            var eligible = new ArrayList<EligibleSpan>();
            results.items().forEach(item -> eligible.add(item.span()));
            results.reserve().forEach(item -> eligible.add(item.span()));
            return TakenByRank.positions(eligible, money);
        }

        /** Returns by how much the program may be worth less than the best year plan, as a share of the bound; empty where there is no finite bound. */
        public OptionalDouble gapRatio() {
            return Double.isFinite(boundValue) && boundValue > 0
                    ? OptionalDouble.of(Math.max(0, boundValue - value) / boundValue)
                    : OptionalDouble.empty();
        }
    }

    /**
     * Makes the program and writes it.
     *
     * @throws InputException if the folder holds no run, an input of the program cannot be read, or its musts cannot be kept
     * @throws org.spanroom.output.folder.OutputException if the results cannot be written
     */
    public ProgramSummary run(Request request, Path folder, boolean overwrite, Instant writtenAt) {
        ProgramConfig config = request.config();
        var inputFiles = new ArrayList<Path>();
        request.configFile().ifPresent(inputFiles::add);
        config.connections().ifPresent(inputFiles::add);
        config.previous().ifPresent(inputFiles::add);
        ProgramFolder.check(run, folder, inputFiles);
        ProgramWriter.check(folder, overwrite, AnnualWriter.MARKER);
        progress.begin("read the run", -1);
        NetworkReader.Recorded recorded = NetworkReader.read(run, Set.of());
        Map<String, SpanFacts> facts = ProgramFacts.read(
                recorded.run(), config, recorded.config().permit().issuedByCrew());
        ProgramFacts.demandSpans(recorded.run(), facts.keySet(), "must", config.must());
        ProgramFacts.demandSpans(recorded.run(), facts.keySet(), "must_not", config.mustNot());
        ProgramFacts.demandSpans(recorded.run(), facts.keySet(), "--done", request.done());
        ProgramFacts.demandSpans(recorded.run(), facts.keySet(), "--failed", request.failed());
        ProgramNames.demandKinds(
                recorded.run(), config, recorded.config().permit().kinds().keySet());
        progress.end(NetworkWords.size(recorded.network()));
        List<Connection> connections = config.connections()
                .map(table -> Vaults.checked(recorded, ConnectionsReader.read(table)))
                .orElse(List.of());
        var setting = new Settings(request, recorded, facts, connections);
        ProgramInputs inputs = setting.inputs(config);
        Musts.demandPossible(recorded.run(), config.must(), inputs, facts);
        return new Work(request, recorded, setting, inputs).run(folder, overwrite, writtenAt);
    }

    /** Makes the inputs of the program, and those of what-ifs, from configs. */
    private record Settings(
            Request request,
            NetworkReader.Recorded recorded,
            Map<String, SpanFacts> facts,
            List<Connection> connections) {
        ProgramInputs inputs(ProgramConfig config) {
            return inputs(config, connections);
        }

        ProgramInputs inputs(ProgramConfig config, List<Connection> table) {
            var setting = new ProgramSetting(config, facts, recorded.network(), request.done(), request.failed());
            return setting.inputs(table, previous(setting.rules()));
        }

        /** Returns the year, in this program, in which an earlier one has each span. */
        private Map<String, Integer> previous(CalendarRules rules) {
            Map<String, Integer> years = new HashMap<>();
            request.config()
                    .previous()
                    .map(ProgramReader::read)
                    .ifPresent(program -> program.planned()
                            .values()
                            .forEach(span ->
                                    rules.findYear(span.firstDay()).ifPresent(year -> years.put(span.spanId(), year))));
            return years;
        }
    }

    /** One run, once its inputs are read. */
    private final class Work {
        private final Request request;
        private final NetworkReader.Recorded recorded;
        private final Settings settings;
        private final ProgramInputs inputs;
        private final YearModel model;
        private final Optional<String> noLibrary = NativeSolver.load();
        private final WhatIfs whatIfs;
        private final YearSolving solver;

        Work(Request request, NetworkReader.Recorded recorded, Settings settings, ProgramInputs inputs) {
            this.request = request;
            this.recorded = recorded;
            this.settings = settings;
            this.inputs = inputs;
            this.model = new YearModel(inputs);
            this.solver = new YearSolving(
                    request.seed(),
                    noLibrary.isEmpty(),
                    request.threads(),
                    new YearWords(
                            inputs, model.problem(), recorded.config().rates().currency()));
            this.whatIfs = new WhatIfs(solver);
        }

        ProgramSummary run(Path folder, boolean overwrite, Instant writtenAt) {
            progress.begin("plan the years", -1);
            var whyNot = new ArrayList<String>();
            ProgramPlanner.Planned planned = new ProgramPlanner(inputs, model.problem(), solver)
                    .plan(whyNot)
                    .orElseThrow(() -> Musts.noPlan(recorded.run(), whyNot));
            List<String> wrong = CalendarChecker.problems(inputs.rules(), planned.calendar());
            if (!wrong.isEmpty()) {
                throw new IllegalStateException("the calendar does not hold: " + wrong.get(0));
            }
            progress.end(Counted.of(planned.calendar().entries().size(), "span"));
            ProgramResults results = results(planned);
            LayerOptions options = recorded.layerOptions("program", writtenAt);
            var summary = new ProgramSummary(
                    request,
                    results,
                    planned.plan().value(),
                    planned.yearValue(),
                    planned.boundValue(),
                    planned.rounds(),
                    notes(planned, results),
                    recorded.config().rates().currency(),
                    recorded.config().units(),
                    AnnualWriter.files(folder, results));
            AnnualWriter.write(
                    inputs.network(),
                    results,
                    VaultFactReader.read(run, vaults(results)),
                    ProgramAccount.of(summary),
                    folder,
                    overwrite,
                    options);
            return summary;
        }

        private static Set<String> vaults(ProgramResults results) {
            return results.items().stream()
                    .map(item -> item.span().facts())
                    .flatMap(facts -> Stream.of(facts.vaultA(), facts.vaultB()))
                    .collect(Collectors.toSet());
        }

        private List<String> notes(ProgramPlanner.Planned planned, ProgramResults results) {
            var notes = new ArrayList<>(planned.shortfalls());
            notes.addAll(IdleYears.words(inputs.rules()));
            if (planned.calendar().entries().isEmpty()) {
                IdleYears.noEligibleSpan(inputs, model.problem()).ifPresent(notes::add);
            }
            ProgramNames.unknownDistricts(request.config(), settings.facts().values())
                    .ifPresent(notes::add);
            results.connections().forEach(row -> Musts.fault(row).ifPresent(notes::add));
            if (!inputs.previous().isEmpty()) {
                notes.add(ProgramChanges.words(inputs.previous(), results.items()));
            }
            noLibrary.ifPresent(why -> notes.add(why + "; plan and bound are our own"));
            return notes;
        }

        private ProgramResults results(ProgramPlanner.Planned planned) {
            Map<Integer, Double> chosen = Map.of();
            if (!request.skipped().contains(Part.DRAWS)) {
                progress.begin("plan with the draws", -1);
                chosen = whatIfs.chosenRatios(inputs, model.problem(), request.draws());
                progress.end(
                        Counted.of(Math.min(request.draws(), inputs.network().samples()), "draw"));
            }
            List<CurvePoint> curve = List.of();
            if (!request.skipped().contains(Part.CURVE)) {
                progress.begin("plan with other budgets", -1);
                curve = whatIfs.curve(inputs);
                progress.end(Counted.of(curve.size(), "budget"));
            }
            Map<String, String> takes = new HashMap<>();
            List<PriceItem> prices = List.of();
            if (!request.skipped().contains(Part.PRICES)) {
                progress.begin("plan with other conditions", -1);
                Optional<WhatIfs.Amounts> base = whatIfs.amounts(inputs);
                if (base.isPresent()) {
                    prices = new ConditionPrices(request.config(), whatIfs, base.get())
                            .list(settings::inputs, settings.connections());
                    takes.putAll(whatIfs.takes(inputs, model.problem(), planned.plan(), base.get()));
                }
                progress.end(String.format(Locale.ROOT, "%,d conditions", prices.size()));
            }
            return new ProgramAssembler(inputs, model.problem(), planned, chosen).results(takes, curve, prices);
        }
    }
}
