package org.spanroom.sample;

/**
 * The place of a vault, in the city's plane.
 *
 * @param district number of the district that it belongs to
 * @param number place among the district's nodes, from 0
 * @param groundM height of the ground there
 * @param link true if it is between two districts
 */
record Node(int district, int number, double x, double y, double groundM, boolean link) {
    /** Returns a crossing or block vault of a district. */
    static Node in(District district, int number, double x, double y) {
        return new Node(district.number(), number, x, y, district.groundM(x, y), false);
    }

    String vaultId() {
        return "V" + district + "-" + (1001 + number);
    }

    double distance(double otherX, double otherY) {
        return Math.sqrt((x - otherX) * (x - otherX) + (y - otherY) * (y - otherY));
    }
}
