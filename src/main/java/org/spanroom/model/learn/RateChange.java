package org.spanroom.model.learn;

import java.time.LocalDate;
import java.util.Optional;
import org.spanroom.model.effort.Rate;
import org.spanroom.model.effort.RateKey;

/**
 * What reports say of one rate, or of a quantity that no rate is made of.
 *
 * @param learned the word for what was reported: a step of the work or a quantity
 * @param rate the rate; empty where the ratio is shown only
 * @param kind of vaults or zones whose row of the rate it is; empty for the standard one
 * @param before the row that the run was made with
 * @param after the proposed row; empty where nothing is proposed
 * @param estimate what the spans say; empty where too few reported
 * @param reported how many spans reported, those left out not counted
 * @param lastDay on which one of them reported; empty where none did
 * @param why nothing is proposed; empty where something is
 */
public record RateChange(
        String learned,
        Optional<RateKey> rate,
        String kind,
        Optional<Rate> before,
        Optional<Rate> after,
        Optional<RatioEstimate> estimate,
        int reported,
        Optional<LocalDate> lastDay,
        String why) {}
