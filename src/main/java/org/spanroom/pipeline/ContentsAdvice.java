package org.spanroom.pipeline;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.spanroom.config.AssumedValues;
import org.spanroom.config.FieldSource;
import org.spanroom.config.RunConfig;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.model.Term;
import org.spanroom.model.Unit;
import org.spanroom.model.network.ContentsScenario;
import org.spanroom.model.rank.ContentsAccount;
import org.spanroom.model.rank.ContentsCounts;
import org.spanroom.model.rank.MissingTerm;

/** What is missing of the contents of ducts, and the lines of a config that would let a run assume it. */
final class ContentsAdvice {
    /** What must be known of what is in a duct before its room can be counted; a wall may be given either way. */
    private static final List<Term> NEEDED = List.of(
            Term.INNERDUCT_COUNT,
            Term.CABLE_COUNT,
            Term.INNERDUCT_OUTSIDE_DIAMETER,
            Term.INNERDUCT_SDR,
            Term.CABLE_OUTSIDE_DIAMETER,
            Term.CABLE_MASS,
            Term.IN_SERVICE,
            Term.INSIDE_DIAMETER);

    private static final Set<FindingCode> WITHOUT_VALUE =
            EnumSet.of(FindingCode.MISSING_VALUE, FindingCode.UNUSABLE_VALUE, FindingCode.IMPLAUSIBLE_VALUE);

    private final RunConfig config;
    private final List<Finding> findings;

    ContentsAdvice(RunConfig config, List<Finding> findings) {
        this.config = config;
        this.findings = findings;
    }

    /**
     * Returns what the results of a run rest on.
     *
     * @param serviceUnknown how many spans are not ranked because it is not known whether a cable is live
     * @param deciders what decides most of the ranked spans, one sentence each
     */
    ContentsAccount account(ScenarioRun run, long serviceUnknown, Routes routes, List<String> deciders) {
        ContentsCounts counts = run.counts();
        boolean unknown = counts.unknown() > 0;
        return new ContentsAccount(
                counts,
                config.scenarios().typical(),
                unknown || counts.assumed() > 0 ? missing(counts, routes) : List.of(),
                toAssume(unknown, serviceUnknown),
                deciders,
                run.results());
    }

    /** The layer of routes: how findings call it, and how many of its features were read. */
    record Routes(String source, long read) {}

    /** A term that is recorded wherever it is read is not missing; of wall and SDR one is enough. */
    private List<MissingTerm> missing(ContentsCounts counts, Routes routes) {
        var missing = new ArrayList<MissingTerm>();
        for (Term term : NEEDED) {
            if (term == Term.INNERDUCT_SDR && isRead(Term.INNERDUCT_WALL)) {
                continue;
            }
            Optional<FieldSource> source = config.inputs().routes().fields().find(term);
            if (source.isEmpty()) {
                long without = isCatalogd(term) ? 0 : counts.unknown() + counts.assumed();
                add(missing, new MissingTerm(term.key(), "", without, counts.spans(), "spans", standsIn(term)));
            } else {
                String field = source.get().field();
                long without = isAbsent(field) ? routes.read() : count(routes, field);
                add(missing, new MissingTerm(term.key(), field, without, routes.read(), "routes", standsIn(term)));
            }
        }
        return missing;
    }

    private static void add(List<MissingTerm> missing, MissingTerm term) {
        if (term.without() > 0) {
            missing.add(term);
        }
    }

    private boolean isRead(Term term) {
        return config.inputs().routes().fields().find(term).isPresent();
    }

    /** A row of the catalog gives sizes, so that a field for it is as good. */
    private boolean isCatalogd(Term term) {
        return switch (term) {
            case INSIDE_DIAMETER -> isRead(Term.DUCT_SIZE);
            case INNERDUCT_OUTSIDE_DIAMETER, INNERDUCT_SDR -> isRead(Term.INNERDUCT_SIZE);
            case CABLE_OUTSIDE_DIAMETER, CABLE_MASS -> isRead(Term.CABLE_TYPE);
            default -> false;
        };
    }

    private boolean isAbsent(String field) {
        return findings.stream()
                .anyMatch(finding -> finding.code() == FindingCode.LAYER_ISSUE
                        && finding.detail().startsWith("the layer has no field '" + field + "'"));
    }

    private long count(Routes routes, String field) {
        return findings.stream()
                .filter(finding -> WITHOUT_VALUE.contains(finding.code())
                        && finding.source().equals(routes.source())
                        && finding.field().equals(field))
                .mapToLong(Finding::count)
                .sum();
    }

    private String standsIn(Term term) {
        AssumedValues assumed = config.assumed();
        if (assumed.findWord(term).isPresent()) {
            return assumed.findWord(term).get();
        }
        var number = assumed.findNumber(term);
        return number.isEmpty()
                ? ""
                : BigDecimal.valueOf(number.getAsDouble()).stripTrailingZeros().toPlainString() + unit(term);
    }

    private static String unit(Term term) {
        return switch (term.kind()) {
            case DIAMETER -> " " + Unit.MM.symbol();
            case MASS_PER_LENGTH -> " " + Unit.KG_PER_M.symbol();
            default -> "";
        };
    }

    /**
     * Lines to paste into a config. Counts are requested where contents are unknown; what the cables carry where spans would stay out
     * of the ranking without it, which is so of every span as soon as its cables are assumed.
     */
    private List<String> toAssume(boolean unknown, long serviceUnknown) {
        var lines = new ArrayList<String>();
        ContentsScenario typical = config.scenarios().typical();
        if (unknown && !config.scenarios().assumeContents()) {
            lines.add("scenarios:");
            lines.add("  assume_contents: true");
            lines.add("  typical: {innerduct_count: " + typical.innerductCount() + ", cable_count: "
                    + typical.cableCount() + "}     # set what is usual in your city");
        }
        boolean noService = config.assumed()
                .findWord(Term.IN_SERVICE)
                .filter(word -> !word.equals("unknown"))
                .isEmpty();
        if (noService && (serviceUnknown > 0 || (unknown && !isRead(Term.IN_SERVICE)))) {
            lines.add("assumed:");
            lines.add("  in_service: live     # the cautious case: each cable is handled as live");
        }
        return lines;
    }
}
