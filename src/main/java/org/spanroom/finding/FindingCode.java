package org.spanroom.finding;

import java.util.Locale;

/** Every kind of data problem that the tool reports. The lower-case names are part of the output format. */
public enum FindingCode {
    // Reading
    UNREADABLE_FEATURE(Severity.REJECTED, "the feature is damaged and was skipped"),
    EMPTY_GEOMETRY(Severity.REJECTED, "the feature has no coordinates and was skipped"),
    WRONG_GEOMETRY_TYPE(Severity.REJECTED, "the feature has a geometry type that this layer cannot use"),
    BAD_COORDINATE(Severity.REJECTED, "a coordinate is not a number or is outside the reference system"),
    DEGENERATE_PART(Severity.REJECTED, "a part has too few vertices to be a line or a ring and was skipped"),
    LAYER_ISSUE(Severity.SUSPECT, "the layer was read, but it does not fully follow its format"),
    LAYER_INCOMPLETE(Severity.SUSPECT, "the file says that the layer has more features than it holds"),
    GEOMETRY_SRS_DIFFERS(
            Severity.SUSPECT, "a geometry names another reference system than its layer; the layer's was used"),
    ENCODING_ASSUMED(Severity.NOTE, "the text encoding is not stated; one was assumed"),
    // Attributes
    MISSING_VALUE(Severity.NOTE, "value missing; the configured default, if any, was used"),
    UNUSABLE_VALUE(Severity.SUSPECT, "a value cannot be read as its term requires; the default was used"),
    IMPLAUSIBLE_VALUE(Severity.SUSPECT, "a value is outside the plausible range, possibly because of a wrong unit"),
    UNIT_DOUBTFUL(
            Severity.SUSPECT,
            "most values of a field are wrong in the configured unit and right in another; check the unit in the config"),
    CATALOG_NAME_UNKNOWN(
            Severity.SUSPECT, "the name does not match exactly one catalog row; no size was taken from it"),
    CATALOG_DISAGREES(
            Severity.SUSPECT, "a recorded size disagrees with the named catalog row; the recorded size was used"),
    WALL_DISAGREES(Severity.SUSPECT, "the recorded wall and SDR of an innerduct disagree; the wall was used"),
    DUPLICATE_ID(Severity.SUSPECT, "an identifier that must be unique is repeated"),
    CABLES_EXCEED_INNERDUCTS(
            Severity.SUSPECT, "more cables than innerducts are recorded; the others were treated as loose"),
    CABLES_EXCEED_CELLS(Severity.SUSPECT, "a sleeve is recorded with more cables and reserved cells than it has cells"),
    CONTENTS_OVERFILL(Severity.SUSPECT, "the area of the recorded contents exceeds the bore"),
    CONTENTS_CANNOT_FIT(Severity.SUSPECT, "the recorded contents cannot fit the recorded bore"),
    CONTENTS_TOO_MANY(Severity.SUSPECT, "the duct holds so much that it is not decided what fits"),
    CONTENTS_ROW_UNUSABLE(Severity.REJECTED, "a row of the contents table cannot be used"),
    CONTENTS_DUCT_UNKNOWN(Severity.SUSPECT, "the contents table names a duct that is not in the routes layer"),
    // The field book
    FIELD_ROW_UNUSABLE(Severity.REJECTED, "a row of the field book cannot be used"),
    FIELD_ENTRY_UNMATCHED(Severity.SUSPECT, "the field book names a span or vault that is not in the data"),
    FIELD_ENTRY_CONTRADICTS(Severity.SUSPECT, "an entry of the field book contradicts the data or another entry"),
    FIELD_ENTRY_INCOMPLETE(Severity.NOTE, "an entry of the field book needs another one to take full effect"),
    FIELD_ENTRY_LATER(
            Severity.SUSPECT, "an entry of the field book is dated after the run date; it counts all the same"),
    // Geometry of routes
    DUPLICATE_VERTEX(Severity.NOTE, "a vertex is drawn twice; it was used once"),
    ZERO_LENGTH_PART(Severity.REJECTED, "a part has no length and was skipped"),
    // Vaults
    DUPLICATE_VAULT(Severity.SUSPECT, "two vaults are at the same location; they were treated as one"),
    VAULTS_TOO_CLOSE(Severity.SUSPECT, "two vaults are so close along a line that only the nearer one cuts it"),
    VAULT_FAR_FROM_ROUTES(Severity.SUSPECT, "no route passes within tolerance of the vault"),
    VAULT_FOOTPRINT_INVALID(Severity.SUSPECT, "the vault's outline crosses itself or is not closed; it was repaired"),
    VAULT_TOO_WIDE(Severity.REJECTED, "a vault's outline extends over more than 1,000 m and was skipped"),
    VAULT_HOLDS_VAULTS(
            Severity.SUSPECT, "a vault's outline holds three other vaults or more; spans end at it instead of at them"),
    // Permit zones
    ZONE_WITHOUT_AREA(Severity.REJECTED, "a permit zone has no area and was skipped"),
    ZONE_TOO_WIDE(Severity.REJECTED, "a permit zone extends over more than ten degrees and was skipped"),
    ZONES_FAR_FROM_ROUTES(Severity.SUSPECT, "no permit zone of a file is near a route; what it requires is missing"),
    ZONE_OUTLINE_INVALID(Severity.SUSPECT, "a permit zone's outline crosses itself or is not closed; it was repaired"),
    ZONE_KIND_UNKNOWN(Severity.SUSPECT, "the kind of a permit zone is not known; it was treated as kind 'other'"),
    ZONE_EXPIRED(Severity.NOTE, "a permit zone ended before the run date"),
    ZONE_TO_COME(Severity.NOTE, "a permit zone starts after the run date"),
    ZONE_DAYS_REVERSED(Severity.SUSPECT, "a permit zone's first day is after its last; both days were ignored"),
    // Spans
    END_WITHOUT_VAULT(
            Severity.SUSPECT,
            "a line ends without a vault; the length beyond its last vault is not assigned to a span"),
    ROUTE_WITHOUT_VAULT(Severity.SUSPECT, "a route meets no vault; its length is not assigned to a span"),
    GAP_BEYOND_TOLERANCE(
            Severity.SUSPECT, "two line ends, or a line end and a vault, are slightly beyond the tolerance"),
    GAP_BRIDGED(Severity.NOTE, "two pieces were joined over a gap within the tolerance; no length includes the gap"),
    AMBIGUOUS_JOINT(Severity.SUSPECT, "more than two ends of a duct meet without a vault; they were not joined"),
    ATTRIBUTES_CHANGE_AT_JOINT(Severity.SUSPECT, "pieces joined into one span differ in an attribute"),
    LOOP_TO_SAME_VAULT(Severity.SUSPECT, "a span begins and ends at the same vault"),
    SHORT_STRETCH(
            Severity.SUSPECT,
            "a segment between two vaults is shorter than the minimum span and is not assigned to a span"),
    LENGTH_INSIDE_VAULT(Severity.NOTE, "a segment inside a vault is not assigned to a span"),
    RECORDED_LENGTH_DIFFERS(Severity.SUSPECT, "the recorded length differs from the drawn length"),
    RECORDED_VAULT_DIFFERS(Severity.SUSPECT, "the recorded vault is not the vault at the line's end"),
    RECORDED_VAULT_UNKNOWN(Severity.SUSPECT, "the recorded vault is not in the vaults layer"),
    // Files of the program's own
    PACKING_FILE_UNUSABLE(Severity.NOTE, "the packing file of earlier runs was not used or not written");

    private final Severity severity;
    private final String meaning;

    FindingCode(Severity severity, String meaning) {
        this.severity = severity;
        this.meaning = meaning;
    }

    public Severity severity() {
        return severity;
    }

    public String meaning() {
        return meaning;
    }

    /** Returns the word for this kind in tables. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }
}
