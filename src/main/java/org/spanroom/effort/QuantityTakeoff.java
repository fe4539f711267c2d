package org.spanroom.effort;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.ToIntFunction;
import org.spanroom.model.Answer;
import org.spanroom.model.FewAnswers;
import org.spanroom.model.bore.PullChoice;
import org.spanroom.model.effort.EffortQuantities;
import org.spanroom.model.effort.RateRows;
import org.spanroom.model.effort.RateSettings;
import org.spanroom.model.effort.Rates;
import org.spanroom.model.effort.Surface;
import org.spanroom.model.effort.VaultWork;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.network.Vault;
import org.spanroom.model.network.VaultKind;
import org.spanroom.model.permit.Permits;
import org.spanroom.model.pull.PullAssessment;

/** Takes off a span's records what its hours and money are based on. Safe for use by several threads. */
final class QuantityTakeoff {
    private static final double MM2_TO_M2_RATIO = 1e-6;

    private final int demandPositions;

    // Few words and kinds meet in one network, so that the spans share what they mean.
    private final FewAnswers<String, Ground> grounds;
    private final FewAnswers<String, VaultKind> kinds;
    private final FewAnswers<String, RateRows> rowsOutsideZones;
    private final FewAnswers<KindAndZones, RateRows> rowsInZones;

    QuantityTakeoff(RateSettings settings, Rates rates, Map<String, VaultKind> vaultKinds, int demandPositions) {
        this.demandPositions = demandPositions;
        grounds = new FewAnswers<>(word -> new Ground(settings.surfaceOf(word), !settings.knowsSurface(word)));
        kinds = new FewAnswers<>(kind -> VaultKind.of(vaultKinds, kind));
        rowsOutsideZones = new FewAnswers<>(kind -> rates.rows(Set.of(), kind));
        rowsInZones = new FewAnswers<>(at -> rates.rows(at.zoneKinds(), at.vaultKind()));
    }

    /** What a recorded word says of the surface. */
    private record Ground(Surface surface, boolean assumed) {}

    private record KindAndZones(String vaultKind, Set<String> zoneKinds) {}

    /** Takes off what one way of recovery is based on; of none if no innerduct comes out. */
    EffortQuantities of(Span span, Optional<PullChoice> choice, PullAssessment pull, Permits permits) {
        Duct duct = span.duct();
        int out = number(choice, PullChoice::innerductsOut);
        List<Innerduct> comingOut = comingOut(duct, pull, out);
        Ground ground = grounds.of(duct.surface());
        int gained = Math.max(0, number(choice, PullChoice::positionsGained));
        return new EffortQuantities(
                span.lengthM(),
                out,
                number(choice, PullChoice::deadCablesOut),
                number(choice, PullChoice::sleeves),
                number(choice, PullChoice::newCables),
                gained,
                needed(gained),
                duct.contents().cableCount(),
                span.lengthM() * plasticM2(comingOut),
                waterM3(span),
                work(span, SpanEnd.A, comingOut, permits),
                work(span, SpanEnd.B, comingOut, permits),
                permits.rules(),
                permits.recoveryNeeds().size(),
                permits.recoveryNeeds().size() + permits.avoided().size(),
                Math.max(0, permits.newBuildLeadDays() - permits.recoveryLeadDays()),
                ground.surface(),
                ground.assumed(),
                rows(permits, ""));
    }

    private static int number(Optional<PullChoice> choice, ToIntFunction<PullChoice> of) {
        return choice.isPresent() ? of.applyAsInt(choice.get()) : 0;
    }

    private VaultWork work(Span span, SpanEnd end, List<Innerduct> comingOut, Permits permits) {
        Vault vault = end.vaultOf(span);
        return new VaultWork(
                vault.id(),
                vault.site().volumeM3(),
                vault.site().water() == Answer.YES,
                kinds.of(vault.kind()).entered(),
                uncut(comingOut, end),
                rows(permits, vault.kind()));
    }

    private static int uncut(List<Innerduct> innerducts, SpanEnd end) {
        int count = 0;
        for (Innerduct innerduct : innerducts) {
            count += innerduct.uncutAt(end) == Answer.YES ? 1 : 0;
        }
        return count;
    }

    private int needed(int positionsGained) {
        return demandPositions == 0 ? positionsGained : Math.min(positionsGained, demandPositions);
    }

    private RateRows rows(Permits permits, String vaultKind) {
        if (permits.touches().isEmpty()) {
            return rowsOutsideZones.of(vaultKind);
        }
        Set<String> zoneKinds = new TreeSet<>();
        permits.touches().forEach(touch -> zoneKinds.add(touch.zone().kind()));
        return rowsInZones.of(new KindAndZones(vaultKind, zoneKinds));
    }

    /** Returns the innerducts that come out, in the order of pulling; the empty ones first where no order is known. */
    private static List<Innerduct> comingOut(Duct duct, PullAssessment pull, int out) {
        List<Innerduct> comingOut = new ArrayList<>(out);
        if (!pull.pulls().isEmpty()) {
            for (int i = 0; i < Math.min(out, pull.pulls().size()); i++) {
                comingOut.add(pull.pulls().get(i).innerduct());
            }
            return comingOut;
        }
        addSome(comingOut, duct, out, true);
        addSome(comingOut, duct, out, false);
        return comingOut;
    }

    private static void addSome(List<Innerduct> comingOut, Duct duct, int out, boolean empty) {
        for (Innerduct innerduct : duct.contents().innerducts()) {
            if (innerduct.isEmpty() == empty && comingOut.size() < out) {
                comingOut.add(innerduct);
            }
        }
    }

    /** Returns the cross-section of the walls that come out, by the average wall. */
    private static double plasticM2(List<Innerduct> comingOut) {
        double m2 = 0;
        for (Innerduct innerduct : comingOut) {
            m2 += innerduct.massKgPerM(1);
        }
        return m2;
    }

    /** Returns the water in a flooded duct: all of its bore that is not cable, since innerducts may be full of it too. */
    private static double waterM3(Span span) {
        Duct duct = span.duct();
        if (!duct.flooded()) {
            return 0;
        }
        double cablesMm2 = duct.contents().cables().stream()
                .mapToDouble(cable -> cable.areaMm2())
                .sum();
        return span.lengthM() * MM2_TO_M2_RATIO * Math.max(0, duct.boreAreaMm2() - cablesMm2);
    }
}
