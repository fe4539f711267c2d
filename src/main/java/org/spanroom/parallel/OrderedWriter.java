package org.spanroom.parallel;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.function.Consumer;
import java.util.function.ObjIntConsumer;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * Writes numbered chunks that several threads make at the same time: one chunk after another, in the order of their numbers.
 *
 * <p>There are few buffers, and each is used again and again, so that memory stays flat however many chunks there are. A thread
 * takes a buffer before it takes a number: hence the lowest number in work always has one, and no thread waits for ever.
 * A thread that has filled a buffer writes all that are due, unless another thread is writing.
 *
 * @param <B> the buffer that a chunk is made in
 */
public final class OrderedWriter<B> {
    private final int chunks;
    private final int threads;
    private final Supplier<B> buffers;
    private final ObjIntConsumer<B> fill;
    private final Consumer<B> write;
    private final Deque<B> free = new ArrayDeque<>();
    private final @Nullable Object[] filled;
    private int made;
    private int next;
    private int written;
    private boolean writing;
    private boolean stopped;

    /**
     * Prepares to write.
     *
     * @param chunks how many there are, numbered from 0
     * @param buffers makes an empty buffer
     * @param fill makes the chunk of a number in a buffer; on several threads
     * @param write writes a buffer and empties it; on one thread at a time
     */
    public OrderedWriter(int chunks, int threads, Supplier<B> buffers, ObjIntConsumer<B> fill, Consumer<B> write) {
        this.chunks = chunks;
        this.threads = Math.max(1, Math.min(threads, chunks));
        this.buffers = buffers;
        this.fill = fill;
        this.write = write;
        this.filled = new Object[2 * this.threads];
    }

    /**
     * Makes and writes all chunks. The first failure stops all threads and is thrown unchanged; no thread writes afterwards.
     *
     * @throws IllegalStateException if the calling thread is interrupted
     */
    public void run() {
        ThreadTeam.run(threads, this::work, this::stop);
    }

    /** A buffer for the chunk of a number. */
    private record Task<B>(B buffer, int chunk) {}

    private void work() {
        try {
            for (Task<B> task = take(); task != null; task = take()) {
                fill.accept(task.buffer(), task.chunk());
                put(task);
                writeDue();
            }
        } catch (InterruptedException e) {
            throw BackgroundTask.interrupted(e);
        }
    }

    private synchronized @Nullable Task<B> take() throws InterruptedException {
        while (next < chunks && !stopped && free.isEmpty() && made == filled.length) {
            wait();
        }
        if (next >= chunks || stopped) {
            return null;
        }
        B buffer = free.poll();
        if (buffer == null) {
            buffer = buffers.get();
            made++;
        }
        return new Task<>(buffer, next++);
    }

    private synchronized void put(Task<B> task) {
        filled[task.chunk() % filled.length] = task.buffer();
    }

    private void writeDue() {
        for (B buffer = due(); buffer != null; buffer = due()) {
            write.accept(buffer);
            release(buffer);
        }
    }

    /** Returns the buffer that is to be written next; null if it is not filled yet, or another thread is writing, or a writing failed. */
    @SuppressWarnings("unchecked")
    private synchronized @Nullable B due() {
        int slot = written % filled.length;
        if (writing || stopped || filled[slot] == null) {
            return null;
        }
        B buffer = (B) filled[slot];
        filled[slot] = null;
        writing = true;
        return buffer;
    }

    private synchronized void release(B buffer) {
        writing = false;
        written++;
        free.add(buffer);
        notifyAll();
    }

    private synchronized void stop() {
        stopped = true;
        notifyAll();
    }
}
