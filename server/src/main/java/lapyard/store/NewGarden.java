package lapyard.store;

/** A garden that is not kept yet; {@code name} is what lists show, {@code document} its text. */
public record NewGarden(String id, String name, String document) {
    public NewGarden {
        if (!id.matches("[a-z0-9][a-z0-9-]{0,39}"))
            throw new IllegalArgumentException("a garden's id is 1 to 40 small letters, digits and dashes, was \"" + id + "\"");
    }
}
