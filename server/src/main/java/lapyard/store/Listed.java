package lapyard.store;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.util.Locale;
import lapyard.plan.GardenState;

/**
 * What a list shows of a document and looks for in it.
 *
 * @param client first line of the quote's client; empty where there is none
 */
record Listed(String name, String client, GardenState state) {
    private static final JsonFactory JSON = new JsonFactory();
    /** Sorts behind every name. */
    private static final String NOBODY = "\udbff\udfff";

    /** A document that cannot be read is shown by its name alone. */
    static Listed of(String name, String document) {
        String client = "";
        GardenState state = GardenState.PENCILLED;
        try (JsonParser json = JSON.createParser(document)) {
            if (json.nextToken() == JsonToken.START_OBJECT) {
                while (json.nextToken() == JsonToken.FIELD_NAME) {
                    String field = json.currentName();
                    JsonToken value = json.nextToken();
                    if (field.equals("state") && value == JsonToken.VALUE_STRING) state = GardenState.of(json.getText()).orElse(state);
                    else if (field.equals("quote") && value == JsonToken.START_OBJECT) client = client(json, client);
                    else json.skipChildren();
                }
            }
        } catch (IOException unreadable) {
            // what was found before the fault is shown
        }
        return new Listed(shortened(name), shortened(client), state);
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

    private static String shortened(String text) {
        return Rows.shortened(text, GardenStore.NAME_CHARACTERS);
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
