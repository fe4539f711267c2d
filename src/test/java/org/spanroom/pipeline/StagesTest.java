package org.spanroom.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanroom.config.ConfigReader;
import org.spanroom.config.RunConfig;
import org.spanroom.sample.DemoCity;

/** What a run says of its stages: each long one has a name, is counted to its end, and they do not overlap. */
class StagesTest {
    @TempDir
    Path folder;

    @Test
    void everyLongStageIsNamedAndCountedToItsEnd() {
        DemoCity.write(400, 3, folder.resolve("city"));
        RunConfig config = ConfigReader.read(folder.resolve("city").resolve("spanroom.yaml"));
        config = config.withOutput(config.output().withFolder(folder.resolve("run")));
        var stages = new Recording();

        new RankRun(config, stages, SpanChoice.ALL).run(false, "test", Instant.EPOCH);

        assertThat(stages.names)
                .containsExactly(
                        "read inputs",
                        "cut at vaults",
                        "assess spans",
                        "find field checks",
                        "form sections",
                        "write results");
        assertThat(stages.isRunning).isFalse();
        int checks = stages.names.indexOf("find field checks");
        assertThat(stages.expected.get(checks)).isPositive();
        assertThat(stages.done.get(checks).get()).isEqualTo(stages.expected.get(checks));
        int assess = stages.names.indexOf("assess spans");
        assertThat(stages.done.get(assess).get()).isEqualTo(stages.expected.get(assess));
    }

    /** Records its calls. */
    private static final class Recording implements Progress {
        private final List<String> names = new ArrayList<>();
        private final List<Long> expected = new ArrayList<>();
        private final List<AtomicLong> done = new ArrayList<>();
        private boolean isRunning;

        @Override
        public void begin(String stage, long expectedCount) {
            assertThat(isRunning).as(stage).isFalse();
            isRunning = true;
            names.add(stage);
            expected.add(expectedCount);
            done.add(new AtomicLong());
        }

        @Override
        public void advance(long count) {
            done.get(done.size() - 1).addAndGet(count);
        }

        @Override
        public void reach(double doneShare) {}

        @Override
        public void end(String result) {
            assertThat(result).isNotBlank();
            isRunning = false;
        }
    }
}
