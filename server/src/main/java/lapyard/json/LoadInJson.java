package lapyard.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.OptionalDouble;
import lapyard.loadin.Load;
import lapyard.loadin.LoadIn;
import lapyard.loadin.Trips;
import lapyard.words.Wording;

/** The wire form of the load-in. */
public final class LoadInJson {
    private static final JsonNodeFactory NODES = JsonNodeFactory.withExactBigDecimals(true);

    private LoadInJson() {}

    public static ObjectNode of(LoadIn loads, Wording words) {
        ObjectNode json = NODES.objectNode();
        ArrayNode drops = json.putArray("drops");
        loads.drops().forEach(drop -> drops.add(drop(drop)));
        ArrayNode lifts = json.putArray("lifts");
        for (LoadIn.Lift lift : loads.lifts()) {
            ObjectNode one = load(lift.load());
            one.put("people", lift.people());
            one.put("beyondCrew", lift.beyondCrew());
            one.put("overGuide", lift.overGuide());
            one.set("working", JobSheetJson.working(lift.working()));
            lifts.add(one);
        }
        loads.longest().ifPresentOrElse(load -> json.set("longest", load(load)), () -> json.putNull("longest"));
        json.set("roundTurn", optional(loads.roundTurn(), 1));
        json.put("bags", loads.bags());
        loads.bagPlaces().ifPresentOrElse(
                places -> {
                    ArrayNode at = json.putArray("bagPlaces");
                    places.forEach(point -> at.addArray().add(JobSheetJson.number(point.x(), 1)).add(JobSheetJson.number(point.y(), 1)));
                },
                () -> json.putNull("bagPlaces"));
        ArrayNode barrows = json.putArray("barrows");
        for (LoadIn.Barrows good : loads.barrows()) {
            ObjectNode one = barrows.addObject();
            one.put("item", good.item());
            one.put("label", good.label());
            one.set("volumeM3", JobSheetJson.number(good.volumeM3(), 6));
            one.put("runs", good.runs());
            one.set("hours", JobSheetJson.number(good.hours(), 2));
            one.set("working", JobSheetJson.working(good.working()));
        }
        json.set("findings", FindingsJson.of(loads.findings(), words));
        ArrayNode cautions = json.putArray("cautions");
        loads.cautions().forEach(cautions::add);
        return json;
    }

    private static ObjectNode drop(LoadIn.Drop drop) {
        ObjectNode json = NODES.objectNode();
        json.put("supplier", drop.supplier().id());
        json.put("name", drop.supplier().name());
        json.put("leadDays", drop.supplier().leadDays());
        json.set("massKg", JobSheetJson.number(drop.massKg(), 1));
        json.put("massAtLeast", drop.massAtLeast());
        json.set("volumeM3", JobSheetJson.number(drop.volumeM3(), 3));
        ArrayNode loads = json.putArray("loads");
        drop.loads().forEach(load -> loads.add(load(load)));
        drop.vehicle().ifPresentOrElse(vehicle -> {
            ObjectNode of = json.putObject("vehicle");
            of.put("name", vehicle.name());
            of.set("payload", JobSheetJson.number(vehicle.payloadKg(), 1));
            of.set("bedLength", JobSheetJson.number(vehicle.bedLengthMm(), 1));
            of.set("volume", JobSheetJson.number(vehicle.volumeM3(), 3));
        }, () -> json.putNull("vehicle"));
        drop.trips().ifPresentOrElse(trips -> json.set("trips", trips(trips)), () -> json.putNull("trips"));
        return json;
    }

    private static ObjectNode trips(Trips trips) {
        ObjectNode json = NODES.objectNode();
        json.put("count", trips.trips().size());
        json.put("atLeast", trips.atLeast());
        json.put("proven", trips.proved());
        ArrayNode each = json.putArray("trips");
        for (Trips.Trip trip : trips.trips()) {
            ObjectNode one = each.addObject();
            one.set("massKg", JobSheetJson.number(trip.massKg(), 1));
            one.set("volumeM3", JobSheetJson.number(trip.volumeM3(), 3));
            ArrayNode counts = one.putArray("loads");
            trip.counts().forEach((load, count) -> {
                ObjectNode of = counts.addObject();
                of.put("item", load.item());
                of.put("name", load.name());
                of.put("count", count);
            });
        }
        ArrayNode tooMuch = json.putArray("tooMuch");
        trips.tooMuch().forEach(load -> tooMuch.add(load(load)));
        return json;
    }

    private static ObjectNode load(Load load) {
        ObjectNode json = NODES.objectNode();
        json.put("item", load.item());
        json.put("label", load.label());
        json.put("name", load.name());
        json.put("count", load.count());
        json.set("massKg", optional(load.massKg(), 1));
        json.set("volumeM3", JobSheetJson.number(load.volumeM3(), 4));
        json.set("length", JobSheetJson.number(load.lengthMm(), 1));
        json.put("bulk", load.bulk());
        return json;
    }

    private static com.fasterxml.jackson.databind.JsonNode optional(OptionalDouble value, int decimals) {
        return value.isPresent() ? JobSheetJson.number(value.getAsDouble(), decimals) : NODES.nullNode();
    }
}
