package org.spanroom.pipeline;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.spanroom.model.Counted;
import org.spanroom.model.fieldwork.FactUse;
import org.spanroom.model.fieldwork.FieldBook;
import org.spanroom.model.fieldwork.FieldEntry;
import org.spanroom.model.fieldwork.WorkStatus;

/** What the next ranking does with new entries, in words. */
final class CloseoutOutlook {
    private CloseoutOutlook() {}

    /**
     * Returns a line for each effect.
     *
     * @param before the book without the new entries
     */
    static List<String> of(FieldBook before, List<FieldEntry> entries) {
        var all = new ArrayList<>(before.all());
        all.addAll(entries);
        var after = new FieldBook(all);
        Map<WorkStatus, Integer> byStatus = new EnumMap<>(WorkStatus.class);
        for (String span : subjects(entries, FactUse.STATUS)) {
            after.statusOf(span).ifPresent(status -> byStatus.merge(status, 1, Integer::sum));
        }
        var lines = new ArrayList<String>();
        byStatus.forEach((status, spans) -> lines.add(Counted.of(spans, "span") + " " + words(status, spans)));
        int ducts = subjects(entries, FactUse.DUCT).size();
        if (ducts > 0) {
            lines.add(Counted.of(ducts, "span") + " calculated with what crews found and left in the duct");
        }
        int vaults = subjects(entries, FactUse.VAULT).size();
        if (vaults > 0) {
            lines.add(Counted.of(vaults, "vault") + " with what crews found there");
        }
        boolean production = entries.stream().anyMatch(entry -> entry.fact().use() == FactUse.PRODUCTION);
        if (production) {
            lines.add("hours, forces and material change no rank; they are kept for rates from actual production");
        }
        return lines;
    }

    private static String words(WorkStatus status, int spans) {
        return switch (status) {
            case PLANNED, PERMITTED -> status.key() + ": still " + Counted.form(spans, "a candidate", "candidates");
            case IN_WORK -> "in work: not planned again (gate in_work)";
            case DONE -> "done: not ranked any more (gate work_done)";
            case STOPPED ->
                "stopped: ranked with the caution work_stopped, unless what crews found excludes "
                        + Counted.form(spans, "it", "them") + ", such as a blocked duct";
        };
    }

    private static Set<String> subjects(List<FieldEntry> entries, FactUse use) {
        var subjects = new LinkedHashSet<String>();
        entries.stream().filter(entry -> entry.fact().use() == use).forEach(entry -> subjects.add(entry.subject()));
        return subjects;
    }
}
