package org.spanroom.output.sheet;

import java.util.List;
import java.util.Optional;
import org.spanroom.model.fieldwork.CloseoutRow;
import org.spanroom.model.fieldwork.SheetCode;

/**
 * A page to print.
 *
 * @param of how many pages its section has
 * @param head its title and what else identifies it
 * @param bands what stands out at its top
 * @param cover one of these four, as the kind of page is
 * @param more tables of an additional page
 * @param blanks the places to write, in their order on the page
 */
public record SheetPage(
        SheetCode code,
        int of,
        Head head,
        List<String> bands,
        Optional<Cover> cover,
        Optional<DuctFront> front,
        Optional<DuctBack> back,
        List<SheetTable> more,
        List<SheetBlank> blanks) {
    public SheetPage {
        bands = List.copyOf(bands);
        more = List.copyOf(more);
        blanks = List.copyOf(blanks);
    }

    /**
     * What identifies a page.
     *
     * @param lines below the title
     * @param caution what every page says of its figures
     */
    public record Head(String title, List<String> lines, String caution) {
        public Head {
            lines = List.copyOf(lines);
        }
    }

    /** Returns the QR code; empty where the code is too long to be read from paper. */
    public Optional<String> qr() {
        return SheetQr.draw(code);
    }

    /** Returns the rows of the close-out file: one for each blank. */
    public List<CloseoutRow> rows() {
        return blanks.stream().map(blank -> blank.row(code)).toList();
    }
}
