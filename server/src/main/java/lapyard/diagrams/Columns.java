package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntFunction;
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
    boolean holds(List<Flow.Block> pieces) {
        Columns tried = new Columns(columns);
        tried.column = column;
        tried.y = y;
        return pieces.stream().allMatch(tried::goesOn);
    }

    /** Goes to where a piece finds room, and behind it; false where none does. */
    private boolean goesOn(Flow.Block piece) {
        while (column < columns.size() && y + piece.heightMm() > columns.get(column).high() + 1e-9) {
            column++;
            if (column < columns.size()) y = columns.get(column).low();
        }
        y += piece.heightMm();
        return column < columns.size();
    }

    /** A heading with as many pieces below it as find room, and how many more there are; that alone where not one does. */
    List<Shape> list(Flow.Block heading, List<Flow.Block> pieces, IntFunction<Flow.Block> more) {
        List<Shape> shapes = new ArrayList<>();
        for (int many = pieces.size(); many >= 0 && shapes.isEmpty(); many--) {
            List<Flow.Block> shown = new ArrayList<>(pieces.subList(0, many));
            if (many > 0) shown.add(0, heading);
            if (many < pieces.size()) shown.add(more.apply(pieces.size() - many));
            if (holds(shown)) shown.forEach(piece -> shapes.addAll(put(piece)));
        }
        return shapes;
    }

    /** What finds no room is left off; ask first. */
    List<? extends Shape> put(Flow.Block piece) {
        if (!holds(List.of(piece))) return List.of();
        goesOn(piece);
        return piece.drawer().at(columns.get(column).left(), y - piece.heightMm());
    }
}
