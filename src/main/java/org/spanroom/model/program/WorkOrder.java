package org.spanroom.model.program;

import java.time.LocalDate;
import java.util.List;
import org.spanroom.model.Check;

/**
 * The recovery of one span, to be put into the calendar.
 *
 * @param spanId the span
 * @param sectionId its section: spans of one section have the same two vaults
 * @param year number of the program's year in which it is to be done, from 0
 * @param priorityMoney work with a greater one is placed first where not all has room
 * @param siteHours elapsed hours of the crew on site if it is done alone
 * @param night whether it must be done by night
 * @param vaultA the vault at one end
 * @param vaultB the vault at the other end
 * @param sharedAHours hours saved if work before or after it in the same shift of the crew is at the same vault A
 * @param sharedBHours the same of vault B
 * @param district of which at most so many spans are in work in one week; empty for no limit
 * @param leadDays days from applying for its permits, or from notice, to the first day of work
 * @param checkDays days that a field check must come before the work; 0 for no check
 * @param notBefore the first day on which it can be done; {@code LocalDate.MIN} for any
 * @param notAfter the last day by which it must be done; {@code LocalDate.MAX} for any
 * @param closures days on which it cannot be done
 */
public record WorkOrder(
        String spanId,
        String sectionId,
        int year,
        double priorityMoney,
        double siteHours,
        boolean night,
        String vaultA,
        String vaultB,
        double sharedAHours,
        double sharedBHours,
        String district,
        int leadDays,
        int checkDays,
        LocalDate notBefore,
        LocalDate notAfter,
        List<Closure> closures) {
    public WorkOrder {
        Check.positive("siteHours", siteHours);
        Check.notNegative("sharedAHours", sharedAHours);
        Check.notNegative("sharedBHours", sharedBHours);
        closures = List.copyOf(closures);
    }
}
