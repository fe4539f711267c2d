package org.spanroom.pipeline;

import java.util.List;
import org.spanroom.model.program.ConnectionResult;
import org.spanroom.output.JsonObject;
import org.spanroom.pipeline.ConnectRun.ConnectSummary;

/** The account of connections as JSON: for the file of the results and for programs that read the screen. */
public final class ConnectAccount {
    private ConnectAccount() {}

    /** Returns the account for the file of the results. */
    static JsonObject of(ConnectSummary summary) {
        return addTo(new JsonObject().text("command", "connect"), summary);
    }

    /** Adds the account to an object and returns it. */
    public static JsonObject addTo(JsonObject json, ConnectSummary summary) {
        List<JsonObject> notServed = summary.results().stream()
                .filter(result -> !result.isServed())
                .map(result -> new JsonObject()
                        .number("line", result.connection().line())
                        .text("name", result.connection().name())
                        .text("why_not", result.whyNot()))
                .toList();
        return json.number("connections", summary.results().size())
                .number(
                        "connections_served",
                        summary.results().stream()
                                .filter(ConnectionResult::isServed)
                                .count())
                .objects("not_served", notServed)
                .text("currency", summary.currency())
                .number("cost_money", summary.money(), 2)
                .number("value_not_served_money", summary.unservedMoney(), 2)
                .number("bound_money", summary.boundMoney(), 2)
                .number("gap_pct", 100 * summary.gapRatio().orElse(Double.NaN), 2)
                .number("seed", summary.request().seed())
                .number("iterations", summary.iterations())
                .text("reproducible", summary.isReproducible() ? "yes" : "no")
                .texts("notes", summary.notes())
                .texts("files", summary.files().stream().map(String::valueOf).toList());
    }
}
