package org.spanroom.pipeline;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.spanroom.input.RecordedLayer;
import org.spanroom.input.RecordedRow;
import org.spanroom.output.RecordedRun;
import org.spanroom.output.columns.VaultColumns;
import org.spanroom.output.columns.VaultFactColumns;

/** Reads back what a run wrote of its vaults for the crews. Only the GeoPackage of a run has its vaults. */
final class VaultFactReader {
    private VaultFactReader() {}

    /**
     * Reads some vaults.
     *
     * @return by vault and column, as text, number or Boolean; without the cells that are empty, and without the columns of later versions
     * @throws org.spanroom.finding.InputException if the file cannot be read back
     */
    static Map<String, Map<String, Object>> read(Path run, Set<String> vaultIds) {
        Path file = run.resolve(RecordedRun.GEOPACKAGE);
        if (!Files.isRegularFile(file)) {
            return Map.of();
        }
        Map<String, Map<String, Object>> found = new HashMap<>();
        try (var layer = RecordedLayer.find(file, VaultColumns.TABLE.name()).orElse(null)) {
            if (layer == null) {
                return Map.of();
            }
            var columns = new ArrayList<>(List.of(VaultColumns.VAULT_ID));
            columns.addAll(VaultFactColumns.names());
            columns.retainAll(layer.columns());
            layer.read(columns, row -> {
                if (vaultIds.contains(row.text(0))) {
                    found.put(row.text(0), facts(columns, row));
                }
            });
        }
        return found;
    }

    private static Map<String, Object> facts(List<String> columns, RecordedRow row) {
        Map<String, Object> facts = new LinkedHashMap<>();
        for (int column = 1; column < columns.size(); column++) {
            Object value = row.values().get(column);
            if (value != null) {
                facts.put(columns.get(column), value);
            }
        }
        return facts;
    }
}
