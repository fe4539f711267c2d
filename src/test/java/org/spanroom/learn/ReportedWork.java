package org.spanroom.learn;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import org.spanroom.model.fieldwork.FactUnit;
import org.spanroom.model.fieldwork.FactValue;
import org.spanroom.model.fieldwork.FieldBook;
import org.spanroom.model.fieldwork.FieldEntry;
import org.spanroom.model.fieldwork.FieldFact;

/** Field books for tests, written fact by fact. */
public final class ReportedWork {
    public static final String RUN = "0123abcd";

    private static final LocalDate FIRST_DAY = LocalDate.of(2027, 3, 31);

    private final List<FieldEntry> entries = new ArrayList<>();
    private String run = RUN;
    private LocalDate day = FIRST_DAY;

    /** Makes all later entries of another run's sheets. */
    public ReportedWork ofRun(String other) {
        run = other;
        return this;
    }

    public ReportedWork on(LocalDate other) {
        day = other;
        return this;
    }

    public ReportedWork done(String span) {
        return word(span, FieldFact.STATUS, "", "done");
    }

    public ReportedWork hours(String span, String step, double planned, double actual) {
        return number(span, FieldFact.STEP_HOURS, step, FactUnit.H, planned, actual);
    }

    public ReportedWork number(
            String subject, FieldFact fact, String item, FactUnit unit, double planned, double actual) {
        return add(subject, fact, item, of(unit, actual), Optional.of(of(unit, planned)));
    }

    public ReportedWork number(String subject, FieldFact fact, String item, FactUnit unit, double actual) {
        return add(subject, fact, item, of(unit, actual), Optional.empty());
    }

    public ReportedWork word(String subject, FieldFact fact, String item, String word) {
        return add(subject, fact, item, FactValue.ofText(word), Optional.empty());
    }

    public ReportedWork word(String subject, FieldFact fact, String item, String planned, String word) {
        return add(subject, fact, item, FactValue.ofText(word), Optional.of(FactValue.ofText(planned)));
    }

    private static FactValue of(FactUnit unit, double value) {
        return FactValue.ofNumber(String.format(Locale.ROOT, "%s", value), unit, value);
    }

    private ReportedWork add(
            String subject, FieldFact fact, String item, FactValue value, Optional<FactValue> planned) {
        entries.add(new FieldEntry(
                entries.size() + 1, fact, subject, item, value, planned, "crew", day, OptionalInt.empty(), run, ""));
        return this;
    }

    public FieldBook book() {
        return new FieldBook(entries);
    }
}
