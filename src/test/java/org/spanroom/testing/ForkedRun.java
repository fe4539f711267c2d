package org.spanroom.testing;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;

/** The program in a process of its own, so that it can be sent signals, starved of memory or kept from the network. */
public final class ForkedRun implements AutoCloseable {
    private static final int LONGEST_S = 120;

    private final Process process;
    private final Path out;
    private final Path err;

    private ForkedRun(Process process, Path out, Path err) {
        this.process = process;
        this.out = out;
        this.err = err;
    }

    /**
     * Starts it.
     *
     * @param before words in front of "java", such as another program that starts it
     * @param java options of java
     * @param main class with the main method
     * @param log folder for what it prints
     */
    public static ForkedRun start(
            List<String> before, List<String> java, Class<?> main, Path log, List<String> arguments) {
        var command = new ArrayList<>(before);
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.add("-XX:TieredStopAtLevel=1");
        command.addAll(java);
        command.addAll(List.of("-cp", System.getProperty("java.class.path"), main.getName()));
        command.addAll(arguments);
        try {
            Path out = Files.createTempFile(log, "out", ".txt");
            Path err = Files.createTempFile(log, "err", ".txt");
            var builder = new ProcessBuilder(command);
            builder.environment().remove("JAVA_TOOL_OPTIONS");
            Process process = builder.redirectOutput(out.toFile())
                    .redirectError(err.toFile())
                    .start();
            process.getOutputStream().close();
            return new ForkedRun(process, out, err);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public long pid() {
        return process.pid();
    }

    /** Waits for something that the process does; fails if it ends before. */
    public void await(BooleanSupplier happened) {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(LONGEST_S);
        while (!happened.getAsBoolean()) {
            if (!process.isAlive() || System.nanoTime() > end) {
                throw new AssertionError("it did not happen; exit code "
                        + (process.isAlive() ? "none" : process.exitValue()) + ", it said: " + err());
            }
            LockSupport.parkNanos(200_000);
        }
    }

    /** Sends a signal by its name. */
    public void signal(String name) {
        try {
            new ProcessBuilder("kill", "-" + name, Long.toString(process.pid()))
                    .start()
                    .waitFor();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new AssertionError(e);
        }
    }

    /** Waits for the end and returns the exit code. */
    public int exitCode() {
        try {
            if (!process.waitFor(LONGEST_S, TimeUnit.SECONDS)) {
                throw new AssertionError("it did not end within " + LONGEST_S + " s: " + err());
            }
            return process.exitValue();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new AssertionError(e);
        }
    }

    public String out() {
        return text(out);
    }

    public String err() {
        return text(err);
    }

    private static String text(Path file) {
        try {
            return Files.readString(file, StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void close() {
        process.destroyForcibly();
    }
}
