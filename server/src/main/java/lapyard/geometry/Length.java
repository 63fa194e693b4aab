package lapyard.geometry;

/** Lengths as they are written on drawings and lists. */
public final class Length {
    private Length() {}

    /** One inch is 25.4 mm exactly (international yard and pound agreement, 1959). */
    public static final double INCH_MM = 25.4;

    public static final double FOOT_MM = 304.8;

    /** Millimetres without the unit, to a tenth where it is not whole; or feet, inches and sixteenths. */
    public static String written(double mm, boolean imperial) {
        return imperial ? feetAndInches(mm) : Lengths.text(mm);
    }

    /** As {@link #written}, in whole millimetres. */
    public static String whole(double mm, boolean imperial) {
        return written(imperial ? mm : Math.floor(mm + 0.5), imperial);
    }

    /** As {@link #written}, with the unit: {@code 2400 mm}, {@code 7' 10 1/2"}. */
    public static String withUnit(double mm, boolean imperial) {
        return written(mm, imperial) + (imperial ? "" : " mm");
    }

    /** To the nearest sixteenth of an inch, the fraction reduced: {@code 7' 10 1/2"}, {@code 3'}, {@code 4 3/16"}. */
    public static String feetAndInches(double mm) {
        long sixteenths = Math.round(Math.abs(mm) / INCH_MM * 16);
        long feet = sixteenths / (12 * 16);
        long inches = sixteenths / 16 % 12;
        long over = sixteenths % 16;
        StringBuilder out = new StringBuilder();
        if (feet > 0) out.append(feet).append('\'');
        if (inches > 0 || over > 0 || feet == 0) {
            out.append(feet > 0 ? " " : "");
            if (inches > 0 || over == 0) out.append(inches).append(over > 0 ? " " : "");
            if (over > 0) {
                long least = Long.lowestOneBit(over);
                out.append(over / least).append('/').append(16 / least);
            }
            out.append('"');
        }
        return mm < 0 && sixteenths > 0 ? "-" + out : out.toString();
    }
}
