package lapyard.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import lapyard.construction.Piece;
import lapyard.loadin.LoadIn;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.Finding.Weight;
import lapyard.plan.FindingKind;
import lapyard.plan.Lifting;
import lapyard.plan.Told;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Lifts over what one person manages: one note a kind for the whole garden. */
class LiftsTest {
    private static final String M =
            "{\"id\":\"M\",\"outline\":[[0,0],[3000,0],[3000,1500],[1800,1500],[1800,2400],[0,2400]],\"courses\":3}";
    private static final String ONLY_4800 =
            ",\"catalogue\":{\"sections\":[{\"id\":\"100x200\",\"thickness\":100,\"height\":200,\"stock\":[{\"length\":4800,\"price\":36.00}]}]}";

    private static List<Finding> lifts(String document) {
        return Gardens.sheet(document).snags().stream()
                .filter(finding -> finding.where().endsWith(", lifts"))
                .toList();
    }

    /** 2.9 m 34.8 kg and 2.3 m 27.6 kg, three each; two people together are good for 2/3 of 2 x 25 = 33.3 (HSE L23, from memory). */
    @Test
    void fewLiftsAreNamedByTheirMarks() {
        Finding note = lifts("{\"beds\":[" + M + "]}").get(0);
        assertEquals("bed M, lifts", note.where());
        assertEquals(Weight.NOTE, note.weight());
        assertTrue(Told.text(note).startsWith("6 timbers in bed M take 2 people (over 25 kg), the heaviest 34.8 kg, over their guide of 33.3 kg."), Told.text(note));
    }

    private static Finding boards(String document) {
        return Gardens.sheet(document).snags().stream()
                .filter(finding -> finding.where().equals("timber 100x200"))
                .findFirst()
                .orElseThrow();
    }

    /** A board of 4800 is 57.6 kg: three people, two come. Each is cut into parts of at most 2900 and 34.8 kg: two people. */
    @Test
    void boardsBeyondTheCrewAreForWheelsOrTheMerchantsSaw() {
        Finding note = boards("{\"beds\":[" + M + "]" + ONLY_4800 + "}");
        assertTrue(Told.text(note).startsWith("7 boards over 25 kg are too heavy for 2 people, the heaviest 57.6 kg"), Told.text(note));
        assertEquals(List.of("Use a sack truck", "Have the merchant cut 7 boards"), Told.ways(note));
        assertEquals(Weight.NOTE, note.weight());
    }

    /**
     * Two of 4800 (57.6 kg) hold one piece of 4600 each, 55.2 kg, so no cut helps; those of 3600 (43.2 kg) two people carry, and one
     * where they are cut between two of 1700: that is no way out for the two.
     */
    @Test
    void ofBoardsBeyondTheCrewOnlyThoseThatACutHelpsAreToldToBeCut() {
        Finding note = boards("{\"beds\":[{\"id\":\"P\",\"width\":4700,\"depth\":1000,\"courses\":1},{\"id\":\"N\",\"width\":1800,\"depth\":900,\"at\":[0,3000]}],"
                + "\"catalogue\":{\"sections\":[{\"id\":\"100x200\",\"thickness\":100,\"height\":200,\"stock\":[{\"length\":3600,\"price\":26.40},{\"length\":4800,\"price\":36.00}]}]}}");
        assertTrue(Told.text(note).matches("2 of [0-9]+ boards over 25 kg are too heavy for 2 people, the heaviest 57.6 kg.*"), Told.text(note));
        assertEquals(List.of("Use a sack truck"), Told.ways(note));
    }

    /** The same board as three who lift carry it: within the crew, over the guide of half of 3 x 25. */
    @Test
    void aTeamIsToldToBeOverItsGuide() {
        String three = ",\"crew\":{\"people\":[{\"name\":\"A\"},{\"name\":\"B\"},{\"name\":\"C\"}]}";
        Finding note = boards("{\"beds\":[" + M + "]" + ONLY_4800 + three + "}");
        assertTrue(Told.text(note).endsWith("the heaviest, 57.6 kg, takes 3 people and is over their guide of 37.5 kg."), Told.text(note));
        assertEquals(Weight.NOTE, note.weight());
    }

    /** Who is described as coming alone has nobody to lift with: 7 boards and 6 timbers over 25 kg. */
    @Test
    void aDescribedCrewThatIsTooSmallIsASnag() {
        String alone = ",\"crew\":{\"people\":[{\"name\":\"A\"},{\"name\":\"B\",\"lifts\":false}]}";
        Finding snag = lifts("{\"beds\":[" + M + "]" + alone + "}").get(0);
        assertEquals(Weight.SNAG, snag.weight());
        assertTrue(Told.text(snag).startsWith("6 timbers in bed M are too heavy for 1 person (25 kg), the heaviest 34.8 kg."), Told.text(snag));
        assertTrue(Told.ways(snag).contains("Ask more people who can lift"));
        assertEquals(Weight.SNAG, boards("{\"beds\":[" + M + "]" + ONLY_4800 + alone + "}").weight());
    }

    /** One timber of 2800 out of each board of 2950, 35.4 kg: whatever is cut off first, two still lift the rest. */
    @Test
    void theMerchantsCutIsOfferedOnlyWhereItMakesABoardLighter() {
        String only2950 = ONLY_4800.replace("4800", "2950");
        Finding note = boards("{\"beds\":[{\"id\":\"P\",\"width\":2900,\"depth\":2900,\"courses\":2}]" + only2950 + "}");
        assertEquals(List.of("Use a sack truck"), Told.ways(note));
    }

    /** HSE L23, from memory: of the sum of what each lifts, two manage two thirds and three half. */
    @ParameterizedTest
    @CsvSource({
        // limit, kg, people, guide, over
        "25, 25, 1, 25, false",
        "25, 25.1, 2, 33.333, false",
        "25, 34.8, 2, 33.333, true",
        "25, 50, 2, 33.333, true",
        "25, 57.6, 3, 37.5, true",
        "25, 76, 4, 50, true",
        "16, 20, 2, 21.333, false"
    })
    void peopleAreMassOverLimitAndATeamIsGoodForAShare(double limit, double kg, int people, double guide, boolean over) {
        Lifting two = new Lifting(limit, 2);
        assertEquals(people, two.people(kg));
        assertEquals(guide, two.guideKg(people), 0.001);
        assertEquals(over, two.overGuide(kg));
        assertEquals(people > 2, two.beyondCrew(kg));
        assertEquals(Math.min(2, people), two.hands(kg));
    }

    /** Days, load-in, pieces and findings say the same of the same thing, whatever the garden; seeded. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void everyPlaceSaysTheSameNumberOfPeople(long seed) {
        Random random = new Random(seed);
        int limit = 12 + random.nextInt(20);
        int crew = 1 + random.nextInt(4);
        String people = IntStream.range(0, crew).mapToObj(i -> "{\"name\":\"P" + i + "\"}").collect(Collectors.joining(","));
        JobSheet sheet = Gardens.sheet("{\"beds\":[{\"id\":\"A\",\"width\":" + (1500 + 100 * random.nextInt(25)) + ",\"depth\":1200,\"courses\":2}]"
                + ",\"crew\":{\"liftLimit\":" + limit + ",\"people\":[" + people + "]}}");
        double heaviest = 0;
        double heaviestOf1 = 0;
        int heavy = 0;
        for (Piece piece : sheet.beds().get(0).work().pieces()) {
            double kg = piece.lengthMm() * 100 * 200 * 600 / 1e9;
            heaviest = Math.max(heaviest, kg);
            if (piece.course() == 1) heaviestOf1 = Math.max(heaviestOf1, kg);
            heavy += kg > limit + 1e-9 ? 1 : 0;
        }
        int needed = (int) Math.ceil(heaviest / limit - 1e-9);
        assertEquals(Math.max(1, Math.min(crew, (int) Math.ceil(heaviestOf1 / limit - 1e-9))),
                sheet.weekends().byId().get("A.course-1").work().people());
        List<Finding> found = sheet.snags().stream().filter(finding -> finding.where().endsWith(", lifts")).toList();
        assertEquals(heavy, found.stream().mapToInt(finding -> (int) ((Fact.Count) finding.facts().get("lifts")).count()).sum());
        assertEquals(needed > crew, found.stream().anyMatch(finding -> finding.kind() == FindingKind.LIFTS_BEYOND));
        for (LoadIn.Lift lift : Loads.of(sheet).lifts()) {
            assertEquals((int) Math.ceil(lift.massKg() / limit - 1e-9), lift.people());
            assertEquals(lift.people() > crew, lift.beyondCrew());
        }
    }

    @Test
    void sixtyBedsAreOneNote() {
        List<String> beds = new ArrayList<>();
        for (int i = 1; i <= 60; i++) {
            beds.add("{\"id\":\"" + (i < 10 ? "0" : "") + i + "\",\"width\":2400,\"depth\":1200,\"at\":[" + i * 4000 + ",0]}");
        }
        List<Finding> found = lifts("{\"beds\":[" + String.join(",", beds) + "]}");
        assertEquals(1, found.size());
        assertEquals("beds 01-60, lifts", found.get(0).where());
        assertTrue(Told.text(found.get(0)).contains("take 2 people (over 25 kg), the heaviest 27.6 kg"), Told.text(found.get(0)));
    }

    @Test
    void whatIsBeyondTwoPeopleIsANoteOfItsOwn() {
        List<Finding> found = lifts("{\"beds\":[{\"id\":\"K\",\"width\":4500,\"depth\":900,\"courses\":2}]" + ONLY_4800 + "}");
        assertEquals(1, found.size());
        assertTrue(Told.text(found.get(0)).startsWith("4 timbers in bed K are too heavy for 2 people (50 kg), the heaviest 52.8 kg."), Told.text(found.get(0)));
    }
}
