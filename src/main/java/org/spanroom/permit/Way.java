package org.spanroom.permit;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.spanroom.model.Line;
import org.spanroom.model.Span;
import org.spanroom.model.Stretch;
import org.spanroom.model.Vault;

/**
 * The way of one span, and of its two vaults, in the plane of the zones that it meets. One object serves one span in one
 * thread.
 *
 * <p>A share of a step in the plane is the same share of its length on the ground: within a step of 1 km the plane's scale
 * changes by less than 3e-6 (at 110 km from its meridian), which moves a cut by less than 0.4 mm. All steps together make the
 * length that counts, so that what lies inside and what lies outside always add up to it.
 */
final class Way {
    private final Span span;
    private final double[] alongM;
    private final double[] xy;
    private @Nullable Plane plane;

    Way(Span span) {
        this.span = span;
        Line ground = span.ground();
        alongM = new double[ground.size()];
        double drawnM = ground.planeLength();
        double scaleRatio = drawnM > 0 ? span.lengthM() / drawnM : 0;
        double sumM = 0;
        for (int i = 1; i < alongM.length; i++) {
            sumM += ground.stepLength(i - 1);
            alongM[i] = sumM * scaleRatio;
        }
        xy = new double[2 * ground.size() + 4];
    }

    /** Turns to the plane of the next zone. */
    void in(Plane next) {
        if (plane != null && plane.isSameAs(next)) {
            return;
        }
        plane = next;
        Line line = span.lonLat();
        for (int i = 0; i < line.size(); i++) {
            next.project(line.x(i), line.y(i), xy, 2 * i);
        }
        project(next, span.from(), 2 * line.size());
        project(next, span.to(), 2 * line.size() + 2);
    }

    private void project(Plane next, Vault vault, int at) {
        next.project(vault.lonDeg(), vault.latDeg(), xy, at);
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
