package lapyard.standing;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Map;
import java.util.Set;
import lapyard.catalogue.StrengthClass;
import lapyard.construction.Beds;
import lapyard.plan.Lap;
import lapyard.plan.Saw;
import lapyard.plan.StandingRules;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Figures from outside this project, each with its source and how sure it is: verified (formula and coefficients seen
 * in a public copy), derived (arithmetic from a stated rule), from memory. The standards themselves were not read.
 */
class PublishedStandingChecksTest {
    private static final EarthPressure SOIL = new EarthPressure(18, 30, 0);
    private static final EarthPressure BESIDE = new EarthPressure(18, 30, 2.5);

    /** Verified, EN 338:2016 Tables 1 and 3: fm,k, fv,k, fc,90,k, E0,mean, rho_k, rho_mean. D18 and D35 on one copy. */
    @ParameterizedTest
    @CsvSource(textBlock = """
            C14, 14, 3.0,  7000, 290, 350
            C16, 16, 3.2,  8000, 310, 370
            C18, 18, 3.4,  9000, 320, 380
            C20, 20, 3.6,  9500, 330, 400
            C22, 22, 3.8, 10000, 340, 410
            C24, 24, 4.0, 11000, 350, 420
            C27, 27, 4.0, 11500, 360, 430
            C30, 30, 4.0, 12000, 380, 460
            D18, 18, 3.5,  9500, 475, 570
            D24, 24, 3.7, 10000, 485, 580
            D30, 30, 3.9, 11000, 530, 640
            D35, 35, 4.1, 12000, 540, 650
            D40, 40, 4.2, 13000, 550, 660
            D50, 50, 4.5, 14000, 620, 740
            D60, 60, 4.8, 17000, 700, 840
            D70, 70, 5.0, 20000, 800, 960
            """)
    void theClassesAreThoseOfTheStandard(
            StrengthClass timber, double bending, double shear, double stiff, double dense, double mean) {
        assertEquals(bending, timber.bendingNmm2);
        assertEquals(shear, timber.shearNmm2);
        assertEquals(stiff, timber.stiffnessNmm2);
        assertEquals(dense, timber.densityKgM3);
        assertEquals(mean, timber.meanDensityKgM3);
    }

    /** Verified: EN 338:2016; EN 1995-1-1 eq (2.14), Tables 2.3, 3.1: 0.5 x 16 / 1.3, and D30. */
    @Test
    void timberInABedKeepsLessThanHalfItsStrength() {
        assertEquals(6.15385, new Beam(StrengthClass.C16, 1, 1).bendingStrength(), 0.005);
        assertEquals(11.5385, new Beam(StrengthClass.D30, 1, 1).bendingStrength(), 0.005);
        assertEquals(1.5, new Beam(StrengthClass.D30, 1, 1).shearStrength(), 0.005);
    }

    /** Verified: EN 1995-1-1 3.2(3) eq (3.1). */
    @Test
    void smallTimberIsReckonedStronger() {
        assertEquals(1.08447, Beam.sizeFactor(100), 0.001);
        assertEquals(1.3, Beam.sizeFactor(40), 0.001);
        assertEquals(1, Beam.sizeFactor(150), 0);
    }

    /** Verified: EN 1995-1-1 eq (2.7), Table 3.2: 11000 / (1 + 2). */
    @Test
    void aBeamInSoilSagsThreeTimesWhatItDoesAtOnce() {
        Beam beam = new Beam(StrengthClass.C24, 100, 50);
        assertEquals(3666.67, StrengthClass.C24.stiffnessNmm2 / (1 + Beam.KDEF), 1);
        assertEquals(3 * beam.sagAtOnceMm(1, 1000), beam.sagMm(1, 1000), 1e-9);
    }

    /** Verified (30 degrees) and derived: Rankine; at rest after Jaky. */
    @Test
    void rankinesShares() {
        assertEquals(0.333333, SOIL.active(), 0.0005);
        assertEquals(0.5, SOIL.atRest(), 0.0005);
        assertEquals(0.490291, new EarthPressure(18, 20, 0).active(), 0.0005);
        assertEquals(0.405859, new EarthPressure(18, 25, 0).active(), 0.0005);
        assertEquals(0.27099, new EarthPressure(18, 35, 0).active(), 0.0005);
    }

    private static double drainedKpa(EarthPressure earth, double depthM) {
        return earth.soilPartKpa(depthM) + earth.besidePartKpa();
    }

    /** Verified: a retaining-wall teaching problem, 10 ft, 115 pcf, 30 degrees: 0.33, 0.38 ksf, 1.9 kip/ft. */
    @Test
    void aTaughtRetainingWallComesOutAsPrinted() {
        EarthPressure taught = new EarthPressure(0.115, 30, 0);
        assertEquals(0.33, taught.active(), 0.005);
        assertEquals(0.38, drainedKpa(taught, 10), 0.005);
        assertEquals(1.9, taught.drainedKnM(10), 0.03);
    }

    /** Derived, Rankine: 600 of soil, without and with 2.5 kN/m2 beside it; 300 and 450. */
    @Test
    void theThrustOnAWallOf600() {
        assertEquals(3.6, drainedKpa(SOIL, 0.6), 0.005);
        assertEquals(1.08, SOIL.drainedKnM(0.6), 0.005);
        assertEquals(4.43333, drainedKpa(BESIDE, 0.6), 0.005);
        assertEquals(1.58, BESIDE.drainedKnM(0.6), 0.005);
        assertEquals(0.27, SOIL.drainedKnM(0.3), 0.001);
        assertEquals(0.6075, SOIL.drainedKnM(0.45), 0.001);
    }

    /** Derived: effective stress and water; a housing design guide gives 80 to 90 pcf = 12.6 to 14.1 kN/m3 undrained. */
    @Test
    void aBlockedDrainDoublesTheThrust() {
        assertEquals(12.54, SOIL.blockedKpaPerM(), 0.005);
        assertEquals(2.2572, SOIL.blockedKnM(0.6), 0.005);
        assertEquals(2.09, SOIL.blockedKnM(0.6) / SOIL.drainedKnM(0.6), 0.005);
    }

    /** Derived, EN 1995-1-1 6.1.6, 2.2.3: the lowest course of 200 x 100, C16, 0.60 N/mm over 2400. */
    @Test
    void aCourseOf100UsesABitOverAQuarterOfItsStrength() {
        Beam course = new Beam(StrengthClass.C16, 200, 100);
        double load = drainedKpa(SOIL, 0.5) / 1000 * 200;
        assertEquals(0.6, load, 0.002);
        assertEquals(432000, Beam.momentNmm(load, 2400), 1);
        assertEquals(333333, course.modulusMm3(), 1);
        assertEquals(16666700, course.inertiaMm4(), 40);
        assertEquals(1.296, course.stress(load, 2400), 0.005);
        assertEquals(0.28431, course.bendingUse(Beam.GAMMA_G * load, 2400), 0.003);
        assertEquals(1.944, course.sagAtOnceMm(load, 2400), 0.01);
        assertEquals(5.832, course.sagMm(load, 2400), 0.02);
        assertEquals(411.523, 2400 / course.sagMm(load, 2400), 1);
    }

    /** Derived, EN 1995-1-1 6.1.6: the same in 47 mm boards is overloaded; 53.3 is needed. */
    @Test
    void aCourseOf47IsOverloaded() {
        Beam course = new Beam(StrengthClass.C16, 200, 47);
        assertEquals(73633.3, course.modulusMm3(), 1);
        assertEquals(5.86691, course.stress(0.6, 2400), 0.005);
        assertEquals(1.28705, course.bendingUse(1.35 * 0.6, 2400), 0.003);
        assertEquals(1, new Beam(StrengthClass.C16, 200, 53.3207).bendingUse(1.35 * 0.6, 2400), 0.003);
    }

    /** Derived: simply supported strip, C16, foot pressure of 600 with 2.5 beside, sag a 200th. */
    @Test
    void boardsOf47AreTiedEvery1260() {
        double pressure = drainedKpa(BESIDE, 0.6) / 1000;
        double design = (1.35 * BESIDE.soilPartKpa(0.6) + 1.5 * BESIDE.besidePartKpa()) / 1000;
        assertEquals(0.0044333, pressure, 1e-6);
        assertEquals(0.00611, design, 1e-6);
        assertEquals(1722.34, Beam.clearSpanMm(StrengthClass.C16, 47, 1e-12, design, 200), 3);
        assertEquals(1259.59, Beam.clearSpanMm(StrengthClass.C16, 47, pressure, design, 200), 3);
    }

    /** Derived table: largest clear distance, C16, foot pressure, factors 1.35 and 1.5, sag a 200th, rounded to 10. */
    @ParameterizedTest(name = "{0} thick")
    @CsvSource(textBlock = """
             38, 1210, 1090, 1010, 1070,  930,  850
             47, 1490, 1350, 1250, 1330, 1160, 1050
             63, 2000, 1820, 1680, 1780, 1550, 1410
             75, 2390, 2160, 2000, 2120, 1850, 1680
            100, 3180, 2890, 2670, 2830, 2470, 2240
            125, 3980, 3610, 3340, 3530, 3090, 2800
            150, 4780, 4330, 4010, 4240, 3700, 3370
            """)
    void theTableOfClearDistancesIsHeld(
            double thick, double dry300, double dry450, double dry600, double wet300, double wet450, double wet600) {
        double[] deep = {0.3, 0.45, 0.6};
        double[] dry = {dry300, dry450, dry600};
        double[] wet = {wet300, wet450, wet600};
        for (int i = 0; i < 3; i++) {
            double design = (1.35 * BESIDE.soilPartKpa(deep[i]) + 1.5 * BESIDE.besidePartKpa()) / 1000;
            assertEquals(dry[i],
                    Beam.clearSpanMm(StrengthClass.C16, thick, drainedKpa(BESIDE, deep[i]) / 1000, design, 200), 10);
            double blocked = SOIL.blockedKpaPerM() * deep[i] / 1000;
            assertEquals(wet[i], Beam.clearSpanMm(StrengthClass.C16, thick, blocked, 1.35 * blocked, 200), 10);
        }
    }

    /** Derived, statics: thrust times spacing; half a wall's thrust at its corner, 3 screws of 505 N. */
    @Test
    void tiesAndCornersTakeTheThrust() {
        assertEquals(1.896, BESIDE.drainedKnM(0.6) * 1.2, 0.005);
        assertEquals(2.70864, SOIL.blockedKnM(0.6) * 1.2, 0.005);
        double pull = SOIL.drainedKnM(0.6) * 2.4 / 2;
        assertEquals(1.296, pull, 0.005);
        assertEquals(3, Math.floor(pull * 1000 / 505.2) + 1);
    }

    /** Derived: weight times depth. */
    @Test
    void soilPressesOnSlatsByItsDepth() {
        assertEquals(5.4, FloorCheck.pressureKpa(18, 0.3), 0.005);
        assertEquals(8.1, FloorCheck.pressureKpa(18, 0.45), 0.005);
        assertEquals(10.8, FloorCheck.pressureKpa(18, 0.6), 0.005);
    }

    /** Derived, EN 338 C14, EN 1995-1-1 service class 3 for good: slat 95 x 22, gaps 10, 600 of soil, 400 span. */
    @Test
    void aPalletSlatUnder600OfSoilUsesThreeQuarters() {
        Beam slat = new Beam(StrengthClass.C14, 95, 22);
        double load = 0.0108 * (95 + 10);
        assertEquals(1.134, load, 0.002);
        assertEquals(22680, Beam.momentNmm(load, 400), 5);
        assertEquals(7663.33, slat.modulusMm3(), 1);
        assertEquals(84296.7, slat.inertiaMm4(), 2);
        assertEquals(2.95955, slat.stress(load, 400), 0.005);
        assertEquals(0.742001, slat.bendingUse(1.35 * load, 400), 0.003);
        assertEquals(0.640595, slat.sagAtOnceMm(load, 400), 0.005);
        assertEquals(1.92178, slat.sagMm(load, 400), 0.01);
    }

    /** Derived table: clear span of slats, spread 1.1, sag a 150th, C14 up to 22 thick and C16 above, rounded to 5. */
    @ParameterizedTest(name = "{0} thick")
    @CsvSource(textBlock = """
            16, C14,  405,  355, 320
            18, C14,  460,  400, 365
            20, C14,  510,  445, 405
            22, C14,  560,  490, 445
            38, C16, 1015,  885, 805
            47, C16, 1255, 1095, 995
            """)
    void theTableOfSlatSpansIsHeld(double thick, StrengthClass timber, double at300, double at450, double at600) {
        double[] spans = {at300, at450, at600};
        double[] deep = {0.3, 0.45, 0.6};
        for (int i = 0; i < 3; i++) {
            double pressed = FloorCheck.pressureKpa(18, deep[i]) * 1.1 / 1000;
            assertEquals(spans[i], Beam.clearSpanMm(timber, thick, pressed, 1.35 * pressed, 150), 5);
        }
    }

    /** Derived: simply supported strips; EN 1995-1-1 Tables 3.1, 3.2, 7.2. */
    @Test
    void sagGovernsThinAndThickSlats() {
        double thin = 0.0054 * 1.1;
        assertEquals(478.748, Beam.clearSpanMm(StrengthClass.C14, 16, 1e-12, 1.35 * thin, 150), 2);
        assertEquals(409.461, Beam.clearSpanMm(StrengthClass.C14, 16, thin, 1.35 * thin, 150), 2);
        double thick = 0.0108 * 1.1;
        assertEquals(1063.08, Beam.clearSpanMm(StrengthClass.C16, 47, 1e-12, 1.35 * thick, 150), 2);
        assertEquals(998.11, Beam.clearSpanMm(StrengthClass.C16, 47, thick, 1.35 * thick, 150), 2);
    }

    /** Partly from memory: EN 1995-1-1 6.1.6, 6.1.7(2) k_cr 0.67, 3.2(3): bearer 47 x 100 on edge, 0.8 m. */
    @Test
    void aBearerOnEdgeIsAtItsLimitOver800() {
        Beam bearer = new Beam(StrengthClass.C16, 47, 100);
        double design = 1.35 * 0.0108 * 400;
        assertEquals(466560, Beam.momentNmm(design, 800), 5);
        assertEquals(5.95609, bearer.stress(design, 800), 0.005);
        assertEquals(6.67367, bearer.bendingStrength() * Beam.sizeFactor(100), 0.005);
        assertEquals(0.892475, bearer.bendingUse(design, 800) / Beam.sizeFactor(100), 0.003);
        assertEquals(0.902858, bearer.shearUse(design, 800), 0.003);
    }

    /**
     * Derived and verified: a bed 2400 x 1200 x 600 with 100 walls, soil 1800 kg/m3, timber 600: 910 kg/m2, 8.9 kN/m2,
     * 4.7 times a deck of 40 psf (IRC Table R301.5), 3.6 times the least of EN 1991-1-1 Table 6.2 for balconies.
     */
    @Test
    void aBedOf600WeighsNineHundredKilogramsASquareMetre() {
        Weights weights = new Weights(244.8, 1.32, 1800, 1200, 2.88);
        assertEquals(2620.8, weights.wetKg(), 1);
        assertEquals(910.0, weights.wetKgM2(), 0.5);
        assertEquals(8.9271, weights.wetKpa(), 0.01);
        assertEquals(4.66162, weights.wetKpa() / 1.915, 0.01);
        assertEquals(1.915, Weights.DECK_LEAST_KPA, 0.006);
        assertEquals(3.5708, weights.wetKpa() / Weights.DECK_MOST_KPA, 0.01);
        assertEquals(0.124297, weights.wetKpa() / 71.82, 0.001);
    }

    /** Derived: weight over contact: three bearers 100 x 1200 under that bed. */
    @Test
    void threeBearersPressEightTimesAsHard() {
        assertEquals(71.4168, new Weights(244.8, 1.32, 1800, 1200, 3 * 0.1 * 1.2).wetKpa(), 0.1);
    }

    /** Verified: NDS 2850 G2 D an inch; its factors 0.7, 0.9, 0.67 from memory, the last a proxy; a printed 109 lb/in. */
    @Test
    void aScrewHoldsHalfAKilonewton() {
        assertEquals(1197.32, ScrewHold.allowableN(0.42, 6, 57.57), 2);
        assertEquals(505.254, ScrewHold.inABedN(1197), 2);
        double perInch = ScrewHold.allowableN(0.45, 0.19 * 25.4, 25.4) / 4.4482216;
        assertEquals(109.654, perInch, 1);
    }

    /** Verified: density at 12 % is gravity x 1120; Douglas fir 0.48 gives 537.6 (a table lists 545 air-dry). */
    @Test
    void gravityIsTheClasssMeanDensityOver1120() {
        assertEquals(350 / 1120.0, ScrewHold.gravity(StrengthClass.C14), 1e-9);
        assertEquals(537.6, 0.48 * 1120, 0.5);
    }

    /**
     * Verified, HUD, Residential Structural Design Guide, soil table, silty sand and sandy silt: 100 pcf, share 0.35, a fluid of
     * 35 pcf = 5.5 kN/m3. Wet vegetable mix at 11.1 kN/m3 (a soil yard's test) with the share of loam, 20 degrees, comes to the
     * same. IBC 1607, landscaped areas of roofs that nobody occupies: 20 psf.
     */
    @Test
    void theUsualLoadsAreThoseOfTheirSources() {
        StandingRules usual = StandingRules.USUAL;
        EarthPressure own = new EarthPressure(usual.soilKnM3(), usual.frictionDeg(), usual.besideKpa());
        double pcf = 4.4482216 / Math.pow(0.3048, 3) / 1000;
        assertEquals(100 * pcf, usual.soilKnM3(), 0.02);
        assertEquals(0.35, own.active(), 0.0005);
        assertEquals(35 * pcf, own.active() * usual.soilKnM3(), 0.02);
        assertEquals(35 * pcf, new EarthPressure(11.1, 20, 0).active() * 11.1, 0.1);
        assertEquals(20 * 4.4482216 / 0.3048 / 0.3048 / 1000, usual.besideKpa(), 0.003);
        assertEquals(1600, usual.soilKgM3(), 1e-9);
    }

    /** The guide of the trade, 0.5 x 0.5 x 16 x d2: 1.2 kN/m for 550 of soil, 1.0 for bed M's 505; common practice. */
    @Test
    void theGuideFigureOfBedMIsAboutOne() {
        Standing m = Standing.of(
                lapyard.construction.Beds.work(Beds.m(Lap.TURNING), Saw.USUAL, Beds.LONGEST, Map.of(), Beds.TO_REAR, 2400, 25),
                StandingRules.USUAL, new Footing(Set.of(), 0, StrengthClass.LOWEST, false, ""));
        assertEquals(0.25 * 16 * 0.505 * 0.505, Beds.value(m.quantities(), "wall.push.guide"), 1e-9);
        assertEquals(1.21, 0.25 * 16 * 0.55 * 0.55, 1e-9);
        assertEquals(505, Beds.m(Lap.TURNING).filledMm());
    }
}
