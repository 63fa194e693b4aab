package lapyard.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Kills say nothing about a machine that loses power: there the promise is SQLite's own, by synchronous = FULL. */
class KilledProcessTest {
    /** Few by default; {@code -Dlapyard.kills=200} for as many as one has patience for. */
    private static final int KILLS = Integer.getInteger("lapyard.kills", 4);

    @TempDir
    private Path folder;

    @Test
    void everySaveThatAKilledProcessAcknowledgedIsThereAndNoneIsHalf() throws IOException, InterruptedException {
        Map<String, Long> acknowledged = new HashMap<>();
        Random random = new Random(20261);
        for (int kill = 0; kill < KILLS; kill++) {
            Process process = StoreWriter.start(folder, random.nextLong());
            killAfter(process, 1 + random.nextInt(120), acknowledged);
            check(acknowledged);
        }
        assertTrue(acknowledged.values().stream().mapToLong(Long::longValue).sum() >= KILLS);
    }

    private static void killAfter(Process process, int saves, Map<String, Long> acknowledged)
            throws IOException, InterruptedException {
        BufferedReader lines =
                new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.US_ASCII));
        int seen = 0;
        for (String line = lines.readLine(); line != null; line = lines.readLine()) {
            String[] words = line.split(" ");
            if (words.length == 2 && line.matches("g[0-9] [0-9]+"))
                acknowledged.put(words[0], Long.parseLong(words[1]));
            // it goes on saving while it is killed, so the kill falls anywhere in a save
            if (++seen == saves) process.toHandle().destroyForcibly(); // by its handle: the pipe stays readable
        }
        process.waitFor();
        assertTrue(seen >= saves, "the writer ended by itself with " + process.exitValue());
    }

    private void check(Map<String, Long> acknowledged) {
        try (GardenStore store =
                GardenStore.open(folder)) {
            acknowledged.forEach((id, number) -> {
                Stored current = store.find(id).orElseThrow();
                assertTrue(current.revision() >= number, () -> id + ": " + number + " was acknowledged");
                assertTrue(current.revision() <= number + 1, () -> id + ": at most one save was under way");
                for (long each = 1; each <= current.revision(); each++)
                    assertEquals(
                            StoreWriter.document(id, each),
                            store.revision(id, each).orElseThrow().document());
            });
        }
    }
}
