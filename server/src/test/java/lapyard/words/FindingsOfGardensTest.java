package lapyard.words;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lapyard.job.Gardens;
import lapyard.job.Job;
import lapyard.json.GardenReader;
import lapyard.json.Reading;
import lapyard.plan.Finding;
import lapyard.plan.Garden;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is said of whole gardens: every number has its unit or noun, few lines, short ones, danger first. */
class FindingsOfGardensTest {
    private static final int MOST_FINDINGS = 12;
    private static final int MIDDLE_WORDS = 25;
    private static final int MOST_WORDS = 40;

    /** Numbers that are part of a name or have their unit behind them; slopes, sections, dates and places in the yard too. */
    private static final Pattern NAMED = Pattern.compile("(?i)\\b(beds?|bed groups?|walls?|course|corner|weekends?|reading|leg|point|side|piece|boards?|paths?|timber|liner|base"
            + "|surface|task|group|screws of|membrane|stamped|section) ([\\w-]+(, | and ))*[\\w-]*\\d[\\w-]*(( and|,) [\\w-]+)*");
    private static final Pattern MEASURED = Pattern.compile("(\\([-\\d., '\"/]+\\)|\\d[\\d., x]*( and [\\d.]+)?) ?(mm|m²|m³|kg|kN|kN/m²|kg/m²|m|lb|sq ft|cu yd|ft|lbf|psf|%|degrees|person-hours)(?!\\w)"
            + "|\\d+ %|[-\\d' /]+[\"']|1:\\d[\\d.]*|[A-Z]{3} [\\d.]+|[A-Z]\\w+day \\d+ \\w+ \\d{4}|\\b\\d+ [A-Z][a-z]{2}\\b|\\d+x\\d+|\\bC\\d\\d\\b");
    private static final Pattern COUNTED = Pattern.compile("(\\d+ of )?\\d+ [a-z]{3,}[a-z -]*");
    private static final Pattern FEET = Pattern.compile("\\d+'( \\d+)?( ?\\d+/\\d+)?\"?|\\d+( \\d+/\\d+)?\"|\\d+/\\d+\"");

    private static Garden garden(String text) throws Exception {
        Reading reading = GardenReader.read(text);
        assertTrue(reading instanceof Reading.Read, () -> text + ": " + reading.findings());
        return ((Reading.Read) reading).garden();
    }

    private static void noBareNumber(List<Finding> findings, Wording words) {
        for (Finding finding : findings) {
            List<String> told = new ArrayList<>(finding.alike().stream().map(words::text).toList());
            told.add(words.paragraph(finding));
            for (String one : told) {
                String rest = MEASURED.matcher(one).replaceAll("#");
                rest = NAMED.matcher(rest).replaceAll("#");
                rest = COUNTED.matcher(rest).replaceAll("#");
                Matcher bare = Pattern.compile("(?<![\\w.-])\\d[\\d.]*").matcher(rest);
                assertTrue(!bare.find(), one + " | " + rest);
            }
        }
    }

    /** Counted with the ways out; {@code 7' 10 1/2"} counts as two words, as {@code 2400 mm} does. */
    private static void areShort(List<Finding> findings, Wording words) {
        List<String> told = findings.stream().map(words::paragraph).sorted(Comparator.comparingInt(FindingsOfGardensTest::count)).toList();
        if (told.isEmpty()) return;
        String middle = told.get(told.size() / 2);
        String longest = told.get(told.size() - 1);
        assertTrue(count(middle) <= MIDDLE_WORDS, () -> "the middle one has " + count(middle) + " words: " + middle);
        assertTrue(count(longest) <= MOST_WORDS, () -> count(longest) + " words: " + longest);
    }

    private static int count(String told) {
        return FEET.matcher(told).replaceAll("0 inches").split("\\s+").length;
    }

    @ParameterizedTest
    @MethodSource("lapyard.job.Gardens#samples")
    void everySampleIsToldInFewShortSentencesWithUnits(String sample) throws Exception {
        Garden garden = garden(Gardens.text(sample));
        List<Finding> findings = Job.prepare(garden).snags();
        Wording words = Wording.of(garden.imperial());
        noBareNumber(findings, words);
        assertTrue(findings.size() <= MOST_FINDINGS, findings.size() + " findings");
        areShort(findings, words);
        for (int i = 1; i < findings.size(); i++) {
            assertTrue(findings.get(i - 1).kind().concern.compareTo(findings.get(i).kind().concern) <= 0, words.text(findings.get(i)));
        }
    }

    /** The same gardens in millimetres and in feet and inches. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
    void generatedGardensAreToldInShortSentencesWithUnits(long seed) throws Exception {
        Random random = new Random(seed);
        StringBuilder beds = new StringBuilder();
        for (int i = 0; i < 2 + random.nextInt(3); i++) {
            beds.append(i == 0 ? "" : ",").append("{\"id\":\"").append((char) ('K' + i)).append("\",\"width\":").append(900 + 10 * random.nextInt(620))
                    .append(",\"depth\":").append(700 + 10 * random.nextInt(150)).append(",\"courses\":").append(1 + random.nextInt(4))
                    .append(",\"at\":[").append(random.nextInt(9_000)).append(',').append(random.nextInt(7_000)).append("]}");
        }
        String fall = random.nextBoolean() ? ",\"levels\":[{\"at\":[0,0],\"drop\":400},{\"at\":[9000,0],\"drop\":" + (400 + random.nextInt(300))
                + "},{\"at\":[0,7000],\"drop\":" + (400 + random.nextInt(300)) + "}]" : "";
        String ground = "\"ground\":{\"outline\":[[0,0],[12000,0],[12000,9000],[0,9000]],\"surfaces\":[{\"kind\":\"" + (random.nextBoolean() ? "grass" : "slab")
                + "\",\"outline\":[[0,0],[7000,0],[7000,9000],[0,9000]]}]" + fall + "}";
        for (boolean imperial : List.of(false, true)) {
            Garden garden = garden("{" + (imperial ? "\"units\":\"imperial\"," : "") + ground + ",\"beds\":[" + beds + "]}");
            List<Finding> findings = Job.prepare(garden).snags();
            noBareNumber(findings, Wording.of(imperial));
            areShort(findings, Wording.of(imperial));
        }
    }

    @Test
    void aWordThatIsSpeltWrongIsAskedFor() throws Exception {
        List<Finding> found = GardenReader.read("{\"beds\":[{\"width\":2400,\"dept\":1200}]}").findings();
        assertTrue(found.stream().anyMatch(one -> Wording.METRIC.paragraph(one).equals("Unknown field \"dept\". Did you mean \"depth\"?")),
                () -> found.stream().map(Wording.METRIC::paragraph).toList().toString());
        assertEquals("7' 10 1/2\"", Wording.IMPERIAL.length(2400.3));
    }
}
