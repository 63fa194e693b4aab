package lapyard.rest;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lapyard.store.NewGarden;
import lapyard.working.OwnFile;

/** The gardens that come with the program: the files {@code lapyard/samples/ID.json} on the class path. */
public record Samples(ClassLoader loader) {
    private static final String FOLDER = "lapyard/samples/";

    /** All of them, by id. */
    public List<NewGarden> all() {
        List<NewGarden> samples = new ArrayList<>();
        for (String file : Packed.files(loader, FOLDER)) {
            if (!file.matches("[a-z0-9][a-z0-9-]{0,39}\\.json")) continue;
            String text = new String(OwnFile.bytes(loader, FOLDER + file), StandardCharsets.UTF_8);
            String id = file.substring(0, file.length() - ".json".length());
            samples.add(new NewGarden(id, Documents.name(text), text));
        }
        return samples;
    }

    Optional<NewGarden> find(String id) {
        return all().stream().filter(sample -> sample.id().equals(id)).findFirst();
    }
}
