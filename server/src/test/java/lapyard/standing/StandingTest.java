package lapyard.standing;

import static lapyard.construction.Beds.value;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import lapyard.catalogue.Section;
import lapyard.catalogue.StrengthClass;
import lapyard.construction.Beds;
import lapyard.construction.Construction;
import lapyard.geometry.Outline;
import lapyard.plan.Bed;
import lapyard.plan.Lap;
import lapyard.plan.StandingRules;
import lapyard.plan.Saw;
import lapyard.plan.Ties;
import lapyard.standing.Verdict.Outcome;
import org.junit.jupiter.api.Test;

/** Verdicts on whole beds, worked by hand. */
class StandingTest {
    private static final Ties CROSS = new Ties(false, 6, false, 600, 4, 50, true, 1800, 400);

    private static Bed bed(Bed bed, Ties ties, String... near) {
        return Beds.tied(bed, ties).withSiting(new Bed.Siting(bed.outline(), bed.placement(), Set.of(near)));
    }

    private static Standing standing(Bed bed, Footing footing) {
        return Standing.of(Construction.of(bed, Saw.USUAL, Beds.LONGEST, Optional.empty()), StandingRules.USUAL, footing);
    }

    private static Verdict verdict(Standing standing, String about) {
        return standing.verdicts().stream().filter(one -> one.about().equals(about)).findFirst().orElseThrow();
    }

    private static Footing on(String... surfaces) {
        return new Footing(Set.of(surfaces), 75, false, "");
    }

    /**
     * 550 of soil, lowest course 200 high, so 450 deep on average: 18 x 0.45 / 3 + 2.5 / 3 = 3.533 kN/m2, design 1.35 x
     * 2.7 + 1.5 x 0.833 = 4.895. Ungraded, 14 x 0.5 / 1.3 = 5.385 N/mm2: 0.75 x 0.004895 x 28 x 28 / 5.385 = 53.5 %.
     * Bow 0.46875 x 0.003533 x 2800^4 / (7000 x 100^3) = 14.5, over a 200th of 2800.
     */
    @Test
    void bedMHoldsButBows() {
        Standing m = standing(Beds.m(Lap.TURNING), on("slab"));
        assertEquals(53.45, value(m.quantities(), "wall.use"), 0.02);
        assertEquals(14.54, value(m.quantities(), "wall.bow"), 0.02);
        assertEquals(2765, value(m.quantities(), "ties.spacing"), 1);
        Verdict walls = verdict(m, "walls");
        assertEquals(Outcome.BOWS, walls.outcome());
        assertTrue(walls.text().startsWith("53 % of the strength of the lowest course of wall A is used over 2800 clear"), walls.text());
        assertTrue(walls.ways().get(0).startsWith("put in 1 cross tie from wall A"), walls.ways().toString());
        assertEquals(2, value(m.quantities(), "ties.advised"));
    }

    /** One tie halves the run: 53.45 / 4 % and 14.54 / 16. */
    @Test
    void aCrossTieMakesItHold() {
        Standing m = standing(bed(Beds.m(Lap.TURNING), CROSS), on("slab"));
        assertEquals(53.45 / 4, value(m.quantities(), "wall.use"), 0.02);
        assertEquals(14.54 / 16, value(m.quantities(), "wall.bow"), 0.01);
        assertEquals(Outcome.HOLDS, verdict(m, "walls").outcome());
        assertEquals(Outcome.HOLDS, verdict(m, "corners").outcome());
    }

    /** Stamped C24: 53.45 x 14 / 24 %, 14.54 x 7000 / 11000. */
    @Test
    void aStampBringsItsStrength() {
        Section stamped = new Section("100x200", 100, 200, 600, List.of(), Optional.of(StrengthClass.C24));
        Standing m = standing(Beds.section(Beds.m(Lap.TURNING), stamped), on("slab"));
        assertEquals(53.45 * 14 / 24, value(m.quantities(), "wall.use"), 0.02);
        assertEquals(14.54 * 7 / 11, value(m.quantities(), "wall.bow"), 0.02);
        assertEquals(Outcome.HOLDS, verdict(m, "walls").outcome());
        Standing mixed = standing(Beds.section(Beds.m(Lap.TURNING), stamped), new Footing(Set.of(), 75, true, ""));
        assertEquals(53.45, value(mixed.quantities(), "wall.use"), 0.02);
    }

    /** 47 mm boards over 2800 take 53.45 x (100 / 47)^2 = 242 % of their strength. */
    @Test
    void thinBoardsAreTooWeakAndSaySo() {
        Section thin = new Section("47x200", 47, 200, 600, List.of());
        Standing weak = standing(Beds.section(Beds.bed("K", Outline.rectangle(2894, 1200), 3, Lap.TURNING), thin), on("slab"));
        Verdict walls = verdict(weak, "walls");
        assertEquals(Outcome.WEAK, walls.outcome());
        assertTrue(walls.text().startsWith("242 %"), walls.text());
        assertTrue(walls.ways().size() >= 2, walls.ways().toString());
    }

    /** 505 of soil and mulch on slats 95 x 22 over 400: 18 x 0.505 = 9.09 kN/m2. */
    @Test
    void bedMsSlatsHold() {
        Standing m = standing(Beds.m(Lap.TURNING), on("slab"));
        Verdict slats = verdict(m, "slats");
        assertEquals(Outcome.HOLDS, slats.outcome());
        double carries = 95 + (1300 - 12 * 95) / 11.0;
        double use = 1.35 * 0.00909 * carries * 400 * 400 / 8 / (95 * 22 * 22 / 6.0) / (0.5 * 14 / 1.3);
        assertEquals(use * 100, value(m.quantities(), "slats.use"), 0.01);
        assertEquals(Outcome.HOLDS, verdict(m, "ground").outcome());
    }

    /** 9.09 x 5.08 m2 over (8 x 1.27 + 5 x 0.87) x 0.075 m2 of bearer: 42.4 kN/m2, where turf bears 24. */
    @Test
    void bearersSinkIntoTurf() {
        Standing m = Standing.of(Beds.built(Beds.m(Lap.TURNING)), StandingRules.USUAL, on("grass"));
        assertEquals(9.09 * 5.08 / ((8 * 1.27 + 5 * 0.87) * 0.075), value(m.quantities(), "bearers.load"), 0.01);
        assertEquals(Outcome.BOWS, verdict(m, "ground").outcome());
        assertEquals(Outcome.HOLDS, verdict(standing(Beds.m(Lap.TURNING), on("gravel")), "ground").outcome());
    }

    /** Timber 374.4 kg, 5.08 x 0.505 m3 of soaked soil of 18 kN/m3 = 1834.9 kg/m3. */
    @Test
    void bedMSoakedWeighsFiveTonnes() {
        Standing m = standing(Beds.m(Lap.TURNING), on("slab"));
        assertEquals(374.4 + 5.08 * 0.505 * 18000 / 9.81, value(m.quantities(), "mass.wet"), 0.5);
        assertEquals(374.4 * 470 / 600 + 5.08 * 0.505 * 1200 / 0.85, value(m.quantities(), "mass.dry"), 0.5);
    }

    @Test
    void whatIsACaseForAnEngineerIsRefusedByName() {
        Standing deck = standing(Beds.m(Lap.TURNING), on("deck", "slab"));
        assertEquals(1, deck.notDesigned().size());
        assertTrue(deck.notDesigned().get(0).startsWith("on a raised deck, "), deck.notDesigned().toString());
        assertEquals(List.of(), deck.verdicts());
        Standing tall = standing(Beds.bed("K", Beds.N, 4, Lap.TURNING), on("slab"));
        assertEquals(List.of("750 of soil, over 600"), tall.notDesigned());
        Bed.NEAR.forEach((word, words) ->
                assertEquals(List.of(words), standing(bed(Beds.m(Lap.TURNING), Ties.USUAL, word), on("slab")).notDesigned()));
        assertEquals(
                List.of("boards of unknown treatment are in it: K1"),
                standing(Beds.m(Lap.TURNING), new Footing(Set.of(), 75, true, "K1")).notDesigned());
    }

    /** Clear 4700 between 4900 mm walls passes no seam unseen. */
    @Test
    void aSeamIsSaidToCarryNothing() {
        Standing joined = standing(Beds.bed("K", Outline.rectangle(6200, 1000), 2, Lap.TURNING), on("slab"));
        assertEquals("4 seams carry no bending, the first in wall A at 3500 of course 1", verdict(joined, "seams").text());
    }

    /** Strips 75 x 23 flat over pads 300 apart: larger of bending and shear, hand-worked. */
    @Test
    void bearersOnPadsAreReckonedAsBeams() {
        Bed m = Beds.m(Lap.TURNING);
        var b = m.inside().base();
        Bed padded = Beds.filled(m, new lapyard.plan.Base(true, b.bearerSection(), 23, 400, 30, 95, 22, 1200, 15, 5, 300, 300),
                m.inside().liner(), m.planting().fill(), m.making().finish());
        Standing standing = standing(padded, on("slab"));
        double load = 1.35 * 0.00909 * 400;
        double bending = load * 300 * 300 / 8 / (75 * 23 * 23 / 6.0) / (0.5 * 14 / 1.3 * 1.3);
        double shear = 1.5 * load * 300 / 2 / (0.67 * 75 * 23) / (0.5 * 3.0 / 1.3);
        assertEquals(100 * Math.max(bending, shear), value(standing.quantities(), "bearers.use"), 0.01);
        // C24 of EN 338:2016: bending 24 and shear 4.0 for 14 and 3.0
        Standing stamped = standing(padded, new Footing(Set.of("slab"), 75, StrengthClass.C24, false, ""));
        assertEquals(100 * Math.max(bending * 14 / 24, shear * 3.0 / 4.0), value(stamped.quantities(), "bearers.use"), 0.01);
    }
}
