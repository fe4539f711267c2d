package org.spanroom.output.sheet;

import java.util.List;
import java.util.stream.Stream;
import org.spanroom.output.explain.SafetyCautions;

/**
 * The second page of a duct: the steps, the cross-section, what to bring, how cables are identified, what was found and used, cautions.
 *
 * @param illustrative a remark on rates that are illustrative; empty where none is
 */
public record DuctBack(
        SheetTable steps,
        String illustrative,
        CrossSections crossSections,
        String bring,
        String take,
        SheetTable cables,
        SheetTable innerducts,
        List<SheetCell> differences,
        List<SheetCell> condition,
        List<SheetCell> used,
        List<SheetCell> sleeves,
        List<SheetCell> end,
        List<String> cautions) {
    /** The word that the shipped rates have for their source. */
    private static final String ILLUSTRATIVE = "illustrative";

    static DuctBack of(DuctSheet duct, SheetBlanks page) {
        Material material = Material.of(duct);
        boolean night = duct.effort().filter(SafetyCautions::isNight).isPresent();
        return new DuctBack(
                StepRows.of(duct, page),
                illustrative(duct),
                CrossSections.of(duct.work().explained().assessment().room()),
                material.bring(),
                material.take(),
                CableRows.of(duct).first(page),
                InnerductRows.of(duct).first(page),
                AsFound.differences(duct, page),
                AsFound.condition(duct, page),
                Material.found(duct, page),
                AsFound.sleeves(duct, page),
                AsFound.end(page),
                SafetyCautions.of(duct.span(), night));
    }

    /** Returns what the second page had no room for. */
    static Stream<MoreRows> rest(DuctSheet duct) {
        return Stream.concat(CableRows.of(duct).rest(), InnerductRows.of(duct).rest());
    }

    private static String illustrative(DuctSheet duct) {
        boolean any = duct.work().explained().effortLines().stream()
                .anyMatch(line -> line.range().source().contains(ILLUSTRATIVE));
        return any ? "Illustrative: the rates of these hours are not this owner's." : "";
    }
}
