package org.spanroom.network;

import java.util.Comparator;

/** The order of names as people number things: V9 before V10. Names that differ only in leading zeros are in the order of their letters. */
final class NameOrder implements Comparator<String> {
    @Override
    public int compare(String one, String other) {
        int i = 0;
        int j = 0;
        while (i < one.length() && j < other.length()) {
            int order;
            if (isDigit(one.charAt(i)) && isDigit(other.charAt(j))) {
                int endI = endOfDigits(one, i);
                int endJ = endOfDigits(other, j);
                order = compareDigits(one, i, endI, other, j, endJ);
                i = endI;
                j = endJ;
            } else {
                order = Character.compare(one.charAt(i++), other.charAt(j++));
            }
            if (order != 0) {
                return order;
            }
        }
        int rest = Integer.compare(one.length() - i, other.length() - j);
        return rest != 0 ? rest : one.compareTo(other);
    }

    private static boolean isDigit(char letter) {
        return letter >= '0' && letter <= '9';
    }

    private static int endOfDigits(String name, int from) {
        int end = from;
        while (end < name.length() && isDigit(name.charAt(end))) {
            end++;
        }
        return end;
    }

    private static int compareDigits(String one, int fromI, int endI, String other, int fromJ, int endJ) {
        int i = afterZeros(one, fromI, endI);
        int j = afterZeros(other, fromJ, endJ);
        int order = Integer.compare(endI - i, endJ - j);
        for (int at = 0; order == 0 && at < endI - i; at++) {
            order = Character.compare(one.charAt(i + at), other.charAt(j + at));
        }
        return order;
    }

    private static int afterZeros(String name, int from, int end) {
        int at = from;
        while (at < end && name.charAt(at) == '0') {
            at++;
        }
        return at;
    }
}
