package org.spanroom.output.explain;

import static org.spanroom.output.explain.ExplanationItem.flag;
import static org.spanroom.output.explain.ExplanationItem.number;
import static org.spanroom.output.explain.ExplanationItem.text;
import static org.spanroom.output.explain.ExplanationItem.texts;
import static org.spanroom.output.explain.ExplanationItem.word;
import static org.spanroom.output.explain.ExplanationItem.words;

import java.util.Collection;
import java.util.List;
import org.spanroom.model.Term;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Innerduct;

/** The duct of a span and what lies in it. */
final class ExplanationDuct {
    private ExplanationDuct() {}

    static ExplanationSection of(Duct duct) {
        Contents contents = duct.contents();
        return new ExplanationSection(
                "duct",
                "Duct " + duct.id() + (duct.bankId().isEmpty() ? "" : " in bank " + duct.bankId()),
                List.of(
                        text("duct", "", duct.id()),
                        text("bank", "", duct.bankId()),
                        word("bore_shape", "bore", duct.boreShape()),
                        number("inside_diameter_mm", "inside diameter", duct.insideDiameterMm(), 2, "mm")
                                .withEvidence(
                                        duct.sizeSource(Term.INSIDE_DIAMETER).key()),
                        text("type", "type", duct.type()),
                        text("material", "material", duct.material()),
                        word("condition", "condition", duct.condition()),
                        flag("direct_buried", "buried directly", duct.directBuried()),
                        flag("flooded", "recorded as flooded", duct.flooded()),
                        flag("contents_known", "contents recorded", contents.known()),
                        ExplanationTable.of("innerducts", "in it", contents.innerducts(), ExplanationDuct::innerduct),
                        ExplanationTable.of(
                                "loose_cables", "Loose cables", contents.looseCables(), ExplanationDuct::cable),
                        texts(
                                "catalogue_rows",
                                "catalogue rows",
                                duct.catalogUse().rows()),
                        words(
                                "from_catalogue",
                                "from the catalogue",
                                keys(duct.catalogUse().terms())),
                        words("assumed", "assumed by the config", keys(duct.assumed()))));
    }

    private static List<String> keys(Collection<Term> terms) {
        return terms.stream().sorted().map(Term::key).toList();
    }

    private static List<ExplanationPart> innerduct(Innerduct innerduct) {
        return List.of(
                text("innerduct", "innerduct", innerduct.id()),
                number("outside_diameter_mm", "outside diameter", innerduct.outsideDiameterMm(), 2, "mm"),
                number("wall_mm", "wall", innerduct.wallMm(), 2, "mm"),
                flag("empty", "", innerduct.isEmpty()),
                text("", "cables", innerduct.isEmpty() ? "none" : ""),
                ExplanationTable.of("cables", "cables", innerduct.cables(), ExplanationDuct::cable));
    }

    private static List<ExplanationPart> cable(Cable cable) {
        return List.of(
                text("cable", "cable", cable.id()),
                number("outside_diameter_mm", "outside diameter", cable.outsideDiameterMm(), 2, "mm"),
                number("mass_kg_per_m", "mass", cable.massKgPerM(), 4, "kg/m"),
                word("service", "service", cable.service()));
    }
}
