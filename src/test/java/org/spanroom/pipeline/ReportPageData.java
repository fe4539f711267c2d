package org.spanroom.pipeline;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.zip.GZIPInputStream;

/** A page and the data in it, unpacked as a browser does it. */
record ReportPageData(String html, JsonNode core) {
    private static final String BEGIN = "<script type=\"text/plain\" id=\"data-core\">";

    static ReportPageData read(Path file) throws IOException {
        String html = Files.readString(file);
        int begin = html.indexOf(BEGIN) + BEGIN.length();
        byte[] packed = Base64.getDecoder().decode(html.substring(begin, html.indexOf('<', begin)));
        try (var unpacked = new GZIPInputStream(new ByteArrayInputStream(packed))) {
            return new ReportPageData(html, new ObjectMapper().readTree(unpacked));
        }
    }

    /** Returns a cell of a table as text. */
    String cell(String table, String column, int row) {
        JsonNode columns = core.get(table).get("columns");
        for (int place = 0; place < columns.size(); place++) {
            if (columns.get(place).get("key").asText().equals(column)) {
                JsonNode values = core.get(table).get("values").get(place);
                return values.isArray()
                        ? values.get(row).asText()
                        : values.get("dict")
                                .get(values.get("codes").get(row).asInt())
                                .asText();
            }
        }
        throw new IllegalArgumentException("no column " + column);
    }
}
