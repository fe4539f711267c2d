package org.spanroom.permit;

import java.util.ArrayList;
import java.util.List;
import org.spanroom.model.Line;
import org.spanroom.model.network.Span;
import org.spanroom.model.permit.Stretch;

/**
 * The way of one span, and the places of its two vaults, in a plane.
 *
 * <p>A share of a step in the plane is the same share of its length on the ground: within a step of 1 km the plane's scale
 * changes by less than 3e-6 (at 110 km from its meridian), which moves a cut by less than 0.4 mm. All steps together make the
 * length that counts, so that what is inside and what is outside always add up to it.
 */
final class Way {
    private final double[] alongM;
    private final double[] xy;

    Way(Span span, Plane plane) {
        Line ground = span.ground();
        alongM = new double[ground.size()];
        double drawnM = ground.planeLength();
        double scaleRatio = drawnM > 0 ? span.lengthM() / drawnM : 0;
        double sumM = 0;
        for (int i = 1; i < alongM.length; i++) {
            sumM += ground.stepLength(i - 1);
            alongM[i] = sumM * scaleRatio;
        }
        xy = project(span, plane);
    }

    /** Returns the vertices of the span's line, and its two vaults. */
    private static double[] project(Span span, Plane plane) {
        Line line = span.lonLat();
        double[] xy = new double[2 * line.size() + 4];
        for (int i = 0; i < line.size(); i++) {
            plane.project(line.x(i), line.y(i), xy, 2 * i);
        }
        plane.project(span.from().lonDeg(), span.from().latDeg(), xy, 2 * line.size());
        plane.project(span.to().lonDeg(), span.to().latDeg(), xy, 2 * line.size() + 2);
        return xy;
    }

    /** Returns whether an area's boundary comes near; if not, the way and both vaults are on one side of it. */
    boolean mayMeetBoundary(Area area) {
        double leastX = xy[0];
        double leastY = xy[1];
        double mostX = xy[0];
        double mostY = xy[1];
        for (int at = 2; at < xy.length; at += 2) {
            leastX = Math.min(leastX, xy[at]);
            leastY = Math.min(leastY, xy[at + 1]);
            mostX = Math.max(mostX, xy[at]);
            mostY = Math.max(mostY, xy[at + 1]);
        }
        return area.boundaryMayMeet(leastX, leastY, mostX, mostY);
    }

    /** Returns the whole way as one stretch. */
    Stretch whole() {
        return new Stretch(0, alongM[alongM.length - 1]);
    }

    boolean beginsIn(Area area) {
        return area.holds(xy[xy.length - 4], xy[xy.length - 3]);
    }

    boolean endsIn(Area area) {
        return area.holds(xy[xy.length - 2], xy[xy.length - 1]);
    }

    /** Returns the stretches inside an area, in order; none touches another. */
    List<Stretch> inside(Area area) {
        var stretches = new ArrayList<Stretch>();
        for (int i = 0; i + 1 < alongM.length; i++) {
            if (alongM[i + 1] > alongM[i]) {
                addStep(area, i, stretches);
            }
        }
        return stretches.isEmpty() ? List.of() : Stretch.union(stretches);
    }

    private void addStep(Area area, int step, List<Stretch> stretches) {
        double x = xy[2 * step];
        double y = xy[2 * step + 1];
        double dx = xy[2 * step + 2] - x;
        double dy = xy[2 * step + 3] - y;
        double[] cuts = area.cuts(x, y, x + dx, y + dy);
        double stepM = alongM[step + 1] - alongM[step];
        for (int i = 0; i + 1 < cuts.length; i++) {
            double middle = (cuts[i] + cuts[i + 1]) / 2;
            if (cuts[i + 1] > cuts[i] && area.holds(x + middle * dx, y + middle * dy)) {
                double toM = cuts[i + 1] == 1 ? alongM[step + 1] : alongM[step] + cuts[i + 1] * stepM;
                stretches.add(new Stretch(alongM[step] + cuts[i] * stepM, toM));
            }
        }
    }
}
