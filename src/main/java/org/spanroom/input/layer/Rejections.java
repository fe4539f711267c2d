package org.spanroom.input.layer;

import java.util.EnumMap;
import java.util.Map;
import org.spanroom.finding.FindingCode;

/** How many features of a layer were rejected, by the reason: exact, however few of them the findings list. */
public final class Rejections {
    private final Map<FindingCode, Long> byCode = new EnumMap<>(FindingCode.class);

    public void count(FindingCode code) {
        byCode.merge(code, 1L, Long::sum);
    }

    /** Adds what another stage of the reading rejected. */
    public void add(Map<FindingCode, Long> others) {
        others.forEach((code, count) -> byCode.merge(code, count, Long::sum));
    }

    public void clear() {
        byCode.clear();
    }

    public Map<FindingCode, Long> byCode() {
        return Map.copyOf(byCode);
    }
}
