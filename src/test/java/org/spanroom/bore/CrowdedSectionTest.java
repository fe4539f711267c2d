package org.spanroom.bore;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.bore.CrossSection;
import org.spanroom.model.bore.PackingOutcome;
import org.spanroom.model.bore.Room;
import org.spanroom.model.bore.RoomSettings;
import org.spanroom.model.network.BoreShape;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.Service;
import org.spanroom.model.network.Sleeve;
import org.spanroom.testing.Ducts;

/** Cross-sections as crowded as records can claim, just fitting or just not: the work on each ends, counted and not timed. */
class CrowdedSectionTest {
    private static final RoomSettings SETTINGS = ShippedConfig.get().room();

    @ParameterizedTest(name = "{0} innerducts, {1} cables, {2} sleeves, {3} full, seed {4}")
    @CsvSource({
        "40, 100, 0, 0.85, 1",
        "40, 100, 0, 0.8, 2",
        "40, 100, 3, 0.5, 3",
        "0, 100, 0, 0.84, 4",
        "0, 140, 0, 0.8, 5",
        "12, 60, 4, 0.82, 6",
        "4, 30, 0, 0.84, 7",
        "20, 20, 6, 0.7, 8",
        "6, 6, 8, 0.6, 9",
        "40, 0, 0, 0.8, 10"
    })
    void workEnds(int innerducts, int cables, int sleeves, double fillRatio, long seed) {
        Duct duct = crowded(innerducts, cables, sleeves, fillRatio, new Random(seed));
        Work work = Work.ofSection();

        var room = new RoomCount(SETTINGS, new Packer()).count(BoreContents.of(duct, SETTINGS), work);

        // One search and one proof may be under way when the work is spent.
        assertThat(work.spent()).isPositive().isLessThan(4 * Work.MOST_OF_SECTION);
        assertThat(room.choices()).hasSizeGreaterThan(innerducts);
    }

    @ParameterizedTest(name = "{0} circles in sleeves of {1} cells")
    @CsvSource({"17, 0", "40, 0", "140, 0", "300, 0", "9, 3", "40, 8", "140, 10", "300, 30"})
    void aMoveIsCountedByItsCirclesSoThatUsualSearchesEndBefore(int circles, int cells) {
        double[] diametersMm = new double[circles];
        int[] sleeves = new int[circles];
        for (int circle = 0; circle < circles; circle++) {
            diametersMm[circle] = 14;
            sleeves[circle] = cells == 0 || circle >= circles / 2 ? 0 : 1 + circle / cells;
        }
        long moveWork = PackingTask.jointed(BoreShape.ROUND, 400, diametersMm, sleeves, 2)
                .moveWork();

        assertThat(moveWork).isGreaterThanOrEqualTo((long) circles * circles);
        if (cells <= 3 && circles <= 17) {
            assertThat(20L * circles * circles * moveWork).isLessThan(Work.MOST_OF_SEARCH);
        }
    }

    @Test
    void whatTheWorkLeavesOpenIsUndecidedAndSaidSo() {
        CrossSection section = section(crowded(0, 100, 0, 0.84, new Random(3)));

        assertThat(section.before().outcome()).isEqualTo(PackingOutcome.UNDECIDED);
        assertThat(section.before().gapMm()).isPositive();
        assertThat(section.before().arrangement()).isPresent();
        assertThat(section.leftOpen()).isTrue();
    }

    @Test
    void usualContentsLeaveNothingOpen() {
        assertThat(section(crowded(3, 3, 1, 0.45, new Random(1))).leftOpen()).isFalse();
        assertThat(section(crowded(6, 6, 0, 0.6, new Random(2))).leftOpen()).isFalse();
    }

    @Test
    void anAnswerDoesNotDependOnWhatWasAskedBefore() {
        List<Duct> ducts = new ArrayList<>();
        for (int number = 0; number < 4; number++) {
            ducts.add(crowded(12 + number, 40, number, 0.8, new Random(number)));
        }
        var together = new RoomAssessor(SETTINGS);
        List<Room> rooms = ducts.stream().map(together::assess).toList();
        Collections.reverse(ducts);
        var backwards = new RoomAssessor(SETTINGS);
        List<Room> others =
                new ArrayList<>(ducts.stream().map(backwards::assess).toList());
        Collections.reverse(others);

        assertThat(rooms).isEqualTo(others);
    }

    @Test
    void moreThingsThanAnyDuctHoldsAreNotPacked() {
        List<Cable> cables = Collections.nCopies(1_000_000, cable(14));
        Duct duct = duct(100, new Contents(List.of(), List.of(), cables, true));

        Room room = new RoomAssessor(SETTINGS).assess(duct);

        assertThat(room).isEqualTo(Room.unknown(duct.boreAreaMm2()));
    }

    private static CrossSection section(Duct duct) {
        return new RoomAssessor(SETTINGS).assess(duct).crossSection().orElseThrow();
    }

    /** Things of many sizes in a bore that they fill to a share. */
    private static Duct crowded(int innerducts, int cables, int sleeves, double fillRatio, Random random) {
        List<Innerduct> pipes = new ArrayList<>();
        double squaresMm2 = 0;
        int within = 0;
        for (int number = 0; number < innerducts; number++) {
            double outsideMm = 20 + 30 * random.nextDouble();
            List<Cable> inside = random.nextInt(3) > 0 && within < cables
                    ? List.of(cable(outsideMm * (0.2 + 0.5 * random.nextDouble())))
                    : List.of();
            within += inside.size();
            pipes.add(new Innerduct("i" + number, outsideMm, 0.06 * outsideMm, inside));
            squaresMm2 += outsideMm * outsideMm;
        }
        List<Cable> loose = new ArrayList<>();
        for (int number = within; number < cables; number++) {
            loose.add(cable(8 + 14 * random.nextDouble()));
            squaresMm2 += Math.pow(loose.get(loose.size() - 1).outsideDiameterMm(), 2);
        }
        List<Sleeve> fabrics = new ArrayList<>();
        for (int number = 0; number < sleeves; number++) {
            fabrics.add(new Sleeve("s" + number, 8, 2, List.of(cable(12), cable(12), cable(14))));
            squaresMm2 += 5 * 14 * 14;
        }
        return duct(Math.sqrt(squaresMm2 / fillRatio), new Contents(pipes, fabrics, loose, true));
    }

    private static Cable cable(double outsideMm) {
        return new Cable("c", outsideMm, 0.15, Service.LIVE);
    }

    private static Duct duct(double insideMm, Contents contents) {
        return Ducts.sound(BoreShape.ROUND, insideMm, contents);
    }
}
