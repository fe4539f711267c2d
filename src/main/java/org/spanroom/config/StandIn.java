package org.spanroom.config;

import java.lang.reflect.RecordComponent;
import java.util.Map;
import java.util.Optional;

/** What is used where a config says nothing. It is asked only for what is missing, so that nothing is parsed needlessly. */
@FunctionalInterface
interface StandIn {
    /** No default: what is left out is absent, empty or false, and a number that is left out is a mistake. */
    StandIn NOTHING = Optional::empty;

    /** No default, and nothing may be left out: what the shipped files are read with. */
    StandIn NONE_ALLOWED = new StandIn() {
        @Override
        public Optional<Object> value() {
            return Optional.empty();
        }

        @Override
        public StandIn component(RecordComponent component) {
            return this;
        }

        @Override
        public StandIn item() {
            return this;
        }

        @Override
        public boolean demandsAll() {
            return true;
        }
    };

    /** Returns the default value, if there is one. */
    Optional<Object> value();

    /** Returns what replaces a component of the value. */
    default StandIn component(RecordComponent component) {
        return () -> value().map(record -> RecordParts.valueOf(component, record));
    }

    /** Returns the default within an item of a list, or an entry of a map, that the value does not have. */
    default StandIn item() {
        return NOTHING;
    }

    /** Returns whether every key must be given. */
    default boolean demandsAll() {
        return false;
    }

    /** Returns this stand-in with others for some sections, by their keys. */
    default StandIn with(Map<String, StandIn> sections) {
        return new Sections(sections, this);
    }

    /** Stand-ins of their own for some sections. */
    record Sections(Map<String, StandIn> own, StandIn others) implements StandIn {
        @Override
        public Optional<Object> value() {
            return others.value();
        }

        @Override
        public StandIn component(RecordComponent component) {
            StandIn section = own.get(RecordParts.key(component.getName()));
            return section == null ? others.component(component) : section;
        }

        @Override
        public StandIn item() {
            return others.item();
        }

        @Override
        public boolean demandsAll() {
            return others.demandsAll();
        }
    }
}
