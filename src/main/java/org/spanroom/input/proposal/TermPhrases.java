package org.spanroom.input.proposal;

import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.spanroom.model.Term;
import org.spanroom.model.Unit;

/** How well a field's name fits a term, by the concepts of its words. */
final class TermPhrases {
    /** An id is meant from here on; below, it may be a mere name. */
    static final double LEAST_ID = 0.75;

    /** A name that says the term and nothing else. */
    static final double EXACT = 1;

    private static final double BARE = 0.9;
    private static final double GENERAL = 0.8;
    private static final double LEAST_DICE = 0.7;

    /** Words that name another quantity or another thing: a term whose phrase has them not is not meant. */
    private static final Set<String> VETOES = Set.of(
            "invert",
            "elevation",
            "depth",
            "date",
            "street",
            "slope",
            "distance",
            "height",
            "outside",
            "host",
            "rehab",
            "assumed",
            "user",
            "inspection",
            "drawing",
            "fiber",
            "capacity",
            "coordinate",
            "geometry",
            "old",
            "comment",
            "cost",
            "rotation",
            "row",
            "phase",
            "calculated",
            "volume",
            "length",
            "diameter",
            "last",
            "innerduct",
            "cable",
            "joint");

    /** A phrase with one of these is not meant by a name without it. */
    private static final Set<String> SUBJECTS = Set.of("innerduct", "cable", "joint");

    private static final Set<String> OTHER_THINGS = Set.of("wall", "rim", "cable", "innerduct", "surface");

    private static final Map<Term, List<Set<String>>> PHRASES = phrases(Map.ofEntries(
            Map.entry(Term.DUCT_BANK, "bank, duct bank, bank id, duct bank id"),
            Map.entry(
                    Term.INSIDE_DIAMETER,
                    "inside diameter, duct inside diameter, duct diameter, diameter, dn, bore, inside size, duct bore, trade diameter, duct size, trade size"),
            Map.entry(Term.BORE_SHAPE, "bore shape, cross shape, duct shape, cross"),
            Map.entry(Term.DUCT_TYPE, "duct type"),
            Map.entry(Term.DUCT_MATERIAL, "material, duct material, material type, duct material type"),
            Map.entry(Term.INNERDUCT_COUNT, "innerduct, innerduct count"),
            Map.entry(
                    Term.INNERDUCT_OUTSIDE_DIAMETER,
                    "innerduct outside diameter, innerduct diameter, innerduct outside"),
            Map.entry(Term.INNERDUCT_SDR, "sdr, innerduct sdr"),
            Map.entry(Term.INNERDUCT_WALL, "innerduct wall"),
            Map.entry(Term.CABLE_COUNT, "cable, cable count"),
            Map.entry(Term.CABLE_OUTSIDE_DIAMETER, "cable outside diameter, cable diameter, cable outside"),
            Map.entry(Term.CABLE_MASS, "cable mass"),
            Map.entry(Term.IN_SERVICE, "in service, cable status, live"),
            Map.entry(Term.FLOODED, "flooded, water, duct flooded"),
            Map.entry(Term.SURFACE, "surface, surface type, rim surface, rim surface type"),
            Map.entry(Term.OWNER, "owner, duct owner, physical infrastructure provider"),
            Map.entry(Term.YEAR, "year, install year, install, install date"),
            Map.entry(Term.CONDITION, "condition, duct condition"),
            Map.entry(Term.RECORDED_LENGTH, "length, measured length, duct length, measured duct length"),
            Map.entry(Term.POSITION_QUALITY, "quality, position quality, quality level"),
            Map.entry(Term.OWNER_CONSENT, "consent, owner consent"),
            Map.entry(Term.LOOSE_CABLE_ALLOWED, "loose cable allowed, loose cable, loose allowed"),
            Map.entry(Term.SPLICE_INSIDE, "splice inside, splice"),
            Map.entry(Term.INNERDUCT_FIXED, "innerduct fixed, fixed"),
            Map.entry(Term.CIRCUITS_AT_RISK, "circuit, circuit count, circuit at risk"),
            Map.entry(Term.JOINT_OWNERS, "joint owner"),
            Map.entry(Term.EMBARGO_UNTIL, "embargo, embargo until, embargo date"),
            Map.entry(Term.BESIDE_ALLOWED, "beside allowed, cable beside allowed, sleeve beside allowed"),
            Map.entry(Term.POSITIONS_RESERVED, "position reserved, reserved"),
            Map.entry(Term.VAULT_KIND, "vault type, type"),
            Map.entry(
                    Term.VAULT_ELEVATION,
                    "elevation, rim elevation, vault elevation, vault rim elevation, rim level, rim height"),
            Map.entry(Term.VAULT_VOLUME, "volume, vault volume"),
            Map.entry(Term.VAULT_WATER, "water, flooded, vault water"),
            Map.entry(Term.VAULT_SURFACE, "surface, rim surface, vault surface, surface type, rim surface type"),
            Map.entry(Term.CABLE_HOLD, "hold, cable hold, anchor"),
            Map.entry(Term.CABLE_SLACK, "slack, cable slack, slack length, coil length"),
            Map.entry(Term.VAULT_DEPTH, "depth, vault depth"),
            Map.entry(Term.VAULT_LENGTH, "vault length, inside length, vault inside length, in length"),
            Map.entry(Term.VAULT_WIDTH, "vault width, inside width, vault inside width, in width"),
            Map.entry(Term.VAULT_HEIGHT, "vault height, inside height, vault inside height, in height"),
            Map.entry(Term.COVER_SIZE, "rim size, rim diameter, rim width"),
            Map.entry(Term.GAS_FOUND, "gas, gas found, gas history"),
            Map.entry(Term.JOINT_POWER, "joint power, power"),
            Map.entry(
                    Term.VAULT_INSPECTED,
                    "inspection, inspection date, last inspection, last inspection date, vault inspection date"),
            Map.entry(Term.DUCT_SIZE, "duct size, trade size, duct catalog"),
            Map.entry(Term.INNERDUCT_SIZE, "innerduct size, innerduct type, innerduct catalog"),
            Map.entry(Term.CABLE_TYPE, "cable type, cable size, cable catalog"),
            Map.entry(Term.CABLE_MAY_MOVE, "cable may move, may move, move"),
            Map.entry(Term.ZONE_KIND, "type, zone type, restriction"),
            Map.entry(Term.ZONE_NAME, "name, zone name, street name, street"),
            Map.entry(Term.ZONE_FROM, "zone from, from date, first day, valid from, from"),
            Map.entry(Term.ZONE_UNTIL, "until, to date, until date, last day, valid until, valid to, zone until, to")));

    /** Phrases that may mean a term and often mean something else. */
    private static final Map<Term, List<Set<String>>> LOOSE = phrases(Map.ofEntries(
            Map.entry(Term.INSIDE_DIAMETER, "size, width, duct width"),
            Map.entry(Term.BORE_SHAPE, "shape"),
            Map.entry(Term.DUCT_TYPE, "type"),
            Map.entry(Term.IN_SERVICE, "status, service"),
            Map.entry(Term.OWNER, "supplier, provider, owner type"),
            Map.entry(Term.INNERDUCT_WALL, "wall"),
            Map.entry(Term.CONDITION, "status condition, condition type")));

    private static final Set<Unit> COVER_UNITS = Set.of(Unit.IN, Unit.MM, Unit.CM);

    private TermPhrases() {}

    /** Returns whether a name speaks of another thing than the pipe or vault as it is. */
    static boolean isOfOtherThing(FieldName name) {
        return name.words().stream().anyMatch(word -> VETOES.contains(word) || OTHER_THINGS.contains(word));
    }

    private static Map<Term, List<Set<String>>> phrases(Map<Term, String> texts) {
        var all = new EnumMap<Term, List<Set<String>>>(Term.class);
        texts.forEach((term, text) -> all.put(
                term, Stream.of(text.split(", ", -1)).map(TermPhrases::phrase).toList()));
        return all;
    }

    private static Set<String> phrase(String text) {
        return Set.of(text.split(" ", -1));
    }

    /** Returns 1 for a name that says the term, less for one that may mean it, 0 for one that does not. */
    static double score(FieldName name, Term term) {
        return name.readings().stream()
                .mapToDouble(words -> score(words, name.unit(), term))
                .max()
                .orElse(0);
    }

    private static double score(Set<String> words, Optional<Unit> unit, Term term) {
        return switch (term) {
            case VAULT_A -> Math.max(end(words, "from"), ownName(words, "a"));
            case VAULT_B -> Math.max(end(words, "to"), ownName(words, "b"));
            case ROUTE -> id(words, Set.of("route", "pipe", "duct"), Set.of("duct"));
            case VAULT -> id(words, Set.of("vault"), Set.of());
            case DUCT -> id(words, Set.of("duct"), Set.of()) == EXACT ? EXACT : 0;
            case ZONE -> id(words, Set.of("zone", "permit"), Set.of());
            default -> EndPhrases.has(term) ? EndPhrases.score(words, term) : quantity(words, unit, term);
        };
    }

    /** A layer that was made for us, or made from our results, has our own word. */
    private static double ownName(Set<String> words, String letter) {
        return words.equals(Set.of("vault", letter)) ? EXACT : 0;
    }

    private static double end(Set<String> all, String side) {
        var words = new HashSet<>(all);
        if (side.equals("to") && words.size() > 1 && words.remove("dn")) {
            words.add("to");
        }
        if (!words.contains(side)) {
            return 0;
        }
        boolean saysWhat = words.removeAll(Set.of("vault", "id", "number", "code", "asset"));
        words.removeAll(Set.of("route", "name", "duct", "pipe", "network"));
        return words.equals(Set.of(side)) ? (saysWhat ? EXACT : BARE) : 0;
    }

    /** The name of a thing: what it is with an id, or an id alone, which may also be that of something else. */
    private static double id(Set<String> all, Set<String> things, Set<String> lesser) {
        var words = new HashSet<>(all);
        boolean hasId = words.removeAll(Set.of("id", "number", "code"));
        boolean hasName = words.remove("name");
        boolean ofThing = words.removeAll(things);
        boolean isLesser = all.stream().anyMatch(lesser::contains) && !all.contains("route");
        boolean ofAsset = words.remove("asset");
        if (!words.isEmpty() || !(hasId || hasName || ofThing)) {
            return 0;
        }
        if (ofThing) {
            double whole = isLesser ? BARE : EXACT;
            return hasId ? whole : whole - 0.05;
        }
        return ofAsset && hasId ? BARE - 0.02 : hasId ? GENERAL : GENERAL - 0.08;
    }

    private static double quantity(Set<String> all, Optional<Unit> unit, Term term) {
        var words = new HashSet<>(all);
        if (term != Term.ZONE_NAME) {
            words.removeAll(Set.of("number", "name", "code"));
        }
        if (words.remove("pipe")) {
            words.add("duct");
        }
        if (words.size() > 1) {
            words.remove("route");
        }
        if (term == Term.OWNER && words.contains("provider") && words.remove("asset")) {
            words.add("infrastructure");
        }
        if (term == Term.CABLE_MASS && unit.map(Unit::dimension).equals(Optional.of(Unit.Dimension.MASS_PER_LENGTH))) {
            words.add("mass");
        }
        // A lid in inches or millimeters is a size; a rim in meters or feet is a level.
        if (term == Term.COVER_SIZE
                && words.equals(Set.of("rim"))
                && unit.filter(COVER_UNITS::contains).isPresent()) {
            words.add("size");
        }
        double best = 0;
        for (Set<String> phrase : PHRASES.getOrDefault(term, List.of())) {
            best = Math.max(best, likeness(words, phrase));
        }
        for (Set<String> phrase : LOOSE.getOrDefault(term, List.of())) {
            best = Math.max(best, words.equals(phrase) ? LEAST_DICE : 0);
        }
        return best;
    }

    private static double likeness(Set<String> words, Set<String> phrase) {
        if (words.equals(phrase)) {
            return EXACT;
        }
        long common = words.stream().filter(phrase::contains).count();
        double dice = 2.0 * common / (words.size() + phrase.size());
        boolean vetoed = words.stream().anyMatch(word -> VETOES.contains(word) && !phrase.contains(word));
        boolean ofOther = phrase.stream().anyMatch(word -> SUBJECTS.contains(word) && !words.contains(word));
        return dice < LEAST_DICE || vetoed || ofOther ? 0 : Math.min(dice, BARE);
    }
}
