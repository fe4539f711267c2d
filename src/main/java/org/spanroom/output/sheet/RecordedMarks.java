package org.spanroom.output.sheet;

import java.util.OptionalDouble;
import org.spanroom.model.Answer;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.SpanEnd;

/** What the records say by which a crew finds a duct and its contents at a vault. Nothing of it is ever assumed. */
final class RecordedMarks {
    private RecordedMarks() {}

    /** Returns the hole in the face of the bank; empty where it is not recorded. */
    static String hole(Span span, SpanEnd end) {
        return span.factsAt(end).hole();
    }

    /** Returns the slack of each live cable at an end. */
    static OptionalDouble slackM(Span span, SpanEnd end) {
        return span.slackM(end);
    }

    static String color(Innerduct innerduct) {
        return innerduct.color();
    }

    /** Returns whether an innerduct runs uncut through the vault at an end. */
    static Answer uncut(Innerduct innerduct, SpanEnd end) {
        return innerduct.uncutAt(end);
    }

    static String tag(Cable cable) {
        return cable.tag();
    }
}
