package org.spanroom.cli;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a whole number within a range; anything else is a wrong option, not a failure of the program. */
class WholeNumber implements ITypeConverter<Integer> {
    private final int least;
    private final int most;

    private WholeNumber(int most) {
        this(1, most);
    }

    private WholeNumber(int least, int most) {
        this.least = least;
        this.most = most;
    }

    @Override
    public Integer convert(String text) {
        int number = text.matches("\\d{1,9}") ? Integer.parseInt(text) : -1;
        if (number < least || number > most) {
            throw new TypeConversionException("'" + text + "' is not a whole number from " + least + " to " + most);
        }
        return number;
    }

    /** How many threads. */
    static final class OfThreads extends WholeNumber {
        OfThreads() {
            super(1024);
        }
    }

    /** How many spans. */
    static final class OfSpans extends WholeNumber {
        OfSpans() {
            super(100_000_000);
        }
    }

    /** Of how many spans a page has details. */
    static final class OfDetails extends WholeNumber {
        OfDetails() {
            super(0, 100_000);
        }
    }

    /** How many cables go together. */
    static final class OfCables extends WholeNumber {
        OfCables() {
            super(10_000);
        }
    }

    /** How many iterations of a search. */
    static final class OfIterations extends WholeNumber {
        OfIterations() {
            super(100_000_000);
        }
    }

    /** How many things a list shows. */
    static final class OfListed extends WholeNumber {
        OfListed() {
            super(1000);
        }
    }

    /** A seed of random numbers: any whole number, negative ones too. */
    static final class OfSeeds implements ITypeConverter<Long> {
        @Override
        public Long convert(String text) {
            try {
                return Long.parseLong(text);
            } catch (NumberFormatException e) {
                throw new TypeConversionException("'" + text + "' is not a whole number");
            }
        }
    }
}
