package org.spanroom.output.sheet;

import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.model.network.SpanEnd;

/**
 * The first page of a duct: when to stop, the two vaults, where to work and in which order.
 *
 * @param noPulls why nothing is pulled; empty where something is
 */
public record DuctFront(
        StopBox stop,
        SheetTable movements,
        List<VaultCard> vaults,
        SheetTable permits,
        List<DuctFace> faces,
        SheetTable pulls,
        String noPulls,
        SheetTable bends) {
    private static final int PERMITS_PER_ROW = 3;
    private static final int MOST_PERMIT_ROWS = 2;
    private static final double PERMIT_ROOM_MM = 32;

    static DuctFront of(DuctSheet duct, SheetBlanks page) {
        StopBox stop = StopBox.of(duct, page);
        return new DuctFront(
                stop,
                StopBox.movements(duct).first(page),
                Stream.of(SpanEnd.values()).map(end -> VaultCard.of(duct, end)).toList(),
                permits(duct).first(page),
                Stream.of(SpanEnd.values()).map(end -> DuctFace.of(duct, end, page)).toList(),
                PullRows.of(duct).first(page),
                duct.work().hasPulls() ? "" : duct.words("pull/summary"),
                BendRows.of(duct).first(page));
    }

    /** Returns what the first page had no room for. */
    static Stream<MoreRows> rest(DuctSheet duct) {
        return Stream.of(StopBox.movements(duct).rest(), permits(duct).rest(), PullRows.of(duct).rest(), BendRows.of(duct).rest())
                .flatMap(rows -> rows);
    }

    private static LongTable<List<String>> permits(DuctSheet duct) {
        List<String> needs = duct.work().explained().assessment().permits().recoveryNeeds();
        List<List<String>> groups = IntStream.range(0, (needs.size() + PERMITS_PER_ROW - 1) / PERMITS_PER_ROW)
                .mapToObj(row -> needs.subList(
                        row * PERMITS_PER_ROW, Math.min(needs.size(), (row + 1) * PERMITS_PER_ROW)))
                .toList();
        return new LongTable<>(
                "", "permits", Collections.nCopies(PERMITS_PER_ROW, ""), groups, MOST_PERMIT_ROWS, (page, group) -> List.of(
                        new SheetRow(group.stream().map(need -> permit(duct, page, need)).toList())));
    }

    private static SheetCell permit(DuctSheet duct, SheetBlanks page, String need) {
        String words = need.replace('_', ' ');
        return SheetCell.of(
                SheetPart.words("Permit, " + duct.names().fit(words, PERMIT_ROOM_MM) + ": no. "),
                SheetPart.blank(page.of(FieldFact.SPAN_PERMIT, words)));
    }
}
