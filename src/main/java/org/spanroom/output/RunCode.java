package org.spanroom.output;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import org.spanroom.finding.InputException;

/**
 * The code of a run: eight hexadecimal digits that sheets carry and close-out compares. It follows from the contents of the inputs and
 * the config, so the same job run twice has the same code; where results go and how many threads ran are not part of it.
 */
public final class RunCode {
    private static final int BYTES = 4;
    private static final List<String> NOT_THE_JOB = List.of("output", "threads", "strict", "units");

    private RunCode() {}

    /**
     * Returns the code of a recorded run.
     *
     * @throws InputException if its record cannot be read
     */
    public static String of(RecordedRun run) {
        try {
            JsonNode config = RecordJson.read(run.file()).json("config");
            MessageDigest sha = MessageDigest.getInstance("SHA-256");
            for (RunRecord.Input input : run.inputs()) {
                add(sha, input.role());
                add(sha, input.sha256());
                input.parts().forEach(part -> add(sha, part.sha256()));
            }
            if (config instanceof ObjectNode sections) {
                ObjectNode job = sections.deepCopy();
                job.remove(NOT_THE_JOB);
                // Names of files change with the folder; their contents are in already.
                job.path("inputs").forEach(layer -> {
                    if (layer instanceof ObjectNode keys) {
                        keys.remove("file");
                    }
                });
                add(sha, job.toString());
            }
            return HexFormat.of().formatHex(sha.digest(), 0, BYTES);
        } catch (NoSuchAlgorithmException failure) {
            throw new IllegalStateException("every Java platform has SHA-256", failure);
        }
    }

    private static void add(MessageDigest sha, String text) {
        sha.update(text.getBytes(StandardCharsets.UTF_8));
        sha.update((byte) 0);
    }
}
