package org.spanroom.input.layer;

import java.util.Map;
import java.util.TreeMap;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.FindingLog;
import org.spanroom.model.Counted;

/**
 * The findings of one layer: each rejected feature by itself, and what is odd about many features as one finding with
 * their number.
 */
public final class LayerLog {
    private final String source;
    private final FindingLog findings;
    private final Map<String, Oddity> oddities = new TreeMap<>();
    private final CappedLog features;
    private final Rejections rejections = new Rejections();

    /** How many features are odd in one way, and the first of them. */
    private record Oddity(FindingCode code, long firstFeature, long count) {}

    public LayerLog(String source, FindingLog findings) {
        this.source = source;
        this.findings = findings;
        this.features = new CappedLog(findings, source);
    }

    /** Returns a log whose findings are discarded, for looking at a layer before it is read. */
    public static LayerLog unheard(String source) {
        return new LayerLog(source, new FindingLog());
    }

    /** Notes something about the layer as a whole. */
    public void layer(FindingCode code, String detail) {
        findings.add(Finding.of(code, source, "", detail));
    }

    /** Notes something about one feature; of a layer with one fault everywhere the first thousand are listed. */
    public void feature(FindingCode code, long number, String fileId, String detail) {
        features.add(
                code,
                "",
                () -> Finding.of(
                        code,
                        source,
                        fileId.isEmpty() ? Long.toString(number) : fileId,
                        "feature " + number + " of the layer: " + detail));
    }

    /** Notes that one feature was rejected, which is counted too. */
    void rejected(FindingCode code, long number, String fileId, String detail) {
        rejections.count(code);
        feature(code, number, fileId, detail);
    }

    /** Returns how many features were rejected since the log was closed before, or made. */
    public Rejections rejections() {
        return rejections;
    }

    /** Notes that a feature, counted from 1, is odd in a way that others may be too. */
    public void odd(FindingCode code, long number, String what) {
        oddities.merge(
                what,
                new Oddity(code, number, 1),
                (old, next) -> new Oddity(old.code, Math.min(old.firstFeature, next.firstFeature), old.count + 1));
    }

    /** Reports what is held back; to be called when the layer has been read. */
    public void close(long met) {
        features.close(met);
        oddities.forEach((what, oddity) -> layer(
                oddity.code(),
                what + " (" + Counted.of(oddity.count(), "feature")
                        + (oddity.count() == 1 ? ", number " : ", first number ") + oddity.firstFeature() + ")"));
        oddities.clear();
    }
}
