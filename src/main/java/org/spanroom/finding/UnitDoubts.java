package org.spanroom.finding;

import java.util.ArrayList;
import java.util.List;

/** What a summary says, before anything else, of fields whose unit is doubtful: one sentence each. */
public final class UnitDoubts {
    private static final int MOST = 6;

    private UnitDoubts() {}

    /** Returns the sentences; of many only the first, and how many more there are. */
    public static List<String> sentences(List<Finding> findings) {
        var doubts = new ArrayList<String>();
        int more = 0;
        for (Finding finding : findings) {
            if (finding.code() == FindingCode.UNIT_DOUBTFUL && doubts.size() < MOST) {
                doubts.add(sentence(finding));
            } else if (finding.code() == FindingCode.UNIT_DOUBTFUL) {
                more++;
            }
        }
        if (more > 0) {
            doubts.add("Check the units of more fields: the findings of kind unit_doubtful list " + more + " more.");
        }
        return List.copyOf(doubts);
    }

    private static String sentence(Finding finding) {
        String detail = finding.detail();
        return Character.toUpperCase(detail.charAt(0)) + detail.substring(1) + " (" + finding.source() + ").";
    }
}
