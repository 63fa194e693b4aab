package lapyard.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lapyard.geometry.Point;
import lapyard.json.Wire.To;
import lapyard.loadin.Load;
import lapyard.loadin.LoadIn;
import lapyard.loadin.Trips;
import lapyard.words.Wording;

/** The wire form of the load-in. */
public final class LoadInJson {
    private LoadInJson() {}

    private record Whole(List<LoadIn.Drop> drops, List<LoadIn.Lift> lifts, Optional<Load> longest, @To(1) OptionalDouble roundTurn, long bags,
            Optional<List<Point>> bagPlaces, List<LoadIn.Barrows> barrows, ArrayNode findings, List<String> cautions) {}

    record Count(String item, String name, long count) {}

    public static ObjectNode of(LoadIn loads, Wording words) {
        return Wire.of(new Whole(
                loads.drops(), loads.lifts(), loads.longest(), loads.roundTurn(), loads.bags(), loads.bagPlaces(), loads.barrows(),
                FindingsJson.of(loads.findings(), words), loads.cautions()));
    }

    static List<Count> counts(Trips.Trip trip) {
        return trip.counts().entrySet().stream().map(of -> new Count(of.getKey().item(), of.getKey().name(), of.getValue())).toList();
    }
}
