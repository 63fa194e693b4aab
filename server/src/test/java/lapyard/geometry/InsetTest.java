package lapyard.geometry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;

class InsetTest {
    @Test
    void theInnerFacesOfAnLStandOneThicknessIn() {
        Outline outline = OutlineCheckTest.outline(0, 0, 3000, 0, 3000, 1500, 1800, 1500, 1800, 2400, 0, 2400);
        assertEquals(
                OutlineCheckTest.outline(100, 100, 2900, 100, 2900, 1400, 1700, 1400, 1700, 2300, 100, 2300),
                Inset.of(outline, 100));
    }

    /** Two judges: the closed formula outer area - t (P - 4t), and a mitred buffer of the JTS Topology Suite. */
    @Test
    void agreesWithTheFormulaAndWithAMitredBufferOnRandomOutlines() {
        Random random = new Random(5);
        BufferParameters mitred = new BufferParameters(8, BufferParameters.CAP_FLAT, BufferParameters.JOIN_MITRE, 5);
        for (int i = 0; i < 500; i++) {
            Outline outline = RandomOutlines.of(random, 500, 1500);
            double t = 20 + random.nextInt(80);
            Outline inner = Inset.of(outline, t);
            assertEquals(outline.areaMm2() - t * (outline.perimeterMm() - 4 * t), inner.areaMm2(), 1e-3);
            assertEquals(outline.perimeterMm() - 8 * t, inner.perimeterMm(), 1e-6);
            Geometry judge = BufferOp.bufferOp(polygon(outline), -t, mitred);
            assertTrue(judge.symDifference(polygon(inner)).getArea() < 1, () -> "outline " + outline + " by " + t);
        }
    }

    @Test
    void decimalsThatBinaryCannotHoldStillMeetOnOneLine() {
        Outline outline = OutlineCheckTest.outline(
                0, 0, 3000, 0, 3000, 1600.1, 1800, 1600.1, 1800, 2400, 900, 2400, 900, 1800.1, 0, 1800.1);
        Outline inner = Inset.of(outline, 100);
        assertEquals(1500.1, inner.corner(2).y());
        assertEquals(1700.1, inner.corner(6).y());
    }

    static org.locationtech.jts.geom.Polygon polygon(Outline outline) {
        Coordinate[] ring = new Coordinate[outline.sides() + 1];
        for (int i = 0; i <= outline.sides(); i++) {
            ring[i] = new Coordinate(outline.corner(i).x(), outline.corner(i).y());
        }
        return new GeometryFactory().createPolygon(ring);
    }
}
