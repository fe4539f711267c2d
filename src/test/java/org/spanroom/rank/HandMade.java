package org.spanroom.rank;

import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.spanroom.model.Angle;
import org.spanroom.model.Answer;
import org.spanroom.model.Line;
import org.spanroom.model.Term;
import org.spanroom.model.bend.Bend;
import org.spanroom.model.bend.Bends;
import org.spanroom.model.bore.Room;
import org.spanroom.model.fieldwork.WorkStatus;
import org.spanroom.model.network.BoreShape;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.CatalogUse;
import org.spanroom.model.network.Circumstances;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.FieldRecord;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.Service;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.network.Unrecoverable;
import org.spanroom.model.network.Vault;
import org.spanroom.model.network.VaultSite;
import org.spanroom.model.permit.Permits;
import org.spanroom.model.pull.EndPull;
import org.spanroom.model.pull.EndReason;
import org.spanroom.model.pull.Friction;
import org.spanroom.model.pull.FrictionUse;
import org.spanroom.model.pull.InnerductPull;
import org.spanroom.model.pull.LimitKind;
import org.spanroom.model.pull.LimitUse;
import org.spanroom.model.pull.PullAssessment;
import org.spanroom.model.pull.PullForces;
import org.spanroom.model.pull.PullOutcome;
import org.spanroom.model.pull.PullReason;
import org.spanroom.model.rank.Assessment;
import org.spanroom.testing.Rooms;

/**
 * A hand-made assessment: a sound duct of 100 m with one innerduct round a live cable, nine places gained, better pulled out at
 * B (50 % of the tightest limit used, 80 % at A). Each method changes one thing.
 */
final class HandMade {
    String id = "s";
    String ductId = "d";
    String bank = "";
    String owner = "";
    String from = "V1";
    String to = "V2";
    String fromKind = "";
    String toKind = "";
    String positionQuality = "";
    OptionalInt year = OptionalInt.empty();
    VaultSite fromSite = VaultSite.UNKNOWN;
    VaultSite toSite = VaultSite.UNKNOWN;
    Contents contents = holding(Service.LIVE);
    boolean directBuried;
    boolean flooded;
    Condition condition = Condition.SOUND;
    Answer consent = Answer.YES;
    Answer looseCable = Answer.YES;
    Answer splice = Answer.UNKNOWN;
    Answer fixed = Answer.UNKNOWN;
    OptionalInt circuits = OptionalInt.empty();
    String jointOwners = "";
    Optional<LocalDate> embargo = Optional.empty();
    Set<Term> assumed = EnumSet.noneOf(Term.class);
    int positionsNow;
    int newCables = 9;
    double lengthM = 100;
    double turnDeg;
    double percentAtA = 80;
    double percentAtB = 50;
    /** Which limit all pulls are used by. */
    LimitKind limit = LimitKind.INNERDUCT_STRENGTH;

    double lubricatedRatio = 0.5;
    double badFrictionRatio = 1.2;
    Permits permits = Permits.NONE;
    FieldRecord fieldRecord = FieldRecord.NONE;

    /** Crews reported that the work on the span is in this state. */
    HandMade reported(WorkStatus status) {
        fieldRecord = new FieldRecord(
                Optional.of(status), Optional.of(LocalDate.of(2027, 3, 1)), "", OptionalDouble.empty(), "", List.of(1));
        return this;
    }

    static HandMade sound() {
        return new HandMade();
    }

    static HandMade named(String id) {
        var one = new HandMade();
        one.id = id;
        return one;
    }

    /** Nothing is in the duct. */
    HandMade empty() {
        contents = new Contents(List.of(), List.of(), true);
        newCables = 0;
        return this;
    }

    HandMade in(String bankId, String fromVault, String toVault) {
        bank = bankId;
        from = fromVault;
        to = toVault;
        return this;
    }

    static Contents holding(Service service) {
        return new Contents(List.of(innerduct(List.of(new Cable("c", 12, 0.2, service)))), List.of(), true);
    }

    static Innerduct innerduct(List<Cable> cables) {
        return new Innerduct("i", 42, 3.1, cables);
    }

    static VaultSite hold(Answer answer) {
        return new VaultSite(OptionalDouble.empty(), Answer.UNKNOWN, "", answer);
    }

    Assessment assessed() {
        Line line = Line.ofXy(0, 0, lengthM, 0);
        var span = new Span(
                id,
                duct(),
                List.of("r"),
                vault(from, fromKind, fromSite),
                vault(to, toKind, toSite),
                line,
                line,
                lengthM,
                lengthM,
                0,
                0,
                positionQuality);
        var bends = turnDeg == 0
                ? Bends.NONE
                : new Bends(List.of(new Bend(Angle.ofDeg(turnDeg), Bend.Turn.LEFT, 0, 0.1, 1, true)));
        var room = contents.known() ? Rooms.recovering(1, positionsNow, 3, newCables, "") : Room.unknown(7854);
        return new Assessment(span, bends, room, pull(), permits);
    }

    private Duct duct() {
        return new Duct(
                ductId,
                bank,
                BoreShape.ROUND,
                100,
                "",
                "",
                directBuried,
                contents,
                flooded,
                condition,
                "",
                owner,
                year,
                new Circumstances(consent, looseCable, splice, fixed, circuits, jointOwners, embargo),
                assumed,
                CatalogUse.NONE,
                List.of(),
                List.of(),
                fieldRecord);
    }

    private static Vault vault(String id, String kind, VaultSite site) {
        return new Vault(0, id, 0, 0, List.of(), OptionalDouble.empty(), kind, site);
    }

    private PullAssessment pull() {
        if (contents.innerducts().isEmpty() || directBuried) {
            return PullAssessment.nothing(Unrecoverable.NO_INNERDUCT);
        }
        var pulls = contents.innerducts().stream()
                .map(innerduct ->
                        new InnerductPull(1, innerduct, PullReason.ONLY_ONE, 0, 1, from(SpanEnd.A), from(SpanEnd.B)))
                .toList();
        return new PullAssessment(outcome(), Friction.DRY, pulls, Set.of(), Set.of());
    }

    private PullOutcome outcome() {
        SpanEnd better = percentAtA < percentAtB ? SpanEnd.A : SpanEnd.B;
        LimitUse atBetter = from(better).tightest();
        LimitUse atOther = from(better.opposite()).tightest();
        if (atBetter.fails()) {
            return new PullOutcome.FromNeither(better, EndReason.LEAST_USED, atBetter, atOther);
        }
        return atOther.fails()
                ? new PullOutcome.FromOne(better, atBetter, atOther)
                : new PullOutcome.FromBoth(better, EndReason.LEAST_USED, atBetter);
    }

    private EndPull from(SpanEnd end) {
        double percent = end == SpanEnd.A ? percentAtA : percentAtB;
        var forces = new PullForces(10 * percent, percent);
        var bad = new PullForces(badFrictionRatio * forces.pullN(), badFrictionRatio * forces.holdN());
        var tightest = new LimitUse(
                limit, limit.isMinimum() ? 1000 : 10 * percent, limit.isMinimum() ? 10 * percent : 1000, 0);
        return new EndPull(
                end,
                forces,
                forces,
                bad,
                tightest,
                tightest.fails() ? Set.of(tightest.kind()) : Set.of(),
                percent / 100,
                FrictionUse.of(
                        tightest.kind(),
                        lubricatedRatio * percent / 100,
                        percent / 100,
                        badFrictionRatio * percent / 100));
    }
}
