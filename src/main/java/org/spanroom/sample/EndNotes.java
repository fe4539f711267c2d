package org.spanroom.sample;

import java.util.List;

/**
 * Invents what crews noted where ducts open into their two vaults, from a source of chance of its own, so that what is drawn does not
 * depend on it. Holes are noted of a third of the banks, of all their ducts: counted along the face of the bank, which shows mirrored in
 * the vault at its other end. Invented and plausible, no source.
 *
 * <p>Innerducts that run uncut through a vault, and slack of a duct, are noted where the owner refuses the work, so that the figures of
 * the ranked spans do not rest on them ({@link ItemNotes} does so too); of a few others only that they do not run through.
 */
final class EndNotes {
    private static final int PURPOSE = 16;
    private static final int SLACK_STEP_FT = 5;
    private static final int MOST_SLACK_FT = 60;

    private final Chance chance;
    private boolean noted;
    private boolean byRow;
    private int columns = 1;

    EndNotes(District district) {
        this.chance = district.chance(PURPOSE);
    }

    /** Turns to a next bank. */
    void turnTo(int ducts) {
        noted = chance.happens(0.34);
        byRow = chance.happens(0.4);
        columns = Math.min(ducts, chance.from(2, 4));
    }

    /**
     * Fills in a duct of the bank; always draws the same number.
     *
     * @param duct its place in the bank, from 0
     * @param backwards whether it is drawn from the far vault of the bank to the near one
     */
    void fill(Draft draft, int duct, boolean backwards) {
        Attributes attributes = draft.attributes();
        if (noted) {
            attributes.with(RouteField.HOLE_A, hole(duct, backwards)).with(RouteField.HOLE_B, hole(duct, !backwards));
        }
        boolean refused = isRefused(draft);
        slack(attributes, RouteField.SLACK_A, refused);
        slack(attributes, RouteField.SLACK_B, refused);
        uncut(attributes, RouteField.UNCUT_A, refused);
        uncut(attributes, RouteField.UNCUT_B, refused);
    }

    /** Returns whether the owner refuses the work, so that the duct is excluded whatever else is recorded of it. */
    static boolean isRefused(Draft draft) {
        return List.of("no", "refused").contains(draft.attributes().text(RouteField.CONSENT));
    }

    private String hole(int duct, boolean mirrored) {
        int row = duct / columns;
        int column = duct % columns;
        int seen = mirrored ? columns - 1 - column : column;
        return byRow ? (row + 1) + "/" + (seen + 1) : Integer.toString(row * columns + seen + 1);
    }

    private void slack(Attributes attributes, RouteField field, boolean refused) {
        boolean recorded = chance.happens(0.35);
        int feet = chance.from(0, MOST_SLACK_FT / SLACK_STEP_FT) * SLACK_STEP_FT;
        if (recorded && refused) {
            attributes.with(field, feet + " ft");
        }
    }

    private void uncut(Attributes attributes, RouteField field, boolean refused) {
        boolean through = chance.happens(0.15);
        boolean ends = chance.happens(0.03);
        if (through && refused) {
            attributes.with(field, "yes");
        } else if (ends) {
            attributes.with(field, "no");
        }
    }
}
