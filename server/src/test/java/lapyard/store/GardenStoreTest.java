package lapyard.store;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.File;
import java.net.URI;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Arrays;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.api.io.TempDir;

class GardenStoreTest extends StoreContract {
    @TempDir
    private Path folder;

    @Override
    Opening place(Clock clock) {
        return GardenStore.open(folder, clock);
    }

    @ParameterizedTest
    @EnumSource
    void theMigrationFilesEndAtTheVersionThatTheProgramLooksFor(Schema schema) {
        int newest = Arrays.stream(schema.places)
                .map(place -> Schema.class.getClassLoader().getResource(place.replace("classpath:", "")))
                .flatMap(folder -> Arrays.stream(new File(URI.create(folder.toString())).list()))
                .mapToInt(file -> Integer.parseInt(file.replaceAll("V([0-9]+)__.*", "$1")))
                .max()
                .orElseThrow();
        assertEquals(schema.newest, newest);
    }
}
