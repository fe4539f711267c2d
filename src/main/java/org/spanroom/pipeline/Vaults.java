package org.spanroom.pipeline;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.spanroom.config.NearestWord;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.InputException;
import org.spanroom.input.RecordedLayer;
import org.spanroom.model.program.Connection;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.output.CopiedCsv;
import org.spanroom.output.RecordedRun;
import org.spanroom.output.columns.FindingColumns;

/** Finds vaults by the names that people give. */
final class Vaults {
    private static final int MOST_SHOWN = 3;

    /** Names to compare for one unknown name, times unknown names: a few seconds. */
    private static final long MOST_COMPARED = 5_000_000;

    private static final String CODE = "code";
    private static final String FEATURE = "feature";
    private static final String DETAIL = "detail";

    private final List<String> names;
    private final Map<String, String> treatedAsAnother;
    private long compared;

    private Vaults(NetworkReader.Recorded recorded) {
        this.names =
                recorded.network().vaults().stream().map(vault -> vault.id()).toList();
        this.treatedAsAnother = treatedAsAnother(recorded.run().file().resolveSibling(""));
    }

    /**
     * Returns the number of a vault.
     *
     * @param option the option that names it
     * @throws InputException if no span of the run ends there, with the nearest names
     */
    static int find(NetworkReader.Recorded recorded, String option, String vaultId) {
        return recorded.network().find(vaultId).orElseThrow(() -> {
            var vaults = new Vaults(recorded);
            return new InputException(
                    recorded.run().file(),
                    "no span of the run ends at the vault '" + vaultId + "' of " + option,
                    Optional.ofNullable(vaults.treatedAsAnother.get(vaultId))
                            .map(why -> "The findings of the run say: " + why + ". Name that vault.")
                            .orElseGet(
                                    () -> "Name a vault as in the columns vault_a and vault_b; the nearest names are "
                                            + String.join(", ", NearestWord.nearest(vaultId, vaults.names, MOST_SHOWN))
                                            + "."));
        });
    }

    /** Returns the rows of a table, those that name an unknown vault with that as their problem and the name that may be meant. */
    static List<Connection> checked(NetworkReader.Recorded recorded, List<Connection> rows) {
        DuctNetwork network = recorded.network();
        if (rows.stream().allMatch(row -> unknown(network, row).isEmpty())) {
            return rows;
        }
        var vaults = new Vaults(recorded);
        var checked = new ArrayList<Connection>();
        for (Connection row : rows) {
            Optional<String> unknown = row.problem().isPresent() ? Optional.empty() : unknown(network, row);
            checked.add(
                    unknown.map(vault -> row.withProblem(vaults.problem(vault))).orElse(row));
        }
        return checked;
    }

    private static Optional<String> unknown(DuctNetwork network, Connection row) {
        return List.of(row.from(), row.to()).stream()
                .filter(vault -> network.find(vault).isEmpty())
                .findFirst();
    }

    private String problem(String vaultId) {
        String why = treatedAsAnother.get(vaultId);
        if (why != null) {
            return "no span of the run ends at vault " + vaultId + ": " + why + "; name that vault";
        }
        compared += names.size();
        Optional<String> near = compared > MOST_COMPARED ? Optional.empty() : NearestWord.find(vaultId, names);
        return "no span of the run ends at vault " + vaultId
                + near.map(name -> "; did you mean " + name + "?").orElse("");
    }

    /** Returns, by the name of each vault that gave way to another at its place, what the findings of the run say of it. */
    private static Map<String, String> treatedAsAnother(Path run) {
        var found = new HashMap<String, String>();
        RecordedRows.read(
                run,
                FindingColumns.TABLE.name(),
                List.of(CODE, FEATURE, DETAIL),
                row -> put(row.get(0), row.get(1), row.get(2), found));
        return found;
    }

    private static void put(String code, String feature, String detail, Map<String, String> found) {
        if (code.equals(FindingCode.DUPLICATE_VAULT.key())) {
            found.putIfAbsent(feature, detail);
        }
    }
}
