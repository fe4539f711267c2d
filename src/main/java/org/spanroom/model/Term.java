package org.spanroom.model;

import java.util.Locale;

/** A word of our vocabulary that a field of a source layer may be mapped to; the lower-case name is the key in the config. */
public enum Term {
    ROUTE(Kind.TEXT),
    DUCT(Kind.TEXT),
    DUCT_BANK(Kind.TEXT),
    INSIDE_DIAMETER(Kind.DIAMETER),
    BORE_SHAPE(Kind.TEXT),
    DUCT_TYPE(Kind.TEXT),
    DUCT_MATERIAL(Kind.TEXT),
    INNERDUCT_COUNT(Kind.COUNT),
    INNERDUCT_OUTSIDE_DIAMETER(Kind.DIAMETER),
    INNERDUCT_SDR(Kind.RATIO),
    INNERDUCT_WALL(Kind.DIAMETER),
    CABLE_COUNT(Kind.COUNT),
    CABLE_OUTSIDE_DIAMETER(Kind.DIAMETER),
    CABLE_MASS(Kind.MASS_PER_LENGTH),
    IN_SERVICE(Kind.TEXT),
    FLOODED(Kind.FLAG),
    SURFACE(Kind.TEXT),
    OWNER(Kind.TEXT),
    YEAR(Kind.COUNT),
    CONDITION(Kind.TEXT),
    RECORDED_LENGTH(Kind.LENGTH),
    VAULT_A(Kind.TEXT),
    VAULT_B(Kind.TEXT),
    POSITION_QUALITY(Kind.TEXT),
    /** Where the duct opens in the face of its bank at the vault of the first vertex: 7, or 2/3 for row and column. */
    HOLE_A(Kind.TEXT),
    HOLE_B(Kind.TEXT),
    /** Length of cable of this duct stored at the vault of the first vertex that can be drawn out of it. */
    SLACK_A(Kind.LENGTH),
    SLACK_B(Kind.LENGTH),
    /** Whether the innerducts run uncut through the vault of the first vertex; also a column of the contents table. */
    CONTINUOUS_AT_A(Kind.FLAG),
    CONTINUOUS_AT_B(Kind.FLAG),
    OWNER_CONSENT(Kind.FLAG),
    LOOSE_CABLE_ALLOWED(Kind.FLAG),
    SPLICE_INSIDE(Kind.FLAG),
    INNERDUCT_FIXED(Kind.FLAG),
    CIRCUITS_AT_RISK(Kind.COUNT),
    JOINT_OWNERS(Kind.TEXT),
    /** A day, e.g. 2027-03-31. */
    EMBARGO_UNTIL(Kind.TEXT),
    /** Whether the owner lets anything be placed beside rigid innerducts. */
    BESIDE_ALLOWED(Kind.FLAG),
    /** How many positions of a duct are promised to its owner or to customers. */
    POSITIONS_RESERVED(Kind.COUNT),
    VAULT(Kind.TEXT),
    VAULT_KIND(Kind.TEXT),
    VAULT_ELEVATION(Kind.LENGTH),
    VAULT_VOLUME(Kind.VOLUME),
    VAULT_WATER(Kind.FLAG),
    VAULT_SURFACE(Kind.TEXT),
    CABLE_HOLD(Kind.FLAG),
    /** Length of cable stored at a vault that can be drawn out of it. */
    CABLE_SLACK(Kind.LENGTH),
    /** From the cover of a vault down to its floor. */
    VAULT_DEPTH(Kind.LENGTH),
    /** Inside of a vault. */
    VAULT_LENGTH(Kind.LENGTH),
    VAULT_WIDTH(Kind.LENGTH),
    /** From the floor of a vault to its ceiling. */
    VAULT_HEIGHT(Kind.LENGTH),
    /** Least width of the opening under a vault's cover. */
    COVER_SIZE(Kind.DIAMETER),
    /** Whether gas was ever found in a vault. */
    GAS_FOUND(Kind.FLAG),
    /** Whether power cables share a vault. */
    JOINT_POWER(Kind.FLAG),
    /** The day of a vault's last inspection, e.g. 2027-03-31. */
    VAULT_INSPECTED(Kind.TEXT),
    /** A row of the catalog's outer ducts: its name, or type and trade size. */
    DUCT_SIZE(Kind.TEXT),
    /** A row of the catalog's innerducts. */
    INNERDUCT_SIZE(Kind.TEXT),
    /** A row of the catalog's cables. */
    CABLE_TYPE(Kind.TEXT),
    /** Whether the cables may be laid into sleeves. */
    CABLE_MAY_MOVE(Kind.FLAG),
    /** How many cells a fabric sleeve has; a column of the contents table. */
    SLEEVE_CELLS(Kind.COUNT),
    /** How many cells of a sleeve are promised and hold no cable; a column of the contents table. */
    CELLS_RESERVED(Kind.COUNT),
    ZONE(Kind.TEXT),
    ZONE_KIND(Kind.TEXT),
    ZONE_NAME(Kind.TEXT),
    /** The first day on which a zone's rule applies, e.g. 2027-03-31. */
    ZONE_FROM(Kind.TEXT),
    /** The last day on which it applies. */
    ZONE_UNTIL(Kind.TEXT);

    /** What a term's values look like. */
    public enum Kind {
        TEXT,
        /** A whole number, 0 or more. */
        COUNT,
        /** A number without a unit. */
        RATIO,
        FLAG,
        /** A length of cross-section size, kept in millimeters. */
        DIAMETER,
        /** A length of ground size, kept in meters. */
        LENGTH,
        /** Kept in kilograms per meter. */
        MASS_PER_LENGTH,
        /** Kept in cubic meters. */
        VOLUME
    }

    private final Kind kind;
    private final String key = name().toLowerCase(Locale.ROOT);

    Term(Kind kind) {
        this.kind = kind;
    }

    public Kind kind() {
        return kind;
    }

    /** Returns the key of this term in configs, columns and messages. */
    public String key() {
        return key;
    }
}
