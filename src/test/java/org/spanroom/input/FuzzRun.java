package org.spanroom.input;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Runs fuzz targets one after another, each in a process of its own, and prints what each has tried and covered. What a target learns
 * stays in its folder, and its output in a file beside that. Exit status 1 if a target has failed.
 *
 * <p>Arguments: folder, seconds each, and the targets; without any, all.
 */
public final class FuzzRun {
    private static final Pattern RUNS = Pattern.compile("^Done (\\d+) runs", Pattern.MULTILINE);
    private static final Pattern COVERAGE = Pattern.compile("cov: (\\d+) ft: (\\d+) corp: (\\d+)");
    private static final String ROW = "%-20s %12s %8s %8s %8s  %s%n";

    private final Path folder;
    private final String seconds;

    private FuzzRun(Path folder, String seconds) {
        this.folder = folder;
        this.seconds = seconds;
    }

    public static void main(String[] args) throws IOException, InterruptedException {
        List<String> targets = Stream.of(args)
                .skip(2)
                .filter(target -> !target.isBlank() && !target.equals("all"))
                .toList();
        var run = new FuzzRun(Path.of(args[0]), args[1]);
        System.exit(run.all(targets.isEmpty() ? all() : targets) ? 0 : 1);
    }

    static List<String> all() {
        return Stream.concat(FuzzSeeds.TARGETS.stream(), FuzzDocumentSeeds.TARGETS.stream())
                .toList();
    }

    private boolean all(List<String> targets) throws IOException, InterruptedException {
        System.out.printf(ROW, "target", "executions", "cov", "ft", "corpus", "result");
        boolean good = true;
        for (String target : targets) {
            good &= one(target);
        }
        return good;
    }

    private boolean one(String target) throws IOException, InterruptedException {
        Path log = folder.resolve(target + ".log");
        int status = new ProcessBuilder(command(target))
                .redirectErrorStream(true)
                .redirectOutput(log.toFile())
                .start()
                .waitFor();
        String text = Files.readString(log, StandardCharsets.ISO_8859_1);
        Matcher runs = RUNS.matcher(text);
        String[] covered = {"-", "-", "-"};
        for (Matcher line = COVERAGE.matcher(text); line.find(); ) {
            covered = new String[] {line.group(1), line.group(2), line.group(3)};
        }
        System.out.printf(
                Locale.ROOT,
                ROW,
                target,
                runs.find() ? runs.group(1) : "-",
                covered[0],
                covered[1],
                covered[2],
                status == 0 ? "good" : "FAILED (" + status + "): " + log);
        return status == 0;
    }

    /** Returns the classes whose edges guide the search; the config is read by every target, but only by some from its input. */
    private static String guided(String target) {
        String readers =
                "org.spanroom.input.**:org.spanroom.network.Field*:org.spanroom.output.Recorded*:org.spanroom.pipeline.StreetReader*";
        boolean ofConfig = target.contains("Config") || target.contains("RunRecord");
        return ofConfig ? readers + ":org.spanroom.config.**" : readers;
    }

    /** Returns the command that starts the fuzzer for a target; options and folders follow. */
    static List<String> command(String target, Path folder) {
        return List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx1500m",
                "-cp",
                System.getProperty("java.class.path"),
                "com.code_intelligence.jazzer.Jazzer",
                "--target_class=" + FuzzRun.class.getPackageName() + "." + target,
                "--instrumentation_includes=" + guided(target),
                "--custom_hook_includes=" + guided(target),
                // a config may well name a file in a folder above its own
                "--disabled_hooks=com.code_intelligence.jazzer.sanitizers.FilePathTraversal",
                "--reproducer_path=" + folder,
                "-max_len=20000");
    }

    private List<String> command(String target) {
        var command = new ArrayList<>(command(target, folder));
        command.addAll(List.of(
                "-artifact_prefix=" + folder + "/" + target + "-",
                "-rss_limit_mb=3500",
                "-timeout=120",
                "-max_total_time=" + seconds));
        Path words = folder.resolve(target + ".dict");
        if (Files.exists(words)) {
            command.add("-dict=" + words);
        }
        command.add(folder.resolve(target).toString());
        return command;
    }
}
