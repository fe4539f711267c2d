package org.spanroom.model.effort;

/**
 * The time that one span takes by itself.
 *
 * @param siteHours elapsed on site, over all shifts
 * @param laborHours of all persons together, travel included
 * @param night whether the shifts are nights
 * @param sharedAtAHours site hours saved if the neighbor at vault A is done in the same shift
 * @param sharedAtBHours the same at vault B
 * @param fitsWindow whether daily work leaves time enough in a shift for the longest pull
 */
public record WorkTime(
        double siteHours,
        double laborHours,
        int shifts,
        boolean night,
        double sharedAtAHours,
        double sharedAtBHours,
        boolean fitsWindow) {
    /** Returns how many of the shifts are nights. */
    public int nights() {
        return night ? shifts : 0;
    }
}
