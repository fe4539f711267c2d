package org.spanroom.cli;

import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** What is said when Java has no memory left: what was being done, how much there was, what to do. */
final class MemoryShortage {
    private static final long MEBIBYTE = 1L << 20;
    private static final int DEEPEST_CAUSE = 20;
    private static final String NAME = OutOfMemoryError.class.getName();

    /** With less, libraries fail in their own ways, and their failures look like faults of the input. */
    private static final long LEAST_MIB = 30;

    private MemoryShortage() {}

    /** Ends a run that cannot succeed before it begins. */
    static void demandLeast(long heapBytes) {
        if (heapBytes < LEAST_MIB * MEBIBYTE) {
            throw new OutOfMemoryError("less than any run needs");
        }
    }

    /**
     * Returns what the system said of the lack of memory that a failure is or came from; empty if it came from something else. A
     * class that could not be prepared for lack of memory fails under another name ever after.
     */
    static Optional<String> find(Throwable failure) {
        @Nullable Throwable cause = failure;
        for (int depth = 0; cause != null && depth < DEEPEST_CAUSE; depth++) {
            if (cause instanceof OutOfMemoryError
                    || String.valueOf(cause.getMessage()).contains(NAME)) {
                return Optional.of(String.valueOf(cause.getMessage()));
            }
            cause = cause.getCause();
        }
        return Optional.empty();
    }

    /**
     * Returns the line for the user.
     *
     * @param reason as the system gives it
     * @param stage that was running, or nothing
     */
    static String message(String reason, String stage, long heapBytes) {
        String during = stage.isEmpty() ? "" : " during '" + stage + "'";
        if (reason.contains("native thread")) {
            return "the system gives no more threads" + during + ". Lower --threads, or raise the limit of processes.";
        }
        long heapMib = Math.max(1, heapBytes / MEBIBYTE);
        return String.format(
                Locale.ROOT,
                "not enough memory%s: the %,d MiB that Java may use are full. "
                        + "No results were written; earlier ones are as they were. "
                        + "Give it more: java -Xmx%dm -jar spanroom.jar ...",
                during,
                heapMib,
                Math.max(2 * LEAST_MIB, 2 * heapMib));
    }
}
