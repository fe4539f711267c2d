package org.spanroom.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** What a page of the documents shows as printed. */
final class DocumentedLines {
    private DocumentedLines() {}

    /** Returns the lines of its blocks of code, without indents; {@code ...} stands for lines that are left out. */
    static List<String> of(Path page) throws IOException {
        List<String> sample = new ArrayList<>();
        boolean inside = false;
        for (String line : Files.readAllLines(page)) {
            if (line.startsWith("```")) {
                inside = !inside;
            } else if (inside && !line.isBlank() && !line.equals("...")) {
                sample.add(line.strip());
            }
        }
        return sample;
    }
}
