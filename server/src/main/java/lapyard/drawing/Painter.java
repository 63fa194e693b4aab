package lapyard.drawing;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import org.apache.batik.anim.dom.SVGOMDocument;
import org.apache.batik.bridge.BridgeContext;
import org.apache.batik.bridge.GVTBuilder;
import org.apache.batik.gvt.CanvasGraphicsNode;
import org.apache.batik.gvt.CompositeGraphicsNode;
import org.apache.batik.gvt.GraphicsNode;

/** Paints a page's SVG document on any canvas. */
final class Painter {
    private Painter() {}

    /** @param unitsInMm how many units of the canvas make one millimetre of paper */
    static void paint(Page page, BridgeContext context, Graphics2D canvas, double unitsInMm) {
        SVGOMDocument document = SvgDocument.of(page, TextMeasure::drawable);
        context.setDynamicState(BridgeContext.STATIC);
        GraphicsNode root = new GVTBuilder().build(context, document);
        // The viewBox comes out in CSS pixels, 96 in an inch; ours is the only transform that shall count.
        viewBoxOff(root);
        AffineTransform before = canvas.getTransform();
        canvas.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        canvas.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        canvas.scale(unitsInMm, unitsInMm);
        root.paint(canvas);
        canvas.setTransform(before);
    }

    private static void viewBoxOff(GraphicsNode node) {
        if (node instanceof CanvasGraphicsNode canvas) {
            canvas.setViewingTransform(new AffineTransform());
        } else if (node instanceof CompositeGraphicsNode group) {
            for (Object child : group.getChildren()) {
                viewBoxOff((GraphicsNode) child);
            }
        }
    }
}
