package lapyard.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.net.HttpURLConnection;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Asks a server of this process for what a browser would ask first. */
record SelfCheck(URI server, Optional<String> secret, PrintWriter complaints) {
    private static final Pattern ID = Pattern.compile("\"id\":\"([a-z0-9-]+)\"");

    /** The page, the list, the first garden with its job sheet, plan, sheets and lists; true where all of it was answered. */
    boolean passes() throws IOException {
        boolean passed = ask("/").isPresent() & ask("/health").isPresent();
        Optional<String> list = ask("/api/gardens");
        if (list.isEmpty()) return false;
        Matcher first = ID.matcher(list.get());
        if (!first.find()) return passed;
        for (String made : List.of("", "/job-sheet", "/plan.svg", "/sheets.pdf", "/slip.csv", "/weekends.ics"))
            passed &= ask("/api/gardens/" + first.group(1) + made).isPresent();
        return passed;
    }

    private Optional<String> ask(String path) throws IOException {
        HttpURLConnection connection = (HttpURLConnection) server.resolve(path).toURL().openConnection();
        secret.ifPresent(token -> connection.setRequestProperty("Authorization", "Bearer " + token));
        if (connection.getResponseCode() != 200) {
            complaints.println(path + " answered " + connection.getResponseCode());
            return Optional.empty();
        }
        try (InputStream body = connection.getInputStream()) {
            return Optional.of(new String(body.readAllBytes(), StandardCharsets.UTF_8));
        }
    }
}
