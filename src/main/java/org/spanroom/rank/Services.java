package org.spanroom.rank;

import java.util.List;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.Service;

/** Looks for a service among the cables of a duct without making a list of them: millions of spans are asked. */
final class Services {
    private Services() {}

    static boolean has(Contents contents, Service service) {
        for (Innerduct innerduct : contents.innerducts()) {
            if (isAmong(innerduct.cables(), service)) {
                return true;
            }
        }
        return isAmong(contents.cablesBeside(), service);
    }

    /** Returns how many cables are in which service, for people. */
    static String words(List<Cable> cables) {
        if (cables.isEmpty()) {
            return "no cable is known";
        }
        return cables.size() + " cables: " + count(cables, Service.LIVE) + " live, " + count(cables, Service.DEAD)
                + " dead, " + count(cables, Service.UNKNOWN) + " unknown";
    }

    private static long count(List<Cable> cables, Service service) {
        return cables.stream().filter(cable -> cable.service() == service).count();
    }

    private static boolean isAmong(List<Cable> cables, Service service) {
        for (Cable cable : cables) {
            if (cable.service() == service) {
                return true;
            }
        }
        return false;
    }
}
