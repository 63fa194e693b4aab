package lapyard.drawing;

import java.awt.geom.Point2D;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.contentstream.PDFGraphicsStreamEngine;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.graphics.image.PDImage;

/** The straight lines of a PDF page in points from its lower left corner, as a reader of the file sees them. */
public final class PdfLines extends PDFGraphicsStreamEngine {
    public record Line(double x1, double y1, double x2, double y2) {}

    private final List<Line> lines = new ArrayList<>();
    private final List<Line> pending = new ArrayList<>();
    private Point2D current = new Point2D.Double();
    private Point2D begun = new Point2D.Double();

    private PdfLines(PDPage page) {
        super(page);
    }

    /** All lines that are painted, stroked or filled. */
    public static List<Line> of(PDPage page) throws IOException {
        PdfLines engine = new PdfLines(page);
        engine.processPage(page);
        return engine.lines;
    }

    private void to(double x, double y) {
        pending.add(new Line(current.getX(), current.getY(), x, y));
        current = new Point2D.Double(x, y);
    }

    private void painted() {
        lines.addAll(pending);
        pending.clear();
    }

    @Override
    public void appendRectangle(Point2D a, Point2D b, Point2D c, Point2D d) {
        current = a;
        for (Point2D p : List.of(b, c, d, a)) {
            to(p.getX(), p.getY());
        }
    }

    @Override
    public void drawImage(PDImage image) {}

    @Override
    public void clip(int windingRule) {}

    @Override
    public void moveTo(float x, float y) {
        current = new Point2D.Double(x, y);
        begun = current;
    }

    @Override
    public void lineTo(float x, float y) {
        to(x, y);
    }

    @Override
    public void curveTo(float x1, float y1, float x2, float y2, float x3, float y3) {
        current = new Point2D.Double(x3, y3);
    }

    @Override
    public Point2D getCurrentPoint() {
        return current;
    }

    @Override
    public void closePath() {
        to(begun.getX(), begun.getY());
    }

    @Override
    public void endPath() {
        pending.clear();
    }

    @Override
    public void strokePath() {
        painted();
    }

    @Override
    public void fillPath(int windingRule) {
        painted();
    }

    @Override
    public void fillAndStrokePath(int windingRule) {
        painted();
    }

    @Override
    public void shadingFill(COSName name) {}
}
