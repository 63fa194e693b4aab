package lapyard.cli;

import lapyard.rest.SizesDesk;
import picocli.CommandLine;

/** {@code serve} in a process of its own, for tests that kill it. */
public final class ServeMain {
    private ServeMain() {}

    public static void main(String[] args) {
        System.exit(new CommandLine(new ServeCommand(new SizesDesk())).execute(args));
    }
}
