package org.spanroom.output;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.model.Angle;
import org.spanroom.model.Line;
import org.spanroom.model.Term;
import org.spanroom.model.bend.Bend;
import org.spanroom.model.bend.Bends;
import org.spanroom.model.effort.MoneyRange;
import org.spanroom.model.effort.MoneyRanges;
import org.spanroom.model.effort.MoneyTotals;
import org.spanroom.model.network.BoreShape;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.ContentsScenario;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Network;
import org.spanroom.model.network.SectionKey;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.Unrecoverable;
import org.spanroom.model.network.Vault;
import org.spanroom.model.network.VaultUse;
import org.spanroom.model.pull.PullAssessment;
import org.spanroom.model.rank.Assessment;
import org.spanroom.model.rank.Caution;
import org.spanroom.model.rank.ContentsAccount;
import org.spanroom.model.rank.ContentsCounts;
import org.spanroom.model.rank.CriterionInfo;
import org.spanroom.model.rank.Exclusion;
import org.spanroom.model.rank.RankedSection;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.model.rank.RankedSpans;
import org.spanroom.model.rank.Score;
import org.spanroom.model.rank.Verdict;
import org.spanroom.rank.Ranking;
import org.spanroom.testing.Rooms;

/** Results of an invented run: two ranked spans, one excluded, in open ocean. */
public final class SampleResults {
    static final Instant STARTED = Instant.parse("2026-05-04T03:02:01Z");

    /** 0.001 degrees of latitude at 40 degrees north are 111.035 m on WGS 84. */
    private static final double STEP_M = 111.035;

    public static final Caution WATER = new Caution("water", "flooded duct, or standing water in a vault");

    private static final Caution JOINT_OWNERS = new Caution("joint_owners", "others own the duct too");
    private static final Exclusion NO_INNERDUCT = new Exclusion(1, "no_innerduct", "no rigid innerduct in the duct");
    private static final Exclusion NO_CONSENT =
            new Exclusion(10, "owner_consent_missing", "the owner has not agreed to the work");

    private static final MoneyTotals MONEY = new MoneyTotals(
            "USD",
            12_000,
            50_000.5,
            OptionalDouble.of(31_000.25),
            Optional.of(new MoneyRanges(
                    new MoneyRange(10_000, 12_500, 15_000),
                    new MoneyRange(40_000, 52_000, 65_000.25),
                    new MoneyRange(28_000, 39_000, 52_000))));

    private SampleResults() {}

    public static Results of(List<RankedSpan> spans) {
        List<VaultUse> vaults = List.of(
                new VaultUse(vault("V-1", 0), List.of("V-1a", "V-1b"), 2), new VaultUse(vault("V-2", 1), List.of(), 1));
        List<Finding> findings = List.of(
                Finding.of(FindingCode.MISSING_VALUE, "routes.geojson", "R-1", "no owner")
                        .inField("owner"),
                Finding.of(FindingCode.END_WITHOUT_VAULT, "routes.geojson", "R-2", "12.5 m beyond V-2")
                        .at(-30.0000000004, 40.002)
                        .withLengthM(12.5)
                        .standingFor(4));
        var network = new Network(spans.stream().map(RankedSpan::span).toList(), vaults, 1000.5, 988, 12.5);
        return new Results(
                network,
                RankedSpans.of(spans),
                MONEY,
                sections(spans),
                findings,
                List.of(),
                contents(spans),
                List.of(),
                run());
    }

    private static ContentsAccount contents(List<RankedSpan> spans) {
        var counts = ContentsCounts.NONE;
        for (RankedSpan span : spans) {
            counts =
                    counts.plus(span.span().duct().contentsSource(), span.rank().isPresent(), false);
        }
        return ContentsAccount.of(counts, new ContentsScenario(3, 2, 0.5), List.of());
    }

    /** All spans are of one section. */
    private static List<RankedSection> sections(List<RankedSpan> spans) {
        if (spans.isEmpty()) {
            return List.of();
        }
        var counts = RankedSection.Counts.NONE;
        for (RankedSpan span : spans) {
            counts = counts.plus(span.rank().isPresent(), false, 1, 10, 9);
        }
        RankedSpan best = spans.get(0);
        var first = new RankedSection.First(
                best.spanId(),
                best.span().from().id(),
                best.span().to().id(),
                best.rank(),
                78.5,
                222.0704,
                2,
                Optional.of(best.span().lonLat()));
        return List.of(new RankedSection(SectionKey.of(best.span()), OptionalInt.of(1), counts, first));
    }

    static List<RankedSpan> spans() {
        return List.of(ranked("S-1", 1), ranked("S-2", 2), excluded("S-0"));
    }

    static List<RankedSpan> many(int count) {
        var spans = new ArrayList<RankedSpan>();
        for (int i = 1; i <= count; i++) {
            spans.add(ranked("S-" + i, i));
        }
        return spans;
    }

    public static RankedSpan ranked(String id, int rank) {
        return new RankedSpan(OptionalInt.of(rank), assessment(id, "OWN"), score());
    }

    static RankedSpan excluded(String id) {
        return new RankedSpan(
                OptionalInt.empty(),
                assessment(id, "OWN"),
                new Score(List.of()),
                new Verdict(List.of(NO_INNERDUCT, NO_CONSENT), List.of(), List.of(JOINT_OWNERS, WATER)));
    }

    static RankedSpan owned(String id, int rank, String owner) {
        return new RankedSpan(OptionalInt.of(rank), assessment(id, owner), score());
    }

    /** A span that no column can be made of. */
    static RankedSpan broken(String id, int rank) {
        var sound = assessment(id, "OWN");
        return new RankedSpan(
                OptionalInt.of(rank), new Assessment(sound.span(), sound.bends(), null, sound.pull()), score());
    }

    static RunRecord run() {
        return new RunRecord(
                "0.1.0",
                STARTED,
                Map.of("snap_tolerance_m", 1.5, "fields", Map.of("route", "ID", "duct", "DUCT_NO"), "strict", false),
                List.of(new RunRecord.Input(
                        "routes",
                        "routes.geojson",
                        "routes",
                        "OGC:CRS84",
                        "ab12",
                        List.of(),
                        3,
                        2,
                        1,
                        Map.of("bad_coordinate", 1L))));
    }

    /** Returns the part of a score that a criterion gives. */
    static Score.Part part(String criterion, double quantityInUnit, double valueRatio, double weightRatio) {
        CriterionInfo info = Ranking.criteria().stream()
                .filter(one -> one.key().equals(criterion))
                .findFirst()
                .orElseThrow();
        return new Score.Part(new Score.Yardstick(info, weightRatio), quantityInUnit, valueRatio);
    }

    private static Score score() {
        return new Score(List.of(
                part("room_gained", 7, 0.75, 0.6), part("length", 222, 0.5, 0.3), part("ease_bends", 90, 1, 0.1)));
    }

    private static Assessment assessment(String id, String owner) {
        Line lonLat = Line.ofXy(-30, 40, -30, 40.001, -29.9987, 40.001);
        Line ground = Line.ofXy(0, 0, 0, STEP_M, STEP_M, STEP_M);
        var span = new Span(
                id,
                duct(owner),
                List.of("R-1", "R-2"),
                vault("V-1", 0),
                vault("V-2", 1),
                lonLat,
                ground,
                222.0704,
                2 * STEP_M,
                0.1,
                0,
                "QL-B");
        var bend = new Bend(Angle.ofDeg(90), Bend.Turn.RIGHT, STEP_M - 1, 2, 0.9144, true);
        var room = Rooms.recovering(3, 1, 3, 9, "sleeves");
        return new Assessment(span, new Bends(List.of(bend)), room, PullAssessment.nothing(Unrecoverable.NO_INNERDUCT));
    }

    private static Duct duct(String owner) {
        return new Duct(
                "D-7",
                "B-1",
                BoreShape.ROUND,
                100,
                "",
                "",
                false,
                Contents.UNKNOWN,
                true,
                Condition.OVAL,
                "",
                owner,
                OptionalInt.of(1987),
                Set.of(Term.SURFACE, Term.CABLE_MASS, Term.INNERDUCT_SDR, Term.CONDITION));
    }

    private static Vault vault(String id, int number) {
        return new Vault(number, id, -30 + 0.0013 * number, 40 + 0.001 * number, List.of(), OptionalDouble.of(3.5), "");
    }
}
