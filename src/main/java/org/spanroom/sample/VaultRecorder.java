package org.spanroom.sample;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;

/** Records the vaults of one district that ducts were laid to. */
final class VaultRecorder {
    private static final int PURPOSE = 4;
    private static final double FAR_M = 12;
    private static final int ATTEMPTS = 30;
    private static final List<String> KINDS = List.of("maintenance hole", "handhole", "vault", "pull box");

    private static final int INSIDE_PURPOSE = 9;
    private static final int CREW_PURPOSE = 15;
    private static final double FT3_PER_M3 = 35.3146667;

    /** Volumes by kind, from the least to the most; plausible, no source. */
    private static final double[] LEAST_M3 = {5.5, 0.5, 9, 0.2};

    private static final double[] MOST_M3 = {13, 1.4, 26, 0.6};

    /** How often the spare cable in it is recorded, in a hundred, and at most how much; plausible, no source. */
    private static final int[] SLACK_RECORDED = {45, 40, 50, 15};

    private static final int[] MOST_SLACK_FT = {100, 50, 120, 20};
    private static final int SLACK_STEP_FT = 5;

    private static final List<String> SURFACES = List.of("roadway", "sidewalk", "verge", "");
    private static final int[] MAIN_SURFACES = {58, 28, 8, 6};
    private static final int[] SIDE_SURFACES = {42, 37, 15, 6};
    private static final List<String> WATER = List.of("yes", "Y", "no", "N", "");
    private static final int[] IN_WET_BANK = {55, 20, 15, 5, 5};
    private static final int[] ELSEWHERE = {5, 2, 74, 14, 5};

    private final District district;
    private final DistrictBuilder.City city;
    private final Chance chance;
    private final Chance inside;
    private final Chance crew;
    private final List<Leg> laid = new ArrayList<>();
    private final TreeMap<Integer, Node> used = new TreeMap<>(Comparator.naturalOrder());
    private final Set<Integer> wet = new HashSet<>();
    private final Set<Integer> onMainStreet = new HashSet<>();

    VaultRecorder(District district, DistrictBuilder.City city) {
        this.district = district;
        this.city = city;
        this.chance = district.chance(PURPOSE);
        this.inside = district.chance(INSIDE_PURPOSE);
        this.crew = district.chance(CREW_PURPOSE);
    }

    /** Takes the vaults of a bank into use. */
    void use(Street.Rank rank, List<Leg> legs, boolean isWet) {
        laid.addAll(legs);
        legs.stream()
                .flatMap(leg -> Stream.of(leg.from(), leg.to()))
                .filter(node -> node.district() == district.number())
                .forEach(node -> use(node, rank == Street.Rank.MAIN, isWet));
    }

    private void use(Node node, boolean isOnMainStreet, boolean isWet) {
        used.put(node.number(), node);
        if (isOnMainStreet) {
            onMainStreet.add(node.number());
        }
        if (isWet) {
            wet.add(node.number());
        }
    }

    /** Hands every used vault to the sink, each with the fault whose turn it is. */
    void record() {
        for (Node node : used.values()) {
            VaultFeature vault = vault(node);
            long places = chance.next();
            Optional<Fault> fault = city.faults()
                    .next(
                            Fault.Target.VAULT,
                            kind -> kind != Fault.VAULT_FAR_FROM_ROUTES
                                    || findFar(vault, places).isPresent());
            if (fault.isPresent()) {
                record(vault, fault.get(), places);
            } else {
                city.sink().vault(vault);
            }
        }
    }

    private VaultFeature vault(Node node) {
        double asideM = chance.happens(0.6) ? chance.between(0, 0.05) : chance.between(0.05, 0.3);
        double bearingRad = chance.between(0, 2 * Math.PI);
        int kind = chance.pickWeighted(55, 22, 15, 8);
        VaultFeature.Fittings fittings = fittings(node.number(), kind);
        return new VaultFeature(
                district.number(),
                node.link(),
                node.vaultId(),
                KINDS.get(kind),
                OptionalDouble.of(node.groundM()),
                fittings,
                node.x() + asideM * StrictMath.cos(bearingRad),
                node.y() + asideM * StrictMath.sin(bearingRad),
                true);
    }

    /** Volumes are in cubic meters, some in cubic feet with their unit, as different surveyors wrote them. */
    private VaultFeature.Fittings fittings(int node, int kind) {
        double volumeM3 = inside.between(LEAST_M3[kind], MOST_M3[kind]);
        String volume = switch (inside.pickWeighted(55, 20, 20, 5)) {
            case 0 -> tenths(volumeM3) + " m3";
            case 1 -> Math.round(volumeM3 * FT3_PER_M3) + " ft3";
            case 2 -> tenths(volumeM3);
            default -> "";
        };
        CrewFacts facts = CrewFacts.draw(crew, kind, volumeM3);
        return new VaultFeature.Fittings(
                volume,
                WATER.get(inside.pickWeighted(wet.contains(node) ? IN_WET_BANK : ELSEWHERE)),
                SURFACES.get(inside.pickWeighted(onMainStreet.contains(node) ? MAIN_SURFACES : SIDE_SURFACES)),
                List.of("yes", "Y", "no", "").get(inside.pickWeighted(76, 14, 4, 6)),
                slackFt(kind),
                volume.isEmpty() ? facts.withoutInside() : facts);
    }

    private OptionalInt slackFt(int kind) {
        boolean recorded = inside.below(100) < SLACK_RECORDED[kind];
        int feet = inside.from(0, MOST_SLACK_FT[kind] / SLACK_STEP_FT) * SLACK_STEP_FT;
        return recorded ? OptionalInt.of(feet) : OptionalInt.empty();
    }

    private static String tenths(double number) {
        long tenths = Math.max(1, Math.round(number * 10));
        return tenths / 10 + "." + tenths % 10;
    }

    private void record(VaultFeature vault, Fault fault, long places) {
        switch (fault) {
            case DUPLICATE_VAULT -> {
                double asideM = chance.between(0.05, 0.4);
                double bearingRad = chance.between(0, 2 * Math.PI);
                city.sink().vault(vault);
                VaultFeature twin = vault.withId(vault.id() + "A")
                        .movedBy(asideM * StrictMath.cos(bearingRad), asideM * StrictMath.sin(bearingRad));
                city.sink().vault(twin);
                known(fault, twin, "at " + vault.id());
            }
            case VAULT_FAR_FROM_ROUTES -> {
                VaultFeature far = findFar(vault, places).orElseThrow();
                city.sink().vault(vault);
                city.sink().vault(far);
                known(fault, far, "");
            }
            case VAULT_WITHOUT_GEOMETRY -> {
                city.sink().vault(vault);
                VaultFeature lost = vault.withId(vault.id() + "N").notDrawn();
                city.sink().vault(lost);
                known(fault, lost, "");
            }
            default -> {
                city.sink().vault(vault.withoutElevation());
                known(fault, vault, "");
            }
        }
    }

    private void known(Fault fault, VaultFeature vault, String detail) {
        city.sink().fault(new KnownFault(fault, "vaults", vault.id(), detail));
    }

    /** Finds a place not too near any line of the district; costly, and so only looked for when there is need. */
    private Optional<VaultFeature> findFar(VaultFeature vault, long seed) {
        Chance places = new Chance(seed);
        for (int attempt = 0; attempt < ATTEMPTS; attempt++) {
            double bearingRad = places.between(0, 2 * Math.PI);
            double awayM = places.between(18, 40);
            VaultFeature far = vault.withId(vault.id() + "F")
                    .movedBy(awayM * StrictMath.cos(bearingRad), awayM * StrictMath.sin(bearingRad));
            if (laid.stream().allMatch(leg -> leg.trace().distance(far.x(), far.y()) > FAR_M)) {
                return Optional.of(far);
            }
        }
        return Optional.empty();
    }
}
