package org.spanroom.model.learn;

import java.util.Optional;
import java.util.OptionalInt;
import org.spanroom.model.pull.FrictionSets;

/**
 * What measured pulls say of friction, in all ducts or in those of one type and decade.
 *
 * @param stratum type and decade; empty for all ducts
 * @param ductType its recorded type; empty where none is recorded, and for all ducts
 * @param fromYear its first year; empty where no year is recorded, and for all ducts
 * @param pulls how many were measured
 * @param spans of how many spans; each counts once, with the median of its pulls
 * @param estimate of the factor on the dry coefficients; empty where too few spans reported
 * @param after the proposed coefficients; empty where nothing is proposed
 */
public record FrictionChange(
        String stratum,
        String ductType,
        OptionalInt fromYear,
        int pulls,
        int spans,
        Optional<RatioEstimate> estimate,
        FrictionSets before,
        Optional<FrictionSets> after) {}
