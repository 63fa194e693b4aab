package lapyard.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import lapyard.working.OwnFile;

/**
 * One round of what is run most: a Java that makes an archive of its classes at exit then has the classes of these commands
 * and of the server's first answers in it. The launcher's {@code archive} starts it.
 */
final class ClassRound {
    /** Slatted floors, boards on hand and long walls, angled corners and paths: together nearly all that is worked out. */
    private static final List<String> GARDENS = List.of("three-entries", "village-hall", "lock-keepers-yard");

    private ClassRound() {}

    /** @param args a folder that may be filled */
    public static void main(String[] args) throws IOException {
        System.exit(run(Path.of(args[0])));
    }

    /** @return 0 where each command did its work */
    static int run(Path folder) throws IOException {
        // first, as a server that has made a garden before answers it in another way
        boolean refused = Lapyard.run("serve", "--once", "--port", "0", "--data", folder.resolve("data").toString()) != 0;
        for (String sample : GARDENS) {
            Path garden = folder.resolve(sample + ".json");
            Files.writeString(garden, OwnFile.text("lapyard/samples/" + garden.getFileName()));
            refused |= Lapyard.run("snags", garden.toString()) == Lapyard.REFUSED;
            refused |= Lapyard.run("take-off", garden.toString(), "--out", folder.resolve("take-off").toString()) == Lapyard.REFUSED;
        }
        return refused ? 1 : 0;
    }
}
