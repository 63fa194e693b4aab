package lapyard.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * One round of what is run most: a Java that makes an archive of its classes at exit then has the classes of these commands
 * and of the server's first answers in it. The launcher's {@code archive} starts it.
 */
final class ClassRound {
    private static final String GARDEN = "lock-keepers-yard";

    private ClassRound() {}

    /** @param args a folder that may be filled */
    public static void main(String[] args) throws IOException {
        System.exit(run(Path.of(args[0])));
    }

    /** @return 0 where each command did its work */
    static int run(Path folder) throws IOException {
        Path garden = folder.resolve("garden.json");
        try (InputStream sample = ClassRound.class.getResourceAsStream("/lapyard/samples/" + GARDEN + ".json")) {
            Files.copy(sample, garden);
        }
        boolean refused = Lapyard.run("snags", garden.toString()) == Lapyard.REFUSED
                | Lapyard.run("take-off", garden.toString(), "--out", folder.resolve("take-off").toString()) == Lapyard.REFUSED;
        return refused ? 1 : Lapyard.run("serve", "--once", "--port", "0", "--data", folder.resolve("data").toString());
    }
}
