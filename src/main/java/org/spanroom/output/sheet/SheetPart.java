package org.spanroom.output.sheet;

import java.util.Optional;
import org.spanroom.output.explain.ExplanationReading;

/**
 * Words on a page, or a place to write.
 *
 * @param strong whether the words stand out
 */
public record SheetPart(String text, Optional<SheetBlank> blank, boolean strong) {
    private static final double SIZE_PT = 9;

    public SheetPart {
        text = ExplanationReading.printable(text);
    }

    /** Returns how wide it is in one line. */
    double widthMm() {
        SheetFont font = strong ? SheetFont.BOLD : SheetFont.REGULAR;
        return font.widthMm(text, SIZE_PT) + blank.map(SheetBlank::widthMm).orElse(0.0);
    }

    static SheetPart words(String text) {
        return new SheetPart(text, Optional.empty(), false);
    }

    static SheetPart strong(String text) {
        return new SheetPart(text, Optional.empty(), true);
    }

    static SheetPart blank(SheetBlank blank) {
        return new SheetPart("", Optional.of(blank), false);
    }
}
