package org.spanroom.config;

import java.util.SortedMap;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.bend.BendSettings;
import org.spanroom.model.bore.Catalog;
import org.spanroom.model.bore.RoomSettings;
import org.spanroom.model.effort.RateSettings;
import org.spanroom.model.network.NetworkSettings;
import org.spanroom.model.network.ScenarioSettings;
import org.spanroom.model.network.VaultKind;
import org.spanroom.model.permit.PermitSettings;
import org.spanroom.model.pull.PullSettings;
import org.spanroom.model.rank.ScoringSettings;
import org.spanroom.model.rank.UncertaintySettings;
import org.spanroom.model.survey.SurveySettings;

/**
 * Everything that a run is given from outside the data. One component is one section of the file; a further section is one
 * further component and its keys in {@code config/spanroom.yaml}, which holds the shipped values.
 *
 * @param assumed values that are used where the data has none
 * @param scenarios what ducts may hold whose contents are not recorded; the typical counts are the assumed ones
 * @param values what the words of the data mean
 * @param plausible the range in which each quantity is believed
 * @param catalog sizes by name
 * @param vaultKinds what each recorded kind of vault means for the work there; see {@link VaultKind#of}
 * @param threads how many threads compute; 0 for as many as the machine has
 * @param strict whether findings beyond notes make the run fail
 * @param units the units that people are shown on screens and sheets
 */
public record RunConfig(
        InputConfig inputs,
        AssumedValues assumed,
        ScenarioSettings scenarios,
        ValueWords values,
        PlausibleRanges plausible,
        Catalog catalog,
        NetworkSettings network,
        SortedMap<String, VaultKind> vaultKinds,
        BendSettings bend,
        RoomSettings room,
        PullSettings pull,
        RateSettings rates,
        PermitSettings permit,
        ScoringSettings scoring,
        UncertaintySettings uncertainty,
        SurveySettings survey,
        OutputConfig output,
        int threads,
        boolean strict,
        UnitSystem units) {
    private static final int MOST_THREADS = 1024;

    public RunConfig {
        if (threads < 0 || threads > MOST_THREADS) {
            throw new IllegalArgumentException("threads must be from 0 to " + MOST_THREADS + ", was " + threads);
        }
        assumed = AssumedContents.assumed(assumed, scenarios);
        scenarios = AssumedContents.scenarios(assumed, scenarios);
    }

    public RunConfig withInputs(InputConfig other) {
        return FiledSections.replaced(this, "inputs", other);
    }

    public RunConfig withOutput(OutputConfig other) {
        return FiledSections.replaced(this, "output", other);
    }

    public RunConfig withThreads(int other) {
        return FiledSections.replaced(this, "threads", other);
    }

    public RunConfig withStrict(boolean other) {
        return FiledSections.replaced(this, "strict", other);
    }

    public RunConfig withUnits(UnitSystem other) {
        return FiledSections.replaced(this, "units", other);
    }

    public RunConfig withPermit(PermitSettings other) {
        return FiledSections.replaced(this, "permit", other);
    }

    public RunConfig withUncertainty(UncertaintySettings other) {
        return FiledSections.replaced(this, "uncertainty", other);
    }
}
