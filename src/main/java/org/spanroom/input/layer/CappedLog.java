package org.spanroom.input.layer;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Supplier;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.FindingLog;
import org.spanroom.model.Counted;

/**
 * The findings of one layer, at most a thousand of each code and field: a whole layer with one fault would drown all others.
 * What goes beyond is counted and reported in one further finding.
 *
 * <p>Missing values are reported one by one while they are few; where they are many, or every feature lacks the value, in one finding.
 */
public final class CappedLog {
    static final int MOST_OF_A_KIND = 1000;

    private final FindingLog findings;
    private final String source;
    private final Map<FindingCode, Map<String, Kind>> kinds = new EnumMap<>(FindingCode.class);

    public CappedLog(FindingLog findings, String source) {
        this.findings = findings;
        this.source = source;
    }

    /** The findings of one code and field. */
    private static final class Kind {
        private final List<Finding> first = new ArrayList<>();
        private long count;
    }

    public String source() {
        return source;
    }

    public void add(Finding finding) {
        add(finding.code(), finding.field(), () -> finding);
    }

    /** Adds a finding whose words are only made if they will be shown: there may be millions of them. */
    public void add(FindingCode code, String field, Supplier<Finding> finding) {
        Kind kind = kinds.computeIfAbsent(code, key -> new TreeMap<>()).computeIfAbsent(field, key -> new Kind());
        kind.count++;
        if (kind.first.size() < MOST_OF_A_KIND) {
            kind.first.add(finding.get());
        }
    }

    /** Notes something about the layer as a whole. */
    public void layer(FindingCode code, String detail) {
        findings.add(Finding.of(code, source, "", detail));
    }

    /** Hands everything on; to be called when the layer has been read. */
    public void close(long features) {
        kinds.values().forEach(byField -> byField.values().forEach(kind -> handOn(kind, features)));
        kinds.clear();
    }

    private void handOn(Kind kind, long features) {
        Finding example = kind.first.get(0);
        boolean many = kind.count > MOST_OF_A_KIND;
        boolean all = kind.count == features && features > 1;
        if (example.code() == FindingCode.MISSING_VALUE && (many || all)) {
            findings.add(
                    summary(example, (all ? "all " : "") + Counted.of(kind.count, "feature") + ": " + example.detail())
                            .standingFor(kind.count));
            return;
        }
        kind.first.forEach(findings::add);
        if (many) {
            long more = kind.count - MOST_OF_A_KIND;
            findings.add(summary(example, Counted.of(more, "more feature") + " of this kind, not listed")
                    .standingFor(more));
        }
    }

    private Finding summary(Finding example, String detail) {
        return Finding.of(example.code(), source, "", detail).inField(example.field());
    }
}
