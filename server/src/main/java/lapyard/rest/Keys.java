package lapyard.rest;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import lapyard.answers.Answer;

/** The tokens that open the server: whose holder may change gardens, and whose may only read them. */
public record Keys(List<Token> editors, List<Token> readers) {
    public static final Keys NONE = new Keys(List.of(), List.of());

    public Keys {
        editors = List.copyOf(editors);
        readers = List.copyOf(readers);
    }

    /** A secret that opens the server; kept as its hash and compared in constant time. */
    public static final class Token {
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

    /**
     * Reads a token file: a token a line, behind {@code editor} or {@code reader}; a line with the token alone is an
     * editor's. Empty lines and those that start with # say nothing.
     *
     * @throws IllegalArgumentException naming the line, never the token
     */
    public static Keys read(List<String> lines) {
        Map<String, List<Token>> roles = Map.of("editor", new ArrayList<>(), "reader", new ArrayList<>());
        int number = 0;
        for (String line : lines) {
            number++;
            String text = line.strip();
            if (text.isEmpty() || text.startsWith("#")) continue;
            String[] words = text.split("\\s+");
            List<Token> role = words.length == 1 ? roles.get("editor") : roles.get(words[0]);
            if (words.length > 2 || role == null)
                throw new IllegalArgumentException(
                        "line " + number + " of the token file should be editor TOKEN or reader TOKEN");
            role.add(Token.of(words[words.length - 1]));
        }
        return new Keys(roles.get("editor"), roles.get("reader"));
    }

    public boolean isEmpty() {
        return editors.isEmpty() && readers.isEmpty();
    }

    /** Every token is compared, so that the time taken says nothing. */
    static boolean any(List<Token> tokens, String offered) {
        boolean found = false;
        for (Token token : tokens) found |= token.matches(offered);
        return found;
    }
}
