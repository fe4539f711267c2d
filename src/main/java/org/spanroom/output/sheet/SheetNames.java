package org.spanroom.output.sheet;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.spanroom.output.explain.ExplanationReading;

/** Names from the data, cut to the room that a place has for them; what was cut is kept, to be given in full on the additional page. */
final class SheetNames {
    private static final double SIZE_PT = 9;
    private static final int MOST_PER_LINE = 60;

    private final Map<String, String> cutByFull = new LinkedHashMap<>();

    /** Returns a name that fits a room, in letters of the usual size. */
    String fit(String name, double roomMm) {
        return fit(name, roomMm, SheetFont.REGULAR, SIZE_PT);
    }

    /** Returns a name that fits a room in bold letters. */
    String fitBold(String name, double roomMm, double sizePt) {
        return fit(name, roomMm, SheetFont.BOLD, sizePt);
    }

    private String fit(String name, double roomMm, SheetFont font, double sizePt) {
        String whole = ExplanationReading.printable(name);
        String fitted = font.fitted(whole, sizePt, roomMm);
        if (!fitted.equals(whole)) {
            cutByFull.putIfAbsent(whole, fitted);
        }
        return fitted;
    }

    /** Returns the names that were cut, with how they begin. */
    Stream<MoreRows> inFull() {
        return cutByFull.keySet().stream()
                .flatMap(SheetNames::pieces)
                .map(piece -> new MoreRows(
                        "Names in full", "names", List.of(new SheetHead("Name", 183)), page -> List.of(piece)));
    }

    /** A name of any length, as rows that a page is wide enough for. */
    private static Stream<SheetRow> pieces(String name) {
        int[] points = name.codePoints().toArray();
        var rows = Stream.<SheetRow>builder();
        for (int from = 0; from < points.length; from += MOST_PER_LINE) {
            String piece = new String(points, from, Math.min(MOST_PER_LINE, points.length - from));
            rows.add(SheetRow.of(SheetCell.words(from == 0 ? piece : "\u2026" + piece)));
        }
        return rows.build();
    }
}
