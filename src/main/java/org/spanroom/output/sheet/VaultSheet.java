package org.spanroom.output.sheet;

import java.util.ArrayList;
import java.util.List;
import org.spanroom.model.Answer;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.model.network.AirTest;

/**
 * A vault on the cover page: all that is recorded of it, what a crew prepares for, and what is measured and written down there.
 *
 * @param preparations a sentence each
 * @param log what is done at it, with places to write
 */
public record VaultSheet(
        String end, String name, SheetTable facts, List<String> preparations, SheetTable air, List<SheetCell> log) {
    private static final double NAME_ROOM_MM = 60;
    private static final double FACT_ROOM_MM = 33;
    private static final double DUCT_ROOM_MM = 24;

    private static final List<SheetHead> FACT_HEADS =
            List.of(new SheetHead("Fact", 30), new SheetHead("By the records", 36), new SheetHead("Found", 23));
    private static final List<SheetHead> AIR_HEADS = List.of(
            new SheetHead("Air test", 33),
            new SheetHead("O2", 18),
            new SheetHead("LFL", 18),
            new SheetHead("Toxic", 20));

    static VaultSheet of(
            String end, VaultWords words, LongTable<String> air, double rowMm, SheetNames names, SheetBlanks page) {
        return new VaultSheet(
                end,
                names.fitBold(words.vault().id(), NAME_ROOM_MM, 10),
                facts(words, names, page).rowsOf(rowMm),
                words.preparationsAndLimits(),
                air.first(page).rowsOf(rowMm),
                log(words, page));
    }

    private static SheetTable facts(VaultWords words, SheetNames names, SheetBlanks page) {
        var rows = new ArrayList<SheetRow>();
        for (VaultWords.Fact fact : words.facts()) {
            SheetBlank found = page.ofVault(words.vault().id(), fact.fact(), "", fact.planned());
            rows.add(SheetRow.of(
                    SheetCell.words(fact.label()),
                    SheetCell.words(names.fit(fact.recorded(), FACT_ROOM_MM)),
                    found.room().equals("long") ? SheetCell.blank(found) : SheetCell.of(SheetPart.blank(found))));
        }
        return SheetTable.whole("", "facts", FACT_HEADS, rows);
    }

    /** The tests of the air, each a row to be written; none where crews work from the surface. */
    static LongTable<String> air(VaultWords words, List<DuctWork> ducts, SheetNames names) {
        var occasions = new ArrayList<String>();
        if (words.needs().entered() != Answer.NO) {
            occasions.add("before entry");
            if (words.needs().airTests().contains(AirTest.AFTER_PUMPING)) {
                occasions.add("after pumping");
            }
            ducts.forEach(duct -> occasions.add("mouth " + duct.span().duct().id()));
            occasions.add("retest 1");
            occasions.add("retest 2");
        }
        String vaultId = words.vault().id();
        return new LongTable<>(
                "",
                "air",
                AIR_HEADS,
                occasions.stream().distinct().toList(),
                Integer.MAX_VALUE,
                (page, occasion) -> List.of(SheetRow.of(
                        SheetCell.words(names.fit(occasion, DUCT_ROOM_MM)),
                        SheetCell.blank(page.ofVault(vaultId, FieldFact.OXYGEN, occasion, "")),
                        SheetCell.blank(page.ofVault(vaultId, FieldFact.FLAMMABLE, occasion, "")),
                        SheetCell.blank(page.ofVault(vaultId, FieldFact.TOXIC, occasion, "")))));
    }

    static List<SheetCell> log(VaultWords words, SheetBlanks page) {
        String vaultId = words.vault().id();
        var cells = new ArrayList<SheetCell>();
        if (words.needs().entered() != Answer.NO) {
            String planned = words.plannedPurgeMinutes();
            cells.add(cell(
                    "Ventilated" + (planned.isEmpty() ? "" : " (at least " + planned + ")"),
                    page.ofVault(vaultId, FieldFact.VENTILATED, "", planned)));
            cells.add(cell("Attendant", page.ofVault(vaultId, FieldFact.ATTENDANT, "", "")));
            cells.add(permit(vaultId, "confined space entry", page));
        }
        if (words.needs().inRoadway() != Answer.NO) {
            cells.add(permit(vaultId, "lane closure", page));
        }
        if (words.needs().pumped() != Answer.NO) {
            cells.add(permit(vaultId, "water discharge", page));
        }
        return cells;
    }

    private static SheetCell permit(String vaultId, String permit, SheetBlanks page) {
        return cell("Permit number, " + permit, page.ofVault(vaultId, FieldFact.VAULT_PERMIT, permit, ""));
    }

    private static SheetCell cell(String label, SheetBlank blank) {
        return SheetCell.of(SheetPart.words(label + " "), SheetPart.blank(blank));
    }
}
