package org.spanroom.input.proposal;

import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.spanroom.config.PlausibleRanges;
import org.spanroom.config.ValueWords;
import org.spanroom.model.Term;
import org.spanroom.model.Unit;

/** Judges whether a field may be a term, by its name and its values, and in which unit. */
final class TermJudge {
    private static final double MOST_SHARE = 0.8;
    private static final double HALF_SHARE = 0.5;
    private static final double VALUES_ONLY = 0.6;
    private static final double FILLED_SHARE = 0.9;
    private static final double NEARLY_UNIQUE_SHARE = 0.95;
    private static final double WELL_NAMED = 0.95;
    private static final Set<Term> PROVED_BY_WORDS = Set.of(Term.DUCT_MATERIAL, Term.CONDITION, Term.BORE_SHAPE);

    /** A number or letter, or two of them for row and column. */
    private static final Pattern HOLE = Pattern.compile("[\\p{L}\\d]{1,3}(\\s*[/-]\\s*[\\p{L}\\d]{1,3})?");

    private final LayerSample sample;
    private final PlausibleRanges ranges;
    private final ValueVocabulary vocabulary;
    private final Measures measures;

    /** The units that the lines beside this layer are recorded in, where they are sure. */
    record Measures(Optional<Unit> lengths, Optional<Unit> diameters) {
        static final Measures UNKNOWN = new Measures(Optional.empty(), Optional.empty());
    }

    TermJudge(LayerSample sample, PlausibleRanges ranges, ValueWords words, Measures measures) {
        this.sample = sample;
        this.ranges = ranges;
        this.vocabulary = new ValueVocabulary(words);
        this.measures = measures;
    }

    ValueVocabulary vocabulary() {
        return vocabulary;
    }

    Optional<Candidate> judge(int place, Term term) {
        SeenField field = sample.fields().get(place);
        double score = TermPhrases.score(field.name(), term);
        if (field.isEmpty()) {
            return Optional.empty();
        }
        if (score == 0) {
            return vocabulary.suggests(term, field) && !TermPhrases.isOfOtherThing(field.name())
                    ? Optional.of(new Candidate(
                            place,
                            term,
                            VALUES_ONLY,
                            UnitGuess.NONE,
                            new Doubt("found by its values, not by its name")))
                    : Optional.empty();
        }
        return switch (term) {
            case ROUTE, VAULT, ZONE -> id(place, field, term, score);
            case DUCT, DUCT_BANK -> shared(place, field, term, score);
            case YEAR -> year(place, field, score);
            default -> ofKind(place, field, term, score);
        };
    }

    private static Optional<Candidate> candidate(int place, Term term, double score, UnitGuess unit, Doubt doubt) {
        return Optional.of(new Candidate(place, term, score, unit, doubt));
    }

    private Optional<Candidate> id(int place, SeenField field, Term term, double score) {
        if (!field.mayNameThings() || field.unit().isPresent()) {
            return Optional.empty();
        }
        // A few twins are faults of the data where the name leaves no doubt.
        boolean unique = field.isUnique() || (score >= WELL_NAMED && field.distinctShare() >= NEARLY_UNIQUE_SHARE);
        Doubt doubt = Doubt.when(!unique, "its values are not unique")
                .or(Doubt.when(score < TermPhrases.LEAST_ID, "a name is not always an id"))
                .or(Doubt.when(field.filled() < FILLED_SHARE * sample.looked(), "many features have no value"));
        return candidate(place, term, score, UnitGuess.NONE, doubt);
    }

    /** Ids that several features may share; few small numbers are a count. */
    private static Optional<Candidate> shared(int place, SeenField field, Term term, double score) {
        if (!field.mayNameThings() || field.unit().isPresent()) {
            return Optional.empty();
        }
        boolean few = field.isWhole() && field.distinctShare() <= HALF_SHARE;
        Doubt doubt = Doubt.when(few, "its numbers repeat like counts").or(nameDoubt(field, score));
        return candidate(place, term, score, UnitGuess.NONE, doubt);
    }

    /** Days and milliseconds since 1970 are numbers too, and no years. */
    private Optional<Candidate> year(int place, SeenField field, double score) {
        boolean years = field.isNumeric()
                && !field.hasDecimals()
                && field.sizeShare(size -> ranges.contains(Term.YEAR, size)) >= MOST_SHARE;
        return years ? candidate(place, Term.YEAR, score, UnitGuess.NONE, exactDoubt(score)) : Optional.empty();
    }

    private static Doubt exactDoubt(double score) {
        return Doubt.when(score < TermPhrases.EXACT, "the name may mean something else");
    }

    private static Doubt nameDoubt(SeenField field, double score) {
        return exactDoubt(score).or(Doubt.when(field.name().cut(), "the name is truncated"));
    }

    private Optional<Candidate> ofKind(int place, SeenField field, Term term, double score) {
        Optional<Unit> named = field.unit();
        if (named.isPresent() && !dimension(term).equals(named.map(Unit::dimension))) {
            return Optional.empty();
        }
        Doubt doubt = nameDoubt(field, score);
        return switch (term.kind()) {
            case TEXT -> text(place, field, term, score);
            case FLAG -> flag(place, field, term, score);
            case COUNT, RATIO -> {
                boolean right = field.isNumeric() && (term.kind() == Term.Kind.RATIO || !field.hasDecimals());
                boolean plausible = field.numberShare(number -> ranges.contains(term, number)) >= MOST_SHARE;
                yield right && plausible
                        ? candidate(place, term, score, UnitGuess.NONE, doubt.or(countDoubt(field, term)))
                        : Optional.empty();
            }
            case LENGTH -> field.isNumeric() ? length(place, field, term, score) : Optional.empty();
            case DIAMETER, MASS_PER_LENGTH, VOLUME -> {
                UnitGuess unit = field.isNumeric() ? UnitGuess.of(term, field, ranges) : UnitGuess.NONE;
                yield unit.unit().isPresent() ? candidate(place, term, score, unit, doubt) : Optional.empty();
            }
        };
    }

    /** "Cable" may be a number of one, "cables" and "cable count" are how many. */
    private static Doubt countDoubt(SeenField field, Term term) {
        boolean bare = field.name().words().size() == 1
                && !Vocabulary.fold(field.name().name()).matches(".*(s|re)$");
        boolean ofThing = term == Term.CABLE_COUNT || term == Term.INNERDUCT_COUNT;
        return Doubt.when(ofThing && bare, "it may be an identifying number, not a count");
    }

    private Optional<Candidate> length(int place, SeenField field, Term term, double score) {
        UnitGuess unit = switch (term) {
            case RECORDED_LENGTH -> LengthUnit.of(sample, place);
            case VAULT_ELEVATION -> LengthUnit.ofElevation(field, measures.lengths(), measures.diameters(), ranges);
            default ->
                field.unit().isPresent()
                        ? UnitGuess.of(term, field, ranges)
                        : new UnitGuess(Optional.of(Unit.M), new Doubt("the unit is not recorded"));
        };
        // A length that agrees with the line needs no other proof.
        boolean proved = term == Term.RECORDED_LENGTH && unit.doubt().isNone() && score == TermPhrases.EXACT;
        return candidate(place, term, score, unit, proved ? Doubt.NONE : nameDoubt(field, score));
    }

    private Optional<Candidate> flag(int place, SeenField field, Term term, double score) {
        double understood = vocabulary.understoodShare(term, field);
        if (understood < HALF_SHARE) {
            return Optional.empty();
        }
        Doubt doubt = Doubt.when(understood < MOST_SHARE, "some values are neither yes nor no");
        return candidate(
                place, term, score, UnitGuess.NONE, nameDoubt(field, score).or(doubt));
    }

    private Optional<Candidate> text(int place, SeenField field, Term term, double score) {
        // Row and column, 2/3, read as a fraction.
        if (field.hasDecimals() && !isSize(term) && !isHole(term)) {
            return Optional.empty();
        }
        // Words of the trade prove what a cut name leaves open.
        boolean proved = PROVED_BY_WORDS.contains(term) && vocabulary.fits(term, field);
        Doubt doubt = (proved ? exactDoubt(score) : nameDoubt(field, score)).or(valueDoubt(field, term));
        return candidate(place, term, score, UnitGuess.NONE, doubt);
    }

    private static boolean isSize(Term term) {
        return Set.of(Term.DUCT_SIZE, Term.INNERDUCT_SIZE, Term.CABLE_TYPE).contains(term);
    }

    private static boolean isHole(Term term) {
        return term == Term.HOLE_A || term == Term.HOLE_B;
    }

    private Doubt valueDoubt(SeenField field, Term term) {
        boolean codes = field.isWhole();
        return switch (term) {
            case DUCT_SIZE, INNERDUCT_SIZE, CABLE_TYPE ->
                Doubt.when(
                        field.textShare(text -> text.matches(".*\\p{L}.*|.*[\"\u2033].*")) < MOST_SHARE,
                        "a catalog row is named by its size with a unit");
            case EMBARGO_UNTIL, ZONE_FROM, ZONE_UNTIL, VAULT_INSPECTED ->
                Doubt.when(
                        field.textShare(text -> text.matches("\\d{4}-\\d{2}-\\d{2}.*")) < MOST_SHARE,
                        "its dates are not in the form 2027-03-31");
            case CONDITION, BORE_SHAPE ->
                Doubt.when(codes, "its values are codes")
                        .or(Doubt.when(!vocabulary.fits(term, field), "its values are not common words for it"))
                        .or(Doubt.when(
                                vocabulary.understoodShare(term, field) < HALF_SHARE,
                                "define its words in the section values first"));
            case IN_SERVICE ->
                Doubt.when(
                        vocabulary.understoodShare(term, field) < HALF_SHARE,
                        "its values do not show whether cables are live");
            case DUCT_TYPE ->
                Doubt.when(codes, "its values are codes")
                        .or(Doubt.when(
                                !Vocabulary.fold(field.name().name())
                                        .matches(".*(duct|rohr|tubo|buis|fourreau|conducto).*"),
                                "it may describe what the line is for"));
            case HOLE_A, HOLE_B ->
                Doubt.when(
                        field.textShare(text -> HOLE.matcher(text).matches()) < MOST_SHARE,
                        "a hole is a number, or row and column as in 2/3");
            case JOINT_OWNERS, ZONE_NAME, ZONE_KIND -> Doubt.NONE;
            default -> Doubt.when(codes, "its values are codes");
        };
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
