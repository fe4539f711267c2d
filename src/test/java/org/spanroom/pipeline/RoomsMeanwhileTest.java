package org.spanroom.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.spanroom.bore.RoomAssessor;
import org.spanroom.config.ConfigReader;
import org.spanroom.config.RunConfig;
import org.spanroom.input.InputData;

class RoomsMeanwhileTest {
    private static final RunConfig CONFIG = ConfigReader.read(Path.of("sample-gis/spanroom.yaml"));
    private static final InputData INPUTS = new RankRun(CONFIG, Progress.SILENT).read();

    private final RoomAssessor rooms = new RoomAssessor(CONFIG.room());

    @Test
    void roomsAreCalculatedOnlyWhileTheReadingIsWaitedFor() {
        var asked = new AtomicInteger();

        new RoomsMeanwhile(rooms).on(INPUTS.routes(), () -> false);
        assertThat(rooms.sectionsWorkedOut()).isZero();
        new RoomsMeanwhile(rooms).on(INPUTS.routes(), () -> asked.incrementAndGet() <= 1);
        assertThat(rooms.sectionsWorkedOut()).isLessThanOrEqualTo(1);
        assertThat(asked).hasValue(2);
    }

    @Test
    void whatIsKnownBeforehandChangesNoRoom() {
        var routes = INPUTS.routes().subList(0, 40);
        new RoomsMeanwhile(rooms).on(routes, () -> true);
        var fresh = new RoomAssessor(CONFIG.room());

        assertThat(routes)
                .isNotEmpty()
                .allSatisfy(route -> assertThat(rooms.assess(route.duct())).isEqualTo(fresh.assess(route.duct())));
    }
}
