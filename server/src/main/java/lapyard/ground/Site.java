package lapyard.ground;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import lapyard.plan.Bed;
import lapyard.plan.Garden;
import lapyard.plan.WayKind;
import lapyard.plan.WayOut;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.index.strtree.STRtree;

/** The yard with everything in it, ready to be asked what is near and what is free. */
final class Site {
    /** A second move longer than this many times the first is no help. */
    private static final double SECOND_MOVE = 2;

    private final Optional<Geometry> yard;
    private final Optional<PreparedGeometry> insideYard;
    private final List<Lot> lots = new ArrayList<>();
    private final List<Zone> zones = new ArrayList<>();
    private final STRtree index = new STRtree();
    private final STRtree zoneIndex = new STRtree();

    /** A bed and how far it would move. */
    private record Move(Direction direction, double mm, boolean free) {}

    Site(Garden garden) {
        yard = garden.ground().outline().stream().findFirst().map(Shapes::area);
        insideYard = yard.map(PreparedGeometryFactory::prepare);
        for (Bed bed : garden.beds()) {
            Lot lot = Lot.of(lots.size(), bed);
            lots.add(lot);
            index.insert(lot.area().getEnvelopeInternal(), lot);
        }
        garden.ground().keepClear().forEach(kept -> zones.add(Zone.of(zones.size(), kept, yard)));
        for (Zone zone : zones) zoneIndex.insert(zone.keptClear().getEnvelopeInternal(), zone);
    }

    Optional<Geometry> yard() {
        return yard;
    }

    List<Lot> lots() {
        return lots;
    }

    List<Zone> zones() {
        return zones;
    }

    /** Zones whose ground to keep clear may come within {@code mm} of the shape, in the order of the document. */
    List<Zone> zonesNear(Geometry shape, double mm) {
        return near(zoneIndex, shape, mm, Comparator.comparingInt(Zone::index));
    }

    /** True too where no yard was drawn. */
    boolean insideYard(Geometry shape) {
        return insideYard.isEmpty() || insideYard.get().covers(shape);
    }

    /** Beds whose upright bounds come within {@code mm} of the shape's, in the order of the document. */
    List<Lot> near(Geometry shape, double mm) {
        return near(index, shape, mm, Comparator.comparingInt(Lot::index));
    }

    /** Beds and other things by which a shape's upright bounds cannot be walked. */
    List<Geometry> standingNear(Geometry shape) {
        List<Geometry> standing = new ArrayList<>(near(shape, 0).stream().map(Lot::area).toList());
        zonesNear(shape, 0).stream().filter(Zone::solid).forEach(zone -> standing.add(zone.shape()));
        return standing;
    }

    @SuppressWarnings("unchecked")
    private static <T> List<T> near(STRtree index, Geometry shape, double mm, Comparator<T> order) {
        Envelope around = shape.getEnvelopeInternal().copy();
        around.expandBy(mm);
        List<T> near = new ArrayList<>(index.query(around));
        near.sort(order);
        return near;
    }

    /**
     * The shortest moves, in whole millimetres where those do, that free a bed of one obstacle and bring it into no
     * other trouble, and the least that its width or depth must lose. Where every move meets something else, the
     * shortest stands alone.
     *
     * @param free whether a moved or smaller bed is rid of the obstacle
     */
    List<WayOut> waysOut(Lot lot, Geometry obstacle, Predicate<Lot> free) {
        List<Move> moves = new ArrayList<>();
        for (Direction direction : Direction.values()) {
            OptionalDouble mm = direction.leastMm(lot.area(), obstacle, s -> free.test(direction.move(lot, s)));
            mm.ifPresent(s -> moves.add(new Move(direction, s, clear(direction.move(lot, s)))));
        }
        moves.sort(Comparator.comparing((Move move) -> !move.free).thenComparingDouble(Move::mm));
        Optional<WayOut> cut = Cut.least(lot, obstacle, free);
        List<WayOut> ways = new ArrayList<>();
        for (Move move : moves) {
            if (move.free && ways.size() < (cut.isPresent() ? 1 : 2) && move.mm <= SECOND_MOVE * moves.get(0).mm) {
                ways.add(move.direction.way(move.mm));
            }
        }
        cut.ifPresent(ways::add);
        if (ways.isEmpty()) {
            ways.add(
                    moves.isEmpty()
                            ? WayOut.of(WayKind.MOVE_TO_FREE_PLACE)
                            : moves.get(0).direction.way(moves.get(0).mm));
        }
        return ways;
    }

    /** Whether a moved bed stands in the yard and on nothing else. */
    boolean clear(Lot moved) {
        return insideYard(moved.core())
                && near(moved.area(), 0).stream()
                        .noneMatch(other ->
                                other.index() != moved.index() && moved.core().intersects(other.area()))
                && zonesNear(moved.area(), 1).stream().noneMatch(zone -> zone.blocks(moved));
    }
}
