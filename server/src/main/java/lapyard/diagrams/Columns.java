package lapyard.diagrams;

import java.util.List;
import lapyard.drawing.Shape;

/** Fills columns from top to bottom with pieces that stay whole. */
final class Columns {
    private final List<Box> columns;
    private int column;
    private double y;

    Columns(List<Box> columns) {
        this.columns = columns;
        this.y = columns.get(0).low();
    }

    /** Whether these pieces, one after the other, still find room. */
    boolean holds(List<Panel.Piece> pieces) {
        int in = column;
        double at = y;
        for (Panel.Piece piece : pieces) {
            while (at + piece.height() > columns.get(in).high() + 1e-9) {
                in++;
                if (in == columns.size()) {
                    return false;
                }
                at = columns.get(in).low();
            }
            at += piece.height();
        }
        return true;
    }

    /** What finds no room is left off; ask first. */
    List<Shape> put(Panel.Piece piece) {
        if (!holds(List.of(piece))) {
            return List.of();
        }
        while (y + piece.height() > columns.get(column).high() + 1e-9) {
            column++;
            y = columns.get(column).low();
        }
        List<Shape> shapes = piece.drawer().at(columns.get(column).left(), y);
        y += piece.height();
        return shapes;
    }
}
