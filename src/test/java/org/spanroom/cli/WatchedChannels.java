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
        throw WatchedMain.refused("datagram channel");
    }

    @Override
    public DatagramChannel openDatagramChannel(ProtocolFamily family) {
        throw WatchedMain.refused("datagram channel");
    }

    @Override
    public Pipe openPipe() {
        throw WatchedMain.refused("pipe");
    }

    @Override
    public AbstractSelector openSelector() {
        throw WatchedMain.refused("selector");
    }

    @Override
    public ServerSocketChannel openServerSocketChannel() {
        throw WatchedMain.refused("server channel");
    }

    @Override
    public SocketChannel openSocketChannel() {
        throw WatchedMain.refused("channel");
    }
}
