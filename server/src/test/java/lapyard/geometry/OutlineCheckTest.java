package lapyard.geometry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.algorithm.MinimumDiameter;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;

class OutlineCheckTest {
    private static final OutlineCheck.Rules BED = OutlineCheck.Rules.bed(100);

    @Test
    void aSoundBedAndASoundYardHaveNoFaults() {
        assertEquals(List.of(), OutlineCheck.faults(Outline.rectangle(2400, 1200), BED));
        Outline yard = outline(0, 0, 12000, 0, 12000, 7000, 7000, 9500, 0, 9000);
        assertEquals(List.of(), OutlineCheck.faults(yard, OutlineCheck.Rules.ANY));
        assertEquals(106.0e6, yard.areaMm2(), 1);
        assertEquals(5590.2, yard.sideMm(2), 0.05);
    }

    @Test
    void randomOutlinesWideEnoughForTheirTimberPassEitherWayRound() {
        Random random = new Random(3);
        for (int i = 0; i < 500; i++) {
            Outline outline = RandomOutlines.of(random, 500, 1500);
            assertEquals(List.of(), OutlineCheck.faults(outline, BED), () -> "outline " + outline);
            List<Point> backwards = new ArrayList<>(outline.corners());
            Collections.reverse(backwards);
            assertEquals(List.of(), OutlineCheck.faults(backwards, BED));
        }
    }

    /** Regular outlines of sides that are just long enough, told to 0.1 mm, whichever way they are turned; 0.3 mm less is too short. By construction, no source. */
    @Test
    void aSlantedSideIsNotShortForTheTenthsOfItsCorners() {
        Random random = new Random(740127);
        for (int i = 0; i < 300; i++) {
            int sides = 5 + random.nextInt(4);
            double turn = random.nextDouble() * 6;
            double least = Math.max(300, 100 * (1 + Math.tan(Math.PI / sides))) + 0.05;
            OutlineCheck.Rules rules = new OutlineCheck.Rules(true, 300, 100, 0);
            assertEquals(List.of(), OutlineCheck.faults(regular(sides, least, turn), rules));
            assertEquals(OutlineFault.Kind.SIDE_SHORT, OutlineCheck.faults(regular(sides, least - 0.5, turn), rules).get(0).kind());
        }
        assertEquals(OutlineFault.Kind.SIDE_SHORT, OutlineCheck.faults(Outline.rectangle(2400, 299.9), BED).get(0).kind());
    }

    private static List<Point> regular(int sides, double sideMm, double turnRad) {
        double round = sideMm / 2 / Math.sin(Math.PI / sides);
        return Stream.iterate(0, i -> i + 1).limit(sides).map(i -> turnRad + 2 * Math.PI * i / sides)
                .map(angle -> new Point(Math.round(round * Math.cos(angle) * 10) / 10.0, Math.round(round * Math.sin(angle) * 10) / 10.0)).toList();
    }

    @Test
    void tellsHowManyCornersAreMissing() {
        OutlineFault fault = only(OutlineCheck.faults(List.of(new Point(0, 0)), OutlineCheck.Rules.ANY));
        assertEquals(OutlineFault.Kind.CORNERS_FEW, fault.kind());
        assertEquals(2, fault.amount());
        assertEquals(
                3, OutlineCheck.faults(List.of(), OutlineCheck.Rules.ANY).get(0).amount());
    }

    @Test
    void namesTwoCornersOnOneSpot() {
        OutlineFault fault = only(OutlineCheck.faults(outline(0, 0, 1000, 0, 1000, 0, 1000, 900, 0, 900), BED));
        assertEquals(OutlineFault.Kind.CORNERS_SAME, fault.kind());
        assertEquals(List.of(2, 3), fault.corners());
        OutlineFault closing = only(OutlineCheck.faults(outline(0, 0, 1000, 0, 1000, 900, 0, 900, 0, 0), BED));
        assertEquals(List.of(5, 1), closing.corners());
    }

    /** Side 1 runs 200 past the line of side 3, side 3 runs 700 past the line of side 1: 200 less would mend it. */
    @Test
    void tellsByHowMuchSidesCross() {
        OutlineFault fault = only(OutlineCheck.faults(
                outline(0, 0, 1200, 0, 1200, 900, 1000, 900, 1000, -700, 0, -700), OutlineCheck.Rules.ANY));
        assertEquals(OutlineFault.Kind.SIDES_CROSS, fault.kind());
        assertEquals(List.of(1, 4), fault.corners());
        assertEquals(200, fault.amount(), 1e-9);
        assertEquals(new Point(1000, 0), fault.at());
    }

    @Test
    void findsSidesThatTouchAtAPointOrRunAlongEachOther() {
        OutlineFault point = OutlineCheck.faults(
                        outline(0, 0, 2000, 0, 2000, 2000, 1000, 0, 0, 2000), OutlineCheck.Rules.ANY)
                .get(0);
        assertEquals(OutlineFault.Kind.SIDES_TOUCH, point.kind());
        assertEquals(0, point.amount());
        assertEquals(new Point(1000, 0), point.at());
        OutlineFault along = OutlineCheck.faults(
                        outline(0, 0, 3000, 0, 3000, 1000, 2000, 1000, 2000, 0, 1500, 0, 1500, 1000, 0, 1000),
                        OutlineCheck.Rules.ANY)
                .get(0);
        assertEquals(OutlineFault.Kind.SIDES_TOUCH, along.kind());
        List<OutlineFault> spike =
                OutlineCheck.faults(outline(0, 0, 1000, 0, 1000, 1000, 1000, 400, 0, 400), OutlineCheck.Rules.ANY);
        assertEquals(OutlineFault.Kind.SIDES_TOUCH, spike.get(0).kind());
        assertEquals(600, spike.get(0).amount(), 1e-9);
    }

    /** atan(10/1000) = 0.573 degrees at corner 2; corner 3 is as far off, corner 2 stands first. */
    @Test
    void namesTheWorstCornerThatIsNearlySquare() {
        OutlineFault fault = only(OutlineCheck.faults(outline(0, 0, 2000, 0, 2010, 1000, 0, 1000), BED));
        assertEquals(OutlineFault.Kind.CORNER_NOT_SQUARE, fault.kind());
        assertEquals(2, fault.corners().get(0));
        assertEquals(0.573, fault.amount(), 1e-4);
    }

    @Test
    void aCornerWithinAStraightWallIsToBeLeftOut() {
        OutlineFault fault = only(OutlineCheck.faults(outline(0, 0, 1000, 0, 2000, 0, 2000, 1000, 0, 1000), BED));
        assertEquals(0, fault.amount(), 1e-9);
        assertEquals(List.of(2), fault.corners());
    }

    /** 2000 long with sides that close to 400: 200 clear at the end where 300 is asked. */
    @Test
    void anAngledBedHasToBeWideEnoughInside() {
        OutlineFault fault = only(OutlineCheck.faults(outline(0, 0, 2000, 0, 2000, 1000, 0, 400), BED));
        assertEquals(OutlineFault.Kind.INSIDE_NARROW, fault.kind());
        assertTrue(fault.amount() > 50 && fault.amount() < 110, fault.toString());
        assertEquals(List.of(0, 2), fault.sides());
        assertEquals(List.of(), OutlineCheck.faults(outline(0, 0, 2000, 0, 2000, 1000, 0, 700), BED));
    }

    /** The least width of a triangle is its least height: by JTS, of random ones and of what walls of 50 leave inside 224. */
    @Test
    void aTriangleHasToBeWideEnoughInside() {
        OutlineCheck.Rules bed = OutlineCheck.Rules.bed(50);
        OutlineFault small = only(OutlineCheck.faults(outline(0, 0, 224, 0, 112, 193.99), bed));
        assertEquals(OutlineFault.Kind.INSIDE_NARROW, small.kind());
        assertEquals(300 - 44.0, small.amount(), 0.1);
        Random random = new Random(20261130);
        int narrow = 0;
        for (int i = 0; i < 400; i++) {
            Outline drawn = outline(0, 0, 200 + random.nextInt(900), 0, 100 + random.nextInt(700), 200 + random.nextInt(900));
            var ring = drawn.corners().stream().map(one -> new Coordinate(one.x(), one.y())).collect(Collectors.toCollection(ArrayList::new));
            ring.add(ring.get(0));
            var inside = BufferOp.bufferOp(new GeometryFactory().createPolygon(ring.toArray(Coordinate[]::new)), -50, new BufferParameters(8, BufferParameters.CAP_FLAT, BufferParameters.JOIN_MITRE, 20));
            double clear = inside.isEmpty() ? 0 : new MinimumDiameter(inside).getLength();
            List<OutlineFault> told = OutlineCheck.faults(drawn, bed).stream().filter(fault -> fault.kind() == OutlineFault.Kind.INSIDE_NARROW).toList();
            if (!inside.isEmpty() && told.size() == 1) assertEquals(300 - clear, told.get(0).amount(), 0.01, drawn.toString());
            if (OutlineCheck.faults(drawn, bed).isEmpty()) assertTrue(clear > 299.99, drawn.toString());
            // the way out moves the last side told: all grows from the corner across from it
            for (Outline shown : told.isEmpty() ? List.<Outline>of() : List.of(drawn, new Outline(List.of(drawn.corner(2), drawn.corner(1), drawn.corner(0))))) {
                OutlineFault fault = OutlineCheck.faults(shown, bed).stream().filter(one -> one.kind() == OutlineFault.Kind.INSIDE_NARROW).findFirst().orElseThrow();
                int side = fault.sides().get(1);
                Point apex = shown.corner(side + 2);
                double by = 1 + (fault.amount() + 0.01) / (2 * shown.areaMm2() / shown.sideMm(side));
                Outline moved = new Outline(shown.corners().stream().map(one -> apex.towards(one, by)).toList());
                assertTrue(OutlineCheck.faults(moved, bed).stream().noneMatch(one -> one.kind() == OutlineFault.Kind.INSIDE_NARROW), shown + " moved at " + side);
            }
            narrow += told.size();
        }
        assertTrue(narrow > 50 && narrow < 350, narrow + " are narrow");
    }

    @Test
    void aSquareDrawnOnItsPointIsTiltedBy45() {
        OutlineFault fault = only(OutlineCheck.faults(outline(0, 0, 2000, 2000, 0, 4000, -2000, 2000), BED));
        assertEquals(OutlineFault.Kind.OUTLINE_TILTED, fault.kind());
        assertEquals(45, fault.amount(), 1e-9);
    }

    /** The worked example of a wall 240 long where 3t is 300: 60 short. */
    @Test
    void tellsWhatAShortSideLacks() {
        List<OutlineFault> faults =
                OutlineCheck.faults(outline(0, 0, 3000, 0, 3000, 1500, 1800, 1500, 1800, 1740, 0, 1740), BED);
        OutlineFault fault = only(faults);
        assertEquals(OutlineFault.Kind.SIDE_SHORT, fault.kind());
        assertEquals(List.of(3), fault.sides());
        assertEquals(60, fault.amount(), 1e-9);
    }

    /** An arm 440 wide between walls of 100 leaves 240 clear: 60 short of 300. */
    @Test
    void findsTheNarrowArmAndItsPlace() {
        OutlineFault fault =
                only(OutlineCheck.faults(outline(0, 0, 3000, 0, 3000, 1500, 440, 1500, 440, 2700, 0, 2700), BED));
        assertEquals(OutlineFault.Kind.INSIDE_NARROW, fault.kind());
        assertEquals(60, fault.amount(), 1e-9);
        // inner faces look at each other from 1400, round the inside corner, to 2600
        assertEquals(new Point(220, 2000), fault.at());
        assertEquals(List.of(3, 5), fault.sides());
    }

    /** Inside, a disc of 300 goes through all of each (JTS): a step of 230 to 280 clear behind an inside corner is no width, whatever its angle. */
    @ParameterizedTest
    @CsvSource({"0 0 2000 0 2000 1600 860 1390 890 1140 0 1100", "0 0 2000 0 2000 1070 900 1400 700 1240 0 1620", "0 0 2000 0 2000 1150 1050 1300 1150 1600 0 1550"})
    void aStepBehindAnInsideCornerIsNotNarrow(String text) {
        List<Point> corners = new ArrayList<>(outline(Stream.of(text.split(" ")).mapToDouble(Double::parseDouble).toArray()).corners());
        for (int turn = 0; turn < 24; turn++) {
            if (turn == 6 || turn == 18) Collections.reverse(corners);
            if (turn == 12) corners.replaceAll(corner -> new Point(2000 - corner.x(), corner.y()));
            Collections.rotate(corners, 1);
            assertEquals(List.of(), OutlineCheck.faults(corners, OutlineCheck.Rules.bed(50)), corners::toString);
            assertEquals(1, Jts.area(Inset.of(new Outline(corners).counterClockwise(), 50).corners()).buffer(-150).getNumGeometries());
        }
    }

    /** Two bodies that meet over a neck of 500 x 400: clear 300 x 200 after walls of 100, diagonal 360.6. */
    @Test
    void measuresTheNeckBetweenTwoInsideCorners() {
        Outline wide = outline(0, 0, 2000, 0, 2000, 1500, 3500, 1500, 3500, 3400, 1500, 3400, 1500, 1900, 0, 1900);
        assertEquals(List.of(), OutlineCheck.faults(wide, BED));
        // 350 x 350: 150 x 150 clear, 212.1 across: 87.9 short of 300.
        OutlineFault fault = only(OutlineCheck.faults(
                outline(0, 0, 2000, 0, 2000, 1500, 3500, 1500, 3500, 3400, 1650, 3400, 1650, 1850, 0, 1850), BED));
        assertEquals(OutlineFault.Kind.INSIDE_NARROW, fault.kind());
        assertEquals(300 - 150 * Math.sqrt(2), fault.amount(), 1e-6);
        assertEquals(new Point(1825, 1675), fault.at());
        // 0 x 350: the faces past the two corners look at each other over 200, 150 apart
        OutlineFault above = only(OutlineCheck.faults(
                outline(0, 0, 2000, 0, 2000, 1500, 3500, 1500, 3500, 3400, 2000, 3400, 2000, 1850, 0, 1850), BED));
        assertEquals(150, above.amount(), 1e-6);
        assertEquals(new Point(2000, 1675), above.at());
        // 150 x 150: the walls of the two inside corners would meet, 50 too much both ways.
        OutlineFault closed = only(OutlineCheck.faults(
                outline(0, 0, 2000, 0, 2000, 1500, 3500, 1500, 3500, 3400, 1850, 3400, 1850, 1650, 0, 1650), BED));
        assertEquals(350, closed.amount(), 1e-6);
    }

    /** The same narrow arm given clockwise: its walls keep the numbers of the corner list as given. */
    @Test
    void aClockwiseOutlineNamesItsOwnSides() {
        OutlineFault fault =
                only(OutlineCheck.faults(outline(0, 2700, 440, 2700, 440, 1500, 3000, 1500, 3000, 0, 0, 0), BED));
        assertEquals(OutlineFault.Kind.INSIDE_NARROW, fault.kind());
        assertEquals(List.of(1, 5), fault.sides());
        assertEquals(60, fault.amount(), 1e-9);
    }

    private static OutlineFault only(List<OutlineFault> faults) {
        assertEquals(1, faults.size(), () -> "faults " + faults);
        return faults.get(0);
    }

    static Outline outline(double... xy) {
        List<Point> corners = new ArrayList<>();
        for (int i = 0; i < xy.length; i += 2) {
            corners.add(new Point(xy[i], xy[i + 1]));
        }
        return new Outline(corners);
    }
}
