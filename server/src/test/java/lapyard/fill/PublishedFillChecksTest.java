package lapyard.fill;

import static lapyard.construction.Beds.value;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import lapyard.catalogue.Section;
import lapyard.construction.BedWork;
import lapyard.construction.Beds;
import lapyard.geometry.Outline;
import lapyard.plan.Base;
import lapyard.plan.Bed;
import lapyard.plan.Fill;
import lapyard.plan.Fill.Layer;
import lapyard.plan.Finish;
import lapyard.plan.Lap;
import lapyard.plan.Liner;
import lapyard.plan.Saw;
import lapyard.working.Quantity;
import org.junit.jupiter.api.Test;

/**
 * Figures from outside this project: published (printed there), derived (arithmetic from a stated rule), erratum
 * (printed wrong, put right).
 */
class PublishedFillChecksTest {
    private static final double FT = 304.8;
    /** Exact: the international foot of 1959, cubed. */
    private static final double M3_PER_FT3 = 0.028316846592;

    private static final double M3_PER_YD3 = 0.764554857984;

    /** A bed whose inside is this outline less walls of {@code t}, filled to the rim from the ground. */
    private static List<Quantity> filled(Outline outer, double t, double height, Fill fill) {
        Bed bed = Beds.section(Beds.bed("P", outer, 1, Lap.TURNING), new Section("s", t, height, 600, List.of(), Optional.empty(), false, 1, false));
        BedWork work = lapyard.construction.Beds.work(Beds.filled(bed, Base.USUAL.slatted(false), Liner.NONE, fill, Finish.NONE), Saw.USUAL, 1e6, Map.of(), Optional.empty(), 2400, 25);
        return BedFill.of(work, 60, false).quantities();
    }

    private static Outline around(double length, double width, double t) {
        return Outline.rectangle(length + 2 * t, width + 2 * t);
    }

    private static Fill full(Layer... layers) {
        return new Fill(0, 0, 0, layers.length == 0 ? List.of(new Layer("soil.topsoil", 1)) : List.of(layers));
    }

    /** Published on a gardening site (8 x 4 ft, 12 in): 32 cu ft, 1.19 cu yd; 906.1 l by arithmetic. */
    @Test
    void aBedOf8By4FeetOneFootDeepTakes32CubicFeet() {
        double soil = value(filled(around(8 * FT, 4 * FT, 50), 50, FT, full()), "soil.settled");
        assertEquals(32, soil / M3_PER_FT3, 1e-6);
        assertEquals(1.19, soil / M3_PER_YD3, 0.005);
        assertEquals(906.1, soil * 1000, 0.1);
    }

    /** Erratum: a raised-bed article prints 64 cu ft and then a bit more than 1 cu yd; it is 2.37. */
    @Test
    void twoFeetDeepIs2Point37CubicYards() {
        double soil = value(filled(around(8 * FT, 4 * FT, 50), 50, 2 * FT, full()), "soil.settled");
        assertEquals(2.37, soil / M3_PER_YD3, 0.001);
    }

    /** Published on a retailer's soil page: 6 x 3 ft, 10 in, 60/30/10 by volume: 15 cu ft as 9, 4.5 and 1.5. */
    @Test
    void aMixOf60And30And10IsSplitByVolume() {
        var quantities = filled(
                around(6 * FT, 3 * FT, 50),
                50,
                10 * 25.4,
                full(new Layer("soil.topsoil", 0.6), new Layer("soil.compost", 0.3), new Layer("soil.grit", 0.1)));
        assertEquals(15, value(quantities, "soil.settled") / M3_PER_FT3, 1e-6);
        assertEquals(9, value(quantities, "soil.topsoil") / M3_PER_FT3, 1e-6);
        assertEquals(4.5, value(quantities, "soil.compost") / M3_PER_FT3, 1e-6);
        assertEquals(1.5, value(quantities, "soil.grit") / M3_PER_FT3, 1e-6);
    }

    /** Published in an article on cubic feet: 48 x 36 x 18 in is 18 cu ft. */
    @Test
    void aBedOf48By36By18InchesTakes18CubicFeet() {
        double soil = value(filled(around(48 * 25.4, 36 * 25.4, 38), 38, 18 * 25.4, full()), "soil.settled");
        assertEquals(18, soil / M3_PER_FT3, 1e-6);
    }

    /**
     * Derived: 2400 x 1200 outside, 44 mm walls, 400 high, 50 freeboard, 15 %: 0.8998 settled, 1.0586 to order; not
     * 1.0348.
     */
    @Test
    void settlementDividesAndDoesNotMultiply() {
        Fill fill = new Fill(50, 0, 0.15, List.of(new Layer("soil.topsoil", 1)));
        var quantities = filled(Outline.rectangle(2400, 1200), 44, 400, fill);
        assertEquals(0.8998, value(quantities, "soil.settled"), 1e-4);
        assertEquals(1.0586, value(quantities, "soil.loose"), 1e-4);
    }

    /** Published in an engineers' forum: 10 000 of finished fill at 15 % takes 11 764.71 by the dividing rule. */
    @Test
    void tenThousandFinishedTakes11764Loose() {
        assertEquals(11764.71, BedFill.looseM3(10000, 0.15), 0.01);
    }

    /** Derived: 2400 x 1200 x 600, 100 mm walls: 1.32 m3 inside, 1.55294 loose at 15 % (common practice). */
    @Test
    void aBedOf2400By1200By600Holds1Point32CubicMetres() {
        Fill fill = new Fill(0, 0, 0.15, List.of(new Layer("soil.topsoil", 1)));
        var quantities = filled(Outline.rectangle(2400, 1200), 100, 600, fill);
        assertEquals(1.32, value(quantities, "soil.settled"), 5e-4);
        assertEquals(1.55294, value(quantities, "soil.loose"), 5e-4);
    }

    /** Derived, shoelace: an L of 3 x 2 less 1.5 x 1 m is 4.5 m2, 1.575 m3 at 0.35 m. */
    @Test
    void anLOfFourAndAHalfSquareMetresTakes1575Litres() {
        double t = 50;
        // The inside of the source, its walls drawn round it: outer corners move out, the inside corner with them.
        Outline outer = Beds.outline(
                0,
                0,
                3000 + 2 * t,
                0,
                3000 + 2 * t,
                1000 + 2 * t,
                1500 + 2 * t,
                1000 + 2 * t,
                1500 + 2 * t,
                2000 + 2 * t,
                0,
                2000 + 2 * t);
        var quantities = filled(outer, t, 350, full());
        assertEquals(1.575, value(quantities, "soil.settled"), 1e-9);
    }

    /**
     * Derived: compost to topsoil 1 to 2 after University of Maryland Extension, Filling Your Raised Bed (2019): 0.9
     * m3 is 0.3 and 0.6.
     */
    @Test
    void oneToTwoOf900LitresIs300And600() {
        var quantities = filled(
                around(2000, 1500, 50),
                50,
                300,
                full(new Layer("soil.topsoil", 2.0 / 3), new Layer("soil.compost", 1.0 / 3)));
        assertEquals(0.9, value(quantities, "soil.settled"), 1e-9);
        assertEquals(0.6, value(quantities, "soil.topsoil"), 1e-9);
        assertEquals(0.3, value(quantities, "soil.compost"), 1e-9);
    }

    /** Published on a soil yard's page: 1 m3 covers 10 m2 at 100 mm, 25 at 40, 50 at 20. */
    @Test
    void aCubicMetreOfMulchCoversTenSquareMetresAt100() {
        for (double[] row : new double[][] {{100, 10}, {40, 25}, {20, 50}}) {
            Fill fill = new Fill(0, row[0], 0, List.of(new Layer("soil.topsoil", 1)));
            var quantities = filled(around(5000, row[1] * 200, 50), 50, 600, fill);
            assertEquals(1.0, value(quantities, "mulch"), 1e-9);
        }
    }

    /** Published: 400 sq ft at 3 in is 100 cu ft; 3.704 cu yd by arithmetic. */
    @Test
    void fourHundredSquareFeetAtThreeInchesIs100CubicFeet() {
        Fill fill = new Fill(0, 3 * 25.4, 0, List.of(new Layer("soil.topsoil", 1)));
        double mulch = value(filled(around(20 * FT, 20 * FT, 50), 50, 600, fill), "mulch");
        assertEquals(100, mulch / M3_PER_FT3, 1e-6);
        assertEquals(3.704, mulch / M3_PER_YD3, 0.001);
    }

    /** Erratum: a page prints 135 sq ft a cubic yard at 2 in; 324 at 1 in, printed elsewhere, makes it 162. */
    @Test
    void aCubicYardCovers162SquareFeetAtTwoInches() {
        Fill fill = new Fill(0, 2 * 25.4, 0, List.of(new Layer("soil.topsoil", 1)));
        assertEquals(1, value(filled(around(18 * FT, 9 * FT, 50), 50, 600, fill), "mulch") / M3_PER_YD3, 1e-6);
    }

    /** Derived, common practice: 0.9 m3 is 14 loads of 65 l and 11 of 85 l. */
    @Test
    void nineTenthsOfACubicMetreAreFourteenBarrowsOf65Litres() {
        assertEquals(14, BedFill.barrows(0.9, 65));
        assertEquals(11, BedFill.barrows(0.9, 85));
        assertEquals(15, BedFill.barrows(0.9, 60));
    }

    /** Published on a question page: 14 loads a cubic yard with a 2 cu ft barrow, 9 with 3 cu ft. */
    @Test
    void aCubicYardIsFourteenSmallBarrows() {
        assertEquals(14, BedFill.barrows(M3_PER_YD3, 2 * M3_PER_FT3 * 1000));
        assertEquals(9, BedFill.barrows(M3_PER_YD3, 3 * M3_PER_FT3 * 1000));
    }
}
