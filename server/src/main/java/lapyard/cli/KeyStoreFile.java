package lapyard.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import javax.net.ssl.KeyManagerFactory;
import javax.net.ssl.SSLContext;

/** The certificate that the server shows, with its key, from a PKCS#12 file. */
final class KeyStoreFile {
    private KeyStoreFile() {}

    /** @throws IllegalArgumentException naming the file and what is wrong with it */
    static SSLContext read(Path file, String password) {
        try (InputStream stream = Files.newInputStream(file)) {
            KeyStore store = KeyStore.getInstance("PKCS12");
            store.load(stream, password.toCharArray());
            if (store.size() == 0) throw new IllegalArgumentException("key store " + file + " is empty");
            KeyManagerFactory keys = KeyManagerFactory.getInstance(KeyManagerFactory.getDefaultAlgorithm());
            keys.init(store, password.toCharArray());
            SSLContext context = SSLContext.getInstance("TLS");
            context.init(keys.getKeyManagers(), null, null);
            return context;
        } catch (IOException | GeneralSecurityException unusable) {
            throw new IllegalArgumentException(
                    "key store " + file + " cannot be read: give a PKCS#12 file, and its password by"
                            + " LAPYARD_KEY_STORE_PASSWORD",
                    unusable);
        }
    }
}
