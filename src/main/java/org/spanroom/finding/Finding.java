package org.spanroom.finding;

import java.util.Optional;

/**
 * One problem of the data.
 *
 * @param source the file, or file and layer, that the feature came from
 * @param featureId the owner's name of the feature, or its number in the file
 * @param field the source field or term concerned, or empty
 * @param detail what was found and what was expected, with values
 * @param lengthM meters of drawn line that the finding takes out of the spans; 0 where it takes none
 * @param count how many problems of the same kind it represents: more than one where they are too many to be listed
 */
public record Finding(
        FindingCode code,
        String source,
        String featureId,
        String field,
        String detail,
        Optional<Place> place,
        double lengthM,
        long count) {
    private static final int LONGEST_DETAIL = 2000;
    private static final int LONGEST_NAME = 500;

    /** Texts from the data may be of any length; a finding shows their beginning. */
    public Finding {
        detail = shortened(detail, LONGEST_DETAIL);
        featureId = shortened(featureId, LONGEST_NAME);
        if (count < 1) {
            throw new IllegalArgumentException("count must be > 0, was " + count);
        }
    }

    private static String shortened(String text, int longest) {
        return text.length() <= longest ? text : text.substring(0, longest - 3) + "...";
    }

    public static Finding of(FindingCode code, String source, String featureId, String detail) {
        return new Finding(code, source, featureId, "", detail, Optional.empty(), 0, 1);
    }

    public Finding at(double lonDeg, double latDeg) {
        return new Finding(
                code, source, featureId, field, detail, Optional.of(new Place(lonDeg, latDeg)), lengthM, count);
    }

    public Finding inSource(String sourceName) {
        return new Finding(code, sourceName, featureId, field, detail, place, lengthM, count);
    }

    public Finding inField(String fieldName) {
        return new Finding(code, source, featureId, fieldName, detail, place, lengthM, count);
    }

    public Finding withLengthM(double meters) {
        return new Finding(code, source, featureId, field, detail, place, meters, count);
    }

    /** Returns the finding as one that represents this many. */
    public Finding standingFor(long problems) {
        return new Finding(code, source, featureId, field, detail, place, lengthM, problems);
    }
}
