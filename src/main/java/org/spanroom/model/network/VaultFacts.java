package org.spanroom.model.network;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;
import org.spanroom.model.Answer;
import org.spanroom.model.Check;

/**
 * What the records say of a vault for the crew only. Nothing of it is ever assumed.
 *
 * @param volumeBasis what the volume of its {@link VaultSite} rests on
 * @param depthM from its cover down to its floor
 * @param coverSizeMm least width of the opening under its cover
 * @param gasFound whether gas was found in it before
 * @param jointPower whether power cables share it
 * @param inspectedOn day of its last inspection
 */
public record VaultFacts(
        VolumeBasis volumeBasis,
        OptionalDouble depthM,
        InsideSize inside,
        OptionalDouble coverSizeMm,
        Answer gasFound,
        Answer jointPower,
        Optional<LocalDate> inspectedOn) {
    /** Nothing is recorded. */
    public static final VaultFacts UNKNOWN = new VaultFacts(
            VolumeBasis.UNKNOWN,
            OptionalDouble.empty(),
            InsideSize.UNKNOWN,
            OptionalDouble.empty(),
            Answer.UNKNOWN,
            Answer.UNKNOWN,
            Optional.empty());

    public VaultFacts {
        depthM.ifPresent(depth -> Check.positive("depthM", depth));
        coverSizeMm.ifPresent(size -> Check.positive("coverSizeMm", size));
    }
}
