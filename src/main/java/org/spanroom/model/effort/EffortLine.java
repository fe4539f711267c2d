package org.spanroom.model.effort;

/**
 * One line of the account of a span: quantity times rate, or quantity by rate, is an amount.
 *
 * @param place A or B for work at a vault, else empty
 * @param factorRatio share of the product that counts; 1 where all does
 * @param range the rate with its range and source
 */
public record EffortLine(
        EffortPart part,
        String place,
        double quantityInUnit,
        RateKey rate,
        double rateInUnit,
        double factorRatio,
        double amountInUnit,
        Rate range) {}
