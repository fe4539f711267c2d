package org.spanroom.sample;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The values of one route's fields, to be filled in and then spoilt. */
final class Attributes {
    private final Map<RouteField, Object> values;

    Attributes() {
        this(new EnumMap<>(RouteField.class));
    }

    private Attributes(Map<RouteField, Object> values) {
        this.values = values;
    }

    Attributes with(RouteField field, Object value) {
        values.put(field, value);
        return this;
    }

    Attributes without(RouteField field) {
        values.remove(field);
        return this;
    }

    Attributes without(List<RouteField> fields) {
        fields.forEach(values::remove);
        return this;
    }

    Optional<Object> find(RouteField field) {
        return Optional.ofNullable(values.get(field));
    }

    /** Returns a field's number; 0 where it has none. */
    double number(RouteField field) {
        return values.get(field) instanceof Number number ? number.doubleValue() : 0;
    }

    String text(RouteField field) {
        return find(field).map(Object::toString).orElse("");
    }

    Attributes copy() {
        return new Attributes(new EnumMap<>(values));
    }
}
