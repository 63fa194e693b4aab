package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import lapyard.drawing.Page;
import lapyard.drawing.Paper;
import lapyard.drawing.Scale;
import lapyard.geometry.Point;
import lapyard.plan.Garden;
import lapyard.plan.Told;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

/** A plan on several sheets. */
class PlanTileTest {
    /** Every place of the yard lies on the part of exactly one sheet, and neighbours show it at the same place across their match line. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void everyPlaceBelongsToOneSheet(long seed) {
        Random random = new Random(seed);
        Box extent = new Box(-3000 + random.nextInt(6000), -2000, 20_000 + random.nextInt(60_000), 15_000 + random.nextInt(40_000));
        Scale scale = new Scale(random.nextBoolean() ? 50 : 20);
        Box field = new Box(20, 10, 320, 287);
        List<PlanTile> tiles = PlanTile.all(extent, scale, false, field);
        for (int i = 0; i < 400; i++) {
            Point real = new Point(
                    extent.left() + random.nextDouble() * extent.width(), extent.low() + random.nextDouble() * extent.height());
            List<PlanTile> owners = new ArrayList<>();
            for (PlanTile tile : tiles) {
                Point on = tile.view().on(real);
                Box own = tile.own();
                if (on.x() >= own.left() && on.x() < own.right() && on.y() >= own.low() && on.y() < own.high()) owners.add(tile);
            }
            assertEquals(1, owners.size(), "seed " + seed + ", place " + real);
        }
        for (int i = 0; i < tiles.size(); i++) assertEquals(i + 1, tiles.get(i).number());
        for (PlanTile tile : tiles) {
            if (tile.column() + 1 == tile.columns()) continue;
            PlanTile next = tiles.get(tile.number());
            double here = tile.own().right() - tile.view().origin().x();
            double there = next.own().left() - next.view().origin().x();
            assertEquals(here, there, 1e-9, "the match line is one line");
        }
    }

    @Test
    void whatFitsOneSheetStaysOnOne() {
        Garden garden = TestGardens.chapelYard();
        PlanOptions options = TestOptions.split(TestOptions.plan(false));
        assertEquals(1, PlanDrawing.pages(garden, List.of(), List.of(), List.of(), PlanDrawing.PegsAndSun.NOTHING, options).size());
    }

    @Test
    void aPlanTooLargeForItsPaperGoesOnSeveralSheetsThatNameEachOther() throws Exception {
        Garden garden = TestGardens.chapelYard();
        PlanOptions options = TestOptions.split(TestOptions.at(TestOptions.on(TestOptions.plan(false), Paper.A4), 20));
        List<Page> pages = PlanDrawing.pages(garden, List.of(), List.of(), List.of(), PlanDrawing.PegsAndSun.NOTHING, options);
        assertTrue(pages.size() >= 4, pages.size() + " sheets");
        for (int i = 0; i < pages.size(); i++) {
            Drawn drawn = Drawn.of(pages.get(i));
            String text = String.join("\n", drawn.texts());
            assertTrue(text.contains((i + 1) + " of " + pages.size()), text);
            assertTrue(text.contains("match line, sheet "), text);
            assertTrue(text.contains("1:20"), text);
        }
        for (String bed : garden.beds().stream().map(bed -> bed.id()).toList()) {
            boolean named = false;
            for (Page page : pages) named |= Drawn.of(page).texts().contains(bed);
            assertTrue(named, bed + " is named on a sheet");
        }
    }

    @Test
    void moreSheetsThanAnyoneWouldJoinAreRefusedWithTheirNumber() {
        Garden garden = TestGardens.chapelYard();
        PlanOptions options = TestOptions.split(TestOptions.at(TestOptions.on(TestOptions.plan(false), Paper.A4), 1));
        String why = Told.refusal(assertThrows(
                        IllegalArgumentException.class, () -> PlanDrawing.pages(garden, List.of(), List.of(), List.of(), PlanDrawing.PegsAndSun.NOTHING, options)));
        assertTrue(why.matches("plan: At 1:1 the plan takes [0-9]+ sheets of A4; at most 60 sheets are possible. .*"), why);
    }
}
