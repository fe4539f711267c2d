package org.spanroom.rank;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.spanroom.model.Answer;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.SpanList;

/**
 * The empty ducts of all banks, by bank and the two vaults between which they lie, whichever way they are drawn.
 *
 * <p>A duct is empty where the records say that no innerduct, no sleeve and no cable lies in it; it serves where its owner has not
 * refused, and is the span's owner's where both are recorded. It is proved where its bore is recorded as sound, and unproved
 * where it is recorded as oval or not at all. One pass over the spans; a look-up is a hash of three texts.
 */
final class EmptyDucts {
    /** No bank holds any. */
    static final EmptyDucts NONE = new EmptyDucts();

    /** Stands for any owner. */
    private static final String ANY = "*";

    private final Map<Place, Found> places = new HashMap<>();

    private EmptyDucts() {}

    private record Place(String bank, String vault, String otherVault, String owner) {
        static Place of(Span span, String owner) {
            String from = span.from().id();
            String to = span.to().id();
            boolean forth = from.compareTo(to) <= 0;
            return new Place(span.duct().bankId(), forth ? from : to, forth ? to : from, owner);
        }
    }

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
            if (mayServe(spans.duct(number))) {
                empty.add(spans.get(number));
            }
        }
        return empty;
    }

    /** Finds a sound empty duct beside a span. */
    Optional<String> findProved(Span span) {
        return find(span).filter(Found::proved).map(Found::duct);
    }

    /** Finds an empty duct beside a span that is not recorded as sound; empty where a sound one lies there. */
    Optional<String> findUnproved(Span span) {
        return find(span).filter(found -> !found.proved()).map(Found::duct);
    }

    /** Returns what is known of empty ducts beside a span, for people. */
    String words(Span span) {
        return find(span)
                .map(found -> "duct " + found.duct() + " is empty"
                        + (found.proved() ? " and sound" : ", but not known to be sound"))
                .orElse("none is known there");
    }

    private void add(Span span) {
        Duct duct = span.duct();
        var found = new Found(duct.id(), duct.condition() == Condition.SOUND);
        places.merge(Place.of(span, Quantities.fold(duct.owner())), found, Found::or);
        places.merge(Place.of(span, ANY), found, Found::or);
    }

    private static boolean mayServe(Duct duct) {
        return !duct.bankId().isBlank() && isEmpty(duct) && serves(duct);
    }

    private Optional<Found> find(Span span) {
        if (places.isEmpty()
                || span.duct().bankId().isBlank()
                || span.duct().contents().innerducts().isEmpty()) {
            return Optional.empty();
        }
        String owner = Quantities.fold(span.duct().owner());
        if (owner.isEmpty()) {
            return Optional.ofNullable(places.get(Place.of(span, ANY)));
        }
        Found own = places.get(Place.of(span, owner));
        Found nobodys = places.get(Place.of(span, ""));
        if (own == null || nobodys == null) {
            return Optional.ofNullable(own == null ? nobodys : own);
        }
        return Optional.of(own.or(nobodys));
    }

    private static boolean isEmpty(Duct duct) {
        return duct.contents().isEmpty();
    }

    private static boolean serves(Duct duct) {
        return !duct.directBuried()
                && duct.condition() != Condition.COLLAPSED
                && duct.condition() != Condition.BLOCKED
                && duct.circumstances().ownerConsent() != Answer.NO;
    }
}
