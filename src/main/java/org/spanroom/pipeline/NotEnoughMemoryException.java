package org.spanroom.pipeline;

/** A run would not go into the memory that Java may use. The message is one line for the user, remedy included. */
public final class NotEnoughMemoryException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    NotEnoughMemoryException(String message) {
        super(message);
    }
}
