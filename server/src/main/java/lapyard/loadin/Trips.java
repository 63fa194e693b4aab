package lapyard.loadin;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lapyard.catalogue.Vehicle;
import lapyard.working.Whole;

/**
 * Loads shared out over trips of one vehicle, neither its payload nor its room exceeded.
 *
 * @param trips   what goes on each
 * @param atLeast no way takes fewer trips
 * @param tooMuch loads of which one alone is longer than the bed or over payload or room; on no trip
 */
public record Trips(List<Trip> trips, int atLeast, List<Load> tooMuch) {
    /** Largest first into the first trip that holds it; where that is not the bound, fewer are tried for this many steps. */
    private static final int MOST_STEPS = 200_000;

    private static final int MOST_TRIED_THINGS = 60;
    private static final double NOISE = 1e-9;

    public boolean proved() {
        return trips.size() == atLeast;
    }

    /** {@code counts} by load, in the order of loading, heaviest and longest first. */
    public record Trip(Map<Load, Long> counts, double massKg, double volumeM3) {}

    /** One thing to be loaded: shares of payload and room. */
    private record Thing(Load load, double mass, double room) {
        double size() {
            return Math.max(mass, room);
        }
    }

    /** What goes together, and the shares that it takes. */
    private static final class Shares {
        final List<Thing> things = new ArrayList<>();
        double mass;
        double room;

        boolean holds(Thing more) {
            return mass + more.mass() <= 1 + NOISE && room + more.room() <= 1 + NOISE;
        }

        void add(Thing more) {
            things.add(more);
            mass += more.mass();
            room += more.room();
        }

        void removeLast() {
            Thing last = things.remove(things.size() - 1);
            mass -= last.mass();
            room -= last.room();
        }
    }

    static Trips of(List<Load> loads, Vehicle vehicle) {
        List<Load> tooMuch = new ArrayList<>();
        List<Thing> things = new ArrayList<>();
        for (Load load : loads) {
            Thing thing = new Thing(load, load.massKg().orElse(0) / vehicle.payloadKg(), load.volumeM3() / vehicle.volumeM3());
            if (load.longerThanMm(vehicle.bedLengthMm()) > NOISE || thing.size() > 1 + NOISE) {
                tooMuch.add(load);
                continue;
            }
            for (long i = 0; i < load.count(); i++) things.add(thing);
        }
        things.sort(Comparator.comparingDouble(Thing::size).reversed());
        int bound = bound(things);
        List<Shares> packed = firstFit(things);
        if (packed.size() > bound && things.size() <= MOST_TRIED_THINGS) {
            int tried = bound;
            int[] steps = {MOST_STEPS};
            while (tried < packed.size()) {
                List<Shares> fewer = new ArrayList<>();
                for (int i = 0; i < tried; i++) fewer.add(new Shares());
                if (fits(things, 0, fewer, steps)) {
                    packed = fewer;
                } else if (steps[0] > 0) {
                    bound = ++tried;
                } else {
                    break;
                }
            }
        }
        return new Trips(packed.stream().map(Trips::trip).toList(), bound, tooMuch);
    }

    /** The larger of the shares of mass and of room, and of the things of which no two go together. */
    private static int bound(List<Thing> things) {
        double mass = things.stream().mapToDouble(Thing::mass).sum();
        double room = things.stream().mapToDouble(Thing::room).sum();
        long heavy = things.stream().filter(thing -> thing.mass() > 0.5 + NOISE).count();
        long large = things.stream().filter(thing -> thing.room() > 0.5 + NOISE).count();
        return (int) Math.max(Whole.up(Math.max(mass, room)), Math.max(heavy, large));
    }

    /** Where one of a load did not fit, the next one does not either. */
    private static List<Shares> firstFit(List<Thing> things) {
        List<Shares> trips = new ArrayList<>();
        Thing before = null;
        int into = 0;
        for (Thing thing : things) {
            if (thing != before) into = 0;
            before = thing;
            while (into < trips.size() && !trips.get(into).holds(thing)) into++;
            if (into == trips.size()) trips.add(new Shares());
            trips.get(into).add(thing);
        }
        return trips;
    }

    /** Every way to share the things out, alike trips tried once. */
    private static boolean fits(List<Thing> things, int next, List<Shares> trips, int[] steps) {
        if (next == things.size()) return true;
        Thing thing = things.get(next);
        List<String> tried = new ArrayList<>();
        for (Shares trip : trips) {
            if (steps[0]-- <= 0) {
                steps[0] = 0;
                return false;
            }
            String alike = Math.round(trip.mass * 1e9) + "/" + Math.round(trip.room * 1e9);
            if (!tried.contains(alike) && trip.holds(thing)) {
                tried.add(alike);
                trip.add(thing);
                if (fits(things, next + 1, trips, steps)) return true;
                trip.removeLast();
            }
        }
        return false;
    }

    private static Trip trip(Shares shares) {
        Map<Load, Long> counts = new LinkedHashMap<>();
        double mass = 0;
        double volume = 0;
        for (Thing thing : shares.things) {
            counts.merge(thing.load(), 1L, Long::sum);
            mass += thing.load().massKg().orElse(0);
            volume += thing.load().volumeM3();
        }
        return new Trip(counts, mass, volume);
    }
}
