package org.spanroom.input;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import org.spanroom.config.RunConfig;
import org.spanroom.config.ValueWords;
import org.spanroom.finding.FindingCode;
import org.spanroom.model.Answer;
import org.spanroom.model.BoreShape;
import org.spanroom.model.Cable;
import org.spanroom.model.Circumstances;
import org.spanroom.model.Condition;
import org.spanroom.model.Contents;
import org.spanroom.model.Duct;
import org.spanroom.model.Innerduct;
import org.spanroom.model.Service;
import org.spanroom.model.Term;

/**
 * From the values of a feature to the duct that its line is drawn along.
 *
 * <p>A city has few distinct contents and words, so each is kept once and shared.
 */
final class DuctMapper {
    private final FeatureValues values;
    private final WordMeanings words;
    private final CatalogSizes sizes;
    private final ContentsTable table;
    private final Map<SimpleContents, Contents> distinctContents = new HashMap<>();
    private final Map<Circumstances, Circumstances> distinctCircumstances = new HashMap<>();
    private final Map<String, String> distinctWords = new HashMap<>();
    private final Interner interner = new Interner();

    DuctMapper(RunConfig config, FeatureValues values, ContentsTable table) {
        this.values = values;
        this.words = WordMeanings.of(config.values());
        this.sizes = new CatalogSizes(config);
        this.table = table;
    }

    /** Returns the duct of the feature at hand. */
    Duct map() {
        String named = values.text(Term.DUCT);
        String id = interner.one(named.isEmpty() ? values.featureId() : named);
        String bankId = interner.one(values.textQuietly(Term.DUCT_BANK));
        String type = shared(values.textOrAssumed(Term.DUCT_TYPE));
        lookUp(
                Term.DUCT_SIZE,
                Term.INSIDE_DIAMETER,
                name -> sizes.offerDuct(values.offers(), name, type, plainShape()));
        BoreShape shape = shape();
        double insideMm = values.numberOrAssumed(Term.INSIDE_DIAMETER);
        boolean directBuried = words.directBuried().contains(ValueWords.fold(type));
        String material = shared(values.textOrAssumed(Term.DUCT_MATERIAL));
        Contents contents = contents(id);
        boolean flooded = values.meaning(Term.FLOODED, words.flooded(), WordMeanings.OUR_FLOODED, false);
        Condition condition =
                values.meaning(Term.CONDITION, words.condition(), WordMeanings.OUR_CONDITION, Condition.UNKNOWN);
        String surface = shared(values.textOrAssumed(Term.SURFACE));
        String owner = shared(values.textOrAssumed(Term.OWNER));
        var duct = new Duct(
                id,
                bankId,
                shape,
                insideMm,
                type,
                material,
                directBuried,
                contents,
                flooded,
                condition,
                surface,
                owner,
                year(),
                circumstances(),
                values.assumedTerms(),
                values.catalogUse());
        tellOverfill(duct);
        return duct;
    }

    /** Lets the catalogue offer sizes by a name that may stand instead of them, and tells of a name that no row has. */
    private void lookUp(Term term, Term size, Function<String, Optional<String>> offering) {
        boolean onlyByName = values.isMapped(term) && !values.isMapped(size);
        String name = onlyByName ? values.text(term) : values.textQuietly(term);
        offering.apply(name).ifPresent(problem -> values.add(FindingCode.CATALOGUE_NAME_UNKNOWN, term, () -> problem));
    }

    /** The recorded shape, without a word on one that is missing or not understood. */
    private Optional<BoreShape> plainShape() {
        return Optional.ofNullable(words.shape().get(ValueWords.fold(values.textQuietly(Term.BORE_SHAPE))));
    }

    private BoreShape shape() {
        Optional<BoreShape> offered = values.offers().findShape();
        if (offered.isEmpty()) {
            return values.meaning(Term.BORE_SHAPE, words.shape(), WordMeanings.OUR_SHAPE, BoreShape.ROUND);
        }
        CatalogOffers.Offer offer = values.offers().find(Term.BORE_SHAPE).orElseThrow();
        Optional<BoreShape> recorded = values.recordedMeaning(Term.BORE_SHAPE, words.shape());
        if (recorded.isEmpty()) {
            values.take(Term.BORE_SHAPE, offer);
        } else if (!offer.assumed() && recorded.get() != offered.get()) {
            values.add(
                    FindingCode.CATALOGUE_DISAGREES,
                    Term.BORE_SHAPE,
                    () -> "the bore is recorded as " + word(recorded.get()) + ", the catalogue's '" + offer.row()
                            + "' is " + word(offered.get()));
        }
        return recorded.orElseGet(offered::get);
    }

    private static String word(BoreShape shape) {
        return shape.name().toLowerCase(Locale.ROOT);
    }

    String shared(String word) {
        return word.isEmpty() ? word : distinctWords.computeIfAbsent(word, key -> key);
    }

    private OptionalInt year() {
        double year = values.number(Term.YEAR);
        return Double.isNaN(year) ? OptionalInt.empty() : interner.one(OptionalInt.of((int) year));
    }

    private Circumstances circumstances() {
        double circuits = values.numberOrAssumed(Term.CIRCUITS_AT_RISK);
        var found = new Circumstances(
                answer(Term.OWNER_CONSENT),
                answer(Term.LOOSE_CABLE_ALLOWED),
                answer(Term.SPLICE_INSIDE),
                answer(Term.INNERDUCT_FIXED),
                Double.isNaN(circuits) ? OptionalInt.empty() : OptionalInt.of((int) circuits),
                shared(values.textQuietly(Term.JOINT_OWNERS)),
                values.dateQuietly(Term.EMBARGO_UNTIL));
        return distinctCircumstances.computeIfAbsent(found, key -> key);
    }

    private Answer answer(Term term) {
        return values.meaning(term, words.answer(), WordMeanings.OUR_ANSWER, Answer.UNKNOWN);
    }

    private Contents contents(String ductId) {
        Optional<ContentsTable.Listed> listed = table.find(ductId);
        if (listed.isPresent()) {
            values.assume(listed.get().assumed());
            values.use(listed.get().catalogUse());
            return listed.get().contents();
        }
        return simpleContents()
                .map(simple -> distinctContents.computeIfAbsent(simple, SimpleContents::contents))
                .orElse(Contents.UNKNOWN);
    }

    /** Empty where a count, or the size of something that is there, is neither recorded nor assumed. */
    private Optional<SimpleContents> simpleContents() {
        double innerducts = values.numberOrAssumed(Term.INNERDUCT_COUNT);
        double cables = values.numberOrAssumed(Term.CABLE_COUNT);
        if (Double.isNaN(innerducts) || Double.isNaN(cables)) {
            return Optional.empty();
        }
        SimpleContents simple = withInnerducts((int) innerducts);
        simple = withCables(simple, (int) cables);
        if (innerducts > 0 && cables > innerducts) {
            values.add(
                    FindingCode.CABLES_EXCEED_INNERDUCTS,
                    Term.CABLE_COUNT,
                    () -> (int) cables + " cables are recorded in " + (int) innerducts + " innerducts");
        }
        boolean sized = (innerducts == 0 || simple.wallMm() > 0)
                && (cables == 0 || (simple.cableOutsideMm() > 0 && simple.cableMassKgPerM() >= 0));
        return sized ? Optional.of(simple) : Optional.empty();
    }

    private SimpleContents withInnerducts(int count) {
        if (count == 0) {
            return SimpleContents.EMPTY;
        }
        lookUp(
                Term.INNERDUCT_SIZE,
                Term.INNERDUCT_OUTSIDE_DIAMETER,
                name -> sizes.offerInnerduct(values.offers(), name));
        double outsideMm = values.numberOrAssumed(Term.INNERDUCT_OUTSIDE_DIAMETER);
        return new SimpleContents(count, outsideMm, wallMm(outsideMm), 0, 0, 0, Service.UNKNOWN, true);
    }

    private SimpleContents withCables(SimpleContents pipes, int count) {
        if (count == 0) {
            return pipes;
        }
        lookUp(Term.CABLE_TYPE, Term.CABLE_OUTSIDE_DIAMETER, name -> sizes.offerCable(values.offers(), name));
        double outsideMm = values.numberOrAssumed(Term.CABLE_OUTSIDE_DIAMETER);
        double massKgPerM = values.numberOrAssumed(Term.CABLE_MASS);
        Service service = values.meaning(Term.IN_SERVICE, words.service(), WordMeanings.OUR_SERVICE, Service.UNKNOWN);
        return new SimpleContents(
                pipes.innerducts(),
                pipes.innerductOutsideMm(),
                pipes.wallMm(),
                count,
                outsideMm,
                massKgPerM,
                service,
                answer(Term.CABLE_MAY_MOVE) != Answer.NO);
    }

    /** The wall itself where it is recorded, else that of the SDR; where neither is, the assumed wall before the assumed SDR. */
    private double wallMm(double outsideMm) {
        double wallMm = values.isMapped(Term.INNERDUCT_WALL) ? values.number(Term.INNERDUCT_WALL) : FeatureValues.NONE;
        if (2 * wallMm >= outsideMm) {
            double tooThickMm = wallMm;
            values.add(
                    FindingCode.UNUSABLE_VALUE,
                    Term.INNERDUCT_WALL,
                    () -> "a wall of " + Quantities.shown(Term.INNERDUCT_WALL, tooThickMm) + " leaves no bore in "
                            + Quantities.shown(Term.INNERDUCT_OUTSIDE_DIAMETER, outsideMm));
            wallMm = FeatureValues.NONE;
        }
        if (!Double.isNaN(wallMm)) {
            return wallMm;
        }
        double sdrRatio = values.numberOrOffered(Term.INNERDUCT_SDR);
        if (Double.isNaN(sdrRatio)) {
            double assumedMm = values.assumedWallMm(outsideMm);
            if (!Double.isNaN(assumedMm)) {
                return assumedMm;
            }
            sdrRatio = values.assumedNumber(Term.INNERDUCT_SDR);
        }
        return sdrRatio > 2 ? outsideMm / sdrRatio : FeatureValues.NONE;
    }

    private void tellOverfill(Duct duct) {
        double areaMm2 = 0;
        for (Innerduct innerduct : duct.contents().innerducts()) {
            areaMm2 += innerduct.areaMm2();
        }
        for (Cable cable : duct.contents().looseCables()) {
            areaMm2 += cable.areaMm2();
        }
        double filledMm2 = areaMm2;
        if (filledMm2 > duct.boreAreaMm2()) {
            values.add(
                    FindingCode.CONTENTS_OVERFILL,
                    "",
                    () -> "contents of " + Math.round(filledMm2) + " mm2 in a bore of " + Math.round(duct.boreAreaMm2())
                            + " mm2");
        }
    }
}
