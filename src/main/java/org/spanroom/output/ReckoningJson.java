package org.spanroom.output;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.function.Function;
import org.spanroom.model.Bend;
import org.spanroom.model.Cable;
import org.spanroom.model.Duct;
import org.spanroom.model.Innerduct;
import org.spanroom.model.Permits;
import org.spanroom.model.Reckoning;
import org.spanroom.model.Room;
import org.spanroom.model.Span;
import org.spanroom.model.Term;
import org.spanroom.model.Vault;
import org.spanroom.model.ZoneRule;
import org.spanroom.model.ZoneTouch;

/**
 * The whole reckoning of one span as JSON, RFC 8259: the same as the text, in an order that never changes, the unit of each
 * number as the last word of its name. What is not known or does not apply is null.
 */
public final class ReckoningJson {
    private final Reckoning reckoning;
    private final Span span;
    private final JsonPen json;

    private ReckoningJson(Reckoning reckoning, JsonPen json) {
        this.reckoning = reckoning;
        this.span = reckoning.ranked().span();
        this.json = json;
    }

    /** Returns the reckoning, ended with a line break. */
    public static String write(Reckoning reckoning) {
        var text = new StringWriter();
        var indenter = new DefaultIndenter("  ", "\n");
        var printer = new DefaultPrettyPrinter().withObjectIndenter(indenter).withArrayIndenter(indenter);
        try (JsonGenerator generator = new JsonFactory().createGenerator(text)) {
            generator.setPrettyPrinter(printer);
            new ReckoningJson(reckoning, new JsonPen(generator)).all();
        } catch (IOException impossible) {
            throw new UncheckedIOException("a text in memory cannot fail", impossible);
        }
        return text.append('\n').toString();
    }

    private void all() throws IOException {
        json.object(() -> {
            json.text("span_id", span.id());
            json.whole("rank", reckoning.ranked().rank());
            json.whole("spans_ranked", reckoning.spansInRun());
            place();
            json.object("duct", this::duct);
            json.objects("bends", reckoning.ranked().assessment().bends().list(), this::bend);
            json.real(
                    "bend_total_deg",
                    reckoning.ranked().assessment().bends().total().deg(),
                    2);
            json.object("room", this::room);
            new PullJson(reckoning, json).write();
            json.object("permits", this::permits);
            new EffortJson(reckoning, json).write();
            new VerdictJson(reckoning, json).write();
            json.text("caution", ReckoningText.CAUTION);
        });
    }

    private void place() throws IOException {
        json.object("from", () -> vault(span.from(), span.fromOffsetM()));
        json.object("to", () -> vault(span.to(), span.toOffsetM()));
        json.real("length_m", span.lengthM(), 3);
        json.real("drawn_length_m", span.drawnLengthM(), 3);
        json.whole("vertices", span.ground().size());
        json.texts("routes", span.routeIds(), Function.identity());
        json.text("position_quality", span.positionQuality());
    }

    private void vault(Vault vault, double offsetM) throws IOException {
        json.text("vault_id", vault.id());
        json.real("offset_m", offsetM, 3);
    }

    private void duct() throws IOException {
        Duct duct = span.duct();
        json.text("duct", duct.id());
        json.text("bank", duct.bankId());
        json.text("bore_shape", JsonPen.key(duct.boreShape()));
        json.real("inside_diameter_mm", duct.insideDiameterMm(), 2);
        json.text("type", duct.type());
        json.text("material", duct.material());
        json.text("condition", JsonPen.key(duct.condition()));
        json.flag("direct_buried", duct.directBuried());
        json.flag("flooded", duct.flooded());
        json.flag("contents_known", duct.contents().known());
        json.objects("innerducts", duct.contents().innerducts(), this::innerduct);
        json.objects("loose_cables", duct.contents().looseCables(), this::cable);
        json.texts("catalogue_rows", duct.catalogUse().rows(), row -> row);
        json.texts("from_catalogue", duct.catalogUse().terms().stream().sorted().toList(), Term::key);
        json.texts("assumed", duct.assumed().stream().sorted().toList(), Term::key);
    }

    private void innerduct(Innerduct innerduct) throws IOException {
        json.text("innerduct", innerduct.id());
        json.real("outside_diameter_mm", innerduct.outsideDiameterMm(), 2);
        json.real("wall_mm", innerduct.wallMm(), 2);
        json.objects("cables", innerduct.cables(), this::cable);
    }

    private void cable(Cable cable) throws IOException {
        json.text("cable", cable.id());
        json.real("outside_diameter_mm", cable.outsideDiameterMm(), 2);
        json.real("mass_kg_per_m", cable.massKgPerM(), 4);
        json.text("service", JsonPen.key(cable.service()));
    }

    private void bend(Bend bend) throws IOException {
        json.real("middle_m", bend.middleM(), 2);
        json.real("start_m", bend.startM(), 2);
        json.real("deflection_deg", bend.deflection().deg(), 2);
        json.text("turn", JsonPen.key(bend.turn()));
        json.real("radius_m", bend.radiusM(), 2);
        json.flag("radius_assumed", bend.radiusAssumed());
        json.real("arc_length_m", bend.arcLengthM(), 2);
    }

    private void room() throws IOException {
        Room room = reckoning.ranked().assessment().room();
        json.real("bore_area_mm2", room.boreAreaMm2(), 1);
        json.real("fill_before_pct", 100 * room.fillBeforeRatio(), 2);
        json.real("fill_after_pct", 100 * room.fillAfterRatio(), 2);
        json.real("recoverable_mm2", room.recoverableMm2(), 1);
        json.whole("innerducts_out", room.innerductsOut());
        json.whole("positions_before", room.positionsBefore());
        json.whole("sleeves", room.sleeves());
        json.whole("new_cables", room.newCables());
        json.text("binding_rule", room.bindingRule());
    }

    private void permits() throws IOException {
        Permits permits = reckoning.ranked().assessment().permits();
        json.objects("zones", permits.touches(), this::zone);
        json.real("zone_any_m", permits.lengthM(), 3);
        json.texts("recovery_needs", permits.recoveryNeeds(), Function.identity());
        json.texts("permits_avoided", permits.avoided(), Function.identity());
        for (ZoneRule rule : ZoneRule.vaultsFirst()) {
            under(rule, permits);
        }
        json.whole("recovery_lead_days", permits.recoveryLeadDays());
        json.whole("new_build_lead_days", permits.newBuildLeadDays());
    }

    private void under(ZoneRule rule, Permits permits) throws IOException {
        if (rule.reach() == ZoneRule.Reach.AT_VAULTS) {
            json.flag(rule.shown().column(), permits.isUnder(rule));
        } else {
            json.real(rule.shown().column() + "_m", PermitColumns.metres(permits, rule), 3);
            json.text(rule.shown().column() + "_until", PermitColumns.until(permits, rule));
        }
    }

    private void zone(ZoneTouch touch) throws IOException {
        json.text("zone_id", touch.zone().id());
        json.text("kind", touch.zone().kind());
        json.text("name", touch.zone().name());
        json.text("until", touch.zone().until().map(LocalDate::toString).orElse(""));
        json.real("length_m", touch.lengthM(), 3);
        json.text("at_vault", PermitRow.vaults(touch));
        json.objects("stretches", touch.stretches(), stretch -> {
            json.real("from_m", stretch.fromM(), 3);
            json.real("to_m", stretch.toM(), 3);
        });
        json.texts("recovery_needs", touch.recoveryNeeds(), Function.identity());
        json.texts("new_build_needs", touch.rule().newBuild(), Function.identity());
    }
}
