package org.spanroom.pipeline;

import java.util.Locale;
import java.util.Optional;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.FindingLog;
import org.spanroom.model.Counted;
import org.spanroom.model.bore.CrossSection;
import org.spanroom.model.bore.Room;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.ContentsSource;
import org.spanroom.model.network.Sleeve;
import org.spanroom.model.network.Span;
import org.spanroom.model.rank.Assessment;

/** Turns what the stages noticed about a span's data into findings; the stages themselves know none. */
final class DataDoubts {
    private static final String SOURCE = "spans";

    private final FindingLog findings;

    DataDoubts(FindingLog findings) {
        this.findings = findings;
    }

    void report(Assessment one) {
        one.room()
                .findContradiction()
                .ifPresent(
                        why -> findings.add(finding(FindingCode.CONTENTS_CANNOT_FIT, one.span(), ofSource(one, why))));
        undecided(one.room(), one.span().duct().contents())
                .ifPresent(why -> findings.add(finding(FindingCode.CONTENTS_TOO_MANY, one.span(), ofSource(one, why))));
        double fillNowRatio = one.room().fillNowRatio().orElse(0);
        if (fillNowRatio > 1) {
            String detail = String.format(
                    Locale.ROOT,
                    "contents fill %.1f %% of a bore of %.1f mm; check the diameters and their units",
                    100 * fillNowRatio,
                    one.span().duct().insideDiameterMm());
            findings.add(finding(FindingCode.CONTENTS_OVERFILL, one.span(), detail));
        }
    }

    private static Optional<String> undecided(Room room, Contents contents) {
        boolean leftOut = contents.known() && room.crossSection().isEmpty();
        boolean leftOpen = room.crossSection().map(CrossSection::leftOpen).orElse(false);
        if (!leftOut && !leftOpen) {
            return Optional.empty();
        }
        long cells = contents.sleeves().stream().mapToLong(Sleeve::cells).sum();
        String recorded = Counted.of(contents.innerducts().size(), "innerduct") + ", "
                + Counted.of(contents.cableCount(), "cable") + " and " + Counted.of(cells, "cell") + " of sleeves";
        String outcome = leftOut
                ? "more than a cross-section is calculated for; its room is unknown"
                : "the work limit of a cross-section left an answer undecided, which counts as not fitting";
        return Optional.of(recorded + ": " + outcome + "; check the counts and sizes, or open the duct and measure");
    }

    /** Contents that were assumed are no fault of the data: they say that the assumption is wrong here. */
    private static String ofSource(Assessment one, String why) {
        return one.span().duct().contentsSource() == ContentsSource.ASSUMED
                ? "the assumed contents (not recorded): " + why + "; assume fewer in ducts of this size"
                : why;
    }

    private static Finding finding(FindingCode code, Span span, String detail) {
        int middle = span.lonLat().size() / 2;
        return Finding.of(code, SOURCE, span.id(), detail)
                .at(span.lonLat().x(middle), span.lonLat().y(middle));
    }
}
