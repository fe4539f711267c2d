package org.spanroom.model.network;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.spanroom.model.Check;
import org.spanroom.model.fieldwork.WorkStatus;

/**
 * What the field book says of a span beyond the values that it replaces.
 *
 * @param status how far the work on the span is; empty where none is reported
 * @param statusDay the day on which that was reported
 * @param statusReason why the work was stopped, in the crew's words; or empty
 * @param blockedAtM distance of the obstruction from the vault {@code blockedFrom}, along the duct
 * @param blockedFrom id of the vault that the distance is measured from; empty where no distance is reported
 * @param entries numbers of the entries of the field book that the span rests on, ascending
 */
public record FieldRecord(
        Optional<WorkStatus> status,
        Optional<LocalDate> statusDay,
        String statusReason,
        OptionalDouble blockedAtM,
        String blockedFrom,
        List<Integer> entries) {
    /** Nothing is reported. */
    public static final FieldRecord NONE =
            new FieldRecord(Optional.empty(), Optional.empty(), "", OptionalDouble.empty(), "", List.of());

    public FieldRecord {
        blockedAtM.ifPresent(distance -> Check.notNegative("blockedAtM", distance));
        entries = List.copyOf(entries);
    }

    /** Returns whether the work on the span has this status. */
    public boolean is(WorkStatus wanted) {
        return status.isPresent() && status.get() == wanted;
    }

    /** Returns whether the field book says anything of the span. */
    public boolean isEmpty() {
        return entries.isEmpty();
    }
}
