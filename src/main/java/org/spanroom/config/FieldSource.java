package org.spanroom.config;

import java.util.Optional;
import org.spanroom.model.Unit;

/**
 * The field of a source layer that holds a term's values.
 *
 * @param unit the unit that the field is recorded in; empty for terms that have none
 */
public record FieldSource(String field, Optional<Unit> unit) {
    public FieldSource {
        if (field.isBlank()) {
            throw new IllegalArgumentException("a field's name must not be blank");
        }
    }
}
