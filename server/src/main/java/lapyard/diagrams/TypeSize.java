package lapyard.diagrams;

/**
 * Sizes of type and of boxes to tick, on paper in mm: sheets are read outdoors, standing, with gloves.
 * Capitals are {@link lapyard.drawing.Shape.Text#CAPITALS} of a type size.
 */
final class TypeSize {
    /** No type is smaller. */
    static final double LEAST = 2.5;

    /** Codes of beds on a drawing. */
    static final double BED = 3.5;

    /** What is read at arm's length: at the saw and at the bed. */
    static final double ARMS_LENGTH = 5;

    /** Side of a box that is ticked with gloves on. */
    static final double TICK = 8;

    private TypeSize() {}
}
