package org.spanroom.cli;

import java.net.ProtocolFamily;
import java.nio.channels.DatagramChannel;
import java.nio.channels.Pipe;
import java.nio.channels.ServerSocketChannel;
import java.nio.channels.SocketChannel;
import java.nio.channels.spi.AbstractSelector;
import java.nio.channels.spi.SelectorProvider;

/** A source of network channels that has none to give. */
public final class WatchedChannels extends SelectorProvider {
    @Override
    public DatagramChannel openDatagramChannel() {
        return WatchedMain.refuse("datagram channel");
    }

    @Override
    public DatagramChannel openDatagramChannel(ProtocolFamily family) {
        return WatchedMain.refuse("datagram channel");
    }

    @Override
    public Pipe openPipe() {
        return WatchedMain.refuse("pipe");
    }

    @Override
    public AbstractSelector openSelector() {
        return WatchedMain.refuse("selector");
    }

    @Override
    public ServerSocketChannel openServerSocketChannel() {
        return WatchedMain.refuse("server channel");
    }

    @Override
    public SocketChannel openSocketChannel() {
        return WatchedMain.refuse("channel");
    }
}
