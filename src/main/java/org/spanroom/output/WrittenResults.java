package org.spanroom.output;

import java.nio.file.Path;
import java.util.List;
import org.spanroom.model.effort.MoneyTotals;
import org.spanroom.model.rank.ContentsAccount;
import org.spanroom.model.rank.RankTotals;

/**
 * What a run left on the disk.
 *
 * @param files names in the folder, in order
 * @param notes what the user should know of them, one sentence each: texts cut, a layer left out
 * @param totals counts and sums over the spans that were written
 * @param money what all of them that have a rank cost and save together
 * @param contents what the results rest on, so far as it concerns what lies in the ducts
 */
public record WrittenResults(
        Path folder, List<String> files, List<String> notes, RankTotals totals, MoneyTotals money, ContentsAccount contents) {
    public WrittenResults {
        files = List.copyOf(files);
        notes = List.copyOf(notes);
    }
}
