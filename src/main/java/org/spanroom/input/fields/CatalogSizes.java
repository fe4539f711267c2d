package org.spanroom.input.fields;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.spanroom.config.AssumedValues;
import org.spanroom.config.RunConfig;
import org.spanroom.config.ValueWords;
import org.spanroom.finding.FindingCode;
import org.spanroom.model.Counted;
import org.spanroom.model.Term;
import org.spanroom.model.bore.Catalog;
import org.spanroom.model.network.BoreShape;

/**
 * Finds the rows of the catalog that the data names, or that a default names where the data names none, and offers their sizes.
 * A name that no single row has is a finding.
 */
final class CatalogSizes {
    private static final int MOST_LISTED = 5;

    private final NamedRows<Catalog.OuterDuct> ducts = new NamedRows<>();
    private final NamedRows<Catalog.InnerductSize> innerducts = new NamedRows<>();
    private final NamedRows<Catalog.DesignCable> cables = new NamedRows<>();
    private final Optional<Catalog.OuterDuct> assumedDuct;
    private final Optional<Catalog.InnerductSize> assumedInnerduct;
    private final Optional<Catalog.DesignCable> assumedCable;

    CatalogSizes(RunConfig config) {
        Catalog catalog = config.catalog();
        catalog.outerDucts()
                .forEach(row -> ducts.add(row, row.name(), row.type() + " " + row.tradeSize(), row.tradeSize()));
        catalog.innerducts()
                .forEach(row ->
                        innerducts.add(row, row.name(), row.series() + " " + row.nominalSize(), row.nominalSize()));
        catalog.designCables().forEach(row -> cables.add(row, row.name(), row.fibers() + " fibers", "" + row.fibers()));
        AssumedValues assumed = config.assumed();
        assumedDuct = assumed.findWord(Term.DUCT_SIZE).flatMap(catalog::findOuterDuct);
        assumedInnerduct = assumed.findWord(Term.INNERDUCT_SIZE).flatMap(catalog::findInnerduct);
        assumedCable = assumed.findWord(Term.CABLE_TYPE).flatMap(catalog::findDesignCable);
    }

    /**
     * Offers the bore of an outer duct.
     *
     * @param type the recorded type, which may distinguish rows of one size, as the recorded shape may
     */
    void offerDuct(TermValues values, String type) {
        String text = name(values, Term.DUCT_SIZE, Term.INSIDE_DIAMETER);
        List<Catalog.OuterDuct> rows = text.isEmpty() ? List.of() : ductsNamed(values, text, type);
        boolean named = rows.size() == 1;
        (named ? Optional.of(rows.get(0)) : assumedDuct).ifPresent(row -> {
            values.offers().offer(Term.INSIDE_DIAMETER, row.name(), row.insideDiameterMm(), !named);
            values.offers().offerShape(row.name(), row.boreShape(), !named);
        });
        check(
                values,
                Term.DUCT_SIZE,
                named || text.isEmpty(),
                () -> rows.isEmpty() ? ducts.unknown(text) : ambiguous(text, rows));
    }

    /** Returns the name of a catalog row, which is missed only where nothing else could give the size. */
    private static String name(TermValues values, Term term, Term size) {
        return values.isMapped(size) ? values.textQuietly(term) : values.text(term);
    }

    private static void check(TermValues values, Term term, boolean isGood, Supplier<String> problem) {
        if (!isGood) {
            values.add(FindingCode.CATALOG_NAME_UNKNOWN, term, problem);
        }
    }

    private List<Catalog.OuterDuct> ductsNamed(TermValues values, String text, String type) {
        List<Catalog.OuterDuct> rows = ducts.find(text);
        if (rows.size() != 1 && !type.isEmpty()) {
            List<Catalog.OuterDuct> ofType = ducts.find(type + " " + text);
            rows = ofType.isEmpty() ? rows : ofType;
        }
        BoreShape shape = values.words().shape().get(ValueWords.fold(values.textQuietly(Term.BORE_SHAPE)));
        return rows.size() > 1 && shape != null
                ? rows.stream().filter(row -> row.boreShape() == shape).toList()
                : rows;
    }

    private static String ambiguous(String text, List<Catalog.OuterDuct> rows) {
        String listed =
                rows.stream().map(Catalog.OuterDuct::name).limit(MOST_LISTED).collect(Collectors.joining(", "));
        double least = rows.stream()
                .mapToDouble(Catalog.OuterDuct::insideDiameterMm)
                .min()
                .orElseThrow();
        double most = rows.stream()
                .mapToDouble(Catalog.OuterDuct::insideDiameterMm)
                .max()
                .orElseThrow();
        return "'" + text + "' matches " + Counted.of(rows.size(), "catalog row") + ", "
                + TermNumbers.shown(Term.INSIDE_DIAMETER, least) + " to "
                + TermNumbers.shown(Term.INSIDE_DIAMETER, most)
                + " wide: " + listed + (rows.size() > MOST_LISTED ? " and others" : "");
    }

    /** Offers outside diameter and wall of an innerduct; the diameter alone where only its nominal size is named. */
    void offerInnerduct(TermValues values) {
        String text = name(values, Term.INNERDUCT_SIZE, Term.INNERDUCT_OUTSIDE_DIAMETER);
        List<Catalog.InnerductSize> rows = text.isEmpty() ? List.of() : innerducts.find(text);
        boolean named = !rows.isEmpty() && sameDiameter(rows);
        if (named && rows.size() > 1) {
            Catalog.InnerductSize any = rows.get(0);
            values.offers()
                    .offer(
                            Term.INNERDUCT_OUTSIDE_DIAMETER,
                            any.nominalSize() + " of any series",
                            any.outsideDiameterMm(),
                            false);
        } else {
            (named ? Optional.of(rows.get(0)) : assumedInnerduct).ifPresent(row -> offer(values.offers(), row, !named));
        }
        check(values, Term.INNERDUCT_SIZE, named || text.isEmpty(), () -> innerducts.unknown(text));
    }

    private static boolean sameDiameter(List<Catalog.InnerductSize> rows) {
        return rows.stream()
                        .map(Catalog.InnerductSize::outsideDiameterIn)
                        .distinct()
                        .count()
                == 1;
    }

    private static void offer(CatalogOffers offers, Catalog.InnerductSize row, boolean assumed) {
        double outsideMm = row.outsideDiameterMm();
        double wallMm = row.minimumWallMm();
        offers.offer(Term.INNERDUCT_OUTSIDE_DIAMETER, row.name(), outsideMm, assumed);
        offers.offer(Term.INNERDUCT_WALL, row.name(), wallMm, assumed);
        offers.offer(Term.INNERDUCT_SDR, row.name(), outsideMm / wallMm, assumed);
    }

    /** Offers outside diameter and mass of a cable. */
    void offerCable(TermValues values) {
        String text = name(values, Term.CABLE_TYPE, Term.CABLE_OUTSIDE_DIAMETER);
        List<Catalog.DesignCable> rows = text.isEmpty() ? List.of() : cables.find(text);
        boolean named = rows.size() == 1;
        (named ? Optional.of(rows.get(0)) : assumedCable).ifPresent(row -> {
            values.offers().offer(Term.CABLE_OUTSIDE_DIAMETER, row.name(), row.outsideDiameterMm(), !named);
            values.offers().offer(Term.CABLE_MASS, row.name(), row.massKgPerM(), !named);
        });
        check(values, Term.CABLE_TYPE, named || text.isEmpty(), () -> cables.unknown(text));
    }
}
