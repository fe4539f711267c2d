package org.spanroom.output.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.spanroom.model.fieldwork.SheetCode;
import org.spanroom.output.explain.Explanation;
import org.spanroom.output.explain.ExplanationReading;
import org.spanroom.output.table.Text;

/** Puts the pages of a section together and numbers them. */
final class SectionComposer {
    private static final double TITLE_ROOM_MM = 140;
    private static final double LINE_ROOM_MM = 146;
    private static final double TITLE_PT = 14;

    private final SheetBook book;
    private final SectionWork section;
    private final List<Draft> drafts = new ArrayList<>();

    SectionComposer(SheetBook book, SectionWork section) {
        this.book = book;
        this.section = section;
    }

    /** A page before it is known how many there are. */
    private record Draft(
            String spanId,
            String title,
            List<String> lines,
            List<String> bands,
            Optional<Cover> cover,
            Optional<DuctFront> front,
            Optional<DuctBack> back,
            List<SheetTable> more,
            List<SheetBlank> blanks) {}

    SheetSection compose() {
        var coverNames = new SheetNames();
        var coverBlanks =
                new SheetBlanks(book.in(), section.ducts().get(0).span().id());
        Cover cover = Cover.of(book, section, coverNames, coverBlanks);
        String title = coverNames.fitBold("Section " + section.id(), TITLE_ROOM_MM, TITLE_PT);
        drafts.add(new Draft(
                "",
                title,
                coverLines(),
                List.of(),
                Optional.of(cover),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                coverBlanks.all()));
        section.ducts().forEach(this::duct);
        more("", title, coverLines(), List.of(), coverNames, Cover.rest(book, section, coverNames));
        var pages = new ArrayList<SheetPage>();
        for (Draft draft : drafts) {
            pages.add(page(draft, pages.size() + 1));
        }
        return new SheetSection(section.id(), pages);
    }

    private void duct(DuctWork work) {
        DuctSheet duct = DuctSheet.of(book, section, work);
        String spanId = Text.clean(work.span().id());
        var frontBlanks = new SheetBlanks(book.in(), spanId);
        var backBlanks = new SheetBlanks(book.in(), spanId);
        DuctFront front = DuctFront.of(duct, frontBlanks);
        DuctBack back = DuctBack.of(duct, backBlanks);
        String title = duct.names().fitBold("Duct " + work.span().duct().id(), TITLE_ROOM_MM, TITLE_PT);
        List<String> lines = ductLines(duct);
        List<String> bands = DuctBands.of(duct);
        drafts.add(new Draft(
                spanId,
                title,
                lines,
                bands,
                Optional.empty(),
                Optional.of(front),
                Optional.empty(),
                List.of(),
                frontBlanks.all()));
        drafts.add(new Draft(
                spanId,
                title,
                lines,
                bands,
                Optional.empty(),
                Optional.empty(),
                Optional.of(back),
                List.of(),
                backBlanks.all()));
        more(spanId, title, lines, bands, duct.names(), Stream.concat(DuctFront.rest(duct), DuctBack.rest(duct)));
    }

    private void more(
            String spanId,
            String title,
            List<String> lines,
            List<String> bands,
            SheetNames names,
            Stream<MoreRows> rest) {
        var pages = new AdditionalPages(book.in(), spanId);
        rest.forEach(pages::add);
        // Rows that were just added may have cut names too.
        names.inFull().toList().forEach(pages::add);
        pages.finish()
                .forEach(found -> drafts.add(new Draft(
                        spanId,
                        title,
                        lines,
                        bands,
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        found.tables(),
                        found.blanks())));
    }

    private List<String> coverLines() {
        return List.of(fitted("Vaults " + section.vaultA().vault().id() + " and "
                + section.vaultB().vault().id() + "; ducts: " + section.ducts().size()));
    }

    private List<String> ductLines(DuctSheet duct) {
        return List.of(
                fitted("Span " + duct.span().id() + ", "
                        + duct.units().both(duct.span().lengthM(), 1, "m") + ", " + duct.words("standing")),
                fitted("A: vault " + duct.span().from().id() + "; B: vault "
                        + duct.span().to().id() + "; section " + section.id()));
    }

    private String runWords() {
        return "run " + book.runCode() + " of " + book.day() + ", version " + book.version();
    }

    private static String fitted(String line) {
        return SheetFont.REGULAR.fitted(ExplanationReading.printable(line), 9, LINE_ROOM_MM);
    }

    private SheetPage page(Draft draft, int number) {
        var code = new SheetCode(book.runCode(), Text.clean(section.id()), draft.spanId(), number);
        var lines = new ArrayList<>(List.of("Section " + section.number() + " of " + book.sections() + ", page "
                + number + " of " + drafts.size() + "; " + runWords()));
        lines.addAll(draft.lines());
        return new SheetPage(
                code,
                drafts.size(),
                new SheetPage.Head(draft.title(), lines, Explanation.CAUTION),
                draft.bands(),
                draft.cover(),
                draft.front(),
                draft.back(),
                draft.more(),
                draft.blanks());
    }
}
