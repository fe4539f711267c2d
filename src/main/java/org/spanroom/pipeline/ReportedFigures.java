package org.spanroom.pipeline;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import org.spanroom.config.RunConfig;
import org.spanroom.input.InputData;
import org.spanroom.learn.MeasuredPull;
import org.spanroom.learn.PlannedFigures;
import org.spanroom.learn.PlannedWork;
import org.spanroom.learn.PullLaw;
import org.spanroom.model.effort.Effort;
import org.spanroom.model.effort.EffortStep;
import org.spanroom.model.effort.RateKey;
import org.spanroom.model.fieldwork.FieldBook;
import org.spanroom.model.fieldwork.FieldEntry;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.model.network.SectionKey;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.network.SpanList;
import org.spanroom.model.pull.FrictionSet;
import org.spanroom.model.pull.FrictionSets;
import org.spanroom.model.pull.InnerductPull;
import org.spanroom.model.pull.PullSettings;
import org.spanroom.model.rank.Assessment;
import org.spanroom.output.table.Text;
import org.spanroom.permit.PermitAssessor;
import org.spanroom.pull.PullAssessor;

/** What a run plans for the spans that a field book is about, by its records as they were before anything was reported. */
final class ReportedFigures implements PlannedFigures {
    private final RunConfig config;
    private final Map<String, Assessment> assessed = new HashMap<>();

    /**
     * Assesses the spans of a book.
     *
     * @param spans all of the run
     */
    ReportedFigures(RunConfig config, InputData inputs, SpanList spans, FieldBook book) {
        this.config = config;
        // A crew has the names of the results, where some characters are replaced.
        Set<String> wanted = book.spans().stream().map(Text::clean).collect(Collectors.toSet());
        var numbers = new ArrayList<Integer>();
        for (int number = 0; number < spans.size(); number++) {
            if (wanted.contains(Text.clean(spans.id(number)))) {
                numbers.add(number);
            }
        }
        var permits = new PermitAssessor(inputs.zones(), config.permit(), ConfiguredParts.access(config));
        var assessor = new SpanAssessor(config, permits, numbers.size());
        for (int place = 0; place < numbers.size(); place++) {
            Assessment one = assessor.assess(place, spans.get(numbers.get(place)));
            assessed.put(Text.clean(one.span().id()), one);
        }
    }

    /** Returns how many spans of the book the run has. */
    int count() {
        return assessed.size();
    }

    @Override
    public OptionalDouble find(String spanId, FieldFact fact, String item) {
        Optional<Effort> effort = effort(spanId);
        return effort.isEmpty() ? OptionalDouble.empty() : find(effort.get(), fact, item);
    }

    private OptionalDouble find(Effort effort, FieldFact fact, String item) {
        return switch (fact) {
            case STEP_HOURS -> stepHours(effort, item);
            case SLEEVE_USED ->
                OptionalDouble.of(
                        item.equals(TAIL)
                                ? value(RateKey.SLEEVE_TAIL_M)
                                : effort.material().sleeveM());
            case LUBRICANT_USED -> OptionalDouble.of(effort.material().lubricantLiters());
            case INNERDUCT_MASS -> OptionalDouble.of(effort.material().innerductKg());
            case RECYCLED_MASS -> OptionalDouble.of(effort.material().recycledKg());
            case BAGS -> OptionalDouble.of(effort.material().bags());
            case LOADS -> OptionalDouble.of(effort.material().loads());
            case CREW_PERSONS -> OptionalDouble.of(value(RateKey.CREW_PERSONS));
            case COST -> OptionalDouble.of(effort.recoveryMoney());
            default -> OptionalDouble.empty();
        };
    }

    private static OptionalDouble stepHours(Effort effort, String item) {
        for (EffortStep step : EffortStep.values()) {
            if (step.key().equals(item)) {
                return OptionalDouble.of(effort.stepHours().of(step));
            }
        }
        return OptionalDouble.empty();
    }

    private double value(RateKey key) {
        return Optional.ofNullable(config.rates().standard().get(key))
                .orElseThrow()
                .value();
    }

    private Optional<Assessment> assessment(String spanId) {
        return Optional.ofNullable(assessed.get(Text.clean(spanId)));
    }

    private Optional<Effort> effort(String spanId) {
        return assessment(spanId).flatMap(Assessment::effort);
    }

    @Override
    public Optional<PlannedWork> work(String spanId) {
        return assessment(spanId)
                .flatMap(one -> one.effort()
                        .map(effort -> new PlannedWork(
                                SectionKey.of(one.span()).id(),
                                one.span().lengthM(),
                                one.room().positionsGained().orElse(0),
                                effort.time().siteHours(),
                                effort.recoveryMoney(),
                                effort.newBuild().trenchM(),
                                effort.newBuild().boreM(),
                                effort.newBuild().co2eIceKg(),
                                effort.newBuild().co2eDigKg(),
                                value(RateKey.WARM_RECYCLED_KG_PER_KG))));
    }

    /** Returns the measured pulls of a book; of each innerduct the last measurement counts. */
    List<MeasuredPull> pulls(FieldBook book, FrictionSets friction) {
        var pulls = new ArrayList<MeasuredPull>();
        for (String spanId : book.spans()) {
            List<FieldEntry> entries = book.ofSpan(spanId);
            for (FieldEntry entry : entries) {
                boolean inForce = entry.fact() == FieldFact.PULL_FORCE
                        && FieldBook.find(entries, entry.fact(), entry.item())
                                .filter(entry::equals)
                                .isPresent();
                if (inForce) {
                    Optional<Assessment> one = assessment(spanId);
                    pulls.add(new MeasuredPull(
                            entry,
                            one.map(found -> found.span().duct()),
                            one.flatMap(found -> law(found, entries, entry.item(), friction))));
                }
            }
        }
        return pulls;
    }

    /** Where the end is not reported it is taken to be the planned one. */
    private Optional<PullLaw> law(Assessment one, List<FieldEntry> entries, String innerduct, FrictionSets friction) {
        Optional<SpanEnd> end = FieldBook.find(entries, FieldFact.PULLED_FROM, innerduct)
                .map(entry -> entry.value().text().equals("a") ? SpanEnd.A : SpanEnd.B)
                .or(() -> one.pull().outcome().findBetterEnd());
        boolean pulled = one.pull().pulls().stream()
                .anyMatch(pull -> pull.innerduct().id().equals(innerduct));
        return pulled
                ? end.map(from -> scaleRatio -> largestN(one, innerduct, from, scaled(friction.dry(), scaleRatio)))
                : Optional.empty();
    }

    private double largestN(Assessment one, String innerduct, SpanEnd from, FrictionSet friction) {
        PullSettings settings = config.pull().withFriction(new FrictionSets(friction, friction, friction));
        double steadyN = new PullAssessor(settings, SpanAssessor.sites(config))
                .assess(one.span(), one.bends(), one.pull().pulls().size()).pulls().stream()
                        .filter(pull -> pull.innerduct().id().equals(innerduct))
                        .findFirst()
                        .map((InnerductPull pull) -> pull.from(from).dry().pullN())
                        .orElse(Double.NaN);
        return settings.breakawayRatio() * steadyN;
    }

    private static FrictionSet scaled(FrictionSet set, double scaleRatio) {
        return new FrictionSet(
                scaleRatio * set.ductRatio(), scaleRatio * set.jacketRatio(), scaleRatio * set.neighborRatio());
    }
}
