package org.spanroom.network;

import java.util.List;
import org.spanroom.finding.FindingCode;
import org.spanroom.model.network.NetworkSettings;

/** What of a chain is not assigned to a span: notes each such length once, with a finding. For one thread. */
final class Remainders {
    private final NetworkSettings settings;
    private final VaultPlaces places;
    private final NetworkFindings findings;
    private Chain chain = new Chain(List.of(), false, 0);
    private List<VaultCrossing> passes = List.of();
    private double lengthM;

    Remainders(NetworkSettings settings, VaultPlaces places, NetworkFindings findings) {
        this.settings = settings;
        this.places = places;
        this.findings = findings;
    }

    /** Begins with the next chain. */
    void begin(Chain next) {
        chain = next;
        passes = List.of();
        lengthM = 0;
    }

    /** Takes all passes of the chain at vaults, also those that do not cut. */
    void setPasses(List<VaultCrossing> all) {
        passes = all;
    }

    /** Adds a length whose finding is made elsewhere. */
    void add(double meters) {
        lengthM += meters;
    }

    /** Returns the drawn length so far that is not assigned to a span. */
    double lengthM() {
        return lengthM;
    }

    /** Leaves what is beyond the last vault at an end of the line. */
    void leaveEnd(double fromM, double toM, double endM, Cut last) {
        String detail = "the line ends without a vault; the length from its end to vault "
                + places.vault(last.vault()).id() + " is not assigned to a span";
        leave(FindingCode.END_WITHOUT_VAULT, fromM, toM, endM, detail);
    }

    /** Leaves what a cut takes out: stretches inside its vault and others that gave way to it, and short ones between them. */
    void leaveInside(Cut cut, double fromM, double toM) {
        double reachedM = fromM;
        int before = cut.vault();
        for (VaultCrossing pass : passes) {
            boolean within = pass.isInside() && pass.insideToM() > reachedM && pass.insideFromM() < toM;
            boolean gap = pass.insideFromM() > reachedM + VaultCrossing.SAME_PLACE_M;
            if (within && gap && pass.vault() != before) {
                leaveShort(before, pass.vault(), reachedM, pass.insideFromM());
                reachedM = pass.insideFromM();
            }
            if (within) {
                double endM = Math.min(toM, pass.insideToM());
                leaveInside(pass.vault(), reachedM, endM);
                reachedM = endM;
                before = pass.vault();
            }
        }
        if (reachedM < toM && before != cut.vault()) {
            leaveShort(before, cut.vault(), reachedM, toM);
        } else if (reachedM < toM) {
            leaveInside(cut.vault(), reachedM, toM);
        }
    }

    private void leaveInside(int vault, double fromM, double toM) {
        String name = places.vault(vault).id();
        boolean whole = toM - fromM >= chain.lengthM();
        String detail = whole
                ? "the whole line is within tolerance of vault " + name
                : NetworkFindings.meters(toM - fromM) + " inside vault " + name;
        leave(FindingCode.LENGTH_INSIDE_VAULT, fromM, toM, (fromM + toM) / 2, detail);
    }

    /** Leaves a stretch between two vaults that is too short for a span. */
    void leaveShort(int before, int after, double fromM, double toM) {
        String detail = NetworkFindings.meters(toM - fromM) + " between vaults "
                + places.vault(before).id() + " and " + places.vault(after).id() + " is less than the minimum span of "
                + NetworkFindings.meters(settings.minimumSpanM());
        FindingCode code = before == after ? FindingCode.LENGTH_INSIDE_VAULT : FindingCode.SHORT_STRETCH;
        leave(code, fromM, toM, (fromM + toM) / 2, detail);
    }

    private void leave(FindingCode code, double fromM, double toM, double placeM, String detail) {
        lengthM += toM - fromM;
        double onceM = chain.closed() && placeM > chain.lengthM() ? placeM - chain.lengthM() : placeM;
        findings.remainder(code, chain.at(onceM), onceM, toM - fromM, detail);
    }
}
