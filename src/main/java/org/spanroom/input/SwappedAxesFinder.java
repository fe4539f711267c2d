package org.spanroom.input;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.spanroom.crs.ReferenceSystem;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.FindingLog;

/**
 * Looks for a layer whose two ordinates are exchanged, where each of them alone would pass: latitude 40 and longitude 14.
 *
 * <p>A layer is reported that is far from where it should be, and just there with its ordinates exchanged. Where it should be is known
 * from the other layers, and from the area that the output's reference system is made for. Two layers of degrees that contradict each
 * other show only that one of them is wrong; a third one, or one in another system, shows which. Places whose longitude and latitude
 * differ by less than two degrees are near each other both ways, and nothing is said.
 */
final class SwappedAxesFinder {
    /** Further apart than layers of one town; their extent comes on top, since gaps are measured between spreads. */
    private static final double FAR_DEG = 2;

    /** Layers of one town overlap; one of a single project may be beside the others. */
    private static final double NEAR_DEG = 0.5;

    private static final String REMEDY = " seems to have latitude or northing first. " + OrdinateSuspicion.REMEDY;

    private final FindingLog findings;
    private final List<Layer> layers = new ArrayList<>();
    private final Set<String> reported = new TreeSet<>();

    SwappedAxesFinder(FindingLog findings) {
        this.findings = findings;
    }

    /** A layer's places as they are read, and with the ordinates exchanged. */
    private record Layer(String source, Spread read, Optional<Spread> exchanged) {
        boolean isNear(Layer other) {
            return read.gapDeg(other.read) <= NEAR_DEG;
        }

        boolean wouldBeNear(Layer other) {
            return exchanged
                    .filter(spread -> spread.gapDeg(other.read) <= NEAR_DEG)
                    .isPresent();
        }
    }

    /**
     * Adds a layer that has been read. One about whose ordinates there is a word already is left out.
     *
     * @param system the output's, if the config names one
     */
    void add(String source, OrdinateSuspicion ordinates, Optional<ReferenceSystem> system) {
        if (ordinates.find().isPresent()) {
            return;
        }
        if (system.filter(ordinates::fitsOnlyExchanged).isPresent()) {
            report(
                    source,
                    "most features are far outside the area of use of the output's "
                            + system.map(ReferenceSystem::name).orElse("")
                            + ", but inside it with the two ordinates swapped: the layer" + REMEDY);
            return;
        }
        ordinates.spread(false).ifPresent(read -> layers.add(new Layer(source, read, ordinates.spread(true))));
    }

    /** Reports which layers contradict each other; to be called when all have been added. */
    void report() {
        for (int i = 0; i < layers.size(); i++) {
            for (int j = i + 1; j < layers.size(); j++) {
                compare(layers.get(i), layers.get(j));
            }
        }
    }

    private void compare(Layer a, Layer b) {
        if (a.read.gapDeg(b.read) <= FAR_DEG) {
            return;
        }
        boolean ofA = a.wouldBeNear(b);
        boolean ofB = b.wouldBeNear(a);
        if (ofA && ofB) {
            boolean withA = layers.stream().anyMatch(third -> !third.equals(a) && third.isNear(a));
            boolean withB = layers.stream().anyMatch(third -> !third.equals(b) && third.isNear(b));
            ofA = !withA || withB;
            ofB = !withB || withA;
        }
        if (ofA && ofB) {
            report(b.source, apart(a) + "one of the two layers" + REMEDY);
        } else if (ofA) {
            report(a.source, apart(b) + "this layer" + REMEDY);
        } else if (ofB) {
            report(b.source, apart(a) + "this layer" + REMEDY);
        }
    }

    private static String apart(Layer other) {
        return "its features are far from those of " + other.source
                + ", but next to them with the two ordinates swapped: ";
    }

    private void report(String source, String text) {
        if (reported.add(source)) {
            findings.add(Finding.of(FindingCode.LAYER_ISSUE, source, "", text));
        }
    }
}
