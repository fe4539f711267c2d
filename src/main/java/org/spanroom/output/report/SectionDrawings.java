package org.spanroom.output.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.spanroom.model.Counted;
import org.spanroom.model.bore.CrossSection;
import org.spanroom.model.bore.Packing;
import org.spanroom.model.bore.PullChoice;
import org.spanroom.model.bore.Room;
import org.spanroom.output.explain.CrossSectionPicture;
import org.spanroom.output.report.SpanDetail.Drawing;

/** The cross-section of a duct now, with the proposal, and with every other choice that is allowed and changes anything. */
final class SectionDrawings {
    private SectionDrawings() {}

    /** Returns the drawings, today's first and the proposal next; none where the contents are unknown. */
    static List<Drawing> of(Room room) {
        return room.crossSection().map(section -> of(room, section)).orElse(List.of());
    }

    private static List<Drawing> of(Room room, CrossSection section) {
        var drawings = new ArrayList<Drawing>();
        drawings.add(drawing("now", section.before()));
        Optional<PullChoice> proposed = room.proposal();
        proposed.ifPresent(choice -> drawings.add(drawing(label(choice) + " (proposed)", choice.after())));
        section.choices().stream()
                .filter(choice ->
                        choice.allowed() && proposed.filter(choice::equals).isEmpty())
                .filter(choice -> choice.isRecovery() || choice.newCables() > 0)
                .forEach(choice -> drawings.add(drawing(label(choice), choice.after())));
        return drawings;
    }

    private static String label(PullChoice choice) {
        return (choice.isRecovery() ? choice.words() : "everything left in") + ", "
                + Counted.of(choice.positionsAfter(), "position");
    }

    private static Drawing drawing(String label, Packing packing) {
        return new Drawing(label, CrossSectionPicture.draw(label, packing));
    }
}
