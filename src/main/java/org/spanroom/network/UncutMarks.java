package org.spanroom.network;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.spanroom.model.Answer;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.SpanEnd;

/**
 * Marks the innerducts of a span that run uncut through its vaults. What the contents table says of an innerduct takes precedence over
 * what the route says of all of them. Of equal contents marked lately one is kept. For use by one thread.
 */
final class UncutMarks {
    private static final int BITS = 10;

    private final @Nullable Contents[] recent = new Contents[1 << BITS];

    /**
     * What is recorded at one end of a span.
     *
     * @param ofDuct which end of the duct it is, as the contents table counts them; empty where it is neither
     * @param ofAll what the route says of all innerducts
     */
    record Source(Optional<SpanEnd> ofDuct, Answer ofAll) {
        static final Source NONE = new Source(Optional.empty(), Answer.UNKNOWN);

        private Answer of(Innerduct recorded) {
            Answer own = ofDuct.map(recorded::uncutAt).orElse(Answer.UNKNOWN);
            return own == Answer.UNKNOWN ? ofAll : own;
        }
    }

    /** Returns a duct whose innerducts say whether they run uncut through the two vaults of a span; the duct itself where it says the same. */
    Duct mark(Duct duct, Source from, Source to) {
        List<Innerduct> recorded = duct.contents().innerducts();
        List<Innerduct> marked = new ArrayList<>(recorded.size());
        for (Innerduct innerduct : recorded) {
            marked.add(innerduct.withUncut(from.of(innerduct), to.of(innerduct)));
        }
        return marked.equals(recorded)
                ? duct
                : duct.withSizes(duct.insideDiameterMm(), one(duct.contents().withInnerducts(marked)));
    }

    private Contents one(Contents contents) {
        int slot = (contents.hashCode() * 0x9E3779B9) >>> (Integer.SIZE - BITS);
        Contents last = recent[slot];
        if (last != null && last.equals(contents)) {
            return last;
        }
        recent[slot] = contents;
        return contents;
    }
}
