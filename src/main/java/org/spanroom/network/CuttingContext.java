package org.spanroom.network;

import org.spanroom.model.network.NetworkSettings;

/** What every thread of one run shares. */
record CuttingContext(
        NetworkSettings settings,
        VaultPlaces places,
        VaultSightings sightings,
        NetworkFindings findings,
        RecordedVaults recorded) {}
