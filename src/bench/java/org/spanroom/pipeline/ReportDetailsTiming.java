package org.spanroom.pipeline;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.zip.GZIPOutputStream;
import org.spanroom.model.UnitSystem;
import org.spanroom.output.report.DetailJson;
import org.spanroom.output.report.SpanDetail;

/** How soon the details of the best spans of a run are there, and how many bytes they take: arguments are its folder and their number. */
final class ReportDetailsTiming {
    private static final int PACK = 50;

    private ReportDetailsTiming() {}

    public static void main(String[] args) throws IOException {
        Path run = Path.of(args[0]);
        List<Integer> ranks =
                IntStream.rangeClosed(1, Integer.parseInt(args[1])).boxed().toList();
        List<String> ids = new ExplainRun(run, Progress.SILENT).idsAt(ranks);
        long begin = System.nanoTime();
        ReportDetails.Found found = ReportDetails.of(run, ids, new Stages(), Optional.empty());
        System.out.printf("%d details in %.1f s%n", ids.size(), (System.nanoTime() - begin) / 1e9);
        found.bands().ifPresent(bands -> System.out.println("bands " + bands));
        System.gc();
        System.out.printf(
                "%.0f MB alive%n",
                (Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory()) / 1e6);
        if (args.length > 2) {
            Files.write(Path.of(args[2]), json(found.details()));
        }
        long raw = 0;
        long packed = 0;
        for (int from = 0; from < found.details().size(); from += PACK) {
            byte[] json = json(found.details()
                    .subList(from, Math.min(from + PACK, found.details().size())));
            var zipped = new ByteArrayOutputStream();
            try (var zip = new GZIPOutputStream(zipped)) {
                zip.write(json);
            }
            raw += json.length;
            packed += zipped.size();
        }
        System.out.printf("JSON %.2f MB, in packs of %d zipped %.2f MB%n", raw / 1e6, PACK, packed / 1e6);
        System.out.printf(
                "drawings: %d, largest %d bytes, all %.2f MB%n",
                found.details().stream()
                        .mapToInt(detail -> detail.drawings().size())
                        .sum(),
                found.details().stream()
                        .flatMap(detail -> detail.drawings().stream())
                        .mapToInt(drawing -> drawing.svg().length())
                        .max()
                        .orElse(0),
                found.details().stream()
                                .flatMap(detail -> detail.drawings().stream())
                                .mapToInt(drawing -> drawing.svg().length())
                                .sum()
                        / 1e6);
    }

    /** Prints how long each stage took. */
    private static final class Stages implements Progress {
        private String stage = "";
        private long begin;
        private long beginProcessor;

        @Override
        public void begin(String name, long expectedCount) {
            stage = name;
            begin = System.nanoTime();
            beginProcessor = processorNanos();
        }

        private static long processorNanos() {
            return ProcessHandle.current()
                    .info()
                    .totalCpuDuration()
                    .map(Duration::toNanos)
                    .orElse(0L);
        }

        @Override
        public void advance(long count) {}

        @Override
        public void reach(double doneShare) {}

        @Override
        public void end(String result) {
            System.out.printf(
                    "%s %.1f s, of processors %.1f s%n",
                    stage, (System.nanoTime() - begin) / 1e9, (processorNanos() - beginProcessor) / 1e9);
        }
    }

    private static byte[] json(List<SpanDetail> details) throws IOException {
        var bytes = new ByteArrayOutputStream();
        try (JsonGenerator generator = new JsonFactory().createGenerator(bytes)) {
            DetailJson.write(
                    details, IntStream.range(0, details.size()).boxed().toList(), UnitSystem.METRIC, generator);
        }
        return bytes.toByteArray();
    }
}
