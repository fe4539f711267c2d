package org.spanroom.rank;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.SectionKey;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.SpanList;

/**
 * The empty ducts of all banks, by the section that they are in.
 *
 * <p>A duct is empty where the records say that no innerduct, no sleeve and no cable is in it; it serves where its owner has not
 * refused, and is the span's owner's where both are recorded. It is proved where its bore is recorded as sound, and unproved
 * where it is recorded as oval or not at all. One pass over the spans; a look-up is a hash of three texts.
 */
final class EmptyDucts {
    /** No bank holds any. */
    static final EmptyDucts NONE = new EmptyDucts();

    /** Any owner. */
    private static final String ANY = "*";

    private final Map<Place, Found> places = new HashMap<>();

    private EmptyDucts() {}

    private record Place(SectionKey section, String owner) {}

    private record Found(String duct, boolean proved) {
        /** Returns the proved one of two, else the one with the smaller name, so that the order of reading does not matter. */
        Found or(Found other) {
            if (proved != other.proved) {
                return proved ? this : other;
            }
            return duct.compareTo(other.duct) <= 0 ? this : other;
        }
    }

    static EmptyDucts of(SpanList spans) {
        var empty = new EmptyDucts();
        for (int number = 0; number < spans.size(); number++) {
            Duct duct = spans.duct(number);
            if (duct.isEmpty() && duct.mayServe()) {
                empty.add(duct, spans.section(number));
            }
        }
        return empty;
    }

    /** Finds a sound empty duct beside a span. */
    Optional<String> findProved(Span span) {
        return find(span).filter(Found::proved).map(Found::duct);
    }

    /** Finds an empty duct beside a span that is not recorded as sound; empty where a sound one is there. */
    Optional<String> findUnproved(Span span) {
        return find(span).filter(found -> !found.proved()).map(Found::duct);
    }

    /** Returns what is known of empty ducts beside a span, for people. */
    String words(Span span) {
        return find(span)
                .map(found -> "duct " + found.duct() + " is empty"
                        + (found.proved() ? " and sound" : ", but not known to be sound"))
                .orElse("no empty duct is known there");
    }

    private void add(Duct duct, SectionKey section) {
        if (section.hasBank()) {
            var found = new Found(duct.id(), duct.isSpare());
            places.merge(new Place(section, Quantities.fold(duct.owner())), found, Found::or);
            places.merge(new Place(section, ANY), found, Found::or);
        }
    }

    private Optional<Found> find(Span span) {
        if (places.isEmpty() || span.duct().contents().innerducts().isEmpty()) {
            return Optional.empty();
        }
        SectionKey section = SectionKey.of(span);
        String owner = Quantities.fold(span.duct().owner());
        if (owner.isEmpty()) {
            return Optional.ofNullable(places.get(new Place(section, ANY)));
        }
        Found own = places.get(new Place(section, owner));
        Found nobodys = places.get(new Place(section, ""));
        if (own == null || nobodys == null) {
            return Optional.ofNullable(own == null ? nobodys : own);
        }
        return Optional.of(own.or(nobodys));
    }
}
