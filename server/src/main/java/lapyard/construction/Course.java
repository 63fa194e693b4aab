package lapyard.construction;

import java.util.List;

/** One ring of timbers; number 1 sits on the ground. Pieces go round the outline from wall A. */
public record Course(int number, List<Piece> pieces) {
    public Course {
        pieces = List.copyOf(pieces);
    }
}
