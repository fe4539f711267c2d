package org.spanroom.program;

import java.time.LocalDate;
import java.util.List;
import org.spanroom.model.program.Connection;
import org.spanroom.model.program.NewDuctOffer;

/** By which day new ducts are there: contractors build them within their year, by the day that a connection through them is needed. */
final class NewDuctDays {
    private NewDuctDays() {}

    /**
     * Returns the day by which new ducts of a year are built: the earliest day of that year by which a connection through them is needed, if permits
     * can be there by then, or else the last day of the year.
     *
     * @param through the connections that go through them
     */
    static LocalDate builtBy(ProgramInputs inputs, int year, NewDuctOffer offer, List<Connection> through) {
        LocalDate first = inputs.rules().years().get(year).from();
        LocalDate last = inputs.rules().years().get(year).until();
        LocalDate ready = inputs.rules().readyOn().plusDays(offer.leadDays());
        LocalDate day = last;
        for (Connection connection : through) {
            LocalDate needed = connection.neededBy().orElse(last);
            boolean isPossible = !needed.isBefore(ready) && !needed.isBefore(first);
            day = isPossible && needed.isBefore(day) ? needed : day;
        }
        return day;
    }
}
