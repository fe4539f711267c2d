package org.spanroom.model.network;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Stream;
import org.spanroom.model.Answer;
import org.spanroom.model.Check;
import org.spanroom.model.Term;

/**
 * One duct as recorded, gaps filled with configured defaults.
 *
 * @param id the owner's name of the duct; pieces of one duct carry the same
 * @param bankId the bank that the duct belongs to, or empty
 * @param insideDiameterMm diameter of a round bore, side of a square one
 * @param directBuried true where no outer duct surrounds the innerducts
 * @param circumstances what else decides whether it may be worked on
 * @param assumed the terms for which the default is used, because no value was recorded or the recorded one was rejected
 * @param catalogUse what was taken from the catalog
 * @param rejected values that were recorded and could not be used
 * @param kept the owner's own fields that the user asked to keep, as recorded, in the order of the config
 * @param fieldRecord what crews reported of the span, beyond the values above, which they replaced where they found others
 */
public record Duct(
        String id,
        String bankId,
        BoreShape boreShape,
        double insideDiameterMm,
        String type,
        String material,
        boolean directBuried,
        Contents contents,
        boolean flooded,
        Condition condition,
        String surface,
        String owner,
        OptionalInt installedYear,
        Circumstances circumstances,
        Set<Term> assumed,
        CatalogUse catalogUse,
        List<RejectedValue> rejected,
        List<String> kept,
        FieldRecord fieldRecord) {
    public Duct {
        Check.notBlank("id", id);
        Check.positive("insideDiameterMm", insideDiameterMm);
        assumed = Set.copyOf(assumed);
        rejected = List.copyOf(rejected);
        kept = List.copyOf(kept);
    }

    /** A duct of which crews reported nothing. */
    public Duct(
            String id,
            String bankId,
            BoreShape boreShape,
            double insideDiameterMm,
            String type,
            String material,
            boolean directBuried,
            Contents contents,
            boolean flooded,
            Condition condition,
            String surface,
            String owner,
            OptionalInt installedYear,
            Circumstances circumstances,
            Set<Term> assumed,
            CatalogUse catalogUse,
            List<RejectedValue> rejected,
            List<String> kept) {
        this(
                id,
                bankId,
                boreShape,
                insideDiameterMm,
                type,
                material,
                directBuried,
                contents,
                flooded,
                condition,
                surface,
                owner,
                installedYear,
                circumstances,
                assumed,
                catalogUse,
                rejected,
                kept,
                FieldRecord.NONE);
    }

    /** A duct all of whose sizes are recorded or assumed. */
    public Duct(
            String id,
            String bankId,
            BoreShape boreShape,
            double insideDiameterMm,
            String type,
            String material,
            boolean directBuried,
            Contents contents,
            boolean flooded,
            Condition condition,
            String surface,
            String owner,
            OptionalInt installedYear,
            Circumstances circumstances,
            Set<Term> assumed) {
        this(
                id,
                bankId,
                boreShape,
                insideDiameterMm,
                type,
                material,
                directBuried,
                contents,
                flooded,
                condition,
                surface,
                owner,
                installedYear,
                circumstances,
                assumed,
                CatalogUse.NONE,
                List.of(),
                List.of());
    }

    /** A duct of whose circumstances nothing is recorded. */
    public Duct(
            String id,
            String bankId,
            BoreShape boreShape,
            double insideDiameterMm,
            String type,
            String material,
            boolean directBuried,
            Contents contents,
            boolean flooded,
            Condition condition,
            String surface,
            String owner,
            OptionalInt installedYear,
            Set<Term> assumed) {
        this(
                id,
                bankId,
                boreShape,
                insideDiameterMm,
                type,
                material,
                directBuried,
                contents,
                flooded,
                condition,
                surface,
                owner,
                installedYear,
                Circumstances.UNKNOWN,
                assumed);
    }

    /** Returns where the values of these terms are from; if there are several, the least certain. */
    public SizeSource sizeSource(Term... terms) {
        List<Term> asked = List.of(terms);
        if (asked.stream().anyMatch(assumed::contains)) {
            return SizeSource.ASSUMED;
        }
        return asked.stream().anyMatch(catalogUse.terms()::contains) ? SizeSource.CATALOG : SizeSource.RECORDED;
    }

    /** Returns where it is known from what is in the duct. */
    public ContentsSource contentsSource() {
        if (!contents.known()) {
            return ContentsSource.UNKNOWN;
        }
        boolean counted = !assumed.contains(Term.INNERDUCT_COUNT) && !assumed.contains(Term.CABLE_COUNT);
        return counted ? ContentsSource.RECORDED : ContentsSource.ASSUMED;
    }

    /** Returns the same duct with another bore and other contents. */
    public Duct withSizes(double otherInsideMm, Contents otherContents) {
        return with(otherInsideMm, otherContents, kept);
    }

    /** Returns the same duct with other values of the fields that are kept. */
    public Duct withKept(List<String> otherKept) {
        return with(insideDiameterMm, contents, otherKept);
    }

    private Duct with(double otherInsideMm, Contents otherContents, List<String> otherKept) {
        return new Duct(
                id,
                bankId,
                boreShape,
                otherInsideMm,
                type,
                material,
                directBuried,
                otherContents,
                flooded,
                condition,
                surface,
                owner,
                installedYear,
                circumstances,
                assumed,
                catalogUse,
                rejected,
                otherKept,
                fieldRecord);
    }

    /** Returns the value that was recorded for a term and could not be used. */
    public Optional<RejectedValue> findRejected(Term... terms) {
        return rejected.stream()
                .filter(value -> Stream.of(terms).anyMatch(term -> term.key().equals(value.name())))
                .findFirst();
    }

    /** Returns whether the records say that nothing is in the duct. */
    public boolean isEmpty() {
        return contents.isEmpty();
    }

    /** Returns whether cables may be laid into the duct for all that is recorded: it is a duct, open, and its owner has not refused. */
    public boolean mayServe() {
        return !directBuried
                && condition != Condition.COLLAPSED
                && condition != Condition.BLOCKED
                && circumstances.ownerConsent() != Answer.NO;
    }

    /** Returns whether the duct is spare: recorded as empty and sound, so that it takes cables as it is. */
    public boolean isSpare() {
        return isEmpty() && mayServe() && condition == Condition.SOUND;
    }

    /** Returns the area of the bore, round or square. */
    public double boreAreaMm2() {
        double square = insideDiameterMm * insideDiameterMm;
        return boreShape == BoreShape.SQUARE ? square : Math.PI / 4 * square;
    }
}
