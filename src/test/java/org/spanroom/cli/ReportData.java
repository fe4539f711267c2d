package org.spanroom.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.GZIPInputStream;

/** A page taken apart the way a browser does it, with nothing of the code that made it. */
final class ReportData {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final Pattern CHUNK =
            Pattern.compile("<script type=\"text/plain\" id=\"([a-z0-9-]+)\">([A-Za-z0-9+/=]+)</script>");

    private final String html;

    ReportData(Path page) throws IOException {
        html = Files.readString(page);
    }

    String html() {
        return html;
    }

    /** Returns the page without its styles, scripts and data: what the server side wrote. */
    String texts() {
        return html.replaceAll("(?s)<script.*?</script>", "").replaceAll("(?s)<style>.*?</style>", "");
    }

    List<String> chunkIds() {
        var ids = new ArrayList<String>();
        Matcher chunk = CHUNK.matcher(html);
        while (chunk.find()) {
            ids.add(chunk.group(1));
        }
        return ids;
    }

    JsonNode chunk(String id) throws IOException {
        Matcher chunk = CHUNK.matcher(html);
        while (chunk.find()) {
            if (chunk.group(1).equals(id)) {
                byte[] packed = Base64.getDecoder().decode(chunk.group(2));
                try (var unpacked = new GZIPInputStream(new ByteArrayInputStream(packed))) {
                    return JSON.readTree(unpacked);
                }
            }
        }
        throw new IllegalArgumentException("no chunk " + id);
    }

    JsonNode core() throws IOException {
        return chunk("data-core");
    }

    /** Returns the cells of a column; null nodes for empty ones. */
    static List<JsonNode> column(JsonNode table, String key) {
        int place = keys(table).indexOf(key);
        JsonNode values = table.get("values").get(place);
        var cells = new ArrayList<JsonNode>();
        if (values.isArray()) {
            values.forEach(cells::add);
        } else {
            values.get("codes")
                    .forEach(code ->
                            cells.add(code.isNull() ? code : values.get("dict").get(code.asInt())));
        }
        return cells;
    }

    static List<String> keys(JsonNode table) {
        var keys = new ArrayList<String>();
        table.get("columns").forEach(column -> keys.add(column.get("key").asText()));
        return keys;
    }

    static double[] doubles(JsonNode base64) {
        ByteBuffer bytes =
                ByteBuffer.wrap(Base64.getDecoder().decode(base64.asText())).order(ByteOrder.LITTLE_ENDIAN);
        double[] numbers = new double[bytes.remaining() / Double.BYTES];
        bytes.asDoubleBuffer().get(numbers);
        return numbers;
    }
}
