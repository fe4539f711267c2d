package org.spanroom.output.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.spanroom.model.Counted;
import org.spanroom.model.bore.CrossSection;
import org.spanroom.model.bore.PullChoice;
import org.spanroom.model.bore.Room;
import org.spanroom.output.explain.CrossSectionPicture;

/**
 * The cross-section of a duct now and after: the arrangements that were calculated, not how the contents lie.
 *
 * @param note why there is no drawing; empty where there is one
 */
public record CrossSections(List<Picture> pictures, String note) {
    private static final double WIDTH_MM = 37;

    /** A drawing with what it shows. */
    public record Picture(String title, SheetDrawing drawing, String caption) {}

    static CrossSections of(Room room) {
        return room.crossSection()
                .map(section -> of(room, section))
                .orElseGet(() -> new CrossSections(List.of(), "Not drawn: the contents are not recorded."));
    }

    private static CrossSections of(Room room, CrossSection section) {
        var pictures = new ArrayList<Picture>();
        pictures.add(new Picture(
                "Now",
                SheetDrawing.of(CrossSectionPicture.draw("", section.before()), WIDTH_MM),
                String.format(Locale.ROOT, "%.0f %% filled", 100 * section.now().fillRatio())));
        room.proposal()
                .filter(choice -> choice.newCables() > 0)
                .ifPresent(choice -> pictures.add(new Picture(
                        "After",
                        SheetDrawing.of(CrossSectionPicture.draw("", choice.after()), WIDTH_MM),
                        after(choice))));
        return new CrossSections(pictures, "");
    }

    private static String after(PullChoice choice) {
        return choice.words() + "; " + Counted.of(choice.sleeves(), "sleeve") + " in";
    }
}
