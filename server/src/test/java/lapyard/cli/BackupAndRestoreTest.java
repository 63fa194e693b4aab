package lapyard.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import lapyard.store.GardenStore;
import lapyard.store.NewGarden;
import lapyard.store.Opening;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The pair of commands that copies a store in use and puts the copy back. */
class BackupAndRestoreTest {
    @TempDir
    private Path folder;

    private static GardenStore open(Path data) {
        return assertInstanceOf(Opening.Open.class, GardenStore.open(data)).store();
    }

    @Test
    void whatWasCopiedWhileTheStoreWasOpenComesBackWhole() throws Exception {
        String data = folder.resolve("data").toString();
        String copy = folder.resolve("copy").toString();
        String back = folder.resolve("back").toString();
        try (GardenStore store = open(Path.of(data))) {
            store.create(new NewGarden("a", "A", "{\"beds\":[]}"));
            store.save("a", 1, "A", "{\"beds\":[],\"name\":\"A\"}");
            assertEquals(0, Lapyard.run("backup", "--data", data, "--out", copy));
            store.create(new NewGarden("later", "Later", "{}"));
            assertNotEquals(0, Lapyard.run("restore", copy, "--data", data), "a folder with gardens is left as it is");
        }
        assertEquals(0, Lapyard.run("restore", copy, "--data", back));
        try (GardenStore store = open(Path.of(back))) {
            assertEquals("{\"beds\":[],\"name\":\"A\"}", store.find("a").orElseThrow().document());
            assertEquals("{\"beds\":[]}", store.revision("a", 1).orElseThrow().document());
            assertFalse(store.find("later").isPresent());
        }
        try (GardenStore store = open(Path.of(data))) {
            assertEquals("Later", store.find("later").orElseThrow().name());
        }
    }

    @Test
    void whatIsNoCopyAndWhatIsThereAlreadyAreRefused() throws Exception {
        Path none = Files.writeString(folder.resolve("none"), "no store");
        assertNotEquals(0, Lapyard.run("restore", none.toString(), "--data", folder.resolve("new").toString()));
        assertNotEquals(0, Lapyard.run("backup", "--data", folder.resolve("nowhere").toString(), "--out", folder.resolve("x").toString()));
    }
}
