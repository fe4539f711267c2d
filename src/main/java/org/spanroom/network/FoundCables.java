package org.spanroom.network;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.spanroom.model.Term;
import org.spanroom.model.fieldwork.FieldEntry;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Service;

/** What entries change of the cables of one duct. */
final class FoundCables {
    private static final String STEM = "cable-";

    private final FoundContext context;
    private final FactsInForce facts;
    private final CableList cables;

    FoundCables(FoundContext context, CableList cables) {
        this.context = context;
        this.facts = context.facts();
        this.cables = cables;
    }

    /** Adds cables that were reported to be there, and removes those that were not. */
    void findItems() {
        for (FieldEntry entry : facts.all(FieldFact.CABLE_THERE)) {
            boolean there = cables.has(entry.item());
            if (FactsInForce.isYes(entry) && !there) {
                additional(entry.item(), entry).ifPresent(cables::add);
            } else if (!FactsInForce.isYes(entry) && there) {
                cables.remove(entry.item());
            }
        }
        if (!facts.all(FieldFact.CABLE_THERE).isEmpty() && areAll(facts.named(FieldFact.CABLE_THERE))) {
            context.found().add(Term.CABLE_COUNT);
        }
    }

    /** Adds or removes cables until there are as many as were found; returns whether there are. */
    boolean count() {
        Optional<FieldEntry> entry = facts.find(FieldFact.CABLES_FOUND);
        Set<String> named = facts.named(
                FieldFact.CABLE_THERE,
                FieldFact.CABLE_DIAMETER,
                FieldFact.CABLE_SERVICE,
                FieldFact.CABLE_TAG,
                FieldFact.CABLE_IN,
                FieldFact.CABLE_OUT);
        if (entry.isEmpty() || context.contradicts(entry.get(), named, "cable")) {
            return false;
        }
        int wanted = FoundContext.count(entry.get());
        List<String> there = cables.all().stream().map(Cable::id).toList();
        for (String name : FoundContext.newNames(wanted - cables.size(), named, there, STEM)) {
            additional(name, entry.get()).ifPresent(cables::add);
        }
        boolean mayGo = true;
        while (mayGo && cables.size() > wanted) {
            mayGo = cables.removeLast(id -> !named.contains(id));
        }
        boolean counted = cables.size() == wanted;
        if (counted) {
            context.found().add(Term.CABLE_COUNT);
        }
        return counted;
    }

    /** Returns a cable that is not recorded, like those that are, else the usual one; live or not only where all recorded ones agree. */
    private Optional<Cable> additional(String name, FieldEntry entry) {
        List<Cable> recorded = context.duct().contents().cables();
        Optional<Cable> like = recorded.stream().findFirst().or(context.usual()::cable);
        if (like.isEmpty()) {
            context.incomplete(
                    entry,
                    "no size of a cable is recorded or assumed; set assumed.cable_outside_diameter in the config");
        } else if (recorded.isEmpty()) {
            context.assumed().addAll(Set.of(Term.CABLE_OUTSIDE_DIAMETER, Term.CABLE_MASS, Term.IN_SERVICE));
        }
        boolean alike = recorded.stream().map(Cable::service).distinct().count() <= 1;
        return like.map(size ->
                new Cable(name, size.outsideDiameterMm(), size.massKgPerM(), alike ? size.service() : Service.UNKNOWN));
    }

    /** Gives cables the size, the state of service and the tag that were found. */
    void describe() {
        Set<String> diameters = new HashSet<>();
        Set<String> services = new HashSet<>();
        facts.all(FieldFact.CABLE_DIAMETER).forEach(entry -> diameter(entry, diameters));
        facts.all(FieldFact.CABLE_SERVICE).forEach(entry -> service(entry, services));
        facts.all(FieldFact.CABLE_TAG).forEach(this::tag);
        boolean none = cables.size() == 0 && context.found().contains(Term.CABLE_COUNT);
        if (none || (!diameters.isEmpty() && areAll(diameters))) {
            context.found().add(Term.CABLE_OUTSIDE_DIAMETER);
        }
        if (none || (!services.isEmpty() && areAll(services))) {
            context.found().add(Term.IN_SERVICE);
        }
        if (none) {
            context.found().add(Term.CABLE_MASS);
        }
    }

    private boolean areAll(Set<String> ids) {
        return cables.all().stream().allMatch(cable -> ids.contains(cable.id()));
    }

    private void diameter(FieldEntry entry, Set<String> measured) {
        double outsideMm = entry.value().keptInUnit().orElse(0);
        Optional<Cable> cable = cables.find(entry.item());
        if (cable.isEmpty()) {
            context.unknown(entry, "cable", FieldFact.CABLE_THERE);
        } else if (!(outsideMm > 0) || outsideMm >= context.duct().insideDiameterMm()) {
            context.contradiction(entry, "it does not go into the bore of the duct");
        } else {
            cables.replace(cable.get().withOutsideDiameterMm(outsideMm));
            measured.add(entry.item());
        }
    }

    private void service(FieldEntry entry, Set<String> reported) {
        Optional<Cable> cable = cables.find(entry.item());
        if (cable.isEmpty()) {
            context.unknown(entry, "cable", FieldFact.CABLE_THERE);
        } else {
            Service service = entry.value().text().equals("live") ? Service.LIVE : Service.DEAD;
            cables.replace(cable.get().withService(service));
            reported.add(entry.item());
        }
    }

    private void tag(FieldEntry entry) {
        cables.find(entry.item())
                .ifPresentOrElse(
                        cable -> cables.replace(cable.withTag(entry.value().text())),
                        () -> context.unknown(entry, "cable", FieldFact.CABLE_THERE));
    }

    /** Lays cables where crews found or laid them. */
    void move(FoundPipes pipes, Set<String> sleeves) {
        for (FieldEntry entry : facts.all(FieldFact.CABLE_IN)) {
            String home = entry.value().text();
            boolean loose = home.equalsIgnoreCase("loose");
            if (!cables.has(entry.item())) {
                context.unknown(entry, "cable", FieldFact.CABLE_THERE);
            } else if (!loose && !pipes.has(home) && !sleeves.contains(home)) {
                context.contradiction(
                        entry,
                        "the duct has no innerduct or sleeve of that name; the cable stays where it is. Write loose, or report "
                                + FieldFact.SLEEVE_CELLS.key() + " for the sleeve");
            } else {
                cables.move(entry.item(), loose ? CableList.LOOSE : home);
            }
        }
    }

    /** Takes out what crews took out. */
    void takeOut() {
        for (FieldEntry entry : facts.all(FieldFact.CABLE_OUT)) {
            if (!FactsInForce.isYes(entry)) {
                continue;
            }
            if (cables.has(entry.item())) {
                cables.remove(entry.item());
            } else {
                context.unknown(entry, "cable", FieldFact.CABLE_THERE);
            }
        }
    }
}
