package org.spanroom.sample;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** Counts what passes on its way to a sink. */
final class CityCount implements CitySink {
    /** The words that {@link Paperwork} has for the two. */
    private static final Set<String> NO = Set.of("no", "N", "refused", "forbidden");

    private static final Set<String> YES = Set.of("yes", "Y");

    private final CitySink sink;
    private final Map<Fault, Integer> faults = new EnumMap<>(Fault.class);
    private final Map<String, Integer> ducts = new TreeMap<>();
    private final SectionCount sections = new SectionCount();
    private long routes;
    private long vaults;
    private long rows;
    private long zones;
    private long streets;
    private int banks;

    CityCount(CitySink sink) {
        this.sink = sink;
    }

    @Override
    public void route(RouteFeature route) {
        routes++;
        sink.route(route);
    }

    @Override
    public void vault(VaultFeature vault) {
        vaults++;
        sink.vault(vault);
    }

    @Override
    public void contents(ListedItem row) {
        rows++;
        sink.contents(row);
    }

    @Override
    public void zone(ZoneFeature zone) {
        zones++;
        sink.zone(zone);
    }

    @Override
    public void street(StreetFeature street) {
        streets++;
        sink.street(street);
    }

    @Override
    public void fault(KnownFault fault) {
        faults.merge(fault.fault(), 1, Integer::sum);
        sink.fault(fault);
    }

    /** Numbers the next bank. */
    int nextBank() {
        return ++banks;
    }

    /** Counts the sections of a bank. */
    void bank(int ofBank, List<Draft> drafts) {
        sections.bank(ofBank, drafts);
    }

    /** Counts a duct by its contents and its records. */
    void duct(Draft draft) {
        count("ducts in all");
        count(contents(draft));
        if (draft.attributes().text(RouteField.FLOODED).equals("yes")) {
            count("flooded");
        }
        String condition = draft.attributes().text(RouteField.CONDITION);
        if (!condition.equals("sound")) {
            count(condition);
        }
        if (draft.bank().bore().isSquare()) {
            count("square clay bore");
        }
        if (draft.bank().load() == Bank.Load.HEAVY) {
            count("with the heaviest cables");
        }
        countIf(NO, "consent refused", draft.attributes().text(RouteField.CONSENT));
        countIf(NO, "loose fiber not allowed", draft.attributes().text(RouteField.LOOSE_OK));
        countIf(YES, "spliced inside", draft.attributes().text(RouteField.SPLICED));
        countIf(NO, "no cables beside innerducts allowed", draft.attributes().text(RouteField.BESIDE_OK));
        if (draft.attributes().number(RouteField.RESERVED) > 0) {
            count("with reserved positions");
        }
        if (draft.filling().reservedCells() > 0) {
            count("with reserved cells of sleeves");
        }
        countIf(YES, "innerducts grouted in", draft.attributes().text(RouteField.GROUTED));
        if (draft.filling().service().equals("dead")
                || draft.filling().service().equals("unknown")) {
            count("cables " + draft.filling().service());
        }
    }

    private void countIf(Set<String> answers, String word, String answer) {
        if (answers.contains(answer)) {
            count(word);
        }
    }

    private static String contents(Draft draft) {
        return draft.bank().direct()
                ? "innerduct buried without a duct"
                : draft.filling().kind().words();
    }

    private void count(String word) {
        ducts.merge(word, 1, Integer::sum);
    }

    Map<Fault, Integer> faults() {
        return faults;
    }

    Map<String, Integer> ducts() {
        return ducts;
    }

    Map<String, Integer> sections() {
        return sections.counts();
    }

    long routes() {
        return routes;
    }

    long vaults() {
        return vaults;
    }

    long zones() {
        return zones;
    }

    long streets() {
        return streets;
    }

    long rows() {
        return rows;
    }
}
