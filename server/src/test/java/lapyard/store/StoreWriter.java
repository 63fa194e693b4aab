package lapyard.store;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Random;

/** A process that saves without end and says each save once it was acknowledged, so that a test can kill it. */
final class StoreWriter {
    static final int GARDENS = 3;

    private StoreWriter() {}

    static Process start(Path folder, long seed) throws IOException {
        return new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-XX:+UseSerialGC",
                        "-cp",
                        System.getProperty("java.class.path"),
                        StoreWriter.class.getName(),
                        folder.toString(),
                        Long.toString(seed))
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
    }

    static String firstLine(Process process) throws IOException {
        return new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.US_ASCII))
                .readLine();
    }

    /** What revision {@code number} of a garden holds: 0 to 40,000 letters that its number alone decides. */
    static String document(String id, long number) {
        Random random = new Random(id.hashCode() * 31L + number);
        StringBuilder text = new StringBuilder("{\"id\":\"" + id + "\",\"number\":" + number + ",\"text\":\"");
        int length = random.nextInt(40_000);
        while (text.length() < length) text.append((char) ('a' + random.nextInt(26)));
        return text.append("\"}").toString();
    }

    public static void main(String[] args) {
        GardenStore store;
        try {
            store = GardenStore.open(Path.of(args[0]));
        } catch (IllegalArgumentException inUse) {
            System.out.println(inUse.getMessage());
            System.exit(3);
            throw inUse;
        }
        Random random = new Random(Long.parseLong(args[1]));
        while (true) {
            String id = "g" + random.nextInt(GARDENS);
            long revision = store.find(id).map(Stored::revision).orElse(0L);
            long next = revision + 1;
            if (revision == 0) store.create(new NewGarden(id, id, document(id, next)));
            else if (!(store.save(id, revision, id, document(id, next)) instanceof Change.Made)) System.exit(4);
            System.out.println(id + " " + next);
        }
    }
}
