package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Names with direction marks and control characters, in data, folders and arguments: no line that is printed holds one. */
class DirectionMarksTest {
    private static final String MARKS = "\u202A\u202B\u202C\u202D\u202E\u2066\u2067\u2068\u2069\u200E\u200F\u061C";

    private static final Pattern STEERING =
            Pattern.compile("[\\p{Cntrl}&&[^\\n\\t]]|[\u0080-\u009F\u061C\u200E\u200F\u2028-\u202E\u2066-\u2069]");

    @TempDir
    private Path temporary;

    private static CommandRun clean(String... args) {
        CommandRun ran = CommandRun.of(args);
        assertThat(STEERING.matcher(ran.out()).find())
                .as(String.join(" ", args) + "\n" + ran.out())
                .isFalse();
        assertThat(STEERING.matcher(ran.err()).find())
                .as(String.join(" ", args) + "\n" + ran.err())
                .isFalse();
        return ran;
    }

    @Test
    void noCommandPrintsAMarkOfTheData() throws IOException {
        Path folder = Files.createDirectory(temporary.resolve("x" + MARKS + "y"));
        Path config = StreetOfCases.write(folder);
        for (String layer : List.of("ducts.geojson", "vaults.geojson")) {
            Path file = folder.resolve(layer);
            Files.writeString(
                    file,
                    Files.readString(file)
                            .replace("\"duct\": \"R\"", "\"duct\": \"R" + MARKS + "\"")
                            .replace("\"vault\": \"V1\"", "\"vault\": \"V1" + MARKS + "\"")
                            .replace("\"cond\": \"good\"", "\"cond\": \"good" + MARKS + "\""));
        }
        String run = folder.resolve("run").toString();
        String vault = "V1" + MARKS;
        assertThat(clean("check", "--config", config.toString(), "--all").exitCode())
                .isZero();
        clean("check", "--fields", "--config", config.toString());
        assertThat(clean("rank", "--config", config.toString(), "--output", run).exitCode())
                .isZero();
        String spanId = StreetOfCases.csv(Path.of(run, "spans.csv")).stream()
                .map(row -> row.get("span_id"))
                .filter(id -> id.startsWith("R"))
                .findFirst()
                .orElseThrow();
        CommandRun json = clean("explain", spanId, "--run", run, "--json");
        assertThat(new ObjectMapper().readTree(json.out()).toString()).contains(MARKS);
        clean("explain", spanId, "--run", run);
        clean("compare", run, run, "--output", folder.resolve("compared").toString());
        clean(
                "path",
                run,
                "--from",
                "V0",
                "--to",
                vault,
                "--cables",
                "1",
                "--output",
                folder.resolve("way").toString());
        clean(
                "path",
                run,
                "--from",
                "V0",
                "--to",
                vault,
                "--cables",
                "1",
                "--json",
                "--output",
                folder.resolve("way").toString(),
                "--overwrite");
        clean("corridors", run, "--output", folder.resolve("corridors").toString());
        clean("report", run, "--output", folder.resolve("page.html").toString());
        clean("sheets", run, spanId, "--output", folder.resolve("sheets").toString());
        clean("program", run, "--output", folder.resolve("program").toString(), "--skip", "curve,prices,draws");
    }

    @Test
    void noRefusalPrintsAMarkOfTheArguments() {
        for (char mark : (MARKS + "\u001b\u0007\u009b\r\u0085\u2028").toCharArray()) {
            String bad = "a" + mark + "b";
            assertThat(clean("rank", "--routes", bad).exitCode()).isNotZero();
            clean("rank", "--units", bad);
            clean("rank", "--threads", bad);
            clean("rank", "--columns", bad);
            clean("rank", bad);
            clean("rank", "--" + bad);
            clean(bad);
            clean("help", bad);
            clean("check", "--config", bad);
            clean("check", "--routes", bad, "--crs", bad);
            clean("explain", bad, "--run", bad);
            String out = temporary.resolve("out").toString();
            clean("compare", bad, bad, "--output", out);
            clean("path", bad, "--from", bad, "--to", bad, "--cables", bad, "--output", out);
            clean("program", bad, "--skip", bad, "--output", out);
            clean("report", bad, "--streets", bad, "--output", out);
            clean("sample", "--output", temporary.resolve(bad).toString(), "--spans", bad);
        }
    }
}
