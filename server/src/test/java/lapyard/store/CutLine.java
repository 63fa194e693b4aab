package lapyard.store;

import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.ArrayList;
import java.util.List;

/** A line to a port of this machine that can be cut and mended. */
final class CutLine implements AutoCloseable {
    private final int to;
    private final ServerSocket door = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
    private final List<Socket> ends = new ArrayList<>();
    private boolean cut;

    CutLine(int to) throws IOException {
        this.to = to;
        start(this::listen);
    }

    int port() {
        return door.getLocalPort();
    }

    synchronized void cut() throws IOException {
        cut = true;
        for (Socket end : ends) end.close();
        ends.clear();
    }

    synchronized void mend() {
        cut = false;
    }

    private static void start(Runnable work) {
        Thread thread = new Thread(work, "cut-line");
        thread.setDaemon(true);
        thread.start();
    }

    private void listen() {
        try {
            while (true) join(door.accept());
        } catch (IOException closed) {
            return;
        }
    }

    private synchronized void join(Socket near) throws IOException {
        if (cut) {
            near.close();
            return;
        }
        Socket far = new Socket(InetAddress.getLoopbackAddress(), to);
        ends.addAll(List.of(near, far));
        start(() -> pass(near, far));
        start(() -> pass(far, near));
    }

    private static void pass(Socket from, Socket to) {
        try (InputStream in = from.getInputStream()) {
            in.transferTo(to.getOutputStream());
            to.shutdownOutput();
        } catch (IOException ended) {
            return;
        }
    }

    @Override
    public void close() throws IOException {
        cut();
        door.close();
    }
}
