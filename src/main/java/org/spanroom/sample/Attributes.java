package org.spanroom.sample;

import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The values of one route's fields, to be filled in and spoilt; millions pass through, hence one array. */
final class Attributes {
    private final @Nullable Object[] values;

    Attributes() {
        this(new @Nullable Object[RouteField.values().length]);
    }

    private Attributes(@Nullable Object[] values) {
        this.values = values;
    }

    Attributes with(RouteField field, Object value) {
        values[field.ordinal()] = value;
        return this;
    }

    Attributes without(RouteField field) {
        values[field.ordinal()] = null;
        return this;
    }

    Optional<Object> find(RouteField field) {
        return Optional.ofNullable(values[field.ordinal()]);
    }

    /** Returns a field's number; 0 where it has none. */
    double number(RouteField field) {
        return values[field.ordinal()] instanceof Number number ? number.doubleValue() : 0;
    }

    String text(RouteField field) {
        return find(field).map(Object::toString).orElse("");
    }

    Attributes copy() {
        return new Attributes(values.clone());
    }
}
