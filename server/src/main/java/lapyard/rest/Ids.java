package lapyard.rest;

import java.security.SecureRandom;

/** Names that nobody gave: two never meet by chance, and none is read for another. */
final class Ids {
    private static final String SIGNS = "abcdefghijkmnpqrstuvwxyz23456789"; // none that is read for another
    private static final int LENGTH = 12;
    private static final int SECRET_LENGTH = 32;
    private static final SecureRandom RANDOM = new SecureRandom();

    private Ids() {}

    /** 60 bits. */
    static String next() {
        return signs(LENGTH);
    }

    /** 160 bits: nobody guesses it. */
    static String secret() {
        return signs(SECRET_LENGTH);
    }

    private static String signs(int length) {
        byte[] chance = new byte[length];
        RANDOM.nextBytes(chance);
        StringBuilder id = new StringBuilder(length);
        for (byte one : chance) id.append(SIGNS.charAt(one & 31));
        return id.toString();
    }
}
