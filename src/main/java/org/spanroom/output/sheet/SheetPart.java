package org.spanroom.output.sheet;

import java.util.Optional;
import org.spanroom.output.explain.ExplanationReading;

/**
 * Words on a page, or a place to write.
 *
 * @param strong whether the words stand out
 */
public record SheetPart(String text, Optional<SheetBlank> blank, boolean strong) {
    public SheetPart {
        text = ExplanationReading.printable(text);
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
