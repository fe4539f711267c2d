package org.spanroom.pipeline;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.network.Street;

/** Where a page has details of spans and streets from. */
final class ReportSources {
    /** So many spans are in one pack, which a browser unpacks when a card of it is opened. */
    static final int PACK = 50;

    private ReportSources() {}

    static DetailSource.Details details(Path run, List<String> spanIds, Progress progress, UnitSystem units) {
        return DetailSource.Details.NONE;
    }

    static List<Street> streets(Path file, Optional<String> nameField) {
        return List.of();
    }
}
