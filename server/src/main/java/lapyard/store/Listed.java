package lapyard.store;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import lapyard.plan.GardenState;

/**
 * What a list shows of a document and looks for in it.
 *
 * @param client first line of the quote's client; empty where there is none
 * @param uses   what it uses of the shelf: revision by id
 */
record Listed(String name, String client, GardenState state, Map<String, Long> uses) {
    private static final JsonFactory JSON = new JsonFactory();
    /** Sorts behind every name. */
    private static final String NOBODY = "\udbff\udfff";

    /** A document that cannot be read is shown by its name alone. */
    static Listed of(String name, String document) {
        String client = "";
        GardenState state = GardenState.PENCILLED;
        Map<String, Long> uses = new LinkedHashMap<>();
        try (JsonParser json = JSON.createParser(document)) {
            if (json.nextToken() == JsonToken.START_OBJECT) {
                while (json.nextToken() == JsonToken.FIELD_NAME) {
                    String field = json.currentName();
                    JsonToken value = json.nextToken();
                    if (field.equals("state") && value == JsonToken.VALUE_STRING) state = GardenState.of(json.getText()).orElse(state);
                    else if (field.equals("quote") && value == JsonToken.START_OBJECT) client = client(json, client);
                    else if (field.equals("shelf") && value == JsonToken.START_ARRAY) uses(json, uses);
                    else json.skipChildren();
                }
            }
        } catch (IOException unreadable) {
            // what was found before the fault is shown
        }
        return new Listed(shortened(name), shortened(client), state, uses);
    }

    private static String client(JsonParser quote, String client) throws IOException {
        String found = client;
        while (quote.nextToken() == JsonToken.FIELD_NAME) {
            boolean wanted = quote.currentName().equals("client");
            if (quote.nextToken() == JsonToken.VALUE_STRING && wanted) found = quote.getText().strip().lines().findFirst().orElse("").strip();
            else quote.skipChildren();
        }
        return found;
    }

    private static void uses(JsonParser pieces, Map<String, Long> uses) throws IOException {
        while (pieces.nextToken() == JsonToken.START_OBJECT) {
            String id = "";
            long revision = 0;
            while (pieces.nextToken() == JsonToken.FIELD_NAME) {
                String field = pieces.currentName();
                JsonToken value = pieces.nextToken();
                if (field.equals("id") && value == JsonToken.VALUE_STRING) id = pieces.getText();
                else if (field.equals("revision") && value == JsonToken.VALUE_NUMBER_INT) revision = pieces.getLongValue();
                else pieces.skipChildren();
            }
            if (id.matches("[a-z0-9-]{1,40}")) uses.put(id, revision);
        }
    }

    /** Writes what the garden uses in place of what it used. */
    void keepUses(Connection connection, String garden) throws SQLException {
        new Sql(connection, "delete from shelf_use where garden = :garden").with("garden", garden).update();
        for (Map.Entry<String, Long> use : uses.entrySet())
            Sql.insert(connection, "shelf_use", "garden", garden, "item", use.getKey(), "revision", use.getValue());
    }

    private static String shortened(String text) {
        return Sql.shortened(text, GardenStore.NAME_CHARACTERS);
    }

    /** Binds {@code :name :sortKey :client :clientKey :state}. */
    Sql bind(Sql sql) {
        return sql.with("name", name).with("sortKey", key(name)).with("client", client)
                .with("clientKey", client.isEmpty() ? NOBODY : key(client)).with("state", state.ordinal());
    }

    /** In which case letters are written makes no difference to order and search. */
    static String key(String text) {
        return text.toLowerCase(Locale.ROOT);
    }
}
