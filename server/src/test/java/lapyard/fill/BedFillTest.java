package lapyard.fill;

import static lapyard.construction.Beds.value;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import lapyard.construction.Beds;
import lapyard.geometry.Outline;
import lapyard.plan.Base;
import lapyard.plan.Bed;
import lapyard.plan.Fact;
import lapyard.plan.Fill;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Finish;
import lapyard.plan.Lap;
import lapyard.plan.Liner;
import lapyard.plan.Told;
import org.junit.jupiter.api.Test;

class BedFillTest {
    /**
     * Depth 600 - 45 - 50 - 50 = 455; 5.08 x 0.455 = 2.3114; / 0.85 = 2.7193; 60/30/10; x 1.2 t; / 0.06 = 45.3; 5.08
     * x 0.05.
     */
    @Test
    void theWorkedLTakesItsWorkedSoil() {
        BedFill fill = BedFill.of(Beds.built(Beds.m(Lap.TURNING)), 60, false);
        assertEquals(455, value(fill.quantities(), "soil.depth"));
        assertEquals(2.3114, value(fill.quantities(), "soil.settled"), 1e-9);
        assertEquals(2.719, value(fill.quantities(), "soil.loose"), 5e-4);
        assertEquals(1.632, value(fill.quantities(), "soil.topsoil"), 5e-4);
        assertEquals(0.816, value(fill.quantities(), "soil.compost"), 5e-4);
        assertEquals(0.272, value(fill.quantities(), "soil.grit"), 5e-4);
        assertEquals(3263, value(fill.quantities(), "soil.mass"), 0.5);
        assertEquals(46, value(fill.quantities(), "barrows"));
        assertEquals(0.254, value(fill.quantities(), "mulch"), 1e-9);
        assertEquals(0, fill.findings().size());
        assertTrue(fill.quantities().stream().allMatch(quantity -> quantity.working().inputs().size() > 1));
    }

    /** A foot is the round measure of a builder in feet: 304 mm is short of it by 0.8. Common practice, no source. */
    @Test
    void inFeetTheUsualDepthIsAFoot() {
        Fill fill = new Fill(296, 0, 0.15, Fill.USUAL.layers());
        var work = Beds.built(Beds.filled(Beds.bed("K", Outline.rectangle(2400, 1200), 3, Lap.TURNING), Base.USUAL.slatted(false), Liner.USUAL, fill, Finish.USUAL));
        assertEquals(List.of(), BedFill.of(work, 60, false).findings());
        Finding note = BedFill.of(work, 60, true).findings().get(0);
        assertEquals(Fact.mm(304.8), note.facts().get("usual"));
        assertEquals(0.8, ((Fact.Length) note.by().orElseThrow()).mm(), 1e-9);
    }

    /** 2 1/4" free, 57.15 mm, and 1 3/4" of mulch, 44.45 mm, are kept as 57.2 and 44.5: 406.4 - 57.2 - 44.5 = 304.7 is 1' all the same. By hand, no source. */
    @Test
    void tenthsOfAMillimetreTakeNoFootAway() {
        Bed bed = Beds.filled(Beds.bed("K", Outline.rectangle(2400, 1200), 2, Lap.TURNING), Base.USUAL.slatted(false), Liner.USUAL,
                new Fill(57.2, 44.5 + 2 * 200 - 406.4, 0.15, Fill.USUAL.layers()), Finish.USUAL);
        assertEquals(304.7, bed.soilMm(), 1e-9);
        assertEquals(List.of(), BedFill.of(Beds.built(bed), 60, true).findings());
    }

    private static BedFill filled(int courses, Base base, Fill fill) {
        return BedFill.of(Beds.built(Beds.filled(
                Beds.bed("K", Outline.rectangle(2400, 1200), courses, Lap.TURNING),
                base,
                Liner.USUAL,
                fill,
                Finish.USUAL)), 60, false);
    }

    /** 400 - 45 - 50 - 50 = 255: 45 under 300. */
    @Test
    void aShallowBedIsANoteUntilAStandardIsNamed() {
        Finding note = filled(2, Base.USUAL, Fill.USUAL).findings().get(0);
        assertEquals(Finding.Weight.NOTE, note.weight());
        assertTrue(Told.text(note).equals("Bed K holds 255 mm of soil; 300 mm is usual."), Told.text(note));
        assertEquals(0, filled(2, Base.USUAL.slatted(false), Fill.USUAL).findings().size());
    }

    /** 200 - 45 - 100 - 80 = -25; 325 more make the usual 300, so two courses of 200: 26 less mulch would leave 1 of soil. */
    @Test
    void aBedWithoutRoomForSoilLeavesTheFillOut() {
        BedFill fill = filled(1, Base.USUAL, new Fill(100, 80, 0.15, Fill.USUAL.layers()));
        Finding even = filled(1, Base.USUAL, new Fill(100, 55, 0.15, Fill.USUAL.layers())).findings().get(0);
        assertEquals("Bed K has no room for soil between base and mulch: it is 300 mm too low for the usual 300 mm. Its fill is left out.", Told.text(even));
        assertEquals(List.of(), fill.quantities());
        assertEquals(Finding.Weight.SNAG, fill.findings().get(0).weight());
        assertEquals(Optional.of(Fact.mm(325)), fill.findings().get(0).by());
        assertTrue(
                Told.text(fill.findings().get(0)).contains("325 mm too low for the usual 300 mm"),
                Told.text(fill.findings().get(0)));
        assertEquals(List.of("Add 2 courses"), Told.ways(fill.findings().get(0)));
    }

    @Test
    void mulchFarOverTheFreeboardIsASnag() {
        BedFill fill = filled(3, Base.USUAL, new Fill(20, 130, 0.15, Fill.USUAL.layers()));
        assertEquals(List.of("Lay 10 mm less mulch"), Told.ways(fill.findings().get(0)));
    }

    @Test
    void layersOfOneItemAreOneNeedAndNoMulchIsNoNeed() {
        BedFill fill = filled(
                3,
                Base.USUAL,
                new Fill(
                        50,
                        0,
                        0,
                        List.of(
                                new Fill.Layer("soil.topsoil", 0.5),
                                new Fill.Layer("soil.compost", 0.2),
                                new Fill.Layer("soil.topsoil", 0.3))));
        // 2.2 x 1.0 x 0.505 = 1.111 m3, 0.8 of it topsoil.
        assertEquals(0.8 * 1.111, value(fill.quantities(), "soil.topsoil"), 1e-9);
        assertEquals(
                1,
                fill.quantities().stream()
                        .filter(quantity -> quantity.key().toString().equals("soil.topsoil"))
                        .count());
        assertFalse(Beds.has(fill.quantities(), "mulch"));
    }

    /**
     * Inside 2200 x 1000; 400 - 45 - 20 - 0 = 335 deep: 0.737 settled, / 0.8 = 0.92125 loose. There is room for 355: 0.781, so 0.14025 has
     * to wait, 3 barrows of 60 l.
     */
    @Test
    void whatWouldStandOverTheRimIsKeptForToppingUp() {
        BedFill fill = filled(2, Base.USUAL, new Fill(20, 0, 0.2, Fill.USUAL.layers()));
        assertEquals(0.92125, value(fill.quantities(), "soil.loose"), 1e-9);
        assertEquals(0.14025, value(fill.quantities(), "soil.top-up"), 1e-9);
        assertEquals(3, value(fill.quantities(), "barrows.top-up"));
        assertEquals(16, value(fill.quantities(), "barrows"));
    }

    /** With 40 of mulch the room is 315 and the soil 295: 0.649, / 0.8 = 0.81125, less 0.693. */
    @Test
    void mulchTakesItsRoomOnTheDayOfFilling() {
        BedFill fill = filled(2, Base.USUAL, new Fill(20, 40, 0.2, Fill.USUAL.layers()));
        assertEquals(0.81125 - 0.693, value(fill.quantities(), "soil.top-up"), 1e-9);
    }

    /** Depth 400 of a room of 500 at 20 %: 500 loose, which just fits. Settling nothing, nothing waits. */
    @Test
    void nothingIsKeptBackWhereTheLooseSoilFits() {
        BedFill just = filled(3, Base.USUAL.slatted(false), new Fill(120, 0, 0.2, Fill.USUAL.layers()));
        assertFalse(Beds.has(just.quantities(), "soil.top-up"));
        assertFalse(Beds.has(just.quantities(), "barrows.top-up"));
        BedFill over = filled(3, Base.USUAL.slatted(false), new Fill(119, 0, 0.2, Fill.USUAL.layers()));
        assertEquals(2.2 * (0.481 / 0.8 - 0.6), value(over.quantities(), "soil.top-up"), 1e-9);
    }

    /** 600 - 300 = 300 of soil is usual; 1 mm less is 1 too little. */
    @Test
    void threeHundredOfSoilIsEnough() {
        assertEquals(List.of(), filled(3, Base.USUAL.slatted(false), new Fill(300, 0, 0.15, Fill.USUAL.layers())).findings());
        Finding shallow = filled(3, Base.USUAL.slatted(false), new Fill(301, 0, 0.15, Fill.USUAL.layers())).findings().get(0);
        assertEquals(FindingKind.SOIL_SHALLOW, shallow.kind());
        assertEquals(Optional.of(Fact.mm(1)), shallow.by());
    }

    /** 200 - 200 = 0: no soil at all, 0 short; 199 leaves 1. */
    @Test
    void aBedFilledToNothingHoldsNoSoil() {
        BedFill none = filled(1, Base.USUAL.slatted(false), new Fill(200, 0, 0.15, Fill.USUAL.layers()));
        assertEquals(FindingKind.SOIL_NONE, none.findings().get(0).kind());
        assertEquals(List.of(), none.quantities());
        BedFill little = filled(1, Base.USUAL.slatted(false), new Fill(199, 0, 0.15, Fill.USUAL.layers()));
        assertEquals(FindingKind.SOIL_SHALLOW, little.findings().get(0).kind());
        assertEquals(1, value(little.quantities(), "soil.depth"));
    }

    /** Ways out by what is lacking, courses of 200, a slatted base of 45: each way alone gives 300 of soil, and no less than it would. */
    @Test
    void aWayToMoreSoilIsOnlyOneThatIsEnough() {
        // 400 - 45 - 55 - 0 = 300 less 45 lacking: the base just does it, there is no mulch to take
        assertEquals(List.of("ADD_COURSES 1", "OPEN_BASE"), ways(2, Base.USUAL, 100, 0));
        assertEquals(List.of("ADD_COURSES 1"), ways(2, Base.USUAL, 101, 0));
        // 400 - 45 - 25 - 75 = 255, 45 lacking: 45 of the mulch too
        assertEquals(List.of("ADD_COURSES 1", "OPEN_BASE", "LESS_MULCH_BY 45"), ways(2, Base.USUAL, 25, 75));
        // 400 - 60 - 50 = 290 and 400 - 51 - 50 = 299
        assertEquals(List.of("ADD_COURSES 1", "LESS_MULCH_BY 10"), ways(2, Base.USUAL.slatted(false), 60, 50));
        assertEquals(List.of("ADD_COURSES 1", "LESS_MULCH_BY 1"), ways(2, Base.USUAL.slatted(false), 51, 50));
        // 200 - 100 - 0 = 100, 200 lacking: one course is just enough; 1 more takes two
        assertEquals(List.of("ADD_COURSES 1"), ways(1, Base.USUAL.slatted(false), 100, 0));
        assertEquals(List.of("ADD_COURSES 2"), ways(1, Base.USUAL.slatted(false), 101, 0));
        // 50 of mulch where 50 is lacking, and where 51 is
        assertEquals(List.of("ADD_COURSES 1", "LESS_MULCH_BY 50"), ways(2, Base.USUAL.slatted(false), 100, 50));
        assertEquals(List.of("ADD_COURSES 1"), ways(2, Base.USUAL.slatted(false), 101, 50));
        // 400 - 99.8 - 49.7 = 250.5: a whole 50 would be more than there is
        assertEquals(List.of("ADD_COURSES 1"), ways(2, Base.USUAL.slatted(false), 99.8, 49.7));
    }

    private static List<String> ways(int courses, Base base, double freeboardMm, double mulchMm) {
        return filled(courses, base, new Fill(freeboardMm, mulchMm, 0.15, Fill.USUAL.layers())).findings().get(0).ways().stream()
                .map(way -> way.kind() + way.values().stream().map(value -> " " + number(value)).collect(Collectors.joining()))
                .toList();
    }

    private static String number(Fact value) {
        return value.equals(Fact.count(1, "courses")) ? "1" : value.equals(Fact.count(2, "courses")) ? "2"
                : IntStream.range(0, 1000).filter(mm -> value.equals(Fact.mm(mm))).mapToObj(String::valueOf).findFirst().orElse(value.toString());
    }

    /** 100 over the gap is allowed: 20 and 120 pass, 121 is 1 over. */
    @Test
    void mulchMayStandAHundredOverTheGap() {
        assertEquals(List.of(), filled(3, Base.USUAL, new Fill(20, 120, 0.15, Fill.USUAL.layers())).findings());
        Finding over = filled(3, Base.USUAL, new Fill(20, 121, 0.15, Fill.USUAL.layers())).findings().get(0);
        assertEquals(FindingKind.MULCH_OVER_RIM, over.kind());
        assertEquals(Optional.of(Fact.mm(1)), over.by());
        assertEquals(List.of("Lay 1 mm less mulch"), Told.ways(over));
    }
}
