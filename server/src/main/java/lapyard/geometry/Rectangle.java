package lapyard.geometry;

/** An upright rectangle: lower left corner and sizes in millimetres, both sizes above 0. */
public record Rectangle(double x, double y, double widthMm, double depthMm) {
    public double areaMm2() {
        return widthMm * depthMm;
    }

    public double right() {
        return x + widthMm;
    }

    public double top() {
        return y + depthMm;
    }
}
