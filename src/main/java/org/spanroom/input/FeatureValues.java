package org.spanroom.input;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.spanroom.config.RunConfig;
import org.spanroom.config.ValueWords;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.model.CatalogUse;
import org.spanroom.model.Term;
import org.spanroom.model.Unit;

/**
 * The values of one feature as its terms demand them: in our units, checked, with the assumed value where there is none. One
 * object reads all features of a layer in turn; what is wrong goes to the layer's log.
 */
final class FeatureValues {
    /** What {@link #number} returns where nothing usable is recorded; package-internal, to spare millions of objects. */
    static final double NONE = Double.NaN;

    /** Length of a day in ISO 8601; a time may follow. */
    private static final int ISO_DAY = 10;

    private final RunConfig config;
    private final LayerFields fields;
    private final CappedLog log;
    private final Set<String> missingWords;
    private final Set<String> unknownWords;
    private final Set<Term> assumed = EnumSet.noneOf(Term.class);
    private final Set<Term> recorded = EnumSet.noneOf(Term.class);
    private final Map<Set<Term>, Set<Term>> assumedSets = new HashMap<>();
    private final CatalogOffers offers = new CatalogOffers();
    private final Map<CatalogUse, CatalogUse> distinctUses = new HashMap<>();
    private CatalogUse listedUse = CatalogUse.NONE;

    private List<@Nullable Object> values = List.of();
    private String featureId = "";
    private double lonDeg;
    private double latDeg;

    FeatureValues(RunConfig config, LayerFields fields, CappedLog log) {
        this.config = config;
        this.fields = fields;
        this.log = log;
        this.missingWords = Set.copyOf(config.values().missing());
        this.unknownWords = Set.copyOf(config.values().serviceUnknown());
    }

    /** Turns to a next feature. */
    void start(SourceFeature feature, Term idTerm, double atLonDeg, double atLatDeg) {
        values = feature.values();
        lonDeg = atLonDeg;
        latDeg = atLatDeg;
        assumed.clear();
        offers.clear();
        listedUse = CatalogUse.NONE;
        featureId = Long.toString(feature.number());
        String name = text(idTerm);
        if (!name.isEmpty()) {
            featureId = name;
        }
    }

    /** Returns the owner's name of the feature, or its number in the layer where it has none. */
    String featureId() {
        return featureId;
    }

    /** Returns the terms that the values read so far were assumed for; one object for equal sets. */
    Set<Term> assumedTerms() {
        Set<Term> known = assumedSets.get(assumed);
        if (known == null) {
            known = Set.copyOf(assumed);
            assumedSets.put(known, known);
        }
        return known;
    }

    /** Notes terms that were assumed elsewhere for this feature. */
    void assume(Set<Term> terms) {
        assumed.addAll(terms);
    }

    /** Notes what a table's rows of this feature took from the catalogue. */
    void use(CatalogUse ofTable) {
        listedUse = ofTable;
    }

    /** Returns what rows of the catalogue offer for the feature at hand. */
    CatalogOffers offers() {
        return offers;
    }

    /** Returns what was taken from the catalogue so far; one object for equal uses. */
    CatalogUse catalogUse() {
        return distinctUses.computeIfAbsent(offers.use().and(listedUse), key -> key);
    }

    boolean isMapped(Term term) {
        return fields.find(term).isPresent();
    }

    /** Returns the recorded text, or "" and a finding where the term is mapped but has none. */
    String text(Term term) {
        String text = textQuietly(term);
        if (text.isEmpty()) {
            fields.find(term).ifPresent(column -> missing(term, column));
        }
        return text;
    }

    String textQuietly(Term term) {
        LayerFields.Column column = fields.find(term).orElse(null);
        Object value = column == null ? null : values.get(column.index());
        if (value == null) {
            return "";
        }
        String text = SourceNumber.text(value);
        if (text.isEmpty() || missingWords.contains(ValueWords.fold(text))) {
            return "";
        }
        recorded.add(term);
        return text;
    }

    /** Returns the recorded day, or nothing; a text that is no day of the calendar is a finding. */
    Optional<LocalDate> dateQuietly(Term term) {
        String text = textQuietly(term);
        if (text.isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(LocalDate.parse(text.length() > ISO_DAY ? text.substring(0, ISO_DAY) : text));
        } catch (DateTimeParseException e) {
            add(FindingCode.UNUSABLE_VALUE, term, () -> "'" + text + "' is no day written as 2027-03-31");
            return Optional.empty();
        }
    }

    String textOrAssumed(Term term) {
        String text = text(term);
        return text.isEmpty() ? assumedWord(term) : text;
    }

    /** Returns what the recorded word means, or what the assumed one means where it is missing or in no list. */
    <T> T meaning(Term term, Map<String, T> meanings, Map<String, T> ofAssumed, T otherwise) {
        Optional<T> recordedMeaning = recordedMeaning(term, meanings);
        if (recordedMeaning.isPresent()) {
            return recordedMeaning.get();
        }
        T assumedMeaning = ofAssumed.get(assumedWord(term));
        return assumedMeaning == null ? otherwise : assumedMeaning;
    }

    /** Returns what the recorded word means; empty, and a finding, where it is missing or in no list. */
    <T> Optional<T> recordedMeaning(Term term, Map<String, T> meanings) {
        String text = text(term);
        if (!text.isEmpty()) {
            String word = ValueWords.fold(text);
            T meaning = meanings.get(word);
            if (meaning != null) {
                return Optional.of(meaning);
            }
            LayerFields.Column column = fields.find(term).orElseThrow();
            if (unknownWords.contains(word)) {
                missing(term, column);
            } else {
                add(
                        FindingCode.UNUSABLE_VALUE,
                        column.field(),
                        () -> "'" + text + "' stands in no list of words for " + term.key());
            }
        }
        return Optional.empty();
    }

    private String assumedWord(Term term) {
        Optional<String> word = config.assumed().findWord(term);
        if (word.isPresent()) {
            assumed.add(term);
        }
        return word.orElse("");
    }

    /** Returns the assumed wall of an innerduct, if one is assumed and leaves a bore. */
    double assumedWallMm(double outsideMm) {
        double wallMm = config.assumed().findNumber(Term.INNERDUCT_WALL).orElse(NONE);
        return 2 * wallMm < outsideMm ? assumedNumber(Term.INNERDUCT_WALL) : NONE;
    }

    /** Returns the recorded number in the unit that is kept, or the catalogue's, or the assumed one, or {@link #NONE}. */
    double numberOrAssumed(Term term) {
        double number = numberOrOffered(term);
        return Double.isNaN(number) ? assumedNumber(term) : number;
    }

    /** Returns the recorded number, else the catalogue's; {@link #NONE} where there is neither. */
    double numberOrOffered(Term term) {
        double number = number(term);
        if (!Double.isNaN(number)) {
            return number;
        }
        return offers.find(term).map(offer -> take(term, offer)).orElse(NONE);
    }

    /** Takes what the catalogue gives for a term; one that a default names counts as assumed. */
    double take(Term term, CatalogOffers.Offer offer) {
        if (offer.assumed()) {
            assumed.add(term);
        }
        return offers.take(term, offer);
    }

    double assumedNumber(Term term) {
        double number = config.assumed().findNumber(term).orElse(NONE);
        if (!Double.isNaN(number)) {
            assumed.add(term);
        }
        return number;
    }

    /** Returns the recorded number in the unit that is kept, or {@link #NONE} and a finding where it is of no use. */
    double number(Term term) {
        LayerFields.Column column = fields.find(term).orElse(null);
        if (column == null) {
            return NONE;
        }
        Object value = values.get(column.index());
        if (value == null || isMissing(value)) {
            missing(term, column);
            return NONE;
        }
        recorded.add(term);
        return value instanceof Number number
                ? kept(term, column, number.doubleValue(), column.unit())
                : parsed(term, column, SourceNumber.text(value));
    }

    private boolean isMissing(Object value) {
        if (value instanceof Number) {
            return false;
        }
        String word = ValueWords.fold(value.toString());
        return word.isEmpty() || missingWords.contains(word);
    }

    private double parsed(Term term, LayerFields.Column column, String text) {
        Optional<SourceNumber> number = SourceNumber.parse(text)
                .filter(found -> found.unit().isEmpty()
                        || column.unit()
                                .map(Unit::dimension)
                                .equals(found.unit().map(Unit::dimension)));
        if (number.isEmpty()) {
            add(
                    FindingCode.UNUSABLE_VALUE,
                    column.field(),
                    () -> "'" + text + "' is not a number that " + term.key() + " can be read from");
            return NONE;
        }
        return kept(term, column, number.get().inUnit(), number.get().unit().or(column::unit));
    }

    private double kept(Term term, LayerFields.Column column, double inUnit, Optional<Unit> unit) {
        double kept = Quantities.kept(term, inUnit, unit);
        if (!Double.isFinite(kept) || (term.kind() == Term.Kind.COUNT && kept != Math.rint(kept))) {
            add(
                    FindingCode.UNUSABLE_VALUE,
                    column.field(),
                    () -> SourceNumber.canonical(inUnit) + " is not a value for " + term.key());
            return NONE;
        }
        if (!config.plausible().contains(term, kept)) {
            add(
                    FindingCode.IMPLAUSIBLE_VALUE,
                    column.field(),
                    () -> Quantities.implausible(term, inUnit, unit, config.plausible()) + assumedInstead(term));
            return NONE;
        }
        offers.disagreement(term, kept)
                .ifPresent(detail -> add(FindingCode.CATALOGUE_DISAGREES, column.field(), () -> detail));
        return kept;
    }

    private void missing(Term term, LayerFields.Column column) {
        if (offers.findNamed(term).isPresent()) {
            return;
        }
        add(
                FindingCode.MISSING_VALUE,
                column.field(),
                () -> "no " + term.key() + " is recorded" + assumedInstead(term));
    }

    private String assumedInstead(Term term) {
        Optional<CatalogOffers.Offer> offer = offers.find(term);
        if (offer.isPresent()) {
            String verb = offer.get().assumed() ? "; assumed" : "; taken from";
            return verb + " the catalogue's '" + offer.get().row() + "'";
        }
        var number = config.assumed().findNumber(term);
        if (number.isPresent()) {
            return "; assumed " + Quantities.shown(term, number.getAsDouble());
        }
        return config.assumed().findWord(term).map(word -> "; assumed " + word).orElse("");
    }

    /** Notes something about the feature at hand. */
    void add(FindingCode code, String field, Supplier<String> detail) {
        log.add(
                code,
                field,
                () -> Finding.of(code, log.source(), featureId, detail.get())
                        .inField(field)
                        .at(lonDeg, latDeg));
    }

    /** Notes something about a term of the feature at hand, under its field's name where it is mapped. */
    void add(FindingCode code, Term term, Supplier<String> detail) {
        add(code, fields.find(term).map(LayerFields.Column::field).orElse(""), detail);
    }

    /** Tells of mapped fields that the layer does not have; to be called when it has been read. */
    void tellAbsentFields(LayerHeader header) {
        var absent = new TreeMap<String, String>();
        for (Term term : Term.values()) {
            fields.find(term)
                    .filter(column ->
                            !recorded.contains(term) && !header.fields().contains(column.field()))
                    .ifPresent(column -> absent.put(column.field(), term.key()));
        }
        absent.forEach((field, term) -> log.layer(
                FindingCode.LAYER_ISSUE,
                "the layer has no field '" + field + "', which the config names for " + term + "; "
                        + hint(field, header)
                        + "its fields are " + String.join(", ", header.fields())));
    }

    private static String hint(String field, LayerHeader header) {
        return LayerFields.findShortened(field, header.fields())
                .map(shortened -> "'" + shortened
                        + "' may be it, but other fields of the config begin alike, and a Shapefile keeps"
                        + " ten characters: name each as the file has it; ")
                .orElse("");
    }
}
