package org.spanroom.finding;

import java.util.Locale;

/** Every kind of data problem that the tool reports. The lower-case names are part of the output format. */
public enum FindingCode {
    // Reading
    UNREADABLE_FEATURE(Severity.REJECTED, "the feature is damaged and was skipped"),
    EMPTY_GEOMETRY(Severity.REJECTED, "the feature has no coordinates and was skipped"),
    WRONG_GEOMETRY_TYPE(Severity.REJECTED, "the feature is of a geometry type that the layer is not read for"),
    BAD_COORDINATE(Severity.REJECTED, "a coordinate is not a number or lies outside the reference system"),
    DEGENERATE_PART(Severity.REJECTED, "a part has too few vertices to be a line or a ring and was skipped"),
    LAYER_ISSUE(Severity.SUSPECT, "the layer was read, but something about it is not as its format demands"),
    ENCODING_ASSUMED(Severity.NOTE, "the text encoding is not stated; one was assumed"),
    // Attributes
    MISSING_VALUE(Severity.NOTE, "value missing; the configured default was used"),
    UNUSABLE_VALUE(Severity.SUSPECT, "a value cannot be read as what its term demands; the default was used"),
    IMPLAUSIBLE_VALUE(Severity.SUSPECT, "a value lies outside the plausible range, perhaps for a wrong unit"),
    CATALOG_NAME_UNKNOWN(Severity.SUSPECT, "no single row of the catalog has the name; no size was taken from it"),
    CATALOG_DISAGREES(
            Severity.SUSPECT, "a recorded size disagrees with the named catalog row; the recorded one counts"),
    DUPLICATE_ID(Severity.SUSPECT, "an identifier that should be unique occurs again"),
    CABLES_EXCEED_INNERDUCTS(Severity.SUSPECT, "more cables than innerducts are recorded; the rest was taken as loose"),
    CABLES_EXCEED_CELLS(Severity.SUSPECT, "more cables and reserved cells than cells are recorded in a sleeve"),
    CONTENTS_OVERFILL(Severity.SUSPECT, "the recorded contents have more area than the bore"),
    CONTENTS_CANNOT_FIT(Severity.SUSPECT, "the recorded contents cannot fit the recorded bore"),
    CONTENTS_ROW_UNUSABLE(Severity.REJECTED, "a row of the contents table cannot be used"),
    CONTENTS_DUCT_UNKNOWN(Severity.SUSPECT, "the contents table names a duct that no route has"),
    // Geometry of routes
    DUPLICATE_VERTEX(Severity.NOTE, "a vertex is drawn twice; it was taken once"),
    ZERO_LENGTH_PART(Severity.REJECTED, "a part has no length and was skipped"),
    // Vaults
    DUPLICATE_VAULT(Severity.SUSPECT, "two vaults lie at one place; they are taken as one"),
    VAULTS_TOO_CLOSE(Severity.SUSPECT, "two vaults lie so close along a line that the nearer one alone cuts it"),
    VAULT_FAR_FROM_ROUTES(Severity.SUSPECT, "no route comes within tolerance of the vault"),
    VAULT_FOOTPRINT_INVALID(Severity.SUSPECT, "the vault's outline crosses itself or is not closed; it was repaired"),
    // Permit zones
    ZONE_WITHOUT_AREA(Severity.REJECTED, "a permit zone has no area and was skipped"),
    ZONE_TOO_WIDE(Severity.REJECTED, "a permit zone is wider or higher than ten degrees and was skipped"),
    ZONE_OUTLINE_INVALID(Severity.SUSPECT, "a permit zone's outline crosses itself or is not closed; it was repaired"),
    ZONE_KIND_UNKNOWN(Severity.SUSPECT, "the kind of a permit zone is not known; it counts as a zone of another kind"),
    ZONE_EXPIRED(Severity.NOTE, "a permit zone's last day lies before the day that the run is made for"),
    ZONE_TO_COME(Severity.NOTE, "a permit zone's first day lies after the day that the run is made for"),
    ZONE_DAYS_REVERSED(
            Severity.SUSPECT, "a permit zone's first day lies after its last; it counts as if it had neither"),
    // Spans
    END_WITHOUT_VAULT(
            Severity.SUSPECT,
            "a line ends where no vault is; the length beyond the last vault is not assigned to a span"),
    ROUTE_WITHOUT_VAULT(Severity.SUSPECT, "a route meets no vault; its length is not assigned to a span"),
    GAP_BEYOND_TOLERANCE(Severity.SUSPECT, "two line ends, or an end and a vault, lie a little beyond the tolerance"),
    GAP_BRIDGED(Severity.NOTE, "two pieces were joined over a gap within the tolerance; the gap counts in no length"),
    AMBIGUOUS_JOINT(Severity.SUSPECT, "more than two ends of a duct meet where no vault is; they were not joined"),
    ATTRIBUTES_CHANGE_AT_JOINT(Severity.SUSPECT, "pieces joined into one span differ in an attribute"),
    LOOP_TO_SAME_VAULT(Severity.SUSPECT, "a span ends at the vault where it begins"),
    SHORT_STRETCH(Severity.SUSPECT, "a stretch between two vaults is shorter than the least span and belongs to none"),
    LENGTH_INSIDE_VAULT(Severity.NOTE, "a stretch inside a vault belongs to no span"),
    RECORDED_LENGTH_DIFFERS(Severity.SUSPECT, "the recorded length disagrees with the drawn one"),
    RECORDED_VAULT_DIFFERS(Severity.SUSPECT, "the recorded vault is not the one where the line ends"),
    RECORDED_VAULT_UNKNOWN(Severity.SUSPECT, "the recorded vault is not in the vaults layer"),
    // Files of the program's own
    PACKING_FILE_UNUSABLE(Severity.NOTE, "the file of packings from earlier runs was not used, or not written"),
    // Limits
    LONG_SECTION(Severity.NOTE, "span longer than the warning length"),
    JAM_RATIO(Severity.NOTE, "three equal innerducts may jam side by side as they are pulled"),
    MANY_BENDS(Severity.NOTE, "total bends exceed the warning limit");

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
