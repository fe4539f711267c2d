package org.spanroom.input.proposal;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import org.spanroom.config.FieldMap;
import org.spanroom.config.LayerConfig;
import org.spanroom.config.RunConfig;
import org.spanroom.input.layer.LayerSource;
import org.spanroom.input.layer.SourceFeature;
import org.spanroom.model.Term;
import org.spanroom.model.Unit;

/**
 * Proposes what the fields of routes, vaults and zones mean, in this order: routes are looked at first, so that the vaults, read to their
 * end, can be checked against the ids that the lines name.
 */
public final class FieldProposer {
    private final RunConfig config;
    private Optional<LayerSample> routes = Optional.empty();
    private Optional<LayerSample> vaults = Optional.empty();
    private Optional<VaultLinks.Ends> ends = Optional.empty();
    private final List<FieldProposal> others = new ArrayList<>();

    public FieldProposer(RunConfig config) {
        this.config = config;
    }

    /** Reads the first features of a layer of lines. */
    public void readRoutes(LayerSource source, LayerConfig layer) {
        LayerSample sample = LayerSample.read(source, layer, missing(), Optional.empty());
        if (sample.isOfLines()) {
            routes = Optional.of(sample);
        } else {
            vaults = Optional.of(sample);
        }
    }

    /** Reads a layer of vaults: to its end where lines are known that may refer to them. */
    public void readVaults(LayerSource source, LayerConfig layer) {
        Optional<VaultLinks> links = routes.map(lines -> new VaultLinks(lines, source.header(), layer));
        Optional<Consumer<SourceFeature>> taker = links.map(each -> each::add);
        vaults = Optional.of(LayerSample.read(source, layer, missing(), taker));
        ends = links.flatMap(VaultLinks::find);
    }

    /** Reads the first features of a layer of permit zones. */
    public void readZones(LayerSource source, LayerConfig layer) {
        LayerSample sample = LayerSample.read(source, layer, missing(), Optional.empty());
        others.add(proposal(sample, "zones", FieldMap.ZONE_TERMS, List.of(), TermJudge.Measures.UNKNOWN));
    }

    private Set<String> missing() {
        return Set.copyOf(config.values().missing());
    }

    /** Returns a proposal for each layer read: routes, vaults, zones. */
    public List<FieldProposal> proposals() {
        var all = new ArrayList<FieldProposal>();
        TermJudge.Measures measures = TermJudge.Measures.UNKNOWN;
        Optional<Candidate> vaultId = Optional.empty();
        if (routes.isPresent()) {
            var found = new EndProposals(routes.get(), ends);
            vaultId = found.vault();
            FieldProposal lines = proposal(
                    routes.get(),
                    "routes",
                    FieldMap.routeTerms(),
                    ofRoutes(routes.get(), found),
                    TermJudge.Measures.UNKNOWN);
            measures = new TermJudge.Measures(
                    sureUnit(lines, Term.RECORDED_LENGTH), sureUnit(lines, Term.INSIDE_DIAMETER));
            all.add(lines);
        }
        if (vaults.isPresent()) {
            all.add(proposal(
                    vaults.get(),
                    "vaults",
                    FieldMap.VAULT_TERMS,
                    vaultId.stream().toList(),
                    measures));
        }
        all.addAll(others);
        return all;
    }

    /** Of several ids of a line the one counts that is called as the vaults' id that lines refer to, if it is an id here too. */
    private List<Candidate> ofRoutes(LayerSample lines, EndProposals found) {
        var all = new ArrayList<>(found.find());
        var judge = new TermJudge(lines, config.plausible(), config.values(), TermJudge.Measures.UNKNOWN);
        Optional<String> vaultId = found.vault()
                .filter(Candidate::isSure)
                .flatMap(id -> vaults.map(
                        sample -> sample.fields().get(id.place()).name().name()));
        for (int i = 0; i < lines.fields().size(); i++) {
            if (vaultId.equals(Optional.of(lines.fields().get(i).name().name()))) {
                judge.judge(i, Term.ROUTE).filter(Candidate::isSure).ifPresent(all::add);
            }
        }
        return all;
    }

    private static Optional<Unit> sureUnit(FieldProposal lines, Term term) {
        return lines.find(term).filter(FieldProposal.Field::isSure).flatMap(FieldProposal.Field::unit);
    }

    private FieldProposal proposal(
            LayerSample sample, String role, Set<Term> terms, List<Candidate> found, TermJudge.Measures measures) {
        var judge = new TermJudge(sample, config.plausible(), config.values(), measures);
        Map<Integer, Candidate> byPlace = assigned(sample, terms, found, judge);
        var fields = new ArrayList<FieldProposal.Field>();
        for (int i = 0; i < sample.fields().size(); i++) {
            fields.add(field(sample.fields().get(i), Optional.ofNullable(byPlace.get(i)), judge.vocabulary()));
        }
        return new FieldProposal(
                sample.header().file(),
                sample.header().layerName(),
                role,
                sample.features(),
                sample.looked(),
                sample.hasCrs(),
                sample.layer(),
                fields);
    }

    /** Takes what was found by values first, then the best pairs of field and term, each field and each term once. */
    private static Map<Integer, Candidate> assigned(
            LayerSample sample, Set<Term> terms, List<Candidate> found, TermJudge judge) {
        var candidates = new ArrayList<Candidate>();
        for (int i = 0; i < sample.fields().size(); i++) {
            for (Term term : terms) {
                boolean isEnd = term == Term.VAULT_A || term == Term.VAULT_B;
                if (!isEnd) {
                    judge.judge(i, term).ifPresent(candidates::add);
                }
            }
        }
        candidates.sort(Candidate.BEST_FIRST);
        candidates.addAll(0, found);
        var byPlace = new HashMap<Integer, Candidate>();
        var taken = new HashSet<Term>();
        for (Candidate candidate : candidates) {
            if (!byPlace.containsKey(candidate.place()) && taken.add(candidate.term())) {
                byPlace.put(candidate.place(), candidate);
            }
        }
        return byPlace;
    }

    private static FieldProposal.Field field(
            SeenField seen, Optional<Candidate> candidate, ValueVocabulary vocabulary) {
        return new FieldProposal.Field(
                seen.name().name(),
                seen.samples(),
                seen.filled(),
                candidate.map(Candidate::term),
                candidate.flatMap(found -> found.unit().unit()),
                candidate.map(Candidate::reason).orElse(""),
                candidate
                        .map(found -> vocabulary.notUnderstood(found.term(), seen))
                        .orElse(List.of()));
    }
}
