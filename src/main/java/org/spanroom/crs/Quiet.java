package org.spanroom.crs;

import java.util.List;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.stream.Stream;

/** Keeps the libraries' own log lines off the terminal: what matters of them reaches the user as findings. */
final class Quiet {
    /** Kept so that the settings are not collected with their loggers. */
    private static final List<Logger> LOGGERS = Stream.of(
                    "org.geotools",
                    "org.hsqldb",
                    "hsqldb.db",
                    "java.util.prefs",
                    "javax.media.jai",
                    "si.uom",
                    "tech.units")
            .map(Logger::getLogger)
            .toList();

    private Quiet() {}

    static void install() {
        System.setProperty("hsqldb.reconfig_logging", "false");
        LOGGERS.forEach(logger -> logger.setLevel(Level.OFF));
    }
}
