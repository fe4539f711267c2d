package org.spanroom.output.sheet;

import java.util.List;
import java.util.stream.Collectors;
import org.spanroom.model.Term;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.SizeSource;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.pull.EndPull;
import org.spanroom.model.pull.Friction;
import org.spanroom.model.pull.InnerductPull;

/** The innerducts in the order of pulling: what each is, which end pulls and which holds, what is expected, when to stop, what was found. */
final class PullRows {
    private static final List<SheetHead> HEADS = List.of(
            new SheetHead("", 6),
            new SheetHead("Innerduct, its cables", 49),
            new SheetHead("Force", 17),
            new SheetHead("Expected", 52),
            new SheetHead("PAUSE; STOP", 28),
            new SheetHead("Found (planned)", 31));
    private static final double NAME_ROOM_MM = 28;
    private static final double CABLES_ROOM_MM = 47;

    private PullRows() {}

    static LongTable<InnerductPull> of(DuctSheet duct) {
        return new LongTable<>(
                "Order of pulls: out at " + duct.pullingEnd() + ", cables held at "
                        + duct.pullingEnd().opposite() + sleeves(duct)
                        + ". First ring-cut innerducts that run through a vault.",
                "pulls",
                HEADS,
                duct.pulls(),
                Integer.MAX_VALUE,
                (page, pull) -> rows(duct, page, pull));
    }

    private static String sleeves(DuctSheet duct) {
        return StepRows.pullWithSleeves(duct)
                .map(pull -> "; sleeves in with pull " + pull.turn())
                .orElse("");
    }

    private static List<SheetRow> rows(DuctSheet duct, SheetBlanks page, InnerductPull pull) {
        Innerduct innerduct = pull.innerduct();
        SpanEnd out = duct.pullingEnd();
        EndPull forces = pull.from(out);
        double breakawayRatio = duct.work().explained().pulling().breakawayRatio();
        Friction judged = duct.work().explained().assessment().pull().judgedBy();
        double plannedPullN = breakawayRatio * forces.forces(judged).pullN();
        double plannedHoldN = breakawayRatio * forces.forces(judged).holdN();
        double holdAllowedN = duct.limits().holdAllowedN();
        double stopPullN = Math.min(
                duct.limits().innerductStrengthN(innerduct), duct.limits().machinePullN());
        var pause =
                new PauseLevel(duct.units(), duct.work().explained().pulling().pause());
        boolean isHeld = innerduct.cables().stream().anyMatch(DuctSheet::isLive);
        return List.of(
                SheetRow.of(
                        SheetCell.strong(Integer.toString(pull.turn())),
                        SheetCell.of(
                                SheetPart.strong(duct.names().fitBold(innerduct.id(), NAME_ROOM_MM, 9)),
                                SheetPart.words(" " + size(duct, innerduct))),
                        SheetCell.words("pull at " + out),
                        SheetCell.words(range(
                                duct, forces.lubricated().pullN(), forces.bad().pullN())),
                        limits(duct, pause.words(plannedPullN, stopPullN), stopPullN),
                        found(page.of(FieldFact.PULL_FORCE, innerduct.id(), plannedPullN, 0))),
                SheetRow.of(
                        SheetCell.words(""),
                        SheetCell.words(duct.names().fit(cables(innerduct), CABLES_ROOM_MM)),
                        SheetCell.words("hold at " + out.opposite()),
                        SheetCell.words(range(
                                duct, forces.lubricated().holdN(), forces.bad().holdN())),
                        isHeld
                                ? limits(duct, pause.words(plannedHoldN, holdAllowedN), holdAllowedN)
                                : SheetCell.strong("no live cable"),
                        found(page.of(FieldFact.HOLD_FORCE, innerduct.id(), plannedHoldN, 0))),
                SheetRow.of(SheetCell.words(""), asFound(duct, page, innerduct).over(HEADS.size() - 1)));
    }

    /** In the crew's unit only; the box of limits has both. */
    private static SheetCell limits(DuctSheet duct, String pause, double stopN) {
        return SheetCell.strong(pause + "; " + duct.units().one(stopN, 0, "N"));
    }

    private static SheetCell asFound(DuctSheet duct, SheetBlanks page, Innerduct innerduct) {
        return SheetCell.of(
                SheetPart.words("Out "),
                SheetPart.blank(page.of(FieldFact.INNERDUCT_OUT, innerduct.id(), "yes")),
                SheetPart.words("at "),
                SheetPart.blank(page.of(
                        FieldFact.PULLED_FROM, innerduct.id(), duct.pullingEnd().key())),
                SheetPart.words("Stalled with "),
                SheetPart.blank(page.of(FieldFact.STALLED_AT, innerduct.id())),
                SheetPart.words(" out. Uncut at A "),
                SheetPart.blank(InnerductRows.uncut(page, innerduct, SpanEnd.A)),
                SheetPart.words("B "),
                SheetPart.blank(InnerductRows.uncut(page, innerduct, SpanEnd.B)),
                SheetPart.words("Color "),
                SheetPart.blank(page.of(FieldFact.INNERDUCT_COLOR, innerduct.id(), RecordedMarks.color(innerduct))));
    }

    /** The largest force on the gauge, beside the one that is planned. */
    private static SheetCell found(SheetBlank blank) {
        return blank.planned().isEmpty()
                ? SheetCell.of(SheetPart.blank(blank))
                : SheetCell.of(SheetPart.words("(" + blank.planned() + ") "), SheetPart.blank(blank));
    }

    private static String range(DuctSheet duct, double lowN, double highN) {
        return duct.units().bothForces(lowN, highN);
    }

    private static String size(DuctSheet duct, Innerduct innerduct) {
        SizeSource source = duct.span().duct().sizeSource(Term.INNERDUCT_OUTSIDE_DIAMETER);
        return duct.units().one(innerduct.outsideDiameterMm(), 1, "mm")
                + (source == SizeSource.ASSUMED ? " assumed" : "")
                + (RecordedMarks.color(innerduct).isBlank()
                        ? ""
                        : " " + duct.names().fit(RecordedMarks.color(innerduct), 14));
    }

    private static String cables(Innerduct innerduct) {
        return innerduct.isEmpty()
                ? "empty"
                : innerduct.cables().stream().map(PullRows::cable).collect(Collectors.joining(", "));
    }

    private static String cable(Cable cable) {
        String tag = RecordedMarks.tag(cable);
        return cable.id() + (tag.isBlank() ? "" : " (tag " + tag + ")");
    }
}
