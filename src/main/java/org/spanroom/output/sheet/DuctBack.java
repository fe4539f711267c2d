package org.spanroom.output.sheet;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.spanroom.model.rank.Caution;
import org.spanroom.model.rank.Exclusion;
import org.spanroom.model.rank.Verdict;
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
        List<SheetCell> asFound,
        List<SheetCell> used,
        List<SheetCell> end,
        List<String> cautions) {
    static final String LEGEND = "Calculated layout; the actual position will differ. Ring: innerduct. Dark: cable. "
            + "Gray with a cross: dead cable. Number: position for a new cable, by its sleeve. R: reserved.";
    static final String BEFORE =
            "Before pulling: prove the path by rod or camera; then a short test pull of each innerduct with a "
                    + "watched gauge.";
    static final String AS_FOUND = "Not as the record says: ";
    static final String USED = "Used and taken out (planned): ";
    static final String END = "At the end: every mouth is plugged and sealed. ";

    /** The word that the shipped rates have for their source. */
    private static final String ILLUSTRATIVE = "illustrative";

    private static final String CHECK = "To check before work on this duct: ";
    private static final int MOST_CHECKS = 4;
    private static final double CHECK_WIDTH_MM = 183;

    static DuctBack of(DuctSheet duct, SheetBlanks page) {
        Material material = Material.of(duct);
        SheetTable steps = StepRows.of(duct, page);
        CrossSections crossSections =
                CrossSections.of(duct.work().explained().assessment().room());
        var room = new BackRoom(duct, steps, crossSections, material);
        return new DuctBack(
                steps.rowsOf(room.rowMm()),
                illustrative(duct),
                crossSections,
                material.bring(),
                material.take(),
                room.cables().first(page).rowsOf(room.rowMm()),
                room.innerducts().first(page).rowsOf(room.rowMm()),
                AsFound.all(duct, page),
                Material.found(duct, page),
                AsFound.end(page),
                sentences(duct));
    }

    /** Returns what the second page had no room for. */
    static Stream<MoreRows> rest(DuctSheet duct) {
        var room = new BackRoom(
                duct,
                StepRows.of(duct, new SheetBlanks(duct.units(), duct.span().id())),
                CrossSections.of(duct.work().explained().assessment().room()),
                Material.of(duct));
        return Stream.of(
                        room.cables().rest(),
                        room.innerducts().rest(),
                        checks(duct).rest())
                .flatMap(rows -> rows);
    }

    /** Returns what the ranking says is to be checked before work on this span; its items are sentences, each of a line at most. */
    static LongTable<String> checks(DuctSheet duct) {
        Verdict verdict = duct.work().explained().ranked().verdict();
        List<String> words = Stream.concat(
                        verdict.waived().stream().map(Exclusion::explanation),
                        verdict.cautions().stream().map(Caution::explanation))
                .toList();
        return new LongTable<>(
                "To check before work",
                "checks",
                List.of(new SheetHead("", CHECK_WIDTH_MM)),
                words,
                MOST_CHECKS,
                (page, check) ->
                        List.of(SheetRow.of(SheetCell.words(duct.names().fit(check, CHECK_WIDTH_MM - 2)))));
    }

    /** Returns the same in one sentence. */
    private static String checked(DuctSheet duct) {
        SheetTable shown =
                checks(duct).first(new SheetBlanks(duct.units(), duct.span().id()));
        return Stream.concat(
                        shown.rows().stream()
                                .map(row -> row.cells().get(0).parts().get(0).text()),
                        Stream.of(shown.more()).filter(more -> !more.isEmpty()))
                .collect(Collectors.joining("; "));
    }

    /** Returns the sentences at the foot of the page. */
    static List<String> sentences(DuctSheet duct) {
        String checks = checked(duct);
        return Stream.concat(
                        checks.isEmpty() ? Stream.of() : Stream.of(CHECK + checks + "."),
                        SafetyCautions.of(
                                duct.span(),
                                duct.effort().filter(SafetyCautions::isNight).isPresent())
                                .stream())
                .toList();
    }

    public String legend() {
        return LEGEND;
    }

    public String before() {
        return BEFORE;
    }

    public String asFoundTitle() {
        return AS_FOUND;
    }

    public String usedTitle() {
        return USED;
    }

    public String endTitle() {
        return END;
    }

    private static String illustrative(DuctSheet duct) {
        boolean any = duct.work().explained().effortLines().stream()
                .anyMatch(line -> line.range().source().contains(ILLUSTRATIVE));
        return any ? "Hours use illustrative rates." : "";
    }
}
