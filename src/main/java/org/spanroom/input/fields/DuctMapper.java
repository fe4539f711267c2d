package org.spanroom.input.fields;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.spanroom.config.RunConfig;
import org.spanroom.config.ValueWords;
import org.spanroom.finding.FindingCode;
import org.spanroom.input.layer.Interner;
import org.spanroom.model.Counted;
import org.spanroom.model.Term;
import org.spanroom.model.network.BoreCapacity;
import org.spanroom.model.network.BoreShape;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Circumstances;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.ContentsScenario;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Innerduct;

/**
 * From the values of a feature to the duct that its line is drawn along.
 *
 * <p>A city has few distinct contents and words, so each is kept once and shared.
 */
public final class DuctMapper {
    private final FeatureValues values;
    private final WordMeanings words;
    private final CatalogSizes sizes;
    private final ItemReader items;
    private final ContentsTable table;
    private final Map<SimpleContents, Contents> distinctContents = new HashMap<>();
    private final Map<Circumstances, Circumstances> distinctCircumstances = new HashMap<>();
    private final Map<String, String> distinctWords = new HashMap<>();
    private final Interner interner = new Interner();

    public DuctMapper(RunConfig config, FeatureValues values, ContentsTable table) {
        this.values = values;
        this.words = values.words();
        this.sizes = new CatalogSizes(config);
        this.items = new ItemReader(sizes);
        this.table = table;
    }

    /** Returns the duct of the feature at hand. */
    public Duct map() {
        String named = values.text(Term.DUCT);
        String id = interner.one(named.isEmpty() ? values.featureId() : named);
        String bankId = interner.one(values.textQuietly(Term.DUCT_BANK));
        String type = shared(values.textOrAssumed(Term.DUCT_TYPE));
        sizes.offerDuct(values, type);
        BoreShape shape = values.meaning(Term.BORE_SHAPE, words.shape(), WordMeanings.OUR_SHAPE, BoreShape.ROUND);
        double insideMm = values.numberOrAssumed(Term.INSIDE_DIAMETER);
        boolean directBuried = words.directBuried().contains(ValueWords.fold(type));
        String material = shared(values.textOrAssumed(Term.DUCT_MATERIAL));
        Contents contents = contents(id, shape, insideMm);
        boolean flooded = values.meaning(Term.FLOODED, words.flooded(), WordMeanings.OUR_FLOODED, false);
        Condition condition =
                values.meaning(Term.CONDITION, words.condition(), WordMeanings.OUR_CONDITION, Condition.UNKNOWN);
        String surface = shared(values.textOrAssumed(Term.SURFACE));
        String owner = shared(values.textOrAssumed(Term.OWNER));
        OptionalInt year = year();
        Circumstances circumstances = circumstances();
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
                year,
                circumstances,
                values.assumedTerms(),
                values.catalogUse(),
                values.rejectedValues(),
                values.kept());
        reportOverfill(duct);
        return duct;
    }

    public String shared(String word) {
        return word.isEmpty() ? word : distinctWords.computeIfAbsent(word, key -> key);
    }

    private OptionalInt year() {
        double year = values.number(Term.YEAR);
        return Double.isNaN(year) ? OptionalInt.empty() : interner.one(OptionalInt.of((int) year));
    }

    private Circumstances circumstances() {
        double circuits = values.numberOrAssumed(Term.CIRCUITS_AT_RISK);
        var found = new Circumstances(
                values.answer(Term.OWNER_CONSENT),
                values.answer(Term.LOOSE_CABLE_ALLOWED),
                values.answer(Term.SPLICE_INSIDE),
                values.answer(Term.INNERDUCT_FIXED),
                Double.isNaN(circuits) ? OptionalInt.empty() : OptionalInt.of((int) circuits),
                shared(values.textQuietly(Term.JOINT_OWNERS)),
                values.dateQuietly(Term.EMBARGO_UNTIL),
                values.answer(Term.BESIDE_ALLOWED),
                reserved());
        return distinctCircumstances.computeIfAbsent(found, key -> key);
    }

    private int reserved() {
        double positions = values.number(Term.POSITIONS_RESERVED);
        return Double.isNaN(positions) ? 0 : (int) positions;
    }

    private Contents contents(String ductId, BoreShape shape, double insideMm) {
        Optional<ContentsTable.Listed> listed = table.find(ductId);
        if (listed.isPresent()) {
            values.note(listed.get());
            return listed.get().contents();
        }
        return simpleContents(shape, insideMm)
                .map(simple -> distinctContents.computeIfAbsent(simple, SimpleContents::contents))
                .orElse(Contents.UNKNOWN);
    }

    /** Empty where a count, or the size of something that is there, is neither recorded nor assumed. */
    private Optional<SimpleContents> simpleContents(BoreShape shape, double insideMm) {
        double innerducts = values.numberOrAssumed(Term.INNERDUCT_COUNT);
        double cables = values.numberOrAssumed(Term.CABLE_COUNT);
        if (Double.isNaN(innerducts) || Double.isNaN(cables)) {
            return Optional.empty();
        }
        var simple = new SimpleContents(
                (int) innerducts,
                innerducts > 0 ? Optional.of(items.pipe(values)) : Optional.empty(),
                (int) cables,
                cables > 0 ? Optional.of(items.cable(values)) : Optional.empty());
        if (innerducts > 0 && cables > innerducts) {
            values.add(
                    FindingCode.CABLES_EXCEED_INNERDUCTS,
                    Term.CABLE_COUNT,
                    () -> Counted.of((int) cables, "cable") + " " + Counted.form((int) cables, "is", "are")
                            + " recorded in " + Counted.of((int) innerducts, "innerduct"));
        }
        return Optional.of(simple).filter(SimpleContents::isSized).map(sized -> fitted(sized, shape, insideMm));
    }

    /** Of assumed innerducts there are no more than go into the bore; what is recorded stays as it is recorded. */
    private SimpleContents fitted(SimpleContents sized, BoreShape shape, double insideMm) {
        boolean isAssumed = values.assumed().contains(Term.INNERDUCT_COUNT);
        if (!isAssumed || sized.pipe().isEmpty()) {
            return sized;
        }
        int most = BoreCapacity.items(shape, insideMm, sized.pipe().get().outsideMm());
        ContentsScenario counts = new ContentsScenario(sized.innerducts(), sized.cables(), 1).within(most);
        boolean cablesAssumed = values.assumed().contains(Term.CABLE_COUNT);
        return new SimpleContents(
                counts.innerductCount(),
                sized.pipe(),
                cablesAssumed ? counts.cableCount() : sized.cables(),
                sized.cable());
    }

    private void reportOverfill(Duct duct) {
        double areaMm2 = 0;
        for (Innerduct innerduct : duct.contents().innerducts()) {
            areaMm2 += innerduct.areaMm2();
        }
        for (Cable cable : duct.contents().cablesBeside()) {
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
