package lapyard.drawing;

import java.util.List;
import java.util.Optional;
import lapyard.geometry.Point;

/** Pages to write. */
final class TestPages {
    private TestPages() {}

    static final Stroke PEN = Stroke.of("#23303A", 0.5);

    /** Whatever people may type: markup, controls, half a surrogate pair, right to left, pictures, 10 kB. */
    static final List<String> HOSTILE = List.of(
            "<script>alert(1)</script>",
            "]]> & \" ' <!-- &amp; <![CDATA[ -->",
            "null \u0000 bell \u0007 half \uD83C half \uDF31 end \uFFFE",
            "\u202Edesrever\u202C \u05E2\u05E8\u05D5\u05D2\u05D4 \u0645\u0632\u0631\u0639\u0629",
            "\uD83C\uDF31\uD83E\uDD55 \u65E5\u672C",
            "x".repeat(10_240));

    /** A5 across: a level line of exactly 60 mm, a hatched area with a hole, a circle and a text. */
    static Page plain() {
        return new Page("A plain page", 210, 148.5, List.of(line(), hatched(), circle(), text("Bed of herbs")), List.of());
    }

    static Page saying(String words) {
        return new Page(words, 210, 297, List.of(new Shape.Group("g", words, "words", List.of(text(words)))), List.of());
    }

    static Shape line() {
        return Shape.Lines.of(PEN, new Point(20, 100), new Point(80, 100));
    }

    static Shape.Area hatched() {
        return new Shape.Area(
                List.of(square(30, 20, 50), square(45, 35, 20)),
                Optional.of("#F4F1E8"),
                Optional.of(new Hatch(Hatch.Mark.LINES, 45, 2, Stroke.of("#4B3626", 0.18))),
                Optional.of(PEN));
    }

    static List<Point> square(double x, double y, double size) {
        return List.of(new Point(x, y), new Point(x + size, y), new Point(x + size, y + size), new Point(x, y + size));
    }

    private static Shape circle() {
        return new Shape.Group(
                "ring", "Ring", "sign", List.of(new Shape.Circle(new Point(120, 60), 8, Optional.empty(), Optional.of(PEN))));
    }

    static Shape text(String words) {
        return new Shape.Text(new Point(20, 120), words, 4, Shape.Anchor.START, 0, false, "#23303A");
    }
}
