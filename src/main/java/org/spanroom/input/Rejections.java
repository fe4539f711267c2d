package org.spanroom.input;

import java.util.EnumMap;
import java.util.Map;
import org.spanroom.finding.FindingCode;

/** How many features of a layer were rejected, by the reason: exact, however few of them the findings list. */
final class Rejections {
    private final Map<FindingCode, Long> byCode = new EnumMap<>(FindingCode.class);

    void count(FindingCode code) {
        byCode.merge(code, 1L, Long::sum);
    }

    /** Adds what another stage of the reading rejected. */
    void add(Map<FindingCode, Long> others) {
        others.forEach((code, count) -> byCode.merge(code, count, Long::sum));
    }

    void clear() {
        byCode.clear();
    }

    Map<FindingCode, Long> byCode() {
        return Map.copyOf(byCode);
    }
}
