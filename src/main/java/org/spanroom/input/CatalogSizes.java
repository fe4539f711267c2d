package org.spanroom.input;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.spanroom.config.AssumedValues;
import org.spanroom.config.RunConfig;
import org.spanroom.model.BoreShape;
import org.spanroom.model.Catalog;
import org.spanroom.model.Term;

/**
 * Finds the rows of the catalogue that the data names, or that a default names where the data names none, and offers their sizes.
 * Each method returns what is wrong with a name, if anything is.
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
        catalog.designCables().forEach(row -> cables.add(row, row.name(), row.fibres() + " fibres", "" + row.fibres()));
        AssumedValues assumed = config.assumed();
        assumedDuct = assumed.findWord(Term.DUCT_SIZE).flatMap(catalog::findOuterDuct);
        assumedInnerduct = assumed.findWord(Term.INNERDUCT_SIZE).flatMap(catalog::findInnerduct);
        assumedCable = assumed.findWord(Term.CABLE_TYPE).flatMap(catalog::findDesignCable);
    }

    /**
     * Offers the bore of an outer duct.
     *
     * @param type the recorded type, which may tell rows of one size apart
     */
    Optional<String> offerDuct(CatalogOffers offers, String text, String type, Optional<BoreShape> recordedShape) {
        List<Catalog.OuterDuct> rows = text.isEmpty() ? List.of() : ducts.find(text);
        if (rows.size() != 1 && !text.isEmpty() && !type.isEmpty()) {
            List<Catalog.OuterDuct> ofType = ducts.find(type + " " + text);
            rows = ofType.isEmpty() ? rows : ofType;
        }
        if (rows.size() > 1 && recordedShape.isPresent()) {
            rows = rows.stream()
                    .filter(row -> row.boreShape() == recordedShape.get())
                    .toList();
        }
        boolean named = rows.size() == 1;
        (named ? Optional.of(rows.get(0)) : assumedDuct).ifPresent(row -> {
            var offer = new CatalogOffers.Offer(row.name(), row.insideDiameterMm(), !named);
            offers.offer(Term.INSIDE_DIAMETER, offer);
            offers.offerShape(row.boreShape(), new CatalogOffers.Offer(row.name(), Double.NaN, !named));
        });
        if (named || text.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(rows.isEmpty() ? ducts.unknown(text) : ambiguous(text, rows));
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
        return "'" + text + "' may be any of " + rows.size() + " rows of the catalogue, "
                + Quantities.shown(Term.INSIDE_DIAMETER, least) + " to " + Quantities.shown(Term.INSIDE_DIAMETER, most)
                + " wide: " + listed + (rows.size() > MOST_LISTED ? " and others" : "");
    }

    /** Offers outside diameter and wall of an innerduct; the diameter alone where only its nominal size is named. */
    Optional<String> offerInnerduct(CatalogOffers offers, String text) {
        List<Catalog.InnerductSize> rows = text.isEmpty() ? List.of() : innerducts.find(text);
        boolean named = !rows.isEmpty() && sameDiameter(rows);
        if (!named) {
            assumedInnerduct.ifPresent(row -> offer(offers, row, true));
            return text.isEmpty() ? Optional.empty() : Optional.of(innerducts.unknown(text));
        }
        Catalog.InnerductSize first = rows.get(0);
        if (rows.size() == 1) {
            offer(offers, first, false);
        } else {
            offers.offer(
                    Term.INNERDUCT_OUTSIDE_DIAMETER,
                    new CatalogOffers.Offer(first.nominalSize() + " of any series", first.outsideDiameterMm(), false));
        }
        return Optional.empty();
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
        offers.offer(Term.INNERDUCT_OUTSIDE_DIAMETER, new CatalogOffers.Offer(row.name(), outsideMm, assumed));
        offers.offer(Term.INNERDUCT_WALL, new CatalogOffers.Offer(row.name(), wallMm, assumed));
        offers.offer(Term.INNERDUCT_SDR, new CatalogOffers.Offer(row.name(), outsideMm / wallMm, assumed));
    }

    /** Offers outside diameter and mass of a cable. */
    Optional<String> offerCable(CatalogOffers offers, String text) {
        List<Catalog.DesignCable> rows = text.isEmpty() ? List.of() : cables.find(text);
        boolean named = rows.size() == 1;
        (named ? Optional.of(rows.get(0)) : assumedCable).ifPresent(row -> {
            offers.offer(
                    Term.CABLE_OUTSIDE_DIAMETER, new CatalogOffers.Offer(row.name(), row.outsideDiameterMm(), !named));
            offers.offer(Term.CABLE_MASS, new CatalogOffers.Offer(row.name(), row.massKgPerM(), !named));
        });
        return named || text.isEmpty() ? Optional.empty() : Optional.of(cables.unknown(text));
    }
}
