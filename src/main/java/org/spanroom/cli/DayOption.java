package org.spanroom.cli;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a day, e.g. 2027-03-31. */
final class DayOption implements ITypeConverter<LocalDate> {
    @Override
    public LocalDate convert(String text) {
        try {
            return LocalDate.parse(text.strip());
        } catch (DateTimeParseException notADay) {
            throw new TypeConversionException("'" + text + "' is not a day such as 2027-03-31");
        }
    }
}
