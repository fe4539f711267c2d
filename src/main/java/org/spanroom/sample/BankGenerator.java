package org.spanroom.sample;

import java.util.List;

/** Decides what kind of bank is laid in a stretch of street. */
final class BankGenerator {
    /** Owners are invented, named after the invented city. */
    static final List<String> OWNERS = List.of(
            "Tidemarrow Streets Office", "Tidemarrow Telephone", "Marrowgate Light Company", "Quayfold Signals");

    private static final List<Bank.Use> USES = List.of(Bank.Use.values());
    private static final List<BoreType> BORE_TYPES = List.of(BoreType.values());
    private static final List<String> SURFACES = List.of("asphalt", "concrete", "stone setts", "brick", "grass verge");
    private static final List<String> QUALITIES = List.of("QL-A", "QL-B", "QL-C", "QL-D");

    /** Standard deviation of drawn vertices for each quality level; common practice, no source. */
    private static final double[] SHAKE_M = {0.01, 0.02, 0.03, 0.035};

    private static final int[] DUCT_WEIGHTS = {15, 17, 24, 10, 16, 8, 2, 8};

    private static final int USE_PURPOSE = 13;

    private final DistrictKind kind;
    private final Chance chance;
    private final Chance using;

    BankGenerator(District district, Chance chance) {
        this.kind = district.kind();
        this.chance = chance;
        this.using = district.chance(USE_PURPOSE);
    }

    Bank bank(String id, Street.Rank rank, List<Leg> legs) {
        boolean cornered = legs.stream().anyMatch(leg -> leg.course().hasCorners());
        boolean direct = rank == Street.Rank.SIDE && chance.happens(0.03);
        BoreType type = direct ? BoreType.HDPE : BORE_TYPES.get(chance.pickWeighted(kind.boreWeights()));
        Bank.Load load = direct ? Bank.Load.ORDINARY : load(rank, legs);
        Bore bore = load == Bank.Load.HEAVY ? type.largeBore(chance) : type.bore(chance);
        int quality = chance.pickWeighted(15, 40, 25, 20);
        int ducts = ducts(rank, direct);
        return new Bank(
                id,
                type,
                bore,
                direct,
                ducts,
                OWNERS.get(chance.pickWeighted(45, 35, 12, 8)),
                SURFACES.get(chance.pickWeighted(52, 20, 8, 6, 14)),
                type.year(chance),
                QUALITIES.get(quality),
                cornered || chance.happens(0.45) ? 0 : Math.min(0.15, 0.8 / (ducts - 1 + 1e-9)),
                SHAKE_M[quality],
                load,
                USES.get(using.pickWeighted(80, 11, 9)),
                using.happens(kind.wetRatio()));
    }

    /** Each hard course gets the load that shows what is hard about it, so that every kind of limit is met somewhere. */
    private Bank.Load load(Street.Rank rank, List<Leg> legs) {
        if (has(Course.WINDING, legs) || has(Course.LONG, legs)) {
            return Bank.Load.LIGHT;
        }
        if (has(Course.TIGHT, legs)) {
            return Bank.Load.THICK;
        }
        if (has(Course.STEEP, legs)) {
            return Bank.Load.HEAVY;
        }
        double heavyShare = has(Course.CROOKED, legs) ? 0.5 : rank == Street.Rank.LINK ? 0.35 : 0.04;
        return chance.happens(heavyShare) ? Bank.Load.HEAVY : Bank.Load.ORDINARY;
    }

    private static boolean has(Course course, List<Leg> legs) {
        return legs.stream().anyMatch(leg -> leg.course() == course);
    }

    /** Draws the number of spans that one bank of ducts passes. */
    int run() {
        return switch (chance.pickWeighted(17, 22, 25, 19, 17)) {
            case 0 -> 1;
            case 1 -> 2;
            case 2 -> 3;
            case 3 -> 4;
            default -> chance.from(5, 7);
        };
    }

    private int ducts(Street.Rank rank, boolean direct) {
        if (direct) {
            return 1 + chance.below(3);
        }
        return switch (rank) {
            case LOOP -> 1;
            case EXPRESS -> 2;
            default -> 2 + chance.pickWeighted(DUCT_WEIGHTS);
        };
    }
}
