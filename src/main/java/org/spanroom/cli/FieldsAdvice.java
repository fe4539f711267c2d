package org.spanroom.cli;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.spanroom.config.RunConfig;
import org.spanroom.input.proposal.FieldProposal;
import org.spanroom.model.Term;

/** What a proposed field map lacks for a useful ranking, and what to do about it. */
final class FieldsAdvice {
    /** What a run does without a term, most important first. */
    private static final Map<Term, String> WITHOUT = without();

    private FieldsAdvice() {}

    private static Map<Term, String> without() {
        var texts = new LinkedHashMap<Term, String>();
        texts.put(
                Term.INNERDUCT_COUNT,
                "no span is ranked where nothing says how many innerducts lie in the duct: map a field, list them in a contents"
                        + " table (inputs.contents), or set assumed.innerduct_count");
        texts.put(
                Term.CABLE_COUNT,
                "no span is ranked where nothing says how many cables lie in the duct: map a field, list them in a contents table,"
                        + " or set assumed.cable_count");
        texts.put(
                Term.IN_SERVICE,
                "spans whose cables may be live or dead are excluded: map a field, or set assumed.in_service");
        texts.put(Term.INSIDE_DIAMETER, "every bore is assumed (assumed.inside_diameter)");
        texts.put(
                Term.INNERDUCT_OUTSIDE_DIAMETER,
                "every innerduct's size is assumed (assumed.innerduct_outside_diameter)");
        texts.put(Term.CABLE_OUTSIDE_DIAMETER, "every cable's size is assumed (assumed.cable_outside_diameter)");
        return texts;
    }

    /** Returns a line for each thing that is missing. */
    static List<String> missing(List<FieldProposal> proposals, RunConfig config) {
        var lines = new ArrayList<String>();
        Set<Term> sure = new TreeSet<>();
        Map<Term, FieldProposal.Field> unsure = new EnumMap<>(Term.class);
        for (FieldProposal proposal : proposals) {
            sure.addAll(proposal.sureTerms());
            proposal.fields().stream()
                    .filter(field -> field.term().isPresent() && !field.isSure())
                    .forEach(field -> unsure.put(field.term().get(), field));
            if (!proposal.hasCrs()) {
                lines.add(proposal.role() + ": no usable reference system is known; give it with --crs EPSG:code");
            }
            proposal.fields().stream()
                    .filter(field -> field.isSure() && !field.unknownWords().isEmpty())
                    .forEach(field -> lines.add(words(field)));
        }
        if (config.inputs().routes().file().isEmpty()) {
            lines.add("routes: no file is given; name it with --routes");
        }
        if (config.inputs().vaults().file().isEmpty()) {
            lines.add("vaults: no file is given, so that no line is cut; name it with --vaults");
        }
        boolean table = config.inputs().contents().file().isPresent();
        WITHOUT.forEach((term, text) -> {
            if (!sure.contains(term) && !table) {
                lines.add(term.key() + ": " + text + uncomment(unsure.get(term)));
            }
        });
        return lines;
    }

    private static String uncomment(FieldProposal.@Nullable Field field) {
        return field == null ? "" : "; '" + Printable.line(field.name()) + "' may be it";
    }

    private static String words(FieldProposal.Field field) {
        return field.term().map(Term::key).orElse("") + ": no list in the section values says what these words mean: "
                + Printable.line(String.join(", ", field.unknownWords()));
    }
}
