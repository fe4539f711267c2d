package org.spanroom.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.spanroom.config.ConfigReader;
import org.spanroom.config.RunConfig;
import org.spanroom.input.InputData;
import org.spanroom.model.bore.Room;
import org.spanroom.model.effort.Effort;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Network;
import org.spanroom.model.rank.Assessment;
import org.spanroom.model.rank.LearnedChances;
import org.spanroom.permit.PermitAssessor;
import org.spanroom.rank.Ranking;

/** What is calculated of a span with another duct, against an assessment of it; on spans of the demo city. */
class ScenariosTest {
    private static final RunConfig CONFIG = ConfigReader.read(Path.of("sample-gis", "spanroom.yaml"));
    private static final int SPANS = 400;

    @Test
    void otherRoomChangesOnlyWhatIsCalculatedOfIt() {
        var run = new RankRun(CONFIG, Progress.SILENT);
        InputData inputs = run.read();
        Network network = run.cut(inputs);
        var permits = new PermitAssessor(inputs.zones(), CONFIG.permit(), ConfiguredParts.access(CONFIG));
        var assessor = new SpanAssessor(CONFIG, permits, network.spans().size());
        Ranking ranking = ConfiguredParts.ranking(CONFIG, LearnedChances.NONE);
        var variants = new DuctVariants(0.06, CONFIG.assumed());
        int changed = 0;
        for (int number = 0; number < SPANS; number++) {
            Assessment assessed = assessor.assess(number, network.spans().get(number));
            double[] taken = ranking.quantities(assessed);
            Duct duct = assessed.span().duct();
            for (Duct other : List.of(duct, variants.tighter(duct), variants.withOneCableMore(duct))) {
                Assessment plain = assessor.withDuct(assessed, other);
                Room room = assessor.propose(assessed.span(), assessor.rooms().assess(other));
                double savingRatio = assessor.savingRatio(assessed, room);
                double[] found = ranking.quantities(assessed, taken, room, savingRatio);
                double[] expected = ranking.quantities(plain);

                assertThat(room).isEqualTo(plain.room());
                assertThat(savingRatio)
                        .isEqualTo(plain.effort().map(Effort::savingRatio).orElse(0.0));
                assertThat(found).isEqualTo(expected);
                changed += Arrays.equals(found, taken) ? 0 : 1;
            }
        }
        assertThat(changed).isGreaterThan(SPANS / 4);
    }
}
