package org.spanroom.output.table;

import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Keeps one cell as it would be written. */
final class HeldCell implements CellSink {
    private @Nullable Object held;

    Optional<Object> value() {
        return Optional.ofNullable(held);
    }

    @Override
    public void empty() {
        held = null;
    }

    @Override
    public void text(String text) {
        held = text;
    }

    @Override
    public void integer(long value) {
        held = value;
    }

    @Override
    public void real(double value, int decimals) {
        held = Decimals.round(value, decimals);
    }

    @Override
    public void flag(boolean value) {
        held = value;
    }
}
