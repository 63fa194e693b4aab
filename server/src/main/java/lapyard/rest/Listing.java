package lapyard.rest;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lapyard.store.GardenList;
import lapyard.store.GardenStore;

/**
 * One page of a list as it is sent.
 *
 * @param link the header that tells where the page after is; empty with the last page
 */
record Listing(String json, Optional<String> link) {
    static final int PAGE = 50;
    /** The page of gardens that is answered where nothing else was asked for. */
    static final GardenList.Ask FIRST =
            new GardenList.Ask(PAGE, Optional.empty(), GardenList.Place.STANDING, Optional.empty(), List.of(), GardenList.Order.NAME);

    static Listing of(GardenStore store, GardenList.Ask ask) {
        GardenList list = store.list(ask);
        return of(list, list.next().map(end -> address(ask, end)));
    }

    /** @param next address of the page after */
    static Listing of(GardenList list, Optional<String> next) {
        return of(next, "gardens", list.rows().stream().map(Listing::row).toList(), "total", list.total());
    }

    private static Object row(GardenList.Row row) {
        return Json.object("id", row.id(), "name", row.name(), "client", row.client().isEmpty() ? null : row.client(), "state", row.state().code(), "revision", row.revision(), "changed", row.changed());
    }

    /** @param members as {@link Json#object} takes them; the address of the next page is added where there is one */
    static Listing of(Optional<String> next, Object... members) {
        Map<String, Object> page = Json.object(members);
        next.ifPresent(address -> page.put("next", address));
        return new Listing(Json.text(page), next.map(address -> "<" + address + ">; rel=\"next\""));
    }

    /** Where the page after is. */
    private static String address(GardenList.Ask ask, String end) {
        StringBuilder address = new StringBuilder("/api/gardens?after=" + end + "&limit=" + ask.limit());
        if (ask.place() != GardenList.Place.STANDING) address.append('&').append(QueryParameters.code(ask.place())).append("=true");
        ask.state().ifPresent(state -> address.append("&state=").append(state.code()));
        if (!ask.words().isEmpty()) address.append("&find=").append(URLEncoder.encode(String.join(" ", ask.words()), StandardCharsets.UTF_8));
        if (ask.order() != GardenList.Order.NAME) address.append("&order=").append(QueryParameters.code(ask.order()));
        return address.toString();
    }
}
