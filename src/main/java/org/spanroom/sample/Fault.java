package org.spanroom.sample;

import java.util.Locale;

/** The ordinary faults of real data that the city has on purpose, each about once in this many features. */
enum Fault {
    OFFSET(Target.ROUTE, 40, "the whole line is drawn 0.4 to 0.5 m beside its vaults"),
    GAP_AT_VAULT(Target.ROUTE, 90, "the line stops 1.6 to 2.6 m short of its last vault"),
    PIECES(Target.ROUTE, 60, "one duct is drawn as two features that meet between two vaults"),
    PIECES_THAT_DIFFER(Target.ROUTE, 150, "as above, and the second has another surface and year"),
    PIECES_WITH_A_GAP(Target.ROUTE, 200, "as above, with 1.5 to 2.5 m missing between the pieces"),
    PIECES_DRAWN_APART(Target.ROUTE, 200, "as above, the second drawn 0.25 to 0.6 m aside"),
    END_WITHOUT_VAULT(Target.ROUTE, 110, "the line continues 8 to 30 m beyond its last vault"),
    ZERO_LENGTH_PART(Target.ROUTE, 250, "a multi-line with a part of two vertices at the same location"),
    DUPLICATE_VERTEX(Target.ROUTE, 70, "one vertex is drawn twice"),
    NULL_GEOMETRY(Target.ROUTE, 300, "the feature has no geometry"),
    MISSING_ATTRIBUTES(Target.ROUTE, 40, "one to four of bore, type, owner, year, condition, flooded are missing"),
    MISSING_CONTENTS(Target.ROUTE, 75, "the contents of the duct are not recorded"),
    BORE_IN_MILLIMETERS(Target.ROUTE, 200, "the bore is in millimeters, but the field is in inches"),
    LENGTH_IN_METERS(Target.ROUTE, 150, "the recorded length is in meters, but the field is in feet"),
    WRONG_LENGTH(Target.ROUTE, 100, "the recorded length is 15 to 40 % off"),
    WRONG_VAULT(Target.ROUTE, 100, "the recorded last vault is the wrong one"),
    UNKNOWN_VAULT(Target.ROUTE, 300, "the recorded last vault is in none of the layers"),
    UNUSABLE_WORD(Target.ROUTE, 300, "flooded says 'see file'"),
    MORE_CABLES_THAN_INNERDUCTS(Target.ROUTE, 250, "one more cable than innerducts"),
    DUPLICATE_ROUTE_ID(Target.ROUTE, 400, "the route has the same name as the one before it"),
    CONTENTS_ONLY_IN_TABLE(Target.ROUTE, 40, "mixed contents, given in contents.csv only"),
    ROW_OF_UNKNOWN_DUCT(Target.ROUTE, 450, "contents.csv has a row for a duct that is on no route"),
    UNUSABLE_ROW(Target.ROUTE, 450, "contents.csv has a row whose kind is neither innerduct, cable nor sleeve"),
    LOOP_TO_SAME_VAULT(Target.STREET, 0, "the line leaves a vault and returns to it"),
    CROSSING_WITHOUT_VAULT(Target.STREET, 0, "the line crosses others without a vault"),
    DUPLICATE_VAULT(Target.VAULT, 60, "a second vault of another name 0.05 to 0.4 m away"),
    VAULT_FAR_FROM_ROUTES(Target.VAULT, 120, "a further vault 12 to 40 m from every line"),
    VAULT_WITHOUT_GEOMETRY(Target.VAULT, 400, "a further vault without geometry"),
    MISSING_ELEVATION(Target.VAULT, 40, "the vault's elevation is missing"),
    UNKNOWN_CATALOG_NAME(
            Target.ROUTE, 220, "duct_size names a row that is not in the catalog, and no bore is recorded"),
    SIZE_AGAINST_CATALOG(Target.ROUTE, 220, "duct_size names a row with a bore other than the recorded one"),
    MISSING_SIZES(Target.ROUTE, 70, "innerducts and cables are counted, but their sizes are not recorded"),
    EMBARGO_WITHOUT_DAY(Target.ROUTE, 300, "embargo says 'after the regatta'"),
    ZONE_CROSSES_ITSELF(Target.ZONE, 0, "the zone's outline crosses itself"),
    ZONE_OF_NO_KIND(Target.ZONE, 0, "the zone's type is an unknown word");

    private final Target target;
    private final int oneIn;
    private final String text;

    Fault(Target target, int oneIn, String text) {
        this.target = target;
        this.oneIn = oneIn;
        this.text = text;
    }

    /** What a fault is put into. */
    enum Target {
        ROUTE,
        VAULT,
        /** A street of its own; how many there are follows from the number of districts. */
        STREET,
        /** A permit zone. */
        ZONE
    }

    Target target() {
        return target;
    }

    /** Returns how many ducts or vaults there are to one fault of this kind; 0 for streets and zones. */
    int oneIn() {
        return oneIn;
    }

    String text() {
        return text;
    }

    String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Returns whether the fault spoils words alone, so that the duct is drawn as without it. */
    boolean spoilsWords() {
        return target == Target.ROUTE && compareTo(MISSING_ELEVATION) > 0;
    }

    /** Returns whether the fault spoils the drawn line, which must be long enough for it and end at two vaults. */
    boolean spoilsLine() {
        return target == Target.ROUTE && compareTo(NULL_GEOMETRY) <= 0;
    }
}
