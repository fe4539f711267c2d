package org.spanroom.model.network;

import java.util.Locale;

/** One of the two ends of a span: A is the vault where its line begins, B the one where it ends. */
public enum SpanEnd {
    A,
    B;

    public SpanEnd opposite() {
        return this == A ? B : A;
    }

    /** Returns the vault of a span that is at this end. */
    public Vault vaultOf(Span span) {
        return this == A ? span.from() : span.to();
    }

    /** Returns the word for this end in columns. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }
}
