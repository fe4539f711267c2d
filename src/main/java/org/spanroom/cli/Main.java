package org.spanroom.cli;

/** The program's door. */
public final class Main {
    private Main() {}

    public static void main(String[] args) {
        System.err.println("not wired yet");
    }
}
