package org.spanroom.output.explain;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.spanroom.model.pull.LimitKind;
import org.spanroom.model.pull.LimitUse;
import org.spanroom.model.pull.PullTrace;

/** What a diagram of the forces along a span shows: the tension of the innerduct or that of its cables, pulled one way, and its limit. */
public enum PullProfile {
    INNERDUCT,
    CABLE;

    /**
     * A point of a profile.
     *
     * @param atM distance along the span from end A
     * @param forceN the tension there
     */
    public record Point(double atM, double forceN) {}

    /** Returns the tension at both ends of each section, from the anchor to the pulling end. */
    public List<Point> points(PullTrace.Way way) {
        var points = new ArrayList<Point>();
        for (PullTrace.Section section : way.sections()) {
            for (PullTrace.Point point : List.of(section.near(), section.far())) {
                points.add(new Point(point.atM(), this == CABLE ? point.cableN() : point.innerductN()));
            }
        }
        return points;
    }

    /** Finds the limit of the tension: the lower one of innerduct and machine, or that of a live cable. */
    public Optional<LimitUse> findLimit(PullTrace.Way way) {
        return way.limits().stream()
                .filter(use -> this == CABLE
                        ? use.kind() == LimitKind.CABLE_HOLD
                        : use.kind() == LimitKind.INNERDUCT_STRENGTH || use.kind() == LimitKind.MACHINE_PULL)
                .max((one, other) -> Double.compare(other.allowedSi(), one.allowedSi()));
    }

    /**
     * Returns the steady tension that uses a limit up, of all cables together where it is a cable's: limits hold at breakaway too, which
     * a profile does not show.
     */
    public double steadyN(LimitUse limit, PullTrace.Way way, double breakawayRatio) {
        double most = points(way).stream().mapToDouble(Point::forceN).max().orElse(0);
        return limit.foundSi() > 0 && most > 0
                ? limit.allowedSi() * most / limit.foundSi()
                : limit.allowedSi() / breakawayRatio;
    }
}
