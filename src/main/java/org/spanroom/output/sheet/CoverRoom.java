package org.spanroom.output.sheet;

import java.util.ArrayList;
import java.util.List;

/** What the cover page of a section has room for: the air tests of its vaults first, then its ducts. */
final class CoverRoom {
    private static final int FACTS = 15;
    private static final double ROW_EDGE_MM = 0.5;
    private static final double LOG_LINE_MM = 4.42;
    private static final int LEAST_TESTS = 4;
    private static final int MOST_TESTS = 7;
    private static final double LEFT_MM = 97;
    private static final double HALF_MM = 88;
    private static final double MOST_TALLER_MM = 1.2;
    private static final double MAP_MM = 67;
    private static final double BETWEEN_MM = -5;

    private final SectionWork section;
    private final SheetNames names;
    private final LongTable<Integer> order;
    private final int tests;
    private final double rowMm;

    CoverRoom(SheetBook book, SectionWork section, SheetNames names) {
        this.section = section;
        this.names = names;
        var budget = new PageBudget(book.paper(), 0);
        List<VaultWords> words = Cover.words(book, section);
        budget.take(BETWEEN_MM)
                .take(words.stream()
                        .mapToDouble(vault -> vaultMm(book, vault))
                        .max()
                        .orElse(0));
        var sentences = new ArrayList<>(Cover.totals(book, section));
        sentences.add(JobWords.together(section));
        double asideMm = PageBudget.textMm(sentences, LEFT_MM) + PageBudget.writingMm(3);
        int occasions = words.stream()
                .mapToInt(vault ->
                        VaultSheet.air(vault, section.ducts(), names).items().size())
                .max()
                .orElse(0);
        double orderHeadMm = PageBudget.headMm(true);
        double ductMm = section.ducts().stream()
                .mapToDouble(duct -> PageBudget.rowsMm(1)
                        + ROW_EDGE_MM
                        + PageBudget.textMm(List.of(Cover.words(book, duct, section)), Cover.WORK_ROOM_MM))
                .max()
                .orElseThrow();
        int ducts = section.ducts().size();
        double mostMm = budget.freeMm() - PageBudget.rowsMm(Math.min(LEAST_TESTS, occasions));
        int fit = Math.max(1, (int) Math.floor((mostMm - asideMm - orderHeadMm) / ductMm));
        int shown = ducts <= fit ? ducts : Math.max(1, fit - 1);
        order = Cover.order(book, section, names).upTo(shown);
        double leftMm = asideMm + orderHeadMm + ductMm * shown + (shown < ducts ? PageBudget.rowsMm(1) : 0);
        budget.take(Math.max(MAP_MM, leftMm));
        tests = Math.min(MOST_TESTS, budget.count(PageBudget.rowsMm(1)));
        int testsShown = Math.min(occasions, tests);
        budget.take(PageBudget.rowsMm(testsShown));
        rowMm = budget.rowMm(FACTS + testsShown, MOST_TALLER_MM);
    }

    private static double vaultMm(SheetBook book, VaultWords vault) {
        return PageBudget.linesMm(1)
                + PageBudget.rowsMm(FACTS)
                + PageBudget.textMm(vault.preparationsAndLimits(), HALF_MM)
                + PageBudget.headMm(false)
                + LOG_LINE_MM
                        * PageBudget.inlineLines("", VaultSheet.log(vault, new SheetBlanks(book.in(), "")), HALF_MM)
                + 2;
    }

    /** Returns the height of a row of the vaults' tables. */
    double rowMm() {
        return rowMm;
    }

    LongTable<Integer> order() {
        return order;
    }

    LongTable<String> air(VaultWords vault) {
        LongTable<String> all = VaultSheet.air(vault, section.ducts(), names);
        return all.upTo(all.items().size() <= tests ? all.items().size() : Math.max(1, tests - 1));
    }
}
