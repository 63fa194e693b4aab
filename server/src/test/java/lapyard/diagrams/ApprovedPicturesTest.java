package lapyard.diagrams;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import lapyard.diagrams.BenchTable.Column;
import lapyard.drawing.Page;
import lapyard.drawing.Paper;
import lapyard.drawing.PngWriter;
import lapyard.geometry.Point;
import lapyard.ground.SettingOut;
import lapyard.plan.AccessStandard;
import lapyard.plan.Baseline;
import lapyard.plan.Garden;
import lapyard.plan.Ground;
import lapyard.plan.Preparation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

/**
 * Drawings against pictures that were looked at and approved. {@code -Dlapyard.approve=true} writes them anew: look at each before it is kept.
 */
class ApprovedPicturesTest {
    private static final Path FOLDER = Path.of("src", "test", "resources", "approved");
    private static final double DPI = 60;

    /** Pixels to a side of the squares that are compared; smaller differences of smoothing fall out in their mean. */
    private static final int SQUARE = 6;

    /** Greatest difference of a square's mean brightness, of 255: less than a hair line through it. */
    private static final double TOLERANCE = 14;

    private static final Garden PEGGED = TestGardens.garden(
            "Chapel yard", false,
            new Ground(TestGardens.chapelYard().ground().outline(), List.of(), List.of(), List.of(), 0, Optional.empty(),
                    Optional.of(new Baseline(new Point(0, 600), new Point(12000, 600), 0)), Preparation.USUAL, List.of(),
                    AccessStandard.USUAL, List.of(), Optional.empty()),
            TestGardens.chapelYard().beds(), TestGardens.chapelYard().paths());

    private static final Map<String, Supplier<Page>> DRAWN = Map.of(
            "plan", () -> plan(TestOptions.plan(false)),
            "plan-mono", () -> plan(TestOptions.plan(TestOptions.mono(BenchOptions.usual("", false).on(Paper.A3)))),
            "plan-stages", () -> plan(TestOptions.showing(TestOptions.plan(false), PlanLayer.named(List.of("beds", "stages", "paths")))),
            "plan-pegs", () -> PlanDrawing.pages(
                    PEGGED, List.of(), TestGardens.chapelPaths(), List.of(),
                    new PlanDrawing.PegsAndSun(Optional.of(SettingOut.of(PEGGED, Optional.empty())), Optional.empty()),
                    TestOptions.showing(TestOptions.plan(false), PlanLayer.named(List.of("beds", "dimensions", "pegs")))).get(0),
            "plan-split", () -> plan(TestOptions.split(TestOptions.at(TestOptions.plan(false), 20))),
            "plan-stale", () -> plan(TestOptions.plan(TestOptions.stale(TestOptions.stamped(BenchOptions.usual("", true).on(Paper.TABLOID), "revision 3", "2026-03-01"), "the garden is at revision 4."))),
            "bed-register", ApprovedPicturesTest::register);

    private static Page register() {
        return new ListSheets("Two people or more lift each timber whose mark has a dot. Check each bed's place on the plan before anything is cut for it.",
                "Bed register", "2 beds, each to be ticked when it is filled", BenchOptions.usual("Chapel yard", false))
                .table("Beds", List.of(new Column("Bed", 0.07, true), new Column("Name, type", 0.18, false), new Column("Width, depth, height", 0.18, false),
                        new Column("Stands at: along, away", 0.21, false), new Column("Stage", 0.08, false), new Column("Timber", 0.09, false),
                        new Column("Mass", 0.08, false), new Column("Loose soil", 0.07, false), new Column("Done", 0.04, false)), List.of(
                        List.of("A", "Herbs, type R", "2400 × 1200 × 600", "1000, 1400", "1", "20.4 m", "244.8 kg", "1.18 m³", BenchTable.TICK),
                        List.of("B", "", "1800 × 900 × 400", "4600, 1400, turned 90°", "2", "10.0 m", "120.0 kg", "0.40 m³", BenchTable.TICK)))
                .table("Types", List.of(new Column("Type", 0.14, true), new Column("Beds", 0.22, false), new Column("Width, depth, height", 0.28, false),
                        new Column("Timber", 0.12, false), new Column("Mass", 0.12, false), new Column("Loose soil", 0.12, false)), List.of(
                        List.of("R", "1 bed: A", "2400 × 1200 × 600", "20.4 m", "244.8 kg", "1.18 m³")))
                .pages().get(0);
    }


    private static Page plan(PlanOptions options) {
        return TestGardens.draw(TestGardens.chapelYard(), TestGardens.chapelYard().beds().stream().map(TestGardens::work).toList(), TestGardens.chapelPaths(), List.of(), options);
    }

    static Stream<String> names() {
        return DRAWN.keySet().stream().sorted();
    }

    @ParameterizedTest
    @MethodSource("names")
    void looksAsItWasApproved(String name) throws IOException {
        byte[] png = PngWriter.write(DRAWN.get(name).get(), DPI);
        Path approved = FOLDER.resolve(name + ".png");
        if (Boolean.getBoolean("lapyard.approve")) {
            Files.createDirectories(FOLDER);
            Files.write(approved, png);
        }
        BufferedImage now = ImageIO.read(new ByteArrayInputStream(png));
        BufferedImage then = picture(approved);
        assertEquals(then.getWidth() + " x " + then.getHeight(), now.getWidth() + " x " + now.getHeight());
        String worst = worst(then, now);
        assertTrue(worst.isEmpty(), () -> name + ": " + worst);
    }

    /** The comparison itself sees a letter that is gone. */
    @Test
    void aMissingLetterIsSeen() throws IOException {
        BufferedImage then = picture(FOLDER.resolve("plan.png"));
        BufferedImage now = picture(FOLDER.resolve("plan.png"));
        int dark = -1;
        for (int x = 0; x < now.getWidth() && dark < 0; x++) {
            if (brightness(now, x, now.getHeight() / 2) < 100) dark = x;
        }
        for (int x = dark; x < dark + 4; x++) {
            for (int y = now.getHeight() / 2 - 3; y < now.getHeight() / 2 + 3; y++) now.setRGB(x, y, 0xFFFFFF);
        }
        assertTrue(worst(then, now).contains("differs"));
    }

    private static BufferedImage picture(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            return ImageIO.read(in);
        }
    }

    /** Where the pictures differ most, empty where nowhere by more than the tolerance. */
    private static String worst(BufferedImage then, BufferedImage now) {
        double most = TOLERANCE;
        String place = "";
        for (int x = 0; x + SQUARE <= then.getWidth(); x += SQUARE) {
            for (int y = 0; y + SQUARE <= then.getHeight(); y += SQUARE) {
                double difference = Math.abs(mean(then, x, y) - mean(now, x, y));
                if (difference > most) {
                    most = difference;
                    place = "differs by " + Math.round(difference) + " of 255 at " + x + ", " + y;
                }
            }
        }
        return place;
    }

    private static double mean(BufferedImage image, int left, int top) {
        double sum = 0;
        for (int x = left; x < left + SQUARE; x++) {
            for (int y = top; y < top + SQUARE; y++) sum += brightness(image, x, y);
        }
        return sum / (SQUARE * SQUARE);
    }

    private static double brightness(BufferedImage image, int x, int y) {
        int rgb = image.getRGB(x, y);
        return ((rgb >> 16 & 255) + (rgb >> 8 & 255) + (rgb & 255)) / 3.0;
    }
}
