package lapyard.job;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lapyard.json.GardenReader;
import lapyard.json.Reading;
import lapyard.plan.Garden;
import lapyard.working.Progress;

/** Documents as gardens, for tests that begin at the document. */
public final class Gardens {
    /** The values that the worked beds were worked with, where ours are others now. */
    public static final String WORKED = "\"defaults\":{\"screws\":{\"length\":100},\"finish\":{\"cover\":12},\"base\":\"slatted\","
            + "\"ties\":{\"courseTies\":false,\"crossTies\":false}}";

    /** The boards and the bulk bags of the worked beds with their example prices and no spare, fields of the catalogue. */
    public static final String WORKED_BOARDS = "\"sections\":[{\"id\":\"100x200\",\"thickness\":100,\"height\":200,\"stock\":["
            + "{\"length\":2400,\"price\":17.40},{\"length\":3000,\"price\":21.90},{\"length\":3600,\"price\":26.40},"
            + "{\"length\":4800,\"price\":36.00}]}],\"packs\":[" + bulk("soil.topsoil", 1200, "55.00") + "," + bulk("soil.compost", 700, "62.00")
            + "," + bulk("soil.grit", 1600, "60.00") + "]";

    /** Goods in bulk bags of 0.75 m3 alone. */
    public static String bulk(String item, int densityKgM3, String price) {
        return "{\"item\":\"" + item + "\",\"unit\":\"m3\",\"density\":" + densityKgM3 + ",\"spare\":0,"
                + "\"packs\":[{\"name\":\"bulk bag 0.75 m3\",\"content\":0.75,\"price\":" + price + "}]}";
    }

    private Gardens() {}

    /** Shared by all tests of a run: what one searched for is ready for the next. */
    private static final SearchMemory MEMORY = new SearchMemory(32L << 20);

    private static final Map<String, JobSheet> SAMPLES = new ConcurrentHashMap<>();

    /** The names of all samples. */
    public static Stream<String> samples() {
        String[] files = Path.of("../samples").toFile().list((folder, name) -> name.endsWith(".json"));
        return Stream.of(files).map(file -> file.replace(".json", "")).sorted();
    }

    /** A sample's document. */
    public static String text(String sample) {
        try {
            return Files.readString(Path.of("../samples", sample + ".json"));
        } catch (IOException missing) {
            throw new UncheckedIOException(missing);
        }
    }

    /** A sample's sheet, made once a run. */
    public static JobSheet sample(String name) {
        return SAMPLES.computeIfAbsent(name, one -> sheet(text(one)));
    }

    public static Garden garden(String text) {
        Reading reading = GardenReader.read(text);
        if (reading instanceof Reading.Read read) return read.garden();
        throw new AssertionError(reading.findings().toString());
    }

    /** Rectangular beds of {@link #WORKED_BOARDS}, each {@code widthxdepthxcourses}, six in a row; rows lie 2500 apart. */
    public static String rows(String search, String sizes) {
        StringBuilder beds = new StringBuilder();
        int number = 0;
        for (String size : sizes.split(" ")) {
            String[] parts = size.split("x");
            beds.append(number == 0 ? "" : ",").append("{\"width\":%s,\"depth\":%s,\"courses\":%s,\"at\":[%d,%d]}"
                    .formatted(parts[0], parts[1], parts[2], number % 6 * 5000, number / 6 * 2500));
            number++;
        }
        return "{\"name\":\"Many sizes\"" + (search.isEmpty() ? "" : ",\"search\":\"" + search + "\"")
                + ",\"ground\":{\"outline\":[[-1000,-1000],[32000,-1000],[32000,22000],[-1000,22000]]},\"catalogue\":{" + WORKED_BOARDS
                + "},\"beds\":[" + beds + "]}";
    }

    /** A bed of so many equal walls, its corners blunt. */
    public static String sided(String id, int sides, double wallMm, int atX, String more) {
        String wall = "{\"length\":%s,\"turn\":%s}".formatted(wallMm, 360.0 / sides);
        return "{\"id\":\"%s\",\"at\":[%d,3000]%s,\"walls\":[%s]}".formatted(
                id, atX, more, String.join(",", Collections.nCopies(sides, wall)));
    }

    /** Beds of 100x200 with so many good faces; each stock length with its price, as in {@code 2400=17.40 4800=36.00}. */
    public static String faced(int goodFaces, String more, String lengths, List<String> beds) {
        String stock = Stream.of(lengths.split(" "))
                .map(length -> "{\"length\":%s,\"price\":%s}".formatted((Object[]) length.split("=")))
                .collect(Collectors.joining(","));
        return ("{\"catalogue\":{\"sections\":[{\"id\":\"100x200\",\"thickness\":100,\"height\":200,\"goodFaces\":%d,\"stock\":[%s]}]},"
                + "\"beds\":[%s]%s}").formatted(goodFaces, stock, String.join(",", beds), more);
    }

    public static JobSheet sheet(String text) {
        return Job.prepare(garden(text), what -> Progress.UNHEARD, MEMORY);
    }
}
