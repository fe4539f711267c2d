package org.spanroom.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.FindingLog;
import org.spanroom.model.Answer;
import org.spanroom.model.Line;
import org.spanroom.model.fieldwork.FactUnit;
import org.spanroom.model.fieldwork.FactValue;
import org.spanroom.model.fieldwork.FieldBook;
import org.spanroom.model.fieldwork.FieldEntry;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.model.fieldwork.WorkStatus;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.InsideSize;
import org.spanroom.model.network.Network;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.UsualItems;
import org.spanroom.model.network.Vault;
import org.spanroom.model.network.VaultFacts;
import org.spanroom.model.network.VaultSite;
import org.spanroom.model.network.VolumeBasis;
import org.spanroom.testing.Ducts;

/** Which spans and vaults the entries of a field book reach. */
class FieldOverlayTest {
    private final FindingLog findings = new FindingLog();
    private final List<FieldEntry> entries = new ArrayList<>();

    private FieldOverlayTest say(String subject, FieldFact fact, String item, String value) {
        FactUnit unit = fact.kind().units().get(0);
        entries.add(new FieldEntry(
                entries.size() + 1,
                fact,
                subject,
                item,
                fact.kind().isNumber()
                        ? FactValue.ofNumber(value, unit, Double.parseDouble(value))
                        : FactValue.ofText(value),
                Optional.empty(),
                "crew 1",
                LocalDate.of(2027, 3, 1),
                OptionalInt.empty(),
                "00c0ffee",
                ""));
        return this;
    }

    private FieldOverlay overlay() {
        return new FieldOverlay(
                new FieldBook(entries),
                new FieldChanges(UsualItems.NONE),
                text -> text.replace('\u0001', '?'),
                findings,
                "book.csv");
    }

    private static Span span(String duct, String from, String to) {
        return Ducts.span(Ducts.round(duct, "", 100, Contents.UNKNOWN, Set.of()), from, to, Line.ofXy(1, 2, 101, 2));
    }

    private static final Network NETWORK = new Network(
            List.of(span("D1", "V1", "V2"), span("D1", "V2", "V3"), span("D\u0001", "V1", "V2")),
            List.of(),
            300,
            300,
            0);

    @Test
    void withoutEntriesNothingIsReplaced() {
        List<Vault> vaults = List.of(Ducts.vault("V1"));

        assertSame(NETWORK, overlay().spans(NETWORK));
        assertSame(vaults, overlay().vaults(vaults));
        say("D1:V1:V2", FieldFact.SIGNED_BY, "", "me");
        assertSame(NETWORK, overlay().spans(NETWORK));
        assertEquals(List.of(), findings.all());
    }

    @Test
    void onlyTheSpanThatIsNamedHasAnotherDuct() {
        say("D1:V2:V3", FieldFact.STATUS, "", "in_work");
        Network found = overlay().spans(NETWORK);

        assertEquals(NETWORK.spans().size(), found.spans().size());
        assertSame(NETWORK.spans().get(0).duct(), found.spans().duct(0));
        assertTrue(found.spans().duct(1).fieldRecord().is(WorkStatus.IN_WORK));
        assertEquals(found.spans().duct(1), found.spans().get(1).duct());
        assertEquals("D1:V2:V3", found.spans().id(1));
        assertEquals(NETWORK.spans().section(1), found.spans().section(1));
        assertTrue(found.spans().compareIds(0, 1) < 0);
    }

    @Test
    void aNameCountsAsTheResultsWriteIt() {
        say("D?:V1:V2", FieldFact.STATUS, "", "in_work");

        assertTrue(overlay().spans(NETWORK).spans().duct(2).fieldRecord().is(WorkStatus.IN_WORK));
        assertEquals(List.of(), findings.all());
    }

    @Test
    void aSpanWhoseLineWasTurnedAroundIsFoundWithItsEndsExchanged() {
        say("D1:V2:V1", FieldFact.BLOCKED_AT, "a", "30");
        Duct found = overlay().spans(NETWORK).spans().duct(0);

        assertEquals("V2", found.fieldRecord().blockedFrom());
        assertEquals(OptionalDouble.of(30), found.fieldRecord().blockedAtM());
        assertEquals(List.of(), findings.all());
    }

    @Test
    void whatTheDataDoesNotHaveIsReportedOnceWithWhatToDo() {
        say("D1:V1:V3", FieldFact.STATUS, "", "done")
                .say("D1:V1:V3", FieldFact.BLOCKED_AT, "a", "30")
                .say("V9", FieldFact.VAULT_WATER, "", "yes")
                .say("V8", FieldFact.OXYGEN, "", "20.9");
        FieldOverlay overlay = overlay();
        overlay.vaults(List.of(Ducts.vault("V1")));
        assertSame(NETWORK, overlay.spans(NETWORK));

        assertEquals(
                List.of("D1:V1:V3", "V9"),
                findings.all().stream().map(Finding::featureId).toList());
        assertTrue(findings.all().stream().allMatch(found -> found.code() == FindingCode.FIELD_ENTRY_UNMATCHED));
        String detail = findings.all().get(0).detail();
        assertTrue(detail.startsWith("entries 1, 2: no span of the data has this id"), detail);
        assertTrue(detail.contains("spans of that duct are D1:V1:V2, D1:V2:V3"), detail);
        assertTrue(detail.contains("supersedes"), detail);
    }

    @Test
    void whatWasFoundOfAVaultReplacesWhatIsRecorded() {
        say("V1", FieldFact.VAULT_LENGTH, "", "3")
                .say("V1", FieldFact.VAULT_WIDTH, "", "2")
                .say("V1", FieldFact.VAULT_HEIGHT, "", "2.5")
                .say("V1", FieldFact.VAULT_WATER, "", "yes")
                .say("V1", FieldFact.COVER_SIZE, "", "700")
                .say("V1", FieldFact.VAULT_INSPECTED, "", "2027-02-28")
                .say("V1", FieldFact.VAULT_KIND, "", "handhole")
                .say("V2", FieldFact.VAULT_VOLUME, "", "9");
        List<Vault> vaults = overlay().vaults(List.of(Ducts.vault("V1"), Ducts.vault("V2"), Ducts.vault("V3")));

        Vault first = vaults.get(0);
        assertEquals(new VaultSite(OptionalDouble.of(15), Answer.YES, "", Answer.UNKNOWN), first.site());
        assertEquals(
                new VaultFacts(
                        VolumeBasis.INSIDE_SIZE,
                        OptionalDouble.empty(),
                        new InsideSize(OptionalDouble.of(3), OptionalDouble.of(2), OptionalDouble.of(2.5)),
                        OptionalDouble.of(700),
                        Answer.UNKNOWN,
                        Answer.UNKNOWN,
                        Optional.of(LocalDate.of(2027, 2, 28))),
                first.facts());
        assertEquals("handhole", first.kind());
        assertEquals(VolumeBasis.RECORDED, vaults.get(1).facts().volumeBasis());
        assertEquals(Ducts.vault("V3"), vaults.get(2));
    }
}
