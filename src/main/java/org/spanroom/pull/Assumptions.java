package org.spanroom.pull;

import java.util.EnumSet;
import java.util.Map;
import java.util.Set;
import org.spanroom.model.Term;
import org.spanroom.model.bend.Bend;
import org.spanroom.model.bend.Bends;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.Service;
import org.spanroom.model.network.Span;
import org.spanroom.model.pull.PullAssumption;
import org.spanroom.model.pull.PullSettings;

/** What the calculation of one span rests on without having been measured. */
final class Assumptions {
    /** Values that a duct may have by default instead of from the records; those of cables count where there are any. */
    private static final Map<Term, PullAssumption> BY_TERM = Map.of(
            Term.INSIDE_DIAMETER, PullAssumption.DUCT_DIAMETER,
            Term.INNERDUCT_COUNT, PullAssumption.INNERDUCT_COUNT,
            Term.INNERDUCT_OUTSIDE_DIAMETER, PullAssumption.INNERDUCT_SIZE,
            Term.INNERDUCT_SDR, PullAssumption.INNERDUCT_SIZE,
            Term.INNERDUCT_WALL, PullAssumption.INNERDUCT_SIZE,
            Term.CABLE_COUNT, PullAssumption.CABLE_COUNT,
            Term.CABLE_OUTSIDE_DIAMETER, PullAssumption.CABLE_DIAMETER,
            Term.CABLE_MASS, PullAssumption.CABLE_MASS);

    private static final Set<PullAssumption> ALWAYS = EnumSet.of(
            PullAssumption.FRICTION,
            PullAssumption.BREAKAWAY,
            PullAssumption.INNERDUCT_STRESS,
            PullAssumption.MACHINE_AND_VAULT);

    private final PullSettings settings;

    Assumptions(PullSettings settings) {
        this.settings = settings;
    }

    Set<PullAssumption> of(Span span, Bends bends) {
        var found = EnumSet.copyOf(ALWAYS);
        addRecords(found, span.duct());
        addWay(found, span, bends);
        if (span.duct().flooded()) {
            found.add(settings.sealedWhenFlooded() ? PullAssumption.FLOODED_SEALED : PullAssumption.FLOODED_OPEN);
        }
        return found;
    }

    private void addRecords(Set<PullAssumption> found, Duct duct) {
        for (Term term : duct.assumed()) {
            if (BY_TERM.containsKey(term)) {
                found.add(BY_TERM.get(term));
            }
        }
        Contents contents = duct.contents();
        if (contents.innerducts().size() + contents.cablesBeside().size() > 1) {
            found.add(PullAssumption.NEIGHBOR_SHARE);
        }
        for (Innerduct innerduct : contents.innerducts()) {
            for (Cable cable : innerduct.cables()) {
                if (cable.service() == Service.UNKNOWN) {
                    found.add(PullAssumption.CABLE_LIVE);
                }
            }
        }
    }

    private void addWay(Set<PullAssumption> found, Span span, Bends bends) {
        if (settings.wanderRadPerM() > 0) {
            found.add(PullAssumption.WANDER);
        }
        for (Bend bend : bends.list()) {
            if (bend.radiusAssumed()) {
                found.add(PullAssumption.BEND_RADIUS);
            }
        }
        found.add(span.ground().hasZ() ? PullAssumption.VERTICAL_RADIUS : PullAssumption.LEVEL);
    }
}
