package org.spanroom.sample;

import java.util.List;

/**
 * Invents by what crews know the items of the contents table, from a source of chance of its own: colors of innerducts, tags of cables, and
 * which innerducts run uncut through a vault, that only in ducts that are excluded anyway ({@link EndNotes}): their owner refuses the work, or a
 * cable is of unknown service. Invented, no source.
 */
final class ItemNotes {
    private static final List<String> COLORS =
            List.of("orange", "blue", "green", "gray", "white", "black", "red", "yellow");

    private static final int FIRST_TAG = 1000;
    private static final int TAGS = 9000;

    private final Chance chance;
    private boolean noted;
    private boolean excluded;
    private int color;

    ItemNotes(Chance chance) {
        this.chance = chance;
    }

    /**
     * What was noted of one item, each as written or empty.
     *
     * @param uncutAtA whether an innerduct runs uncut through the vault where its duct begins
     */
    record Notes(String color, String tag, String uncutAtA, String uncutAtB) {
        static final Notes NONE = new Notes("", "", "", "");
    }

    /** Turns to a next duct, whose innerducts have different colors. */
    void turnTo(Draft draft, Filling filling) {
        noted = chance.happens(0.7);
        color = chance.below(COLORS.size());
        excluded = EndNotes.isRefused(draft)
                || filling.rows().stream().anyMatch(row -> row.service().equals("unknown"));
    }

    /** Draws what was noted of an item; always the same number of draws. */
    Notes draw(ListedItem row) {
        boolean tagged = chance.happens(0.8);
        int tag = FIRST_TAG + chance.below(TAGS);
        boolean throughA = chance.happens(0.25);
        boolean throughB = chance.happens(0.25);
        if (!noted) {
            return Notes.NONE;
        }
        return switch (row.kind()) {
            case "innerduct" ->
                new Notes(
                        COLORS.get(color++ % COLORS.size()),
                        "",
                        excluded ? throughA ? "yes" : "no" : "",
                        excluded ? throughB ? "yes" : "no" : "");
            case "cable" -> new Notes("", tagged ? "T-" + tag : "", "", "");
            default -> Notes.NONE;
        };
    }
}
