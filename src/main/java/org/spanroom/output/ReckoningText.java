package org.spanroom.output;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.spanroom.model.Bend;
import org.spanroom.model.Cable;
import org.spanroom.model.CatalogUse;
import org.spanroom.model.Duct;
import org.spanroom.model.Innerduct;
import org.spanroom.model.Reckoning;
import org.spanroom.model.Room;
import org.spanroom.model.Service;
import org.spanroom.model.Span;

/** The whole reckoning of one span as text for a terminal, at most 100 columns wide. */
public final class ReckoningText {
    static final String CAUTION =
            "Forces are planning figures, uncertain by a factor of two: they rank and they warn, they do not"
                    + " authorise a pull. Local codes, the owner's rules and licensed practice decide.";

    private final Reckoning reckoning;
    private final Span span;
    private final TextPage page = new TextPage();

    private ReckoningText(Reckoning reckoning) {
        this.reckoning = reckoning;
        this.span = reckoning.ranked().span();
    }

    /** Returns the reckoning, from the pieces of the span to the parts of its score. */
    public static String write(Reckoning reckoning) {
        return new ReckoningText(reckoning).all();
    }

    private String all() {
        place();
        duct();
        bends();
        room();
        new PullText(reckoning, page).write();
        new PermitText(reckoning, page).write();
        new EffortText(reckoning, page).write();
        new VerdictText(reckoning, page).write();
        page.gap();
        page.hanging(0, "%s", CAUTION);
        return page.text();
    }

    private void place() {
        page.line("Span %s", span.id());
        page.item("from", "vault %s (A), %.2f m beside the line", span.from().id(), span.fromOffsetM());
        page.item("to", "vault %s (B), %.2f m beside the line", span.to().id(), span.toOffsetM());
        page.item(
                "length",
                "%.2f m; drawn %.2f m with %d vertices",
                span.lengthM(),
                span.drawnLengthM(),
                span.ground().size());
        page.item("pieces", "%s", String.join(", ", span.routeIds()));
        if (!span.positionQuality().isBlank()) {
            page.item("placed", "with quality %s, as recorded", span.positionQuality());
        }
    }

    private void duct() {
        Duct duct = span.duct();
        page.gap();
        page.line("Duct %s%s", duct.id(), duct.bankId().isEmpty() ? "" : " in bank " + duct.bankId());
        page.item(
                "bore",
                "%.1f mm %s, %s, condition %s",
                duct.insideDiameterMm(),
                word(duct.boreShape()),
                duct.type().isEmpty() ? "type unknown" : duct.type(),
                word(duct.condition()));
        for (Innerduct innerduct : duct.contents().innerducts()) {
            page.item(
                    "holds",
                    "innerduct %s, %.1f mm outside, wall %.2f mm: %s",
                    innerduct.id(),
                    innerduct.outsideDiameterMm(),
                    innerduct.wallMm(),
                    innerduct.isEmpty()
                            ? "empty"
                            : innerduct.cables().stream()
                                    .map(ReckoningText::words)
                                    .collect(Collectors.joining("; ")));
        }
        duct.contents().looseCables().forEach(cable -> page.item("holds", "loose %s", words(cable)));
        if (!duct.contents().known()) {
            page.item("holds", "nobody knows what: the records do not say");
        }
        page.item("water", duct.flooded() ? "flooded" : "not recorded as flooded");
        if (!duct.catalogUse().equals(CatalogUse.NONE)) {
            page.item(
                    "by name",
                    "sizes of %s",
                    String.join(", ", duct.catalogUse().rows()));
        }
        if (!duct.assumed().isEmpty()) {
            page.item(
                    "assumed",
                    "%s: not recorded, so the configured default stands above",
                    duct.assumed().stream().sorted().map(ReckoningText::word).collect(Collectors.joining(", ")));
        }
    }

    private void bends() {
        List<Bend> bends = reckoning.ranked().assessment().bends().list();
        page.gap();
        page.line(
                "Bends: %d, %.1f degrees in all",
                bends.size(), reckoning.ranked().assessment().bends().total().deg());
        if (bends.isEmpty()) {
            return;
        }
        page.line(
                "  %6s %10s %9s  %-5s %10s  %-8s %7s",
                "number", "m from A", "degrees", "side", "radius m", "", "arc m");
        int number = 0;
        for (Bend bend : bends) {
            page.line(
                    "  %6d %10.2f %9.1f  %-5s %10.2f  %-8s %7.2f",
                    ++number,
                    bend.middleM(),
                    bend.deflection().deg(),
                    word(bend.turn()),
                    bend.radiusM(),
                    bend.radiusAssumed() ? "assumed" : "measured",
                    bend.arcLengthM());
        }
    }

    private void room() {
        Room room = reckoning.ranked().assessment().room();
        page.gap();
        page.line("Room");
        page.item(
                "bore",
                "%.0f mm2, filled %.1f %% now and %.1f %% by the cables that stay",
                room.boreAreaMm2(),
                100 * room.fillBeforeRatio(),
                100 * room.fillAfterRatio());
        page.item(
                "gives",
                "%.0f mm2 back; places for a cable: %d now, %d after, in %d sleeves",
                room.recoverableMm2(),
                room.positionsBefore(),
                room.newCables(),
                room.sleeves());
        if (!room.bindingRule().isEmpty()) {
            page.item("bound", "by %s", room.bindingRule().replace('_', ' '));
        }
    }

    /** Returns the place in the ranking in words. */
    static String rank(Reckoning reckoning) {
        return reckoning.ranked().rank().isPresent()
                ? "rank " + reckoning.ranked().rank().getAsInt() + " of " + reckoning.spansInRun()
                : "not ranked";
    }

    static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    private static String words(Cable cable) {
        return String.format(
                Locale.ROOT,
                "cable %s, %.1f mm, %.3f kg/m, %s",
                cable.id(),
                cable.outsideDiameterMm(),
                cable.massKgPerM(),
                cable.service() == Service.UNKNOWN ? "service unknown" : word(cable.service()));
    }
}
