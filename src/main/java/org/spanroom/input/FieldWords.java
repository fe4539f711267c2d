package org.spanroom.input;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.spanroom.config.PlausibleRanges;
import org.spanroom.input.fields.TermNumbers;
import org.spanroom.model.Term;
import org.spanroom.model.Unit;

/**
 * Guesses terms from the names of fields, and units from names and values.
 *
 * <p>Method: names fall into words, abbreviations are written out, a unit at the end is set apart; a term's score is the Dice coefficient
 * (twice the common words over all words) of its best phrase. The best pairs of field and term are taken first, each once.
 */
final class FieldWords {
    private static final double LEAST_SCORE = 0.7;

    private static final Map<Term, String> PHRASES = new EnumMap<>(Map.ofEntries(
            Map.entry(Term.ROUTE, "route, route id, line id, segment id, asset id, facility id, id"),
            Map.entry(Term.DUCT, "duct, duct id, duct number, duct name"),
            Map.entry(Term.DUCT_BANK, "bank, bank id, duct bank"),
            Map.entry(
                    Term.INSIDE_DIAMETER,
                    "bore, inside diameter, inner diameter, duct diameter, diameter, duct size, size, pipe diameter, width"),
            Map.entry(Term.BORE_SHAPE, "bore shape, shape, cross section"),
            Map.entry(Term.DUCT_TYPE, "duct type, type, pipe type"),
            Map.entry(Term.DUCT_MATERIAL, "material, duct material, pipe material"),
            Map.entry(Term.INNERDUCT_COUNT, "innerduct, innerduct count"),
            Map.entry(
                    Term.INNERDUCT_OUTSIDE_DIAMETER, "innerduct outside diameter, innerduct diameter, innerduct size"),
            Map.entry(Term.INNERDUCT_SDR, "sdr, innerduct sdr"),
            Map.entry(Term.INNERDUCT_WALL, "wall, innerduct wall, wall thickness"),
            Map.entry(Term.CABLE_COUNT, "cable, cable count"),
            Map.entry(Term.CABLE_OUTSIDE_DIAMETER, "cable outside diameter, cable diameter"),
            Map.entry(Term.CABLE_MASS, "cable mass, cable weight, cable"),
            Map.entry(Term.IN_SERVICE, "in service, service, cable status, status, live"),
            Map.entry(Term.FLOODED, "flooded, water, wet"),
            Map.entry(Term.SURFACE, "surface, pavement"),
            Map.entry(Term.OWNER, "owner, ownership, owned by"),
            Map.entry(Term.YEAR, "year, install year, year installed, install date"),
            Map.entry(Term.CONDITION, "condition, duct condition, state"),
            Map.entry(Term.RECORDED_LENGTH, "length, recorded length, measured length"),
            Map.entry(Term.FROM_VAULT, "from vault, from node, start vault, from, upstream node, upstream vault"),
            Map.entry(Term.TO_VAULT, "to vault, to node, end vault, to, downstream node, downstream vault"),
            Map.entry(Term.POSITION_QUALITY, "quality, position quality, accuracy, quality level"),
            Map.entry(Term.OWNER_CONSENT, "consent, owner consent"),
            Map.entry(Term.LOOSE_CABLE_ALLOWED, "loose cable allowed, loose cable, loose allowed"),
            Map.entry(Term.SPLICE_INSIDE, "splice inside, splice, spliced"),
            Map.entry(Term.INNERDUCT_FIXED, "innerduct fixed, grouted, innerduct grouted"),
            Map.entry(Term.CIRCUITS_AT_RISK, "circuit, circuit count, circuit at risk"),
            Map.entry(Term.JOINT_OWNERS, "joint owner, co owner"),
            Map.entry(Term.EMBARGO_UNTIL, "embargo, embargo until, embargo date"),
            Map.entry(Term.BESIDE_ALLOWED, "beside allowed, cable beside allowed, sleeve beside allowed"),
            Map.entry(Term.POSITIONS_RESERVED, "position reserved, reserved position, reserved"),
            Map.entry(Term.VAULT, "vault, vault id, vault name, vault number, asset id, facility id, id"),
            Map.entry(Term.VAULT_KIND, "kind, vault kind, vault type, type"),
            Map.entry(Term.VAULT_ELEVATION, "elevation, rim elevation, ground elevation"),
            Map.entry(Term.VAULT_VOLUME, "volume, vault volume"),
            Map.entry(Term.VAULT_WATER, "water, flooded, wet, vault water"),
            Map.entry(Term.VAULT_SURFACE, "surface, cover surface, vault surface"),
            Map.entry(Term.CABLE_HOLD, "hold, cable hold, anchor"),
            Map.entry(Term.CABLE_SLACK, "slack, cable slack, slack length, coil length"),
            Map.entry(Term.DUCT_SIZE, "duct size, trade size, nominal size, duct catalogue, duct catalog"),
            Map.entry(Term.INNERDUCT_SIZE, "innerduct size, innerduct type, innerduct catalogue, innerduct catalog"),
            Map.entry(Term.CABLE_TYPE, "cable type, cable size, cable catalogue, cable catalog"),
            Map.entry(Term.CABLE_MAY_MOVE, "cable may move, may move, movable"),
            Map.entry(Term.ZONE, "zone, zone id, zone number, permit id, area id, id"),
            Map.entry(Term.ZONE_KIND, "kind, zone kind, zone type, type, category, restriction"),
            Map.entry(Term.ZONE_NAME, "name, zone name, street name, description"),
            Map.entry(Term.ZONE_FROM, "zone from, start date, first day, valid from, begin, start"),
            Map.entry(Term.ZONE_UNTIL, "until, end date, expiry date, last day, valid until, expires")));

    private static final Map<String, String> WRITTEN_OUT = Map.ofEntries(
            Map.entry("dia", "diameter"),
            Map.entry("diam", "diameter"),
            Map.entry("od", "outside diameter"),
            Map.entry("num", "count"),
            Map.entry("cnt", "count"),
            Map.entry("qty", "count"),
            Map.entry("no", "count"),
            Map.entry("number", "count"),
            Map.entry("mat", "material"),
            Map.entry("matl", "material"),
            Map.entry("len", "length"),
            Map.entry("cond", "condition"),
            Map.entry("yr", "year"),
            Map.entry("elev", "elevation"),
            Map.entry("svc", "service"),
            Map.entry("qual", "quality"),
            Map.entry("conduit", "duct"),
            Map.entry("subduct", "innerduct"),
            Map.entry("innerd", "innerduct"),
            Map.entry("manhole", "vault"),
            Map.entry("mh", "vault"),
            Map.entry("handhole", "vault"),
            Map.entry("hh", "vault"),
            Map.entry("installed", "install"),
            Map.entry("uid", "id"),
            Map.entry("objectid", "id"));

    /** What may stand behind the last mark of a name. */
    private static final Map<String, Unit> UNITS = Map.ofEntries(
            Map.entry("in", Unit.IN),
            Map.entry("inch", Unit.IN),
            Map.entry("inches", Unit.IN),
            Map.entry("mm", Unit.MM),
            Map.entry("cm", Unit.CM),
            Map.entry("m", Unit.M),
            Map.entry("metres", Unit.M),
            Map.entry("meters", Unit.M),
            Map.entry("ft", Unit.FT),
            Map.entry("feet", Unit.FT),
            Map.entry("km", Unit.KM),
            Map.entry("kgm", Unit.KG_PER_M),
            Map.entry("kgkm", Unit.KG_PER_KM),
            Map.entry("lbft", Unit.LB_PER_FT),
            Map.entry("lbkft", Unit.LB_PER_1000_FT),
            Map.entry("lbkf", Unit.LB_PER_1000_FT),
            Map.entry("m3", Unit.M3),
            Map.entry("ft3", Unit.FT3),
            Map.entry("cuft", Unit.FT3));

    private final Set<Term> terms;

    FieldWords(Set<Term> terms) {
        this.terms = EnumSet.copyOf(terms);
    }

    /** A field that may stand for a term. */
    private record Pair(int place, FieldProposal.Seen field, Term term, double score) {}

    /** Returns a term for each field's name that suggests one. */
    Map<String, Term> assign(List<FieldProposal.Seen> fields) {
        var pairs = new ArrayList<Pair>();
        for (int i = 0; i < fields.size(); i++) {
            FieldProposal.Seen field = fields.get(i);
            for (Term term : terms) {
                double score = field.isEmpty() ? 0 : score(field, term);
                if (score >= LEAST_SCORE) {
                    pairs.add(new Pair(i, field, term, score));
                }
            }
        }
        pairs.sort(Comparator.comparingDouble(Pair::score)
                .reversed()
                .thenComparing(Pair::place)
                .thenComparing(Pair::term));
        var assigned = new TreeMap<String, Term>();
        for (Pair pair : pairs) {
            if (!assigned.containsKey(pair.field().name()) && !assigned.containsValue(pair.term())) {
                assigned.put(pair.field().name(), pair.term());
            }
        }
        return assigned;
    }

    private static double score(FieldProposal.Seen field, Term term) {
        boolean wantsNumber = term.kind() != Term.Kind.TEXT && term.kind() != Term.Kind.FLAG;
        Optional<Unit> unit = unitInName(field.name());
        boolean unitFits = unit.isEmpty() || dimension(term).equals(unit.map(Unit::dimension));
        if ((wantsNumber && !field.isNumeric()) || !unitFits) {
            return 0;
        }
        Set<String> words = words(field.name());
        double best = 0;
        for (String phrase : PHRASES.getOrDefault(term, "").split(", ", -1)) {
            best = Math.max(best, dice(words, Set.of(phrase.split(" ", -1))));
        }
        return best;
    }

    private static double dice(Set<String> words, Set<String> phrase) {
        long common = words.stream().filter(phrase::contains).count();
        return 2.0 * common / (words.size() + phrase.size());
    }

    /** Returns a name's words: lower case, singular, written out, without the unit at the end. */
    static Set<String> words(String name) {
        List<String> parts = parts(name);
        int end = parts.size() - unitParts(parts);
        var words = new LinkedHashSet<String>();
        for (String part : parts.subList(0, end)) {
            String singular = part.length() > 3 && part.endsWith("s") && !part.endsWith("ss")
                    ? part.substring(0, part.length() - 1)
                    : part;
            words.addAll(List.of(WRITTEN_OUT.getOrDefault(singular, singular).split(" ", -1)));
        }
        return words;
    }

    static Optional<Unit> unitInName(String name) {
        List<String> parts = parts(name);
        int count = unitParts(parts);
        return count == 0
                ? Optional.empty()
                : Optional.ofNullable(UNITS.get(String.join("", parts.subList(parts.size() - count, parts.size()))));
    }

    /** A unit may take up to two parts, as in lb_kft; a name that is nothing else has none. */
    private static int unitParts(List<String> parts) {
        for (int count = Math.min(2, parts.size() - 1); count >= 1; count--) {
            if (UNITS.containsKey(String.join("", parts.subList(parts.size() - count, parts.size())))) {
                return count;
            }
        }
        return 0;
    }

    private static List<String> parts(String name) {
        String marked = name.replaceAll("(?<=\\p{Lower})(?=\\p{Upper})", "_").toLowerCase(Locale.ROOT);
        return List.of(marked.split("[^\\p{L}]+", -1)).stream()
                .filter(part -> !part.isEmpty())
                .toList();
    }

    /** Finds a unit for a term: the one in the name, else, for cross-sections and masses, the first usual one that fits the values. */
    static Optional<Unit> unit(Term term, FieldProposal.Seen field, PlausibleRanges ranges) {
        Optional<Unit.Dimension> dimension = dimension(term);
        Optional<Unit> named = unitInName(field.name());
        if (dimension.isEmpty() || named.isPresent()) {
            return dimension.isEmpty() ? Optional.empty() : named;
        }
        if (term.kind() == Term.Kind.LENGTH) {
            return Optional.of(Unit.M);
        }
        return TermNumbers.BY_HABIT.stream()
                .filter(unit -> unit.dimension() == dimension.get())
                .filter(unit -> ranges.contains(term, TermNumbers.kept(term, field.medianInUnit(), Optional.of(unit))))
                .findFirst();
    }

    private static Optional<Unit.Dimension> dimension(Term term) {
        return switch (term.kind()) {
            case DIAMETER, LENGTH -> Optional.of(Unit.Dimension.LENGTH);
            case MASS_PER_LENGTH -> Optional.of(Unit.Dimension.MASS_PER_LENGTH);
            case VOLUME -> Optional.of(Unit.Dimension.VOLUME);
            default -> Optional.empty();
        };
    }
}
