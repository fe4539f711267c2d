package org.spanroom.output;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.spanroom.model.effort.MoneyTotals;
import org.spanroom.model.rank.ContentsAccount;
import org.spanroom.model.rank.RankTotals;

/**
 * What a run left on the disk.
 *
 * @param files names in the folder, in order
 * @param notes what the user should know of them, one sentence each: texts cut, a layer left out
 * @param totals counts and sums over all spans of the run
 * @param money what all of them that have a rank cost and save together
 * @param spansKept how many of them were written, where not all were asked for
 * @param kept the owner's own fields that the totals have sums of, in their order
 * @param contents what the results rest on, so far as it concerns what lies in the ducts
 */
public record WrittenResults(
        Path folder,
        List<String> files,
        List<String> notes,
        RankTotals totals,
        MoneyTotals money,
        Optional<Long> spansKept,
        List<String> kept,
        ContentsAccount contents) {
    public WrittenResults {
        files = List.copyOf(files);
        notes = List.copyOf(notes);
        kept = List.copyOf(kept);
    }
}
