package lapyard.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lapyard.catalogue.Vehicle;
import lapyard.geometry.Point;
import lapyard.json.Wire.To;
import lapyard.loadin.Load;
import lapyard.loadin.LoadIn;
import lapyard.loadin.Trips;
import lapyard.words.Wording;

/** The wire form of the load-in. */
public final class LoadInJson {
    private LoadInJson() {}

    private record Whole(List<Drop> drops, List<LoadIn.Lift> lifts, Optional<Load> longest, @To(1) OptionalDouble roundTurn, long bags,
            Optional<List<Point>> bagPlaces, List<LoadIn.Barrows> barrows, ArrayNode findings, List<String> cautions) {}

    private record Drop(String supplier, String name, int leadDays, @To(1) double massKg, boolean massAtLeast,
            @To(3) double volumeM3, List<Load> loads, Optional<Vehicle> vehicle, Optional<Journeys> trips) {}

    private record Journeys(int count, int atLeast, boolean proven, List<Trip> trips, List<Load> tooMuch) {}

    private record Trip(@To(1) double massKg, @To(3) double volumeM3, List<Count> loads) {}

    private record Count(String item, String name, long count) {}

    public static ObjectNode of(LoadIn loads, Wording words) {
        return Wire.of(new Whole(
                loads.drops().stream().map(LoadInJson::drop).toList(),
                loads.lifts(), loads.longest(), loads.roundTurn(), loads.bags(), loads.bagPlaces(), loads.barrows(),
                FindingsJson.of(loads.findings(), words), loads.cautions()));
    }

    private static Drop drop(LoadIn.Drop drop) {
        return new Drop(
                drop.supplier().id(), drop.supplier().name(), drop.supplier().leadDays(), drop.massKg(), drop.massAtLeast(),
                drop.volumeM3(), drop.loads(),
                drop.vehicle(), drop.trips().map(LoadInJson::trips));
    }

    private static Journeys trips(Trips trips) {
        return new Journeys(
                trips.trips().size(), trips.atLeast(), trips.proved(),
                trips.trips().stream()
                        .map(trip -> new Trip(trip.massKg(), trip.volumeM3(), trip.counts().entrySet().stream()
                                .map(of -> new Count(of.getKey().item(), of.getKey().name(), of.getValue()))
                                .toList()))
                        .toList(),
                trips.tooMuch());
    }
}
