package org.spanroom.testing;

import java.lang.reflect.RecordComponent;
import java.util.Arrays;

/** A record like another, but for one component: settings have many, of which a test changes one. */
public final class Changed {
    private Changed() {}

    /** Returns a record with another value in the component of that name. */
    @SuppressWarnings("unchecked") // of the same class
    public static <R extends Record> R of(R record, String name, Object value) {
        RecordComponent[] components = record.getClass().getRecordComponents();
        Object[] values = new Object[components.length];
        boolean found = false;
        try {
            for (int i = 0; i < components.length; i++) {
                boolean isIt = components[i].getName().equals(name);
                found |= isIt;
                var accessor = components[i].getAccessor();
                accessor.setAccessible(true);
                values[i] = isIt ? value : accessor.invoke(record);
            }
            if (!found) {
                throw new IllegalArgumentException(record.getClass() + " has no component " + name);
            }
            Class<?>[] types =
                    Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new);
            var constructor = record.getClass().getDeclaredConstructor(types);
            constructor.setAccessible(true);
            return (R) constructor.newInstance(values);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }
}
