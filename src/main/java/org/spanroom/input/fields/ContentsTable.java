package org.spanroom.input.fields;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.FindingLog;
import org.spanroom.input.layer.CappedLog;
import org.spanroom.model.Term;
import org.spanroom.model.network.CatalogUse;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.RejectedValue;

/** The contents of ducts that a table lists item by item. */
public final class ContentsTable {
    public static final ContentsTable EMPTY = new ContentsTable("", new TreeMap<>());

    private final String source;
    private final Map<String, Listed> byDuct;
    private final Set<String> found = new TreeSet<>();

    /**
     * The contents of one duct, with the terms that had to be assumed for them, what was taken from the catalog, and what was
     * recorded and could not be used.
     */
    public record Listed(Contents contents, Set<Term> assumed, CatalogUse catalogUse, List<RejectedValue> rejected) {}

    ContentsTable(String source, Map<String, Listed> byDuct) {
        this.source = source;
        this.byDuct = byDuct;
    }

    public Optional<Listed> find(String ductId) {
        Listed listed = byDuct.get(ductId);
        if (listed != null) {
            found.add(ductId);
        }
        return Optional.ofNullable(listed);
    }

    int ducts() {
        return byDuct.size();
    }

    /** Reports listed ducts that no route has; to be called when all routes have been read. */
    public void reportUnknownDucts(FindingLog findings) {
        var log = new CappedLog(findings, source);
        byDuct.keySet().stream()
                .filter(duct -> !found.contains(duct))
                .forEach(duct -> log.add(Finding.of(
                        FindingCode.CONTENTS_DUCT_UNKNOWN, source, duct, "no route is drawn along this duct")));
        log.close(byDuct.size());
    }
}
