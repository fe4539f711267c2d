package org.spanroom.pipeline;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.spanroom.config.ConfigReader;
import org.spanroom.config.RunConfig;
import org.spanroom.model.Line;
import org.spanroom.model.effort.MoneyRange;
import org.spanroom.model.network.SectionKey;
import org.spanroom.model.program.Costs;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.model.program.DuctOffer;
import org.spanroom.model.program.NewDuctOffer;
import org.spanroom.model.program.SectionOffer;
import org.spanroom.model.program.VaultPlace;
import org.spanroom.model.rank.GateEffect;
import org.spanroom.model.rank.SpanFigures;
import org.spanroom.output.AboutFile;
import org.spanroom.output.RecordedRun;
import org.spanroom.output.RecordedSpans;
import org.spanroom.output.columns.SpanColumns;
import org.spanroom.output.table.LayerOptions;

/**
 * Puts the network of a run together from its spans: what each section offers to cables.
 *
 * <p>A gate closes recovery, not use: an excluded span gives its positions of today, unless nothing can be placed in it at all
 * ({@link GateEffect}). Embargoes are days here, not exclusions.
 */
final class NetworkReader {
    private final RecordedRun run;
    private final RunConfig config;
    private final RecordedSpans spans;
    private final RecordedLines lines;
    private final SpanCells cells;
    private final RecordedOffers offers;
    private final Map<String, Integer> vaults = new HashMap<>();
    private final List<VaultPlace> places = new ArrayList<>();
    private final Map<SectionKey, Group> bySection = new TreeMap<>();
    private final MoneySpread recovery = new MoneySpread();
    private final MoneySpread build = new MoneySpread();

    private NetworkReader(Path folder, Set<String> ignoredGates) {
        this.run = RecordedRun.read(folder);
        this.config = ConfigReader.readRecorded(run.file());
        this.spans = RecordedScores.open(run);
        this.lines = RecordedLines.of(folder, spans);
        this.cells = new SpanCells(spans.columns());
        this.offers = new RecordedOffers(cells, ignoredGates);
    }

    /** What was read. */
    record Recorded(DuctNetwork network, RecordedRun run, RunConfig config) {
        /** Returns what layers are written with that a command makes of the run. */
        LayerOptions layerOptions(String command, Instant writtenAt) {
            return new LayerOptions(run.outputSystem(), writtenAt)
                    .about(AboutFile.ofRuns(command, writtenAt, ConfigReader.asMap(config), List.of(run)));
        }
    }

    /** The spans of a section, and the line of the best of them. */
    private static final class Group {
        private final int from;
        private final int to;
        private final List<RecordedOffers.Offer> spans = new ArrayList<>();
        private Optional<Line> line = Optional.empty();

        Group(int from, int to) {
            this.from = from;
            this.to = to;
        }

        void add(RecordedOffers.Offer span, Optional<Line> lonLat, boolean turned) {
            // Rows come in the order of the ranking, so that the first is the best.
            if (spans.isEmpty()) {
                line = lonLat.map(drawn -> turned ? drawn.reversed() : drawn);
            }
            spans.add(span);
        }
    }

    /**
     * Reads a run.
     *
     * @param ignoredGates keys of gates that are treated as open, for what-ifs
     * @throws org.spanroom.finding.InputException if the folder holds no run that can be read
     */
    static Recorded read(Path folder, Set<String> ignoredGates) {
        return new NetworkReader(folder, ignoredGates).read();
    }

    private Recorded read() {
        spans.read(RecordedScores.types(), true, this::add);
        var sections = new ArrayList<SectionOffer>();
        bySection.forEach((key, group) -> sections.add(section(key, group)));
        int samples = config.uncertainty().simulated()
                ? Math.min(SpanFigures.MOST_DRAWS, config.uncertainty().samples())
                : 0;
        LocalDate onDate = config.permit().findOnDate().orElseGet(LocalDate::now);
        return new Recorded(new DuctNetwork(places, sections, samples, onDate), run, config);
    }

    private void add(RecordedSpans.Row row) {
        String a = cells.text(row, SpanColumns.VAULT_A.name());
        String b = cells.text(row, SpanColumns.VAULT_B.name());
        Optional<Line> line = lines.of(cells.text(row, "span_id"), row);
        int from = vault(a, line, false);
        int to = vault(b, line, true);
        if (a.equals(b)) {
            return;
        }
        var key =
                SectionKey.of(cells.text(row, SpanColumns.BANK.name()), cells.text(row, SpanColumns.DUCT.name()), a, b);
        bySection
                .computeIfAbsent(key, none -> turned(key, a) ? new Group(to, from) : new Group(from, to))
                .add(offers.read(row), line, turned(key, a));
        MoneyRange recovered = cells.range(row, "recovery");
        if (!Double.isNaN(recovered.lowMoney())) {
            recovery.add(cells.number(row, "recovery_money"), recovered);
            build.add(cells.number(row, "build_money"), cells.range(row, "build"));
        }
    }

    private static boolean turned(SectionKey key, String vaultA) {
        return !vaultA.equals(key.vaultId());
    }

    /** Returns the number of a vault, which has its place from the first line that ends there. */
    private int vault(String id, Optional<Line> line, boolean atEnd) {
        int number = vaults.computeIfAbsent(id, none -> vaults.size());
        if (number == places.size()) {
            places.add(new VaultPlace(id, Double.NaN, Double.NaN));
        }
        if (line.isPresent() && Double.isNaN(places.get(number).lonDeg())) {
            int vertex = atEnd ? line.get().size() - 1 : 0;
            places.set(
                    number, new VaultPlace(id, line.get().x(vertex), line.get().y(vertex)));
        }
        return number;
    }

    private SectionOffer section(SectionKey key, Group group) {
        return new SectionOffer(
                key.id(),
                key.hasBank() ? key.bankId() : key.ductId(),
                group.from,
                group.to,
                group.spans.stream()
                        .mapToDouble(RecordedOffers.Offer::lengthM)
                        .min()
                        .orElse(0),
                group.spans.stream()
                        .map(this::duct)
                        .sorted(Comparator.comparing(DuctOffer::spanId))
                        .toList(),
                newDuct(group.spans),
                group.line);
    }

    private DuctOffer duct(RecordedOffers.Offer span) {
        boolean recoverable = !span.closed() && span.after() > span.now() && !Double.isNaN(span.recoveryMoney());
        return new DuctOffer(
                span.spanId(),
                span.ductId(),
                span.now(),
                recoverable ? span.after() : span.now(),
                span.rank(),
                span.closedBy(),
                recoverable
                        ? Optional.of(new DuctOffer.Recovery(
                                new Costs(span.recoveryMoney(), range(span)),
                                span.siteHours(),
                                span.leadDays(),
                                span.notBefore(),
                                span.draws()))
                        : Optional.empty());
    }

    /** A span without a rank has no range of its own: the run's totals give it. */
    private MoneyRange range(RecordedOffers.Offer span) {
        return Double.isNaN(span.recovery().lowMoney()) ? recovery.around(span.recoveryMoney()) : span.recovery();
    }

    /** The spans of a section are on one path; where they differ, e.g. in their zones, the cheapest counts. */
    private NewDuctOffer newDuct(List<RecordedOffers.Offer> rows) {
        return rows.stream()
                .filter(span -> span.newPositions() >= 1 && !Double.isNaN(span.newMoney()))
                .min(Comparator.comparingDouble(RecordedOffers.Offer::newMoney))
                .map(span -> new NewDuctOffer(
                        span.newPositions(), built(span.newMoney()), built(span.furtherMoney()), span.newLeadDays()))
                .orElse(new NewDuctOffer(0, Costs.NONE, Costs.NONE, 0));
    }

    private Costs built(double money) {
        return new Costs(money, build.around(money));
    }
}
