package org.spanroom.network;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Contents;

/** The cables of one duct while entries change them, each with the name of the innerduct or sleeve that it is in. */
final class CableList {
    /** The place of a cable that is in no innerduct and no sleeve. */
    static final String LOOSE = "";

    private final List<Laid> laid = new ArrayList<>();

    /** Why a cable is where it is. */
    enum Basis {
        /** By the records, or by an entry. */
        KNOWN,
        /** Loose, since its innerduct was found not to be there. */
        DISPLACED,
        /** Still to be placed: it is additional, or its innerduct is one too many. */
        OPEN
    }

    /** A cable, the name of what it is in, and how that is known. */
    record Laid(Cable cable, String home, Basis basis) {}

    CableList(Contents recorded) {
        recorded.innerducts().forEach(pipe -> pipe.cables().forEach(cable -> put(cable, pipe.id())));
        recorded.sleeves().forEach(sleeve -> sleeve.cables().forEach(cable -> put(cable, sleeve.id())));
        recorded.looseCables().forEach(cable -> put(cable, LOOSE));
    }

    private void put(Cable cable, String home) {
        laid.add(new Laid(cable, home, Basis.KNOWN));
    }

    int size() {
        return laid.size();
    }

    boolean has(String id) {
        return place(id) >= 0;
    }

    List<Cable> all() {
        return laid.stream().map(Laid::cable).toList();
    }

    Optional<Cable> first() {
        return laid.stream().map(Laid::cable).findFirst();
    }

    Optional<Cable> find(String id) {
        return has(id) ? Optional.of(laid.get(place(id)).cable()) : Optional.empty();
    }

    private int place(String id) {
        for (int i = 0; i < laid.size(); i++) {
            if (laid.get(i).cable().id().equals(id)) {
                return i;
            }
        }
        return -1;
    }

    void add(Cable cable) {
        laid.add(new Laid(cable, LOOSE, Basis.OPEN));
    }

    void remove(String id) {
        laid.remove(place(id));
    }

    void replace(Cable cable) {
        int place = place(cable.id());
        laid.set(place, new Laid(cable, laid.get(place).home(), laid.get(place).basis()));
    }

    void move(String id, String home) {
        int place = place(id);
        laid.set(place, new Laid(laid.get(place).cable(), home, Basis.KNOWN));
    }

    /** Leaves open where the loose cables are. */
    void openLoose() {
        laid.replaceAll(one -> one.home().equals(LOOSE) ? new Laid(one.cable(), LOOSE, Basis.OPEN) : one);
    }

    /** Takes the cables out of an innerduct that is not there. */
    void vacate(String home, Basis basis) {
        laid.replaceAll(one ->
                one.home().equals(home) && one.basis() == Basis.KNOWN ? new Laid(one.cable(), LOOSE, basis) : one);
    }

    /** Removes the last cable that may go: first of those that have lost their innerduct. False if none may. */
    boolean removeLast(Predicate<String> mayGo) {
        for (boolean settled : new boolean[] {false, true}) {
            for (int i = laid.size() - 1; i >= 0; i--) {
                boolean fits = settled == (laid.get(i).basis() == Basis.KNOWN);
                if (fits && mayGo.test(laid.get(i).cable().id())) {
                    laid.remove(i);
                    return true;
                }
            }
        }
        return false;
    }

    /** Lays each cable whose place is open into the first empty innerduct; what finds none stays loose. */
    void settle(Iterable<String> innerducts) {
        for (int i = 0; i < laid.size(); i++) {
            if (laid.get(i).basis() == Basis.OPEN) {
                laid.set(i, new Laid(laid.get(i).cable(), firstEmpty(innerducts), Basis.KNOWN));
            }
        }
    }

    private String firstEmpty(Iterable<String> innerducts) {
        for (String innerduct : innerducts) {
            if (in(innerduct).isEmpty()) {
                return innerduct;
            }
        }
        return LOOSE;
    }

    List<Cable> in(String home) {
        return laid.stream()
                .filter(one -> one.home().equals(home) && one.basis() != Basis.OPEN)
                .map(Laid::cable)
                .toList();
    }
}
