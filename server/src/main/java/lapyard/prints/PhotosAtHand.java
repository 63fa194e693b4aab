package lapyard.prints;

import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;

/**
 * Photos that sheets may show, read as they are drawn. Its text names them, so that prints with other photos are told apart.
 *
 * @param ids   hashes of their bytes, in hexadecimal
 * @param bytes of one of them; empty where it is gone meanwhile
 */
public record PhotosAtHand(Set<String> ids, Function<String, Optional<byte[]>> bytes) {
    public static final PhotosAtHand NONE = new PhotosAtHand(Set.of(), id -> Optional.empty());

    Optional<byte[]> find(String id) {
        return ids.contains(id) ? bytes.apply(id) : Optional.empty();
    }

    @Override
    public String toString() {
        return new TreeSet<>(ids).toString();
    }
}
