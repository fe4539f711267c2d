package org.spanroom.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.network.SpanList;
import org.spanroom.output.PackedSpans;

/** Rows that the heap has no room for go into a file; where none can be made, the run does without. */
class RowStoreTest {
    @TempDir
    private Path folder;

    private static Optional<PackedSpans> store(boolean roomInMemory, Path in) {
        return RowStore.of(ShippedConfig.get(), SpanList.of(List.of()), roomInMemory, in);
    }

    @Test
    void rowsGoIntoMemoryWhereThereIsRoom() {
        assertThat(store(true, folder.resolve("missing"))).isPresent();
    }

    @Test
    void otherRowsGoIntoAFile() {
        Optional<PackedSpans> store = store(false, folder);

        assertThat(store).isPresent();
        store.get().close();
        assertThat(folder).isEmptyDirectory();
    }

    @Test
    void withoutAFileTheSpansAreAssessedAgain() {
        assertThat(store(false, folder.resolve("missing"))).isEmpty();
    }
}
