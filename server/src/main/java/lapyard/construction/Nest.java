package lapyard.construction;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Pieces with angled ends sawn head to tail out of one length. Two neighbours meet at one slanted cut, the long point of
 * one beside the short point of the other, so that together they take less of the board than two lengths. All places are
 * millimetres along the board from the square end of the length; its two faces are called face and back.
 *
 * @param lengthMm what is cut square off the board: rounded up to whole millimetres, so that nests alike share a setting of
 *     the stop; to 0.1 mm where its far end is the square end of the last piece
 */
public record Nest(List<Part> parts, double lengthMm) {
    private static final String JOINED = "+";

    /** Corners are given to 0.1 mm, which moves a cut by about twice as much; less than a pencil line. */
    private static final double STRAY_MM = 0.2 + 1e-9;

    public Nest {
        parts = List.copyOf(parts);
    }

    /**
     * One piece in it; where its outer face lies on the back, the board's back will be seen.
     *
     * @param leftSetDeg of the saw for its left end, off square
     */
    public record Part(
            Piece piece,
            boolean outerOnFace,
            double leftSetDeg,
            double rightSetDeg,
            double faceFromMm,
            double faceToMm,
            double backFromMm,
            double backToMm) {
        private Part turned() {
            return new Part(piece, !outerOnFace, leftSetDeg, rightSetDeg, backFromMm, backToMm, faceFromMm, faceToMm);
        }

        private Part moved(double mm) {
            return new Part(piece, outerOnFace, leftSetDeg, rightSetDeg, faceFromMm + mm, faceToMm + mm, backFromMm + mm, backToMm + mm);
        }

        double toMm() {
            return Math.max(faceToMm, backToMm);
        }
    }

    /** A cut across the length from one place on its face to another on its back, {@code setDeg} off square. */
    public record Cut(double faceMm, double backMm, double setDeg) {
        private boolean alike(Cut other) {
            return Math.abs(faceMm - other.faceMm) <= STRAY_MM
                    && Math.abs(backMm - other.backMm) <= STRAY_MM
                    && setDeg == other.setDeg;
        }
    }

    /** A piece as it lies along the board, its start on the left or its end. */
    private record Laid(Piece piece, boolean reversed) {
        PieceEnd left() {
            return reversed ? piece.end() : piece.start();
        }

        PieceEnd right() {
            return reversed ? piece.start() : piece.end();
        }

        /** How much further the outer face reaches than the inner one. */
        double overLeft() {
            return reversed ? over(piece.end(), 1) : over(piece.start(), -1);
        }

        double overRight() {
            return reversed ? over(piece.start(), -1) : over(piece.end(), 1);
        }

        private static double over(PieceEnd end, int sense) {
            return sense * (end.outerMm() - end.innerMm());
        }

        boolean longOnFace(double over, boolean outerOnFace) {
            return over > 0 == outerOnFace;
        }

        /** Its long point, or its square end, at 0. */
        Part at0(boolean outerOnFace) {
            double over = Math.abs(overLeft());
            boolean longOnFace = longOnFace(overLeft(), outerOnFace);
            double face = longOnFace ? 0 : over;
            double back = longOnFace ? over : 0;
            double outer = piece.end().outerMm() - piece.start().outerMm();
            double inner = piece.end().innerMm() - piece.start().innerMm();
            return new Part(
                    piece,
                    outerOnFace,
                    left().setDeg(),
                    right().setDeg(),
                    face,
                    face + (outerOnFace ? outer : inner),
                    back,
                    back + (outerOnFace ? inner : outer));
        }
    }

    /**
     * How much less of a board two pieces take where ends like this one meet: the slant less what the slanted kerf is
     * longer than a square one. 0 for a square end.
     */
    public static double savedMm(PieceEnd end, double kerfMm) {
        return Math.max(0, Math.abs(end.outerMm() - end.innerMm()) + kerfMm - kerfMm / cos(end));
    }

    private static double cos(PieceEnd end) {
        return Math.cos(Math.toRadians(end.setDeg()));
    }

    /**
     * These pieces in this order, each turned as the one before it asks. The same order always lies in the same way.
     *
     * @param kerfMm along a square cut
     * @return empty where two neighbours have no ends of the same set, or fewer than two pieces are given
     */
    public static Optional<Nest> of(List<Piece> order, double kerfMm) {
        if (order.size() < 2) return Optional.empty();
        return Stream.of(false, true)
                .flatMap(reversed -> turned(order, reversed).stream())
                .map(laid -> placed(laid, kerfMm))
                .min(Comparator.comparingDouble(Nest::lengthMm));
    }

    private static Optional<List<Laid>> turned(List<Piece> order, boolean firstReversed) {
        List<Laid> laid = new ArrayList<>(List.of(new Laid(order.get(0), firstReversed)));
        for (Piece piece : order.subList(1, order.size())) {
            double set = laid.get(laid.size() - 1).right().setDeg();
            Laid asItIs = new Laid(piece, false);
            Laid fits = asItIs.left().setDeg() == set ? asItIs : new Laid(piece, true);
            if (set == 0 || fits.left().setDeg() != set) return Optional.empty();
            laid.add(fits);
        }
        return Optional.of(laid);
    }

    private static Nest placed(List<Laid> order, double kerfMm) {
        List<Part> parts = new ArrayList<>();
        boolean longOnFace = false;
        for (Laid laid : order) {
            boolean outerOnFace = parts.isEmpty() || laid.overLeft() > 0 != longOnFace;
            Part part = laid.at0(outerOnFace);
            if (!parts.isEmpty()) {
                Part before = parts.get(parts.size() - 1);
                double kerf = kerfMm / cos(laid.left());
                part = part.moved(kerf + Math.max(before.faceToMm() - part.faceFromMm(), before.backToMm() - part.backFromMm()));
            }
            parts.add(part);
            longOnFace = laid.longOnFace(laid.overRight(), outerOnFace);
        }
        boolean seenOnFace = parts.stream().anyMatch(part -> part.piece().seen() && part.outerOnFace());
        List<Part> facing = seenOnFace ? parts : parts.stream().map(Part::turned).toList();
        Part last = parts.get(parts.size() - 1);
        int step = last.rightSetDeg() == 0 ? 10 : 1;
        return new Nest(facing, Math.ceil(last.toMm() * step - 1e-6) / step);
    }

    public List<Piece> pieces() {
        return parts.stream().map(Part::piece).toList();
    }

    /** How many faces of its board will be seen. */
    public int goodFaces() {
        return (int) parts.stream().filter(part -> part.piece().seen()).map(Part::outerOnFace).distinct().count();
    }

    /** What its pieces would take more, each cut by its long point. */
    public double savedMm(double kerfMm) {
        return parts.stream().mapToDouble(part -> part.piece().lengthMm() + kerfMm).sum() - kerfMm - lengthMm;
    }

    /** From left to right: the first end where it is slanted, a cut between each two, the last end likewise. */
    public List<Cut> cuts() {
        List<Cut> cuts = new ArrayList<>();
        Part first = parts.get(0);
        if (first.leftSetDeg() > 0) cuts.add(new Cut(first.faceFromMm(), first.backFromMm(), first.leftSetDeg()));
        for (Part part : parts) if (part.rightSetDeg() > 0) cuts.add(new Cut(part.faceToMm(), part.backToMm(), part.rightSetDeg()));
        return cuts;
    }

    /** Whether one drawing serves both: outer faces on the same sides, and cuts in the same places but for stray. */
    public boolean alike(Nest other) {
        List<Cut> own = cuts();
        List<Cut> theirs = other.cuts();
        return Math.abs(lengthMm - other.lengthMm) <= STRAY_MM
                && own.size() == theirs.size()
                && parts.stream().map(Part::outerOnFace).toList().equals(other.parts.stream().map(Part::outerOnFace).toList())
                && IntStream.range(0, own.size()).allMatch(i -> own.get(i).alike(theirs.get(i)));
    }

    /** The marks of its pieces from left to right, as one word. */
    public String mark() {
        return parts.stream().map(part -> part.piece().mark()).collect(Collectors.joining(JOINED));
    }

    /** The marks of the pieces in what is cut off a board under this mark: one, or those of a nest. */
    public static List<String> marks(String mark) {
        return List.of(mark.split("\\" + JOINED));
    }
}
