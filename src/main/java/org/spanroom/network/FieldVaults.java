package org.spanroom.network;

import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.spanroom.model.Answer;
import org.spanroom.model.Term;
import org.spanroom.model.fieldwork.FieldEntry;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.model.network.InsideSize;
import org.spanroom.model.network.RejectedValue;
import org.spanroom.model.network.Vault;
import org.spanroom.model.network.VaultFacts;
import org.spanroom.model.network.VaultSite;
import org.spanroom.model.network.VolumeBasis;

/** What the entries of the field book change of a vault: what crews found replaces what is recorded. */
final class FieldVaults {
    private final Vault recorded;
    private final FactsInForce facts;
    private final Set<Term> found = EnumSet.noneOf(Term.class);

    private FieldVaults(Vault recorded, List<FieldEntry> entries) {
        this.recorded = recorded;
        this.facts = new FactsInForce(entries);
    }

    /**
     * Returns a vault after its entries.
     *
     * @param entries of the vault that count, in the order of days
     */
    static Vault apply(Vault vault, List<FieldEntry> entries) {
        return new FieldVaults(vault, entries).applied();
    }

    private Vault applied() {
        VaultSite site = recorded.site();
        VaultFacts known = recorded.facts();
        InsideSize inside = new InsideSize(
                number(FieldFact.VAULT_LENGTH, Term.VAULT_LENGTH, known.inside().lengthM()),
                number(FieldFact.VAULT_WIDTH, Term.VAULT_WIDTH, known.inside().widthM()),
                number(FieldFact.VAULT_HEIGHT, Term.VAULT_HEIGHT, known.inside().heightM()));
        Volume volume = volume(inside);
        var appliedSite = new VaultSite(
                volume.m3(),
                answer(FieldFact.VAULT_WATER, Term.VAULT_WATER, site.water()),
                text(FieldFact.VAULT_SURFACE, Term.VAULT_SURFACE, site.surface()),
                answer(FieldFact.CABLE_HOLD, Term.CABLE_HOLD, site.cableHold()),
                number(FieldFact.CABLE_SLACK, Term.CABLE_SLACK, site.cableSlackM()));
        var appliedFacts = new VaultFacts(
                volume.basis(),
                number(FieldFact.VAULT_DEPTH, Term.VAULT_DEPTH, known.depthM()),
                inside,
                number(FieldFact.COVER_SIZE, Term.COVER_SIZE, known.coverSizeMm()),
                answer(FieldFact.GAS_FOUND, Term.GAS_FOUND, known.gasFound()),
                answer(FieldFact.JOINT_POWER, Term.JOINT_POWER, known.jointPower()),
                day(known.inspectedOn()));
        String kind = text(FieldFact.VAULT_KIND, Term.VAULT_KIND, recorded.kind());
        return new Vault(
                recorded.sequence(),
                recorded.id(),
                recorded.lonDeg(),
                recorded.latDeg(),
                recorded.footprint(),
                recorded.elevationM(),
                kind,
                appliedSite,
                appliedFacts,
                rejected());
    }

    private record Volume(OptionalDouble m3, VolumeBasis basis) {}

    /** A volume that was reported counts first, then one that is recorded, then that of the inside as it is known now. */
    private Volume volume(InsideSize inside) {
        VolumeBasis basis = recorded.facts().volumeBasis();
        OptionalDouble reported = number(FieldFact.VAULT_VOLUME, Term.VAULT_VOLUME, OptionalDouble.empty());
        if (reported.isPresent()) {
            return new Volume(reported, VolumeBasis.RECORDED);
        }
        boolean measured = inside.findVolumeM3().isPresent() && basis != VolumeBasis.RECORDED;
        return measured
                ? new Volume(inside.findVolumeM3(), VolumeBasis.INSIDE_SIZE)
                : new Volume(recorded.site().volumeM3(), basis);
    }

    private Optional<FieldEntry> find(FieldFact fact, Term term) {
        Optional<FieldEntry> entry = facts.find(fact);
        entry.ifPresent(there -> found.add(term));
        return entry;
    }

    private OptionalDouble number(FieldFact fact, Term term, OptionalDouble before) {
        return find(fact, term).map(entry -> entry.value().keptInUnit()).orElse(before);
    }

    private Answer answer(FieldFact fact, Term term, Answer before) {
        return find(fact, term)
                .map(entry -> FactsInForce.isYes(entry) ? Answer.YES : Answer.NO)
                .orElse(before);
    }

    private String text(FieldFact fact, Term term, String before) {
        return find(fact, term).map(entry -> entry.value().text()).orElse(before);
    }

    private Optional<LocalDate> day(Optional<LocalDate> before) {
        return find(FieldFact.VAULT_INSPECTED, Term.VAULT_INSPECTED)
                .map(entry -> LocalDate.parse(entry.value().text()))
                .or(() -> before);
    }

    private List<RejectedValue> rejected() {
        return recorded.rejected().stream()
                .filter(value -> found.stream().noneMatch(term -> term.key().equals(value.name())))
                .toList();
    }
}
