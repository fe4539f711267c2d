package org.spanroom.sample;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/** Lays ducts in the streets of one district, up to a number of spans, and hands routes and vaults to the sink. */
final class DistrictBuilder {
    private static final int PURPOSE = 3;
    private static final int FILLING_PURPOSE = 12;
    private static final double COVER_M = 1.1;
    private static final double FLOODED_RATIO = 0.03;
    private static final double FLOODED_IN_WET_BANK_RATIO = 0.75;

    /** Marks a bank that has no empty duct. */
    private static final int NO_SPARE = -1;

    private final District district;
    private final StreetPlan plan;
    private final City city;
    private final Chance chance;
    private final BankGenerator foreman;
    private final Filler filler;
    private final Paperwork paperwork;
    private final EndNotes endNotes;
    private final RecordVariation scribe;
    private final int spanLimit;
    private final VaultRecorder vaults;
    private int spans;

    /** What the districts of one city share: where features go, and what has been put into them so far. */
    record City(CityCount sink, FaultSchedule faults, SpareSchedule spares, RouteRecorder routes) {}

    DistrictBuilder(District district, StreetPlan plan, City city, int spanLimit) {
        this.district = district;
        this.plan = plan;
        this.city = city;
        this.chance = district.chance(PURPOSE);
        this.foreman = new BankGenerator(district, chance);
        this.filler = new Filler(district.chance(FILLING_PURPOSE));
        this.paperwork = new Paperwork(district);
        this.endNotes = new EndNotes(district);
        this.scribe = new RecordVariation(district);
        this.spanLimit = spanLimit;
        this.vaults = new VaultRecorder(district, city);
    }

    /**
     * Lays the ducts.
     *
     * @return the number of spans
     */
    int build(List<Street> links) {
        List<Street> streets = new ArrayList<>(plan.streets());
        long mainStreets = streets.stream()
                .filter(street -> street.rank() == Street.Rank.MAIN)
                .count();
        streets.addAll((int) mainStreets, links);
        for (Street street : streets) {
            lay(street);
        }
        vaults.record();
        return spans;
    }

    private void lay(Street street) {
        List<Leg> legs = street.legs();
        int at = 0;
        while (at < legs.size() && spans < spanLimit) {
            int length = Math.min(Math.min(foreman.run(), legs.size() - at), spanLimit - spans);
            lay(street.rank(), legs.subList(at, at + length));
            at += length;
        }
    }

    private void lay(Street.Rank rank, List<Leg> legs) {
        Bank bank = foreman.bank("B" + city.sink().nextBank(), rank, legs);
        paperwork.turnTo(bank);
        int ducts = Math.max(1, Math.min(bank.ducts(), (spanLimit - spans) / legs.size()));
        endNotes.turnTo(ducts);
        DrawnLine middle = middle(legs);
        DrawnLine sharedLine = lifted(middle.shaken(bank.shakeM(), chance), rank);
        int spare = spare(rank, bank, ducts, legs);
        List<Draft> drafts = new ArrayList<>();
        for (int duct = 0; duct < ducts; duct++) {
            DrawnLine trace = bank.spacingM() == 0
                    ? sharedLine
                    : lifted(middle.beside(bank.asideM(duct)).shaken(bank.shakeM(), chance), rank);
            Filling filling = duct == spare ? Filling.NOTHING : filling(rank, bank);
            Draft draft = draft(rank, bank, duct, legs, trace, filling, duct == spare);
            endNotes.fill(draft, duct, !draft.from().equals(legs.get(0).from()));
            drafts.add(draft);
            city.sink().duct(draft);
        }
        city.sink().bank(legs.size(), drafts);
        drafts.forEach(this::record);
        spans += ducts * legs.size();
        vaults.use(rank, legs, bank.wet());
    }

    /** Draws which duct of a bank is the sound empty one. */
    private int spare(Street.Rank rank, Bank bank, int ducts, List<Leg> legs) {
        boolean ofOwnStreet = rank == Street.Rank.LOOP || rank == Street.Rank.EXPRESS;
        boolean suits = !ofOwnStreet && !bank.direct() && bank.load() == Bank.Load.ORDINARY && ducts > 1;
        int drawn = chance.below(ducts);
        return city.spares().next(legs.size(), suits) ? drawn : NO_SPARE;
    }

    private Filling filling(Street.Rank rank, Bank bank) {
        if (bank.direct()) {
            return filler.buriedDirectly();
        }
        // A loop is worth a crew in all but that it leads nowhere.
        return rank == Street.Rank.LOOP ? filler.full(bank.bore()) : filler.fill(bank);
    }

    private DrawnLine middle(List<Leg> legs) {
        boolean keepJoints = chance.happens(0.6);
        DrawnLine middle = legs.get(0).trace();
        for (Leg leg : legs.subList(1, legs.size())) {
            middle = middle.joined(leg.trace(), keepJoints);
        }
        return middle;
    }

    private DrawnLine lifted(DrawnLine trace, Street.Rank rank) {
        boolean withHeights = district.kind().isDrawnWithHeights() && rank != Street.Rank.LINK;
        return withHeights ? trace.lifted((x, y) -> district.groundM(x, y) - COVER_M) : trace;
    }

    private void record(Draft draft) {
        if (draft.rank() == Street.Rank.LOOP || draft.rank() == Street.Rank.EXPRESS) {
            city.routes().record(draft);
            Fault fault = draft.rank() == Street.Rank.LOOP ? Fault.LOOP_TO_SAME_VAULT : Fault.CROSSING_WITHOUT_VAULT;
            city.sink().fault(new KnownFault(fault, "ducts", draft.duct(), ""));
            return;
        }
        Optional<Fault> fault = city.faults().next(Fault.Target.ROUTE, kind -> RouteRecorder.suits(kind, draft));
        if (fault.isPresent()) {
            city.routes().record(draft, fault.get());
        } else {
            scribe.rewrite(draft);
            city.routes().record(draft);
        }
    }

    private Draft draft(
            Street.Rank rank, Bank bank, int duct, List<Leg> legs, DrawnLine forwards, Filling filling, boolean spare) {
        boolean backwards = chance.happens(0.3);
        List<Double> legsM = new ArrayList<>(legs.stream().map(Leg::lengthM).toList());
        Node from = legs.get(0).from();
        Node to = legs.get(legs.size() - 1).to();
        if (backwards) {
            Collections.reverse(legsM);
        }
        DrawnLine trace = backwards ? forwards.reversed() : forwards;
        Node first = backwards ? to : from;
        Node last = backwards ? from : to;
        Attributes attributes = attributes(bank, duct, filling)
                .with(RouteField.CONDITION, condition(bank, filling, spare))
                .with(RouteField.LENGTH_FT, Math.rint(Draft.feet(trace) * (1 + chance.wobble(0.002))))
                .with(RouteField.VAULT_A, first.vaultId())
                .with(RouteField.VAULT_B, last.vaultId());
        boolean cornered = rank == Street.Rank.LOOP
                || legs.stream().anyMatch(leg -> leg.course().hasCorners());
        return new Draft(
                district, rank, bank, first, last, other(from, to), legsM, cornered, trace, attributes, filling);
    }

    private Attributes attributes(Bank bank, int duct, Filling filling) {
        Attributes attributes = new Attributes()
                .with(RouteField.DUCT_ID, bank.id() + "-" + (duct + 1))
                .with(RouteField.BANK_ID, bank.id())
                .with(
                        RouteField.DUCT_TYPE,
                        bank.direct() ? "direct buried" : bank.type().word())
                .with(RouteField.MATERIAL, bank.type().material())
                .with(RouteField.INNERDUCTS, filling.innerducts())
                .with(RouteField.CABLES, filling.cables())
                .with(RouteField.IN_SERVICE, filling.service())
                .with(
                        RouteField.FLOODED,
                        chance.happens(bank.wet() ? FLOODED_IN_WET_BANK_RATIO : FLOODED_RATIO) ? "yes" : "no")
                .with(RouteField.SURFACE, bank.surface())
                .with(RouteField.OWNER, bank.owner())
                .with(RouteField.YEAR, bank.year())
                .with(RouteField.QUALITY, bank.quality());
        if (!bank.direct()) {
            attributes.with(RouteField.BORE_IN, bank.bore().insideIn());
            attributes.with(RouteField.BORE_SHAPE, bank.bore().shape());
        }
        paperwork.fill(attributes, filling);
        filling.innerduct()
                .ifPresent(size -> attributes
                        .with(RouteField.INNERDUCT_OD_IN, size.outsideIn())
                        .with(RouteField.INNERDUCT_SDR, size.sdr()));
        filling.cable()
                .ifPresent(size -> attributes
                        .with(RouteField.CABLE_OD_IN, size.outsideIn())
                        .with(RouteField.CABLE_LB_KFT, size.massLbKft()));
        return attributes;
    }

    /** A duct that nothing was laid into is the spare one, or not fit for use. */
    private String condition(Bank bank, Filling filling, boolean spare) {
        if (spare) {
            return "sound";
        }
        if (filling.isEmpty()) {
            return List.of("oval", "collapsed", "blocked").get(chance.pickWeighted(30, 30, 40));
        }
        return switch (chance.pickWeighted(bank.load() == Bank.Load.ORDINARY ? 920 : 3000, 40, 15, 25)) {
            case 0 -> "sound";
            case 1 -> "oval";
            case 2 -> "collapsed";
            default -> "blocked";
        };
    }

    private Node other(Node from, Node to) {
        StreetPlan.Gates gates = plan.gates();
        return List.of(gates.west(), gates.east(), gates.south()).stream()
                .filter(gate -> !gate.equals(from) && !gate.equals(to))
                .findFirst()
                .orElseThrow();
    }
}
