package lapyard.job;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import lapyard.construction.BedWork;
import lapyard.construction.Course;
import lapyard.construction.Piece;
import lapyard.working.Quantity;

/**
 * Equal parts of beds are kept once: of a thousand alike beds each keeps its own marks, and all keep one set of outlines,
 * screws, floors and workings.
 */
final class AlikeParts {
    private final Map<Object, Object> known = new HashMap<>();

    /** The first that was equal to it. */
    @SuppressWarnings("unchecked") // what is equal to a part is of its class
    private <T> T one(T part) {
        Object before = known.putIfAbsent(part, part);
        return before == null ? part : (T) before;
    }

    List<Quantity> of(List<Quantity> quantities) {
        return one(quantities.stream().map(this::one).toList());
    }

    /** The same work. */
    BedWork of(BedWork work) {
        BedWork.Frame frame = work.frame();
        BedWork.Bottom bottom = work.bottom();
        return new BedWork(
                work.bed(),
                new BedWork.Frame(
                        one(frame.inner()), frame.courses().stream().map(this::of).toList(), one(frame.seams()), one(frame.notches()),
                        one(frame.screws()), one(frame.crossTies())),
                new BedWork.Bottom(one(bottom.floor()), one(bottom.strips()), one(bottom.slats()), one(bottom.bays())),
                work.liner(), of(work.quantities()), work.findings(), work.leftOut());
    }

    private Course of(Course course) {
        return new Course(course.number(), course.pieces().stream().map(this::of).toList());
    }

    private Piece of(Piece piece) {
        return new Piece(
                piece.mark(), piece.course(), piece.wall(), piece.part(), piece.lengthMm(), piece.fromMm(), one(piece.lies()), piece.seen(),
                one(piece.start()), one(piece.end()));
    }
}
