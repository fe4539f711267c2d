package org.spanroom.output.explain;

import java.util.List;
import java.util.Set;
import org.spanroom.model.Term;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.ContentsSource;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.RejectedValue;
import org.spanroom.model.network.Sleeve;

/** The duct of a span and what is in it. */
final class ExplanationDuct {
    private ExplanationDuct() {}

    static ExplanationSection of(Duct duct) {
        Contents contents = duct.contents();
        return new ExplanationParts()
                .text("duct", "", duct.id())
                .text("bank", "", duct.bankId())
                .word("bore_shape", "bore", duct.boreShape())
                .number("inside_diameter_mm", "inside diameter", duct.insideDiameterMm(), 2, "mm")
                .because(duct.sizeSource(Term.INSIDE_DIAMETER).key())
                .text("type", "type", duct.type())
                .text("material", "material", duct.material())
                .word("condition", "condition", duct.condition())
                .flag("direct_buried", "direct-buried", duct.directBuried())
                .flag("flooded", "recorded as flooded", duct.flooded())
                .flag("contents_known", "", contents.known())
                .text("contents_source", "", duct.contentsSource().key())
                .text("", "counts of the contents", counts(duct.contentsSource()))
                .whole(
                        "positions_reserved",
                        "positions reserved",
                        duct.circumstances().positionsReserved())
                .word(
                        "beside_allowed",
                        "cables beside innerducts allowed",
                        duct.circumstances().besideAllowed().key())
                .table("innerducts", "Innerducts", contents.innerducts(), ExplanationDuct::innerduct)
                .table("sleeves", "Sleeves", contents.sleeves(), ExplanationDuct::sleeve)
                .table("loose_cables", "Loose cables", contents.looseCables(), ExplanationDuct::cable)
                .texts("catalog_rows", "catalog rows", duct.catalogUse().rows())
                .words(
                        "from_catalog",
                        "from the catalog",
                        sorted(duct.catalogUse().terms()),
                        Term::key)
                .words("assumed", "assumed by the config", sorted(duct.assumed()), Term::key)
                .table("rejected", "Recorded, but rejected", duct.rejected(), ExplanationDuct::rejected)
                .section("duct", "Duct " + duct.id() + (duct.bankId().isEmpty() ? "" : " in bank " + duct.bankId()));
    }

    private static String counts(ContentsSource source) {
        return switch (source) {
            case RECORDED -> "recorded";
            case ASSUMED -> "assumed";
            case UNKNOWN -> "not known";
        };
    }

    private static List<Term> sorted(Set<Term> terms) {
        return terms.stream().sorted().toList();
    }

    private static void innerduct(ExplanationParts row, Innerduct innerduct) {
        row.text("innerduct", "innerduct", innerduct.id())
                .number("outside_diameter_mm", "outside diameter", innerduct.outsideDiameterMm(), 2, "mm")
                .number("wall_mm", "wall", innerduct.wallMm(), 2, "mm")
                .text("color", "color", innerduct.color())
                .word("uncut_at_a", "uncut at A", innerduct.uncutAtA().key())
                .word("uncut_at_b", "uncut at B", innerduct.uncutAtB().key())
                .flag("empty", "", innerduct.isEmpty())
                .text("", "cables", innerduct.isEmpty() ? "none" : "")
                .table("cables", "cables", innerduct.cables(), ExplanationDuct::cable);
    }

    private static void sleeve(ExplanationParts row, Sleeve sleeve) {
        row.text("sleeve", "sleeve", sleeve.id())
                .whole("cells", "cells", sleeve.cells())
                .whole("reserved_cells", "reserved", sleeve.reservedCells())
                .whole("free_cells", "free", sleeve.freeCells())
                .text("", "cables", sleeve.cables().isEmpty() ? "none" : "")
                .table("cables", "cables", sleeve.cables(), ExplanationDuct::cable);
    }

    private static void rejected(ExplanationParts row, RejectedValue value) {
        row.text("term", "term", value.name())
                .text("recorded", "recorded as", value.recorded())
                .text("why", "why rejected", value.why());
    }

    private static void cable(ExplanationParts row, Cable cable) {
        row.text("cable", "cable", cable.id())
                .text("tag", "tag", cable.tag())
                .number("outside_diameter_mm", "outside diameter", cable.outsideDiameterMm(), 2, "mm")
                .number("mass_kg_per_m", "mass", cable.massKgPerM(), 4, "kg/m")
                .word("service", "service", cable.service());
    }
}
