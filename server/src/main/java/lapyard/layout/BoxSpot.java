package lapyard.layout;

/** A bed's box in the frame, from its left front corner. */
record BoxSpot(BoxedBed kind, double x, double y) {
    double right() {
        return x + kind.w();
    }

    double back() {
        return y + kind.d();
    }
}
