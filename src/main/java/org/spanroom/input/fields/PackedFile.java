package org.spanroom.input.fields;

import java.nio.file.Path;
import java.util.HexFormat;
import org.spanroom.finding.InputException;

/** A file that holds a table and is no text, by how it begins. */
enum PackedFile {
    ZIP("504b0304", "it is a workbook of a spreadsheet or a packed file, not CSV", "Save it as CSV."),
    OLD_WORKBOOK("d0cf11e0", "it is a workbook of a spreadsheet, not CSV", "Save it as CSV."),
    GZIP("1f8b08", "it is compressed", "Unpack it first.");

    private final String beginningHex;
    private final String problem;
    private final String remedy;

    PackedFile(String beginningHex, String problem, String remedy) {
        this.beginningHex = beginningHex;
        this.problem = problem;
        this.remedy = remedy;
    }

    /**
     * Returns if a file is none of these.
     *
     * @param head its first bytes
     * @throws InputException if it is one
     */
    static void demandNone(Path file, byte[] head) {
        String begins = HexFormat.of().formatHex(head);
        for (PackedFile packed : values()) {
            if (begins.startsWith(packed.beginningHex)) {
                throw new InputException(file, packed.problem, packed.remedy);
            }
        }
    }
}
