package org.spanroom.output;

import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.spanroom.model.Line;

/** Lines of recorded spans: degrees on WGS 84, as well-known text, read back as they were written. */
final class RecordedLine {
    /** What a good cell says, for a message. */
    static final String EXPECTED = "a line in degrees on WGS 84, as well-known text";

    private static final String FLAT = "LINESTRING (";
    private static final String WITH_HEIGHTS = "LINESTRING Z (";
    private static final Pattern BETWEEN_VERTICES = Pattern.compile(",");
    private static final Pattern BETWEEN_ORDINATES = Pattern.compile(" ");
    private static final double MOST_LAT_DEG = 90;

    /** A line across the 180th meridian continues beyond it. */
    private static final double MOST_LON_DEG = 360;

    private RecordedLine() {}

    /** Returns the line that a text says; empty where it says none that the program writes. */
    static Optional<Line> of(String wellKnownText) {
        boolean hasZ = wellKnownText.startsWith(WITH_HEIGHTS);
        String start = hasZ ? WITH_HEIGHTS : FLAT;
        if (!wellKnownText.startsWith(start) || !wellKnownText.endsWith(")")) {
            return Optional.empty();
        }
        List<String> vertices = List.of(BETWEEN_VERTICES.split(
                wellKnownText.substring(start.length(), wellKnownText.length() - 1), /* keep empty ones */ -1));
        int stride = hasZ ? 3 : 2;
        double[] ordinates = new double[vertices.size() * stride];
        for (int vertex = 0; vertex < vertices.size(); vertex++) {
            if (!isRead(vertices.get(vertex), ordinates, vertex * stride, stride)) {
                return Optional.empty();
            }
        }
        return vertices.size() < 2 ? Optional.empty() : Optional.of(Line.wrap(ordinates, hasZ));
    }

    private static boolean isRead(String vertex, double[] ordinates, int at, int stride) {
        String[] cells = BETWEEN_ORDINATES.split(vertex, -1);
        if (cells.length != stride) {
            return false;
        }
        for (int ordinate = 0; ordinate < stride; ordinate++) {
            ordinates[at + ordinate] = cells[ordinate].isEmpty() ? Double.NaN : Cells.number(cells[ordinate]);
        }
        return Math.abs(ordinates[at]) <= MOST_LON_DEG
                && Math.abs(ordinates[at + 1]) <= MOST_LAT_DEG
                && !Double.isNaN(ordinates[at + stride - 1]);
    }
}
