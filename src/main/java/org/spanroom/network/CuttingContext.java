package org.spanroom.network;

import java.util.Optional;
import org.spanroom.model.network.NetworkSettings;

/**
 * What every thread of one run shares.
 *
 * @param recordedLength the field of recorded lengths, if there is one
 */
record CuttingContext(
        NetworkSettings settings,
        VaultPlaces places,
        VaultSightings sightings,
        NetworkFindings findings,
        RecordedVaults recorded,
        Optional<RecordedField> recordedLength) {}
