package org.spanroom.model.permit;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.spanroom.model.Check;

/**
 * How far a span is under a rule of permit zones, on the run date.
 *
 * @param lengthM meters of the span inside such zones; where they overlap they count once
 * @param until last day of the last of them; empty where one has no last day
 */
public record RuledPart(double lengthM, Optional<LocalDate> until) {
    public RuledPart {
        Check.notNegative("lengthM", lengthM);
    }

    static RuledPart of(List<ZoneTouch> touches) {
        boolean forGood =
                touches.stream().anyMatch(touch -> touch.zone().until().isEmpty());
        Optional<LocalDate> last =
                touches.stream().flatMap(touch -> touch.zone().until().stream()).max(Comparator.naturalOrder());
        return new RuledPart(Permits.coveredM(touches), forGood ? Optional.empty() : last);
    }
}
