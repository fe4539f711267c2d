package org.spanroom.sample;

import java.util.List;

/**
 * Invents what the owner's papers say of consent, rules and risks, from a source of chance of its own, so that what is drawn
 * does not depend on it. A bank has one answer to what its owner decides; what concerns the cables differs by duct.
 */
final class Paperwork {
    private static final int PURPOSE = 6;

    private static final List<String> YES = List.of("yes");
    private static final List<String> YES_TOO = List.of("yes", "Y");
    private static final List<String> NO = List.of("no");
    private static final List<String> NO_TOO = List.of("no", "N");
    private static final List<String> GIVEN = List.of("yes", "given", "Y");
    private static final List<String> REFUSED = List.of("no", "refused");
    private static final List<String> ALLOWED = List.of("yes", "allowed");
    private static final List<String> ALLOWED_TOO = List.of("yes", "allowed", "Y");
    private static final List<String> FORBIDDEN = List.of("no", "forbidden");

    private static final List<Integer> RESERVED = List.of(0, 1, 2, 3);

    /** Half of the embargoes are over. */
    private static final List<Integer> EMBARGO_YEARS = List.of(2021, 2023, 2024, 2027, 2028, 2029);

    private final Chance chance;
    private String consent = "";
    private String looseOk = "";
    private String coOwners = "";
    private String embargo = "";
    private String besideOk = "";

    Paperwork(District district) {
        this.chance = district.chance(PURPOSE);
    }

    /** Turns to a next bank. */
    void turnTo(Bank bank) {
        consent = answer(86, 4, 10, GIVEN, REFUSED);
        boolean strict = bank.owner().equals(BankGenerator.OWNERS.get(2));
        looseOk = strict ? answer(40, 55, 5, ALLOWED, FORBIDDEN) : answer(93, 1, 6, ALLOWED_TOO, NO);
        List<String> others = BankGenerator.OWNERS.stream()
                .filter(owner -> !owner.equals(bank.owner()))
                .toList();
        String other = chance.pick(others);
        coOwners = chance.happens(0.08) ? other : "";
        int month = chance.from(1, 12);
        int day = chance.from(1, 28);
        int year = chance.pick(EMBARGO_YEARS);
        embargo = chance.happens(0.05) ? year + "-" + two(month) + "-" + two(day) : "";
        besideOk = strict ? answer(20, 35, 45, ALLOWED, FORBIDDEN) : answer(15, 2, 83, YES, NO);
    }

    /** Fills in a duct of the bank. */
    void fill(Attributes attributes, Filling filling) {
        attributes
                .with(RouteField.CONSENT, consent)
                .with(RouteField.LOOSE_OK, looseOk)
                .with(RouteField.CO_OWNERS, coOwners)
                .with(RouteField.EMBARGO, embargo)
                .with(RouteField.SPLICED, answer(3, 94, 3, YES, NO_TOO))
                .with(RouteField.GROUTED, answer(2, 95, 3, YES_TOO, NO))
                .with(RouteField.MAY_MOVE, answer(93, 5, 2, YES, NO));
        int carried = chance.from(2, 24) * filling.cables();
        if (!chance.happens(0.05)) {
            attributes.with(RouteField.CIRCUITS, filling.service().equals("dead") ? 0 : carried);
        }
        attributes.with(RouteField.BESIDE_OK, besideOk);
        boolean recorded = chance.happens(0.12);
        int reserved = RESERVED.get(chance.pickWeighted(2, 5, 4, 1));
        if (recorded && !filling.isEmpty()) {
            attributes.with(RouteField.RESERVED, reserved);
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
