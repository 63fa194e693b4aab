package lapyard.drawing;

import java.util.ArrayList;
import java.util.List;
import lapyard.geometry.Point;

/** The room that a text takes on its page. */
public final class TextBox {
    /** Height of accented capitals and depth of descenders in parts of the size, DejaVu Sans. */
    public static final double ASCENT = 0.76;

    private static final double DEPTH = 0.236;

    private TextBox() {}

    /** Its four corners, in order round it. */
    public static List<Point> of(Shape.Text text) {
        double width = TextMeasure.widthMm(text.text(), text.sizeMm(), text.bold());
        double left = text.anchor() == Shape.Anchor.START ? 0 : text.anchor() == Shape.Anchor.MIDDLE ? -width / 2 : -width;
        double radians = Math.toRadians(text.turnDeg());
        List<Point> corners = new ArrayList<>();
        for (double[] own : new double[][] {{0, DEPTH}, {width, DEPTH}, {width, -ASCENT}, {0, -ASCENT}}) {
            double x = left + own[0];
            double y = own[1] * text.sizeMm();
            corners.add(new Point(
                    text.at().x() + x * Math.cos(radians) + y * Math.sin(radians), text.at().y() - x * Math.sin(radians) + y * Math.cos(radians)));
        }
        return corners;
    }
}
