package lapyard.rest;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import lapyard.answers.Answer;

/** A secret that opens the server; kept as its hash and compared in constant time. */
public final class Token {
    /** Shorter ones could be guessed. */
    public static final int LEAST_CHARACTERS = 20;

    private final byte[] hash;

    private Token(byte[] hash) {
        this.hash = hash;
    }

    /** @throws IllegalArgumentException if it is shorter than {@value #LEAST_CHARACTERS} characters or holds a space */
    public static Token of(String secret) {
        if (secret.length() < LEAST_CHARACTERS)
            throw new IllegalArgumentException(
                    "the token has " + secret.length() + " characters and needs " + LEAST_CHARACTERS + " or more");
        if (!secret.chars().allMatch(character -> character > ' ' && character < 127))
            throw new IllegalArgumentException("the token may hold ASCII letters, digits and punctuation, but no spaces");
        return new Token(hash(secret));
    }

    boolean matches(String offered) {
        return MessageDigest.isEqual(hash, hash(offered));
    }

    private static byte[] hash(String text) {
        return Answer.sha256().digest(text.getBytes(StandardCharsets.UTF_8));
    }
}
