package org.spanroom.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.spanroom.config.ConfigReader;
import org.spanroom.config.RunConfig;
import org.spanroom.input.InputData;
import org.spanroom.model.effort.Effort;
import org.spanroom.model.network.SpanList;
import org.spanroom.model.rank.Assessment;
import org.spanroom.model.rank.SpanOffer;
import org.spanroom.permit.PermitAssessor;

/** Ducts of one section share the trench or bore of the one that costs most by itself; each other one costs what a further duct costs. */
class SharedBuildTest {
    private static final int SPANS = 40;

    private static final List<Effort> EFFORTS = new ArrayList<>();
    private static final List<SpanOffer.NewDuctCost> DUCTS = new ArrayList<>();

    private final SharedBuild build = new SharedBuild(SPANS);

    @BeforeAll
    static void assessSomeSpans() {
        RunConfig config = ConfigReader.read(Path.of("sample-gis", "spanroom.yaml"));
        var run = new RankRun(config, Progress.SILENT);
        InputData inputs = run.read();
        SpanList spans = run.cut(inputs).spans();
        var permits = new PermitAssessor(inputs.zones(), config.permit(), ConfiguredParts.access(config));
        var assessor = new SpanAssessor(config, permits, spans.size());
        for (int number = 0; EFFORTS.size() < SPANS; number++) {
            Assessment one = assessor.assess(number, spans.get(number));
            if (one.effort().filter(effort -> effort.newBuildMoney() > 0).isPresent()) {
                EFFORTS.add(one.effort().orElseThrow());
                DUCTS.add(assessor.newDuct(one));
            }
        }
    }

    private SharedBuild full() {
        for (int number = 0; number < SPANS; number++) {
            build.add(number, EFFORTS.get(number), DUCTS.get(number));
        }
        return build;
    }

    @Test
    void oneSpanCostsWhatItCostsByItself() {
        SharedBuild all = full();
        for (int number = 0; number < SPANS; number++) {
            assertThat(all.cents(number) / 100).isCloseTo(EFFORTS.get(number).newBuildMoney(), within(0.01));
        }
    }

    @Test
    void theCostliestDigsAndTheOthersLieBeside() {
        SharedBuild all = full();
        for (int number = 0; number + 2 < SPANS; number += 3) {
            int digs = number;
            double byThemselves = 0;
            for (int member = number; member < number + 3; member++) {
                byThemselves += own(member);
                digs = own(member) > own(digs) ? member : digs;
            }
            double expected = own(digs);
            for (int member = number; member < number + 3; member++) {
                expected += member == digs ? 0 : beside(member);
            }
            double found = all.cents(number, number + 1, number + 2) / 100;
            assertThat(found).isCloseTo(expected, within(0.02)).isLessThan(byThemselves);
            assertThat(all.cents(number + 2, number, number + 1) / 100).isCloseTo(found, within(0.01));
        }
    }

    private static double own(int number) {
        return EFFORTS.get(number).newBuildMoney();
    }

    private static double beside(int number) {
        return EFFORTS.get(number).newBuild().ducts() * DUCTS.get(number).furtherMoney();
    }
}
