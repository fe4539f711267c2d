package org.spanroom.output.sheet;

import java.util.ArrayList;
import java.util.List;
import org.spanroom.model.network.ContentsSource;
import org.spanroom.model.rank.Exclusion;
import org.spanroom.model.rank.Verdict;

/** What stands out at the top of each page of a duct: that it is not a candidate, or that what the page says of its contents is not recorded. */
final class DuctBands {
    private DuctBands() {}

    static List<String> of(DuctSheet duct) {
        var bands = new ArrayList<String>();
        Verdict verdict = duct.work().explained().ranked().verdict();
        verdict.findFirst().map(Exclusion::explanation).ifPresent(why -> bands.add("NOT A CANDIDATE: " + why));
        ContentsSource source = duct.span().duct().contentsSource();
        if (source == ContentsSource.ASSUMED) {
            bands.add("Contents assumed: verify before work");
        } else if (source == ContentsSource.UNKNOWN) {
            bands.add("Contents not recorded: verify before work");
        }
        if (verdict.isPullDoubtful()) {
            bands.add("Pull doubtful: by the calculation it succeeds only well lubricated");
        }
        return bands;
    }
}
