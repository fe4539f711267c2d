package org.spanroom.output.sheet;

import java.util.Collections;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.spanroom.model.Term;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.permit.Permits;

/**
 * The first page of a duct: when to stop, the two vaults, where to work and in which order.
 *
 * @param noPulls why nothing is pulled; empty where something is
 */
public record DuctFront(
        StopBox stop,
        SheetTable movements,
        List<VaultCard> vaults,
        String duct,
        SheetTable permits,
        List<DuctFace> faces,
        SheetTable pulls,
        String noPulls,
        SheetTable bends) {
    static final String STALL =
            "stop, and hold innerduct and cable where they are. Note the length that is out, below. Support and "
                    + "cover the bared cable, without tension and bent no tighter than the limit above. Call the number above. Restore: lubricate and try once more "
                    + "below the limits; if it stays, cut, secure and seal as the owner says, and report it.";
    static final String MOVEMENT = "The owner allows a live cable to move: ";

    private static final int PERMITS_PER_ROW = 3;
    private static final int MOST_PERMIT_ROWS = 2;
    private static final double PERMIT_ROOM_MM = 33;
    private static final double KIND_ROOM_MM = 25;

    static DuctFront of(DuctSheet duct, SheetBlanks page) {
        StopBox stop = StopBox.of(duct, page);
        SheetTable movements = StopBox.movements(duct).first(page);
        List<VaultCard> vaults = vaults(duct);
        SheetTable permits = permits(duct).first(page);
        List<DuctFace> faces = Stream.of(SpanEnd.values())
                .map(end -> DuctFace.of(duct, end, page))
                .toList();
        var room = new FrontRoom(duct, stop, vaults, permits, ductWords(duct));
        return new DuctFront(
                stop,
                movements,
                vaults,
                ductWords(duct),
                permits,
                faces,
                room.pulls().first(page).rowsOf(room.rowMm()),
                duct.work().hasPulls() ? "" : duct.words("pull/summary"),
                room.bends().first(page));
    }

    /** Returns what the first page had no room for. */
    static Stream<MoreRows> rest(DuctSheet duct) {
        var scratch = new SheetBlanks(duct.units(), duct.span().id());
        var room = new FrontRoom(
                duct, StopBox.of(duct, scratch), vaults(duct), permits(duct).first(scratch), ductWords(duct));
        return Stream.of(
                        StopBox.movements(duct).rest(),
                        permits(duct).rest(),
                        room.pulls().rest(),
                        room.bends().rest())
                .flatMap(rows -> rows);
    }

    private static List<VaultCard> vaults(DuctSheet duct) {
        return Stream.of(SpanEnd.values()).map(end -> VaultCard.of(duct, end)).toList();
    }

    public String stall() {
        return STALL;
    }

    public String movement() {
        return MOVEMENT;
    }

    private static String ductWords(DuctSheet duct) {
        Duct recorded = duct.span().duct();
        String kind = Stream.of(recorded.type(), recorded.material())
                .filter(word -> !word.isBlank())
                .map(word -> duct.names().fit(word, KIND_ROOM_MM))
                .collect(Collectors.joining(", "));
        return DuctSheet.spaced(recorded.boreShape()) + " bore "
                + duct.units().both(recorded.insideDiameterMm(), 1, "mm")
                + " (" + recorded.sizeSource(Term.INSIDE_DIAMETER).key() + ")"
                + (kind.isEmpty() ? "" : ", " + kind)
                + "; condition " + condition(recorded)
                + (recorded.flooded() ? "; recorded as flooded" : "; not recorded as flooded") + ".";
    }

    private static String condition(Duct duct) {
        return duct.condition() == Condition.UNKNOWN ? VaultWords.NOT_RECORDED : DuctSheet.spaced(duct.condition());
    }

    private static LongTable<List<String>> permits(DuctSheet duct) {
        Permits permits = duct.work().explained().assessment().permits();
        List<String> needs = Stream.concat(
                        permits.recoveryAppliedFor().stream(), permits.recoveryIssuedByCrew().stream())
                .toList();
        String own = permits.recoveryIssuedByCrew().isEmpty()
                ? ""
                : "; the crew's entry supervisor issues its own (*) on the day of work";
        List<List<String>> groups = IntStream.range(0, (needs.size() + PERMITS_PER_ROW - 1) / PERMITS_PER_ROW)
                .mapToObj(row ->
                        needs.subList(row * PERMITS_PER_ROW, Math.min(needs.size(), (row + 1) * PERMITS_PER_ROW)))
                .toList();
        return new LongTable<>(
                "Numbers of the permits of this duct" + own,
                "permits",
                Collections.nCopies(PERMITS_PER_ROW, new SheetHead("", 61)),
                groups,
                MOST_PERMIT_ROWS,
                (page, group) -> List.of(new SheetRow(group.stream()
                        .map(need -> permit(
                                duct, page, need, permits.recoveryIssuedByCrew().contains(need) ? " (*) " : " "))
                        .toList())));
    }

    private static SheetCell permit(DuctSheet duct, SheetBlanks page, String need, String mark) {
        String words = need.replace('_', ' ');
        return SheetCell.of(
                SheetPart.words(duct.names().fit(words, PERMIT_ROOM_MM) + mark),
                SheetPart.blank(page.of(FieldFact.SPAN_PERMIT, words)));
    }
}
