package org.spanroom.output.sheet;

import java.util.List;

/** The pages of one section: its cover page, two pages for each duct, and additional pages for what these have no room for. */
public record SheetSection(String id, List<SheetPage> pages) {
    public SheetSection {
        pages = List.copyOf(pages);
    }

    /** Makes the pages of a section. */
    public static SheetSection of(SheetBook book, SectionWork section) {
        return new SectionComposer(book, section).compose();
    }
}
