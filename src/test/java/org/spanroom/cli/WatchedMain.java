package org.spanroom.cli;

import java.io.IOException;
import java.io.PrintStream;
import java.net.DatagramSocket;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.URL;
import java.net.URLConnection;
import java.net.URLStreamHandler;
import java.nio.channels.SocketChannel;
import java.util.Arrays;
import java.util.Set;

/**
 * The program in a JVM in which every way to the network that Java has is cut and watched: an attempt prints NETWORK to the error
 * stream. With the one argument "attempts" it tries these ways itself instead, to show that the watch sees them.
 */
final class WatchedMain {
    private static final Set<String> REMOTE = Set.of("http", "https", "ftp", "mailto", "jmod");

    /** Kept, because the program does without it. */
    private static final PrintStream ERR = System.err;

    private WatchedMain() {}

    @SuppressWarnings("deprecation")
    public static void main(String[] args) throws Exception {
        System.setProperty("java.nio.channels.spi.SelectorProvider", WatchedChannels.class.getName());
        System.setProperty("jdk.net.hosts.file", "/nonexistent");
        Socket.setSocketImplFactory(() -> {
            throw refused("socket");
        });
        ServerSocket.setSocketFactory(() -> {
            throw refused("server socket");
        });
        DatagramSocket.setDatagramSocketImplFactory(() -> {
            throw refused("datagram socket");
        });
        URL.setURLStreamHandlerFactory(protocol -> REMOTE.contains(protocol) ? new Refusing() : null);
        if (Arrays.equals(args, new String[] {"attempts"})) {
            attempt(() -> new URL("http://example.org/").openStream().close());
            attempt(() -> new Socket(InetAddress.getLoopbackAddress(), 9).close());
            attempt(() -> SocketChannel.open(new InetSocketAddress(InetAddress.getLoopbackAddress(), 9))
                    .close());
            return;
        }
        Main.main(args);
    }

    /** Says so and returns what is to be thrown. */
    static IllegalStateException refused(String what) {
        ERR.println("NETWORK: " + what);
        return new IllegalStateException("no network: " + what);
    }

    private interface Attempt {
        void make() throws IOException;
    }

    private static void attempt(Attempt attempt) throws IOException {
        try {
            attempt.make();
        } catch (IllegalStateException expected) {
            ERR.println("seen");
        }
    }

    private static final class Refusing extends URLStreamHandler {
        @Override
        protected URLConnection openConnection(URL url) {
            throw refused(url.toString());
        }
    }
}
