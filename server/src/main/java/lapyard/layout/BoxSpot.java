package lapyard.layout;

/** A bed's box in the frame, from its left front corner. */
record BoxSpot(BoxedBed kind, double x, double y) {
    double right() {
        return x + kind.w();
    }

    double back() {
        return y + kind.d();
    }

    /** Room between two boxes; below 0 where they overlap. */
    double gapMm(BoxSpot other) {
        double dx = Math.max(other.x - right(), x - other.right());
        double dy = Math.max(other.y - back(), y - other.back());
        return Math.max(dx, dy) < 0 ? Math.max(dx, dy) : dx > 0 && dy > 0 ? Math.hypot(dx, dy) : Math.max(dx, dy);
    }
}
