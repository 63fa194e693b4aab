package lapyard.construction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.geometry.Rectangle;
import lapyard.plan.Base;
import lapyard.plan.Lap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;

/** Floors as they are drawn, measured by JTS. */
class FloorsTest {
    private static final GeometryFactory JTS = new GeometryFactory();
    private static final Base BASE = Base.USUAL.slatted(true);

    static List<Outline> outlines() {
        Random random = new Random(4);
        List<Outline> all = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            int sides = 5 + i % 4;
            double turn = random.nextDouble();
            List<Point> corners = new ArrayList<>();
            for (int k = 0; k < sides; k++) {
                double angle = 2 * Math.PI * (k + turn) / sides;
                corners.add(new Point(Math.rint((1500 + 100 * i) * Math.cos(angle)), Math.rint((1200 + 80 * i) * Math.sin(angle))));
            }
            all.add(new Outline(corners));
        }
        return all;
    }

    private static Polygon shape(List<Point> corners) {
        List<Coordinate> ring = new ArrayList<>(corners.stream().map(at -> new Coordinate(at.x(), at.y())).toList());
        ring.add(ring.get(0));
        return JTS.createPolygon(ring.toArray(Coordinate[]::new));
    }

    /** Bearers are 50 wide, each wall that slants has one along it, and all lie inside but for ends that are sawn off. */
    @ParameterizedTest
    @MethodSource("outlines")
    void bearersLieUnderSlatsAndAlongSlantedWalls(Outline outline) {
        BedWork work = Beds.work(Beds.bed("X", outline, 3, Lap.TURNING), lapyard.plan.Saw.USUAL, 20_000, Map.of(), Optional.empty(), 2400, 25);
        Polygon floor = shape(work.frame().inner().corners());
        int along = 0;
        for (FloorBay bay : work.bottom().bays()) {
            for (FloorBay.Laid bearer : bay.bearersLaid()) {
                Polygon bar = shape(bearer.corners());
                assertEquals(50 * bearer.lengthMm(), bar.getArea(), 1e-3);
                assertEquals(2 * (50 + bearer.lengthMm()), bar.getLength(), 1e-6);
                assertTrue(floor.intersection(bar).getArea() > bar.getArea() / 4, outline + " " + bearer);
                assertTrue(bearer.lengthMm() >= 150);
                Point way = bearer.corners().get(1);
                Point from = bearer.corners().get(0);
                boolean slanted = Math.abs(way.x() - from.x()) > 1e-6 && Math.abs(way.y() - from.y()) > 1e-6;
                if (!slanted) continue;
                along++;
                assertEquals(0, floor.getExteriorRing().distance(JTS.createPoint(new Coordinate(from.x(), from.y()))), 1e-6);
                assertEquals(0, floor.getExteriorRing().distance(JTS.createPoint(new Coordinate(way.x(), way.y()))), 1e-6);
            }
            double last = bay.bearersAtMm().get(bay.bearersAtMm().size() - 1);
            assertEquals(bay.alongY() ? bay.floor().widthMm() : bay.floor().depthMm(), last, 0.1);
            assertEquals(0, bay.bearersAtMm().get(0));
            assertTrue(bay.spacingMm() <= BASE.bearerEveryMm() + 0.1 && bay.spacingMm() > Math.min(last, BASE.bearerEveryMm() / 2) - 0.1, bay.bearersAtMm().toString());
        }
        Outline inner = work.frame().inner();
        int slants = 0;
        for (int side = 0; side < inner.sides(); side++) {
            Point way = inner.direction(side);
            if (way.x() != 0 && way.y() != 0) slants++;
        }
        assertEquals(slants, along);
    }

    /** Slats lie in rows with even gaps; of each row the floor's own width, less the clearance at its ends, is covered. */
    @ParameterizedTest
    @MethodSource("outlines")
    void slatsCoverEveryRow(Outline outline) {
        BedWork work = Beds.work(Beds.bed("X", outline, 3, Lap.TURNING), lapyard.plan.Saw.USUAL, 20_000, Map.of(), Optional.empty(), 2400, 25);
        Polygon floor = shape(work.frame().inner().corners());
        for (FloorBay bay : work.bottom().bays()) {
            double pieces = bay.slats().rowsMm().stream().flatMap(List::stream).mapToDouble(mm -> mm).sum();
            assertEquals(pieces, bay.slatsLaid().stream().mapToDouble(FloorBay.Laid::lengthMm).sum(), 1e-6);
            double covered = 0;
            for (FloorBay.Laid slat : bay.slatsLaid()) {
                Polygon bar = shape(slat.corners());
                covered += floor.intersection(bar).getArea();
            }
            double pitch = BASE.slatWidthMm() + bay.slats().gapMm();
            assertTrue(bay.slats().gapMm() >= 0 && bay.slats().gapMm() <= BASE.slatMaxGapMm() + 1e-9);
            Polygon own = shape(List.of(new Point(bay.floor().x(), bay.floor().y()), new Point(bay.floor().right(), bay.floor().y()),
                    new Point(bay.floor().right(), bay.floor().top()), new Point(bay.floor().x(), bay.floor().top())));
            double all = floor.intersection(own).getArea();
            // a corner of less than some rows has no mean
            if (all > 500_000) assertEquals(all * BASE.slatWidthMm() / pitch, covered, 0.06 * all, outline.toString());
        }
    }

    /** Between upright walls a bearer lies with its middle at its place, the outer two along the walls. */
    @Test
    void bearersBetweenUprightWallsLieAtTheirPlaces() {
        for (Outline outline : List.of(Beds.M, Beds.N, Beds.U)) {
            BedWork work = Beds.built(Beds.bed("X", outline, 3, Lap.TURNING));
            for (FloorBay bay : work.bottom().bays()) {
                double across = bay.alongY() ? bay.floor().widthMm() : bay.floor().depthMm();
                double first = bay.alongY() ? bay.floor().x() : bay.floor().y();
                assertEquals(bay.bearersAtMm().size(), bay.bearers());
                for (int i = 0; i < bay.bearers(); i++) {
                    Polygon bar = shape(bay.bearersLaid().get(i).corners());
                    double middle = bay.alongY() ? bar.getCentroid().getX() : bar.getCentroid().getY();
                    assertEquals(first + Math.min(Math.max(bay.bearersAtMm().get(i), 25), across - 25), middle, 1e-6);
                    assertEquals((bay.alongY() ? bay.floor().depthMm() : bay.floor().widthMm()) - BASE.drainGapMm(), bay.bearersLaid().get(i).lengthMm(), 0.1);
                }
            }
        }
    }

    /** Where no fall is known: the way with the fewest slat boards, of those the one with the fewest metres of bearer. */
    @Test
    void withoutAFallTheCheapestWayIsTaken() {
        Random random = new Random(7);
        int byMetres = 0;
        for (int i = 0; i < 400; i++) {
            Rectangle floor = new Rectangle(100, 100, 300 + random.nextInt(2000), 300 + random.nextInt(2000));
            Outline inner = Outline.rectangle(floor.widthMm(), floor.depthMm());
            FloorBay up = FloorBay.laid(floor, inner, true, BASE);
            FloorBay across = FloorBay.laid(floor, inner, false, BASE);
            FloorBay taken = FloorBay.of(floor, inner, Optional.empty(), BASE, 4);
            assertEquals(Math.min(up.slatBoards(BASE, 4), across.slatBoards(BASE, 4)), taken.slatBoards(BASE, 4));
            if (up.slatBoards(BASE, 4) != across.slatBoards(BASE, 4)) continue;
            if (Math.abs(up.lengthMm() - across.lengthMm()) > 1) byMetres++;
            double metres = taken.bearersLaid().stream().mapToDouble(FloorBay.Laid::lengthMm).sum();
            assertEquals(Math.min(up.lengthMm(), across.lengthMm()), metres, 1e-6);
            assertEquals(metres, taken.lengthMm(), 1e-6);
        }
        assertTrue(byMetres > 10, "the metres decided " + byMetres + " times");
    }
}
