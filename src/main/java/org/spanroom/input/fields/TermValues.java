package org.spanroom.input.fields;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.spanroom.config.AssumedValues;
import org.spanroom.config.PlausibleRanges;
import org.spanroom.config.RunConfig;
import org.spanroom.config.ValueWords;
import org.spanroom.finding.FindingCode;
import org.spanroom.input.layer.CappedLog;
import org.spanroom.input.layer.SourceNumber;
import org.spanroom.model.Answer;
import org.spanroom.model.Term;
import org.spanroom.model.Unit;
import org.spanroom.model.network.RejectedValue;

/**
 * What counts for each term of one feature, or of one row of a table, in the unit that is kept: the recorded value where it can be read and
 * is plausible, else the catalog's, else the configured default. A recorded value that is missing, unusable or implausible is a finding,
 * and so is one that differs from the catalog row that the data names.
 *
 * <p>This is the one place of that rule; subclasses know only where values are and how a finding is placed.
 */
abstract class TermValues {
    /** What {@link #number} returns where nothing usable is recorded; package-internal, to spare millions of objects. */
    static final double NONE = Double.NaN;

    /** Terms that are recorded for exceptions only: an empty value says that there is none, and is not missing. */
    private static final Set<Term> EXCEPTIONS_ONLY =
            Collections.unmodifiableSet(EnumSet.of(Term.POSITIONS_RESERVED, Term.BESIDE_ALLOWED));

    /** Terms that only crews need, or few records have: an empty value is unknown, and not worth a finding for each feature. */
    private static final Set<Term> FOR_CREWS = Collections.unmodifiableSet(EnumSet.of(
            Term.VAULT_DEPTH,
            Term.VAULT_LENGTH,
            Term.VAULT_WIDTH,
            Term.VAULT_HEIGHT,
            Term.COVER_SIZE,
            Term.GAS_FOUND,
            Term.SLACK_A,
            Term.SLACK_B,
            Term.CONTINUOUS_AT_A,
            Term.CONTINUOUS_AT_B,
            Term.JOINT_POWER));

    private final AssumedValues defaults;
    private final PlausibleRanges plausible;
    private final WordMeanings words;
    private final Set<String> missingWords;
    private final Set<String> unknownWords;
    private final Set<Term> assumed = EnumSet.noneOf(Term.class);
    private final List<RejectedValue> rejected = new ArrayList<>();
    private final Set<Term> everRecorded = EnumSet.noneOf(Term.class);
    private final CatalogOffers offers = new CatalogOffers();
    private final FieldUnits units;

    TermValues(RunConfig config) {
        this.defaults = config.assumed();
        this.plausible = config.plausible();
        this.units = new FieldUnits(config.plausible());
        this.words = WordMeanings.of(config.values());
        this.missingWords = Set.copyOf(config.values().missing());
        this.unknownWords = Set.copyOf(config.values().serviceUnknown());
    }

    /** Returns where a term's values are; empty where they are nowhere, so that none can be missing. */
    abstract Optional<LayerFields.Column> find(Term term);

    /** Returns the current value in a column, as it is recorded. */
    abstract @Nullable Object value(LayerFields.Column column);

    /** Notes something about the feature or row at hand. */
    public abstract void add(FindingCode code, String field, Supplier<String> detail);

    /** Returns what findings call a term. */
    String called(Term term) {
        return term.key();
    }

    /** Notes something about a term at hand, under its field's name where it is mapped. */
    public final void add(FindingCode code, Term term, Supplier<String> detail) {
        add(code, find(term).map(LayerFields.Column::field).orElse(""), detail);
    }

    /** Forgets what was assumed, rejected and offered; to be called for each next feature or row. */
    final void clear() {
        assumed.clear();
        rejected.clear();
        offers.clear();
    }

    final WordMeanings words() {
        return words;
    }

    /** Returns the terms for which a default was used since the last clearing. */
    final Set<Term> assumed() {
        return assumed;
    }

    /** Returns what was recorded and could not be used since the last clearing. */
    final List<RejectedValue> rejected() {
        return rejected;
    }

    /** Notes a value that was recorded and cannot be used, with a finding; its value is unknown or assumed. */
    final void reject(FindingCode code, Term term, String recorded, String why) {
        rejected.add(new RejectedValue(term.key(), recorded, why));
        add(code, term, () -> why);
    }

    /** Returns what rows of the catalog offer for the feature or row at hand. */
    final CatalogOffers offers() {
        return offers;
    }

    final boolean isMapped(Term term) {
        return find(term).isPresent();
    }

    /** Returns whether any feature or row so far had a value for a term. */
    final boolean wasEverRecorded(Term term) {
        return everRecorded.contains(term);
    }

    /** Returns the recorded text, or "" and a finding where the term is mapped but has none. */
    public final String text(Term term) {
        String text = textQuietly(term);
        if (text.isEmpty()) {
            find(term).ifPresent(column -> missing(term, column));
        }
        return text;
    }

    public final String textQuietly(Term term) {
        LayerFields.Column column = find(term).orElse(null);
        Object value = column == null ? null : value(column);
        String text = value == null ? "" : SourceNumber.text(value);
        if (text.isEmpty() || saysMissing(text)) {
            return "";
        }
        everRecorded.add(term);
        return text;
    }

    /** Returns whether a text means no value. */
    final boolean saysMissing(String text) {
        return missingWords.contains(ValueWords.fold(text));
    }

    public final String textOrAssumed(Term term) {
        String text = text(term);
        return text.isEmpty() ? assumedWord(term) : text;
    }

    /** Returns the recorded answer, else the assumed one, else that it is unknown. */
    public final Answer answer(Term term) {
        return meaning(term, words.answer(), WordMeanings.OUR_ANSWER, Answer.UNKNOWN);
    }

    /** Returns what the recorded word means, else the catalog's, else the assumed one, which are words of ours. */
    final <T> T meaning(Term term, Map<String, T> meanings, Map<String, T> ofOurs, T otherwise) {
        Optional<T> recorded = recordedMeaning(term, meanings);
        if (recorded.isPresent()) {
            offers.otherWord(term, recorded.get())
                    .ifPresent(detail -> add(FindingCode.CATALOG_DISAGREES, term, () -> detail));
            return recorded.get();
        }
        T meaning = ofOurs.get(
                offers.find(term).map(offer -> take(term, offer).word()).orElseGet(() -> assumedWord(term)));
        return meaning == null ? otherwise : meaning;
    }

    /** Returns what the recorded word means; empty, and a finding, where it is missing or in no list. */
    private <T> Optional<T> recordedMeaning(Term term, Map<String, T> meanings) {
        String text = text(term);
        if (text.isEmpty()) {
            return Optional.empty();
        }
        String word = ValueWords.fold(text);
        T meaning = meanings.get(word);
        if (meaning == null) {
            LayerFields.Column column = find(term).orElseThrow();
            if (unknownWords.contains(word)) {
                missing(term, column);
            } else {
                unusable(term, text, "'" + text + "' is not in any word list for " + called(term));
            }
        }
        return Optional.ofNullable(meaning);
    }

    private String assumedWord(Term term) {
        Optional<String> word = defaults.findWord(term);
        if (word.isPresent()) {
            assumed.add(term);
        }
        return word.orElse("");
    }

    /** Returns the recorded number in the unit that is kept, or the catalog's, or the assumed one, or {@link #NONE}. */
    public final double numberOrAssumed(Term term) {
        double number = numberOrOffered(term);
        return Double.isNaN(number) ? assumedNumber(term) : number;
    }

    /** Returns the recorded number, else the catalog's; {@link #NONE} where there is neither. */
    final double numberOrOffered(Term term) {
        double number = number(term);
        if (!Double.isNaN(number)) {
            return number;
        }
        return offers.find(term).map(offer -> take(term, offer).kept()).orElse(NONE);
    }

    /** Takes what the catalog gives for a term; one that a default names is treated as assumed. */
    private CatalogOffers.Offer take(Term term, CatalogOffers.Offer offer) {
        if (offer.assumed()) {
            assumed.add(term);
        }
        return offers.take(term, offer);
    }

    /** Returns the assumed number, or {@link #NONE}. */
    public final double assumedNumber(Term term) {
        return assumedNumberBelow(Double.POSITIVE_INFINITY, term);
    }

    /** Returns the assumed number if there is one that is less than a limit; else {@link #NONE}. */
    final double assumedNumberBelow(double limit, Term term) {
        double number = defaults.findNumber(term).orElse(NONE);
        if (!(number < limit)) {
            return NONE;
        }
        assumed.add(term);
        return number;
    }

    /** Returns the recorded number in the unit that is kept, or {@link #NONE} and a finding where it is of no use. */
    public final double number(Term term) {
        LayerFields.Column column = find(term).orElse(null);
        if (column == null) {
            return NONE;
        }
        Object value = value(column);
        if (value == null || isMissing(value)) {
            missing(term, column);
            return NONE;
        }
        everRecorded.add(term);
        return value instanceof Number number
                ? kept(term, column, number.doubleValue(), column.unit())
                : parsed(term, column, SourceNumber.text(value));
    }

    private boolean isMissing(Object value) {
        return !(value instanceof Number) && (value.toString().isBlank() || saysMissing(value.toString()));
    }

    private double parsed(Term term, LayerFields.Column column, String text) {
        Optional<SourceNumber> number = SourceNumber.parse(text)
                .filter(found -> found.unit().isEmpty()
                        || column.unit()
                                .map(Unit::dimension)
                                .equals(found.unit().map(Unit::dimension)));
        if (number.isEmpty()) {
            unusable(term, text, "'" + text + "' is not a valid number for " + called(term));
            return NONE;
        }
        return kept(term, column, number.get().inUnit(), number.get().unit().or(column::unit));
    }

    private double kept(Term term, LayerFields.Column column, double inUnit, Optional<Unit> unit) {
        double kept = TermNumbers.kept(term, inUnit, unit);
        if (!Double.isFinite(kept) || (term.kind() == Term.Kind.COUNT && kept != Math.rint(kept))) {
            String text = SourceNumber.brief(inUnit);
            unusable(term, text, text + " is not a valid value for " + called(term));
            return NONE;
        }
        boolean isPlausible = plausible.contains(term, kept);
        units.see(term, column, inUnit, isPlausible || !unit.equals(column.unit()));
        if (!isPlausible) {
            String why = TermNumbers.implausible(term, inUnit, unit, plausible);
            rejected.add(new RejectedValue(term.key(), TermNumbers.written(inUnit, unit), why));
            add(FindingCode.IMPLAUSIBLE_VALUE, column.field(), () -> why + assumedInstead(term));
            return NONE;
        }
        offers.disagreement(term, kept)
                .ifPresent(detail -> add(FindingCode.CATALOG_DISAGREES, column.field(), () -> detail));
        return kept;
    }

    /** Reports the fields whose unit is doubtful; to be called when all features or rows have been read. */
    public final void reportUnits(CappedLog log) {
        units.report(log);
    }

    private void unusable(Term term, String recorded, String why) {
        reject(FindingCode.UNUSABLE_VALUE, term, recorded, why);
    }

    private void missing(Term term, LayerFields.Column column) {
        boolean needed = !EXCEPTIONS_ONLY.contains(term) && !FOR_CREWS.contains(term);
        if (needed && offers.findNamed(term).isEmpty()) {
            add(
                    FindingCode.MISSING_VALUE,
                    column.field(),
                    () -> "no " + called(term) + " is recorded" + assumedInstead(term));
        }
    }

    private String assumedInstead(Term term) {
        Optional<CatalogOffers.Offer> offer = offers.find(term);
        if (offer.isPresent()) {
            String verb = offer.get().assumed() ? "; assumed" : "; taken from";
            return verb + " the catalog's '" + offer.get().row() + "'";
        }
        var number = defaults.findNumber(term);
        if (number.isPresent()) {
            return "; assumed " + TermNumbers.shown(term, number.getAsDouble());
        }
        return defaults.findWord(term).map(word -> "; assumed " + word).orElse("");
    }
}
