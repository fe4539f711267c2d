package org.spanroom.input.layer;

import org.spanroom.finding.FindingCode;

/** Why one feature cannot be read. Never leaves the readers: it ends as a finding, and the next feature is read. */
public final class FeatureFault extends Exception {
    private static final long serialVersionUID = 1L;

    private final FindingCode code;

    private FeatureFault(FindingCode code, String detail) {
        super(detail, null, false, false); // no stack trace: a damaged file may hold a million of them
        this.code = code;
    }

    public static FeatureFault unreadable(String detail) {
        return new FeatureFault(FindingCode.UNREADABLE_FEATURE, detail);
    }

    public static FeatureFault badCoordinate(String detail) {
        return new FeatureFault(FindingCode.BAD_COORDINATE, detail);
    }

    FindingCode code() {
        return code;
    }

    public String detail() {
        return String.valueOf(getMessage());
    }
}
