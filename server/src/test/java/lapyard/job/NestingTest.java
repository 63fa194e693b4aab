package lapyard.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import lapyard.construction.Nest;
import lapyard.construction.Piece;
import lapyard.cutting.SawBoard;
import lapyard.job.JobSheet.SectionCutting;
import lapyard.plan.Finding;
import lapyard.plan.Told;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Which angled pieces are sawn head to tail: whole gardens, from the document on. */
class NestingTest {
    private static String hexagon(String id, double side, int at, String more) {
        return Gardens.sided(id, 6, side, at, ",\"courses\":3" + more);
    }

    private static String garden(int goodFaces, String more, String... beds) {
        return Gardens.faced(goodFaces, more, "4800=36.00", List.of(beds));
    }

    private static SectionCutting cutting(JobSheet sheet) {
        return sheet.cutting().get(0);
    }

    private static String seenOnly(String walls) {
        return ",\"seen\":[" + walls.chars().mapToObj(c -> "\"" + (char) c + "\"").collect(Collectors.joining(",")) + "]";
    }

    /**
     * 18 pieces of 1200, 100 thick, set 30, of boards of 4800 that give 4780. By their long points three a board (3608, four
     * would be 4812): 6 boards. Head to tail four take 4 x 1142.265 + 57.735 + 3 x 4.619 = 4640.7: 5 boards, and 18 / 4 is above 4.
     */
    @Test
    void fourOfTheHexagonsPiecesComeFromABoardThatGaveThree() {
        SectionCutting apart = cutting(Gardens.sheet(garden(1, "", hexagon("X", 1200, 0, ""))));
        assertEquals(6, apart.result().boards());
        assertEquals(List.of(), apart.saw().nests());
        JobSheet sheet = Gardens.sheet(garden(2, "", hexagon("X", 1200, 0, "")));
        SectionCutting nested = cutting(sheet);
        assertEquals(5, nested.result().boards());
        assertEquals(new BigDecimal("180.00"), nested.result().paid().setScale(2));
        assertTrue(nested.result().proven(), nested.result()::toString);
        assertEquals(4641, nested.saw().nests().get(0).lengthMm());
        assertEquals(5, nested.boardsBedByBed());
        checkWhole(sheet);
        // 18 pieces of 36 angled ends, each of 6 boards with an end to trim; in 5 nests each has one slanted cut more than pieces
        String apart18 = sawDay(Gardens.sheet(garden(1, "", hexagon("X", 1200, 0, ""))));
        assertTrue(apart18.contains("24 square and 36 slanted cuts"), apart18);
        assertTrue(sawDay(sheet).contains("10 square and 23 slanted cuts"), sawDay(sheet));
        Finding told = sheet.snags().stream().filter(one -> one.where().equals("timber 100x200, nests")).findFirst().orElseThrow();
        assertTrue(Told.text(told).contains("18 pieces with angled ends are sawn head to tail from 5 lengths"), Told.text(told));
    }

    private static String sawDay(JobSheet sheet) {
        return String.join(" ", sheet.weekends().byId().get("saw.1").work().loads());
    }

    /** Of boards with one good face the note says what it costs and what to do. */
    @Test
    void oneGoodFaceIsToldWithItsExtraLength() {
        JobSheet sheet = Gardens.sheet(garden(1, "", hexagon("X", 1200, 0, "")));
        Finding told = sheet.snags().stream().filter(one -> one.kind() == lapyard.plan.FindingKind.ANGLE_POINTS).findFirst().orElseThrow();
        // 18 x 57.735
        assertEquals(1039.2, told.amount().orElseThrow().value(), 1);
        assertTrue(Told.ways(told).get(0).contains("two good faces"), Told.ways(told)::toString);
        JobSheet both = Gardens.sheet(garden(2, "", hexagon("X", 1200, 0, "")));
        assertTrue(both.snags().stream().noneMatch(one -> one.kind() == lapyard.plan.FindingKind.ANGLE_POINTS));
    }

    /** Pieces that nobody sees need no good face, so any board may hold their nest. */
    @Test
    void hiddenWallsAreNestedOnAnyBoard() {
        JobSheet sheet = Gardens.sheet(garden(1, "", hexagon("X", 1200, 0, seenOnly(""))));
        assertEquals(5, cutting(sheet).result().boards());
        assertFalse(cutting(sheet).saw().nests().isEmpty());
        assertTrue(cutting(sheet).saw().nests().stream().allMatch(nest -> nest.goodFaces() == 0));
        checkWhole(sheet);
    }

    /** A board on hand with both faces good takes a nest of seen pieces; one with one good face does not. */
    @Test
    void theRackTakesNestsOnlyWhereBothFacesAreGood() {
        for (int faces : new int[] {1, 2}) {
            String rack = ",\"rack\":[{\"id\":\"R\",\"length\":4800,\"count\":5,\"goodFaces\":" + faces
                    + ",\"origin\":\"our barn\",\"treatment\":\"none\",\"salvage\":1}]";
            JobSheet sheet = Gardens.sheet(garden(1, rack, hexagon("X", 1200, 0, "")));
            assertEquals(faces == 2 ? 0 : 1, boughtBoards(sheet), "with " + faces + " good faces");
            assertEquals(faces == 2, !cutting(sheet).saw().nests().isEmpty());
            checkWhole(sheet);
        }
    }

    private static long boughtBoards(JobSheet sheet) {
        return cutting(sheet).saw().boards().stream().filter(board -> board.stock().equals("4800")).count();
    }

    /** A nest is of one weekend, and two beds of one weekend share theirs. */
    @Test
    void nestsAreOfOneWeekend() {
        JobSheet sheet = Gardens.sheet(garden(2, "", hexagon("X", 1200, 0, ",\"weekend\":1"), hexagon("Y", 1200, 4000, ",\"weekend\":1"),
                hexagon("Z", 1200, 8000, ",\"weekend\":2")));
        checkWhole(sheet);
        for (Nest nest : cutting(sheet).saw().nests()) {
            boolean second = nest.mark().contains("Z-");
            assertEquals(second, Nest.marks(nest.mark()).stream().allMatch(mark -> mark.startsWith("Z-")), nest.mark());
        }
        // 54 pieces at four a board: 14 boards, with three a board 18
        assertEquals(14, cutting(sheet).result().boards());
    }

    /** What is cut stays as it was cut, whatever would be nested now. */
    @Test
    void aNestThatIsCutStaysANest() {
        String cut = "X-3F+X-2A+X-1C";
        JobSheet sheet = Gardens.sheet(garden(1, tally("\"" + cut + "\""), hexagon("X", 1200, 0, "")));
        assertEquals(List.of(cut), cutting(sheet).saw().nests().stream().map(Nest::mark).toList());
        SectionReplan rest = SectionReplan.of(sheet).sections().get(0);
        assertEquals(1, rest.planned().cut());
        assertEquals(15, rest.planned().wanted());
        assertTrue(SectionReplan.of(sheet).findings().stream().noneMatch(finding -> finding.weight() != Finding.Weight.NOTE), rest::toString);
        checkWhole(sheet, cut);
    }

    /** Whatever else is cut by itself or nested across two beds: what is nested alone is weighed, and nothing costs more than that. */
    @ParameterizedTest
    @ValueSource(strings = {"\"X-1A\"", "\"X-1A+X-1B\"", "\"X-1A+Y-1B\""})
    void pooledIsNeverAboveBedByBedWhateverIsCut(String cut) {
        JobSheet sheet = Gardens.sheet(garden(2, tally(cut), hexagon("X", 900, 0, ""), hexagon("Y", 1180, 4000, "")));
        List<JobSheet.Way> ways = cutting(sheet).saw().ways();
        assertTrue(ways.get(0).cost().orElseThrow().compareTo(ways.get(1).cost().orElseThrow()) <= 0, ways::toString);
        checkWhole(sheet);
    }

    /** And a piece that was cut by itself is in no nest. */
    @Test
    void aPieceThatIsCutByItselfIsInNoNest() {
        JobSheet sheet = Gardens.sheet(garden(2, tally("\"X-1A\",\"X-2B\""), hexagon("X", 1200, 0, "")));
        assertTrue(cutting(sheet).saw().nests().stream().noneMatch(
                nest -> nest.mark().contains("X-1A") || nest.mark().contains("X-2B")));
        assertEquals(2, SectionReplan.of(sheet).sections().get(0).planned().cut());
        checkWhole(sheet);
    }

    private static String tally(String cut) {
        return ",\"tally\":{\"boards\":[{\"board\":\"#1\",\"stock\":\"4800\",\"cut\":[" + cut + "]}]}";
    }

    /** Alike pieces: as many a board as n x mean + t tan 30 + (n - 1) kerf / cos 30 lets on to 4780, no board more. */
    @ParameterizedTest
    @ValueSource(doubles = {700, 790, 830, 910, 980, 1100, 1230, 1240, 1300, 1500, 1620})
    void alikePiecesTakeAsFewBoardsAsTheFormulaSays(double side) {
        double slant = 100 * Math.tan(Math.PI / 6);
        int most = 1;
        while ((most + 1) * (side - slant) + slant + most * 4 / Math.cos(Math.PI / 6) <= 4780 - 1) most++;
        SectionCutting cutting = cutting(Gardens.sheet(garden(2, "", hexagon("X", side, 0, ""))));
        assertEquals((18 + most - 1) / most, cutting.result().boards(), "at " + most + " a board");
        assertTrue(cutting.result().proven());
    }

    /** Whatever the shapes: close to the bound, no dearer than by long points, the bound holds, all pieces once, nothing off a board or on a bad face. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
    void neverDearerAndAlwaysWhole(long seed) {
        Random random = new Random(seed);
        String[] beds = IntStream.range(0, 1 + random.nextInt(4)).mapToObj(i -> {
            String hidden = random.nextInt(3) == 0 ? seenOnly("ADE") : "";
            String weekend = ",\"weekend\":" + (1 + random.nextInt(2));
            return random.nextBoolean()
                    ? hexagon("X" + i, 700 + 10 * random.nextInt(70), 5000 * i, hidden + weekend)
                    : chamfered("C" + i, 5000 * i, random, hidden + weekend);
        }).toArray(String[]::new);
        JobSheet sheet = Gardens.sheet(garden(2, "", beds));
        SectionCutting apart = cutting(Gardens.sheet(garden(1, "", beds)));
        SectionCutting nested = cutting(sheet);
        assertTrue(nested.result().cost().compareTo(apart.result().cost()) <= 0, seed + ": " + nested.result());
        assertTrue(nested.result().lowerBound().compareTo(nested.result().cost()) <= 0);
        List<JobSheet.Way> ways = nested.saw().ways();
        assertTrue(ways.get(0).cost().orElseThrow().compareTo(ways.get(1).cost().orElseThrow()) <= 0, "pooled never above bed by bed");
        assertTrue(nested.result().lowerBound().doubleValue() * 1.1 >= nested.result().cost().doubleValue(), nested.result()::toString);
        checkWhole(sheet);
    }

    private static String chamfered(String id, int at, Random random, String more) {
        int wide = 1500 + 10 * random.nextInt(150);
        int cut = 300 + 10 * random.nextInt(20);
        return ("{\"id\":\"%s\",\"at\":[%d,3000],\"courses\":2%s,"
                + "\"outline\":[[0,0],[%d,0],[%d,%d],[%d,1300],[0,1300]]}").formatted(id, at, more, wide - cut, wide, cut, wide);
    }

    private static void checkWhole(JobSheet sheet) {
        checkWhole(sheet, "");
    }

    /** @param sawn mark of a nest that is cut already, whatever its board */
    private static void checkWhole(JobSheet sheet, String sawn) {
        SectionCutting cutting = cutting(sheet);
        List<String> wanted = sheet.beds().stream().flatMap(bed -> bed.work().pieces().stream()).map(Piece::mark).sorted().toList();
        List<String> cut = new ArrayList<>();
        for (SawBoard board : cutting.saw().boards()) {
            int good = cutting.saw().problem().stock().stream().filter(stock -> stock.id().equals(board.stock())).findFirst().orElseThrow()
                    .goodFaces();
            for (SawBoard.Cut one : board.cuts()) {
                cut.addAll(Nest.marks(one.mark()));
                cutting.saw().nests().stream().filter(nest -> nest.mark().equals(one.mark())).forEach(nest -> {
                    assertEquals(nest.lengthMm(), one.lengthMm());
                    assertTrue(nest.goodFaces() <= good || nest.mark().equals(sawn), nest.mark() + " on a board of " + good);
                });
            }
            assertTrue(board.cuts().get(board.cuts().size() - 1).toMm() <= board.lengthMm() - 10 + 1e-6);
        }
        assertEquals(wanted, cut.stream().sorted().toList());
        assertEquals(cutting.saw().nests().size(), new TreeSet<>(cutting.saw().nests().stream().map(Nest::mark).toList()).size());
    }
}
