package org.spanroom.cli;

/** How a command can end. The numbers are part of the interface. */
final class ExitCode {
    static final int OK = 0;
    static final int INTERNAL = 1;
    static final int USAGE = 2;
    static final int INPUT = 3;
    static final int FINDINGS = 4;
    static final int OUTPUT = 5;
    static final int MEMORY = 6;

    private ExitCode() {}
}
