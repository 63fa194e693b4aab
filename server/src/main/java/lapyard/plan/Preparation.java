package lapyard.plan;

/**
 * How the ground is made ready under a bed's walls.
 *
 * @param soft        on grass, soil and gravel
 * @param stripMm     width of a strip, and of the trench that is levelled
 * @param depthMm     of concrete
 * @param subBaseMm   of stone under the concrete, compacted
 * @param padMm       side of a square pad
 * @param padEveryMm  greatest distance between pads along a wall
 * @param bulkingPercent loose spoil over dug ground, 25 for a quarter more
 */
public record Preparation(
        Soft soft,
        double stripMm,
        double depthMm,
        double subBaseMm,
        double padMm,
        double padEveryMm,
        double bulkingPercent) {
    /** What is done on grass, soil and gravel; slabs and concrete are always scribed to. */
    public enum Soft {
        /** The bottom course is cut to the ground. */
        SCRIBE,
        /** The ground is scraped level with its lowest place. */
        LEVEL,
        /** A strip of concrete under all walls. */
        STRIP,
        /** Pads of concrete under corners and along walls. */
        PADS
    }

    /** Common practice, no source; what a bag of concrete makes and its spare stand in the catalogue. */
    public static final Preparation USUAL = new Preparation(Soft.LEVEL, 200, 100, 100, 300, 1200, 25);

    /** 0.25 for a quarter more. */
    public double bulking() {
        return bulkingPercent / 100;
    }
}
