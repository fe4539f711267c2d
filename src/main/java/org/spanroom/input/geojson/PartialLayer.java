package org.spanroom.input.geojson;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * What a collection says of features that it does not hold: servers give a layer in pages, and name in the outermost object whether there
 * are more (exceededTransferLimit) or how many match in all (numberMatched, OGC API - Features).
 */
final class PartialLayer {
    private static final String EXCEEDED = "exceededTransferLimit";
    private static final String MATCHED = "numberMatched";

    private boolean exceeded;
    private OptionalLong matched = OptionalLong.empty();

    /** Takes a member of the outermost object, whose value the parser is at; false if it says nothing of this, and was not read. */
    boolean takes(String name, JsonParser parser) throws IOException {
        switch (name) {
            case EXCEEDED -> {
                exceeded |= parser.currentToken() == JsonToken.VALUE_TRUE;
                parser.skipChildren();
            }
            case MATCHED -> {
                if (parser.currentToken() == JsonToken.VALUE_NUMBER_INT
                        && parser.getNumberType() != JsonParser.NumberType.BIG_INTEGER) {
                    matched = OptionalLong.of(parser.getLongValue());
                }
                parser.skipChildren();
            }
            default -> {
                return false;
            }
        }
        return true;
    }

    /** Takes what the properties of a collection say: some servers put it there. */
    void takeProperties(JsonParser parser) throws IOException {
        if (parser.currentToken() != JsonToken.START_OBJECT) {
            parser.skipChildren();
            return;
        }
        for (String name = parser.nextFieldName(); name != null; name = parser.nextFieldName()) {
            parser.nextToken();
            if (!takes(name, parser)) {
                parser.skipChildren();
            }
        }
    }

    /**
     * Returns what is missing, in words.
     *
     * @param held how many features the collection holds
     */
    Optional<String> missing(long held) {
        if (matched.isPresent() && matched.getAsLong() > held) {
            return Optional.of("numberMatched is " + matched.getAsLong() + ", but it holds " + held
                    + "; download the other pages");
        }
        return exceeded
                ? Optional.of("exceededTransferLimit is true: the server held features back; download the rest")
                : Optional.empty();
    }
}
