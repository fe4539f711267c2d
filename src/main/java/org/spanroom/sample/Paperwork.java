package org.spanroom.sample;

import java.util.List;

/**
 * Invents what the owner's papers say of consent, rules and risks, from a source of chance of its own, so that what is drawn
 * does not depend on it. A bank has one answer to what its owner decides; what concerns the cables differs by duct.
 */
final class Paperwork {
    private static final int PURPOSE = 6;

    private final Chance chance;
    private String consent = "";
    private String looseOk = "";
    private String coOwners = "";
    private String embargo = "";

    Paperwork(District district) {
        this.chance = district.chance(PURPOSE);
    }

    /** Turns to a next bank. */
    void turnTo(Bank bank) {
        consent = answer(86, 4, 10, List.of("yes", "given", "Y"), List.of("no", "refused"));
        boolean strict = bank.owner().equals(Foreman.OWNERS.get(2));
        looseOk = strict
                ? answer(40, 55, 5, List.of("yes", "allowed"), List.of("no", "forbidden"))
                : answer(93, 1, 6, List.of("yes", "allowed", "Y"), List.of("no"));
        List<String> others = Foreman.OWNERS.stream()
                .filter(owner -> !owner.equals(bank.owner()))
                .toList();
        String other = chance.pick(others);
        coOwners = chance.happens(0.08) ? other : "";
        int month = chance.from(1, 12);
        int day = chance.from(1, 28);
        embargo = chance.happens(0.03) ? "2029-" + two(month) + "-" + two(day) : "";
    }

    /** Fills in a duct of the bank. */
    void fill(Attributes attributes, Filling filling) {
        attributes
                .with(RouteField.CONSENT, consent)
                .with(RouteField.LOOSE_OK, looseOk)
                .with(RouteField.CO_OWNERS, coOwners)
                .with(RouteField.EMBARGO, embargo)
                .with(RouteField.SPLICED, answer(3, 94, 3, List.of("yes"), List.of("no", "N")))
                .with(RouteField.GROUTED, answer(2, 95, 3, List.of("yes", "Y"), List.of("no")))
                .with(RouteField.MAY_MOVE, answer(93, 5, 2, List.of("yes"), List.of("no")));
        int carried = chance.from(2, 24) * filling.cables();
        if (!chance.happens(0.05)) {
            attributes.with(RouteField.CIRCUITS, filling.service().equals("dead") ? 0 : carried);
        }
    }

    /** Draws one of the words for yes or no, or nothing, by weights. */
    private String answer(int yes, int no, int none, List<String> yesWords, List<String> noWords) {
        int kind = chance.pickWeighted(yes, no, none);
        String yesWord = chance.pick(yesWords);
        String noWord = chance.pick(noWords);
        return kind == 0 ? yesWord : kind == 1 ? noWord : "";
    }

    private static String two(int number) {
        return number < 10 ? "0" + number : Integer.toString(number);
    }
}
