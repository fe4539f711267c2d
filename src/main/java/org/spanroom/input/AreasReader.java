package org.spanroom.input;

import java.nio.file.Path;
import java.util.List;
import org.spanroom.config.LayerConfig;
import org.spanroom.config.RunConfig;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingLog;
import org.spanroom.finding.InputException;
import org.spanroom.finding.Severity;
import org.spanroom.model.permit.Zone;

/** Reads the polygons of a file, whatever they mean. A polygon that cannot be used refuses the file: what it is to choose would be unknown. */
public final class AreasReader {
    private AreasReader() {}

    /**
     * What a file holds.
     *
     * @param file as the user named it
     * @param sha256 hash of the file's bytes, in hexadecimal
     */
    public record Read(String file, String sha256, List<Zone.Outline> outlines) {
        public Read {
            outlines = List.copyOf(outlines);
        }
    }

    /**
     * Reads all polygons.
     *
     * @throws InputException if the file holds none, or one that cannot be used
     */
    public static Read read(Path file, RunConfig config) {
        var findings = new FindingLog();
        var zonesOnly = config.withInputs(config.inputs().withZones(LayerConfig.NONE.withFile(file)));
        InputReader.Areas read = new InputReader(zonesOnly, findings).readAreas(file);
        for (Finding finding : findings.all()) {
            if (finding.code().severity() == Severity.REJECTED) {
                throw new InputException(
                        file,
                        "feature " + finding.featureId() + " cannot be used as an area: " + finding.detail(),
                        "Fix it, or remove it from the file.");
            }
        }
        List<Zone.Outline> outlines =
                read.zones().stream().flatMap(zone -> zone.outlines().stream()).toList();
        if (outlines.isEmpty()) {
            throw new InputException(file, "it has no polygon", "Name a layer of polygons.");
        }
        return new Read(
                file.toString().replace('\\', '/'),
                read.record().digests().get(0).sha256Hex(),
                outlines);
    }
}
