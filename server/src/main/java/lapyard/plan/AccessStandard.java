package lapyard.plan;

import java.util.List;
import lapyard.working.Working;

/**
 * The values that room to walk and to reach are held against.
 *
 * @param id     as the document names it
 * @param name   as it is read
 * @param named  whether the garden asks for it; otherwise a shortfall is a note only
 * @param source of the values
 */
public record AccessStandard(String id, String name, boolean named, Walking walking, Reaching reaching, RimHeight height, String source) {
    /**
     * Along paths.
     *
     * @param pathMm         clear width of a path
     * @param pinchMm        clear width at a narrow place
     * @param pinchLengthMm  how long a narrow place may be
     * @param turningMm      diameter in which one can turn; 0 for not asked
     * @param passingMm      path width that lets two pass; narrower paths need passing places. 0 for not asked
     * @param passingEveryMm greatest distance between passing places
     * @param gradient       steepest along a path, n of 1:n
     * @param crossGradient  steepest across a path, n of 1:n
     */
    public record Walking(
            double pathMm, double pinchMm, double pinchLengthMm, double turningMm, double passingMm, double passingEveryMm, double gradient, double crossGradient) {}

    /**
     * Into a bed.
     *
     * @param reachMm      from the outer face of a wall, from one side
     * @param standMm      depth of the place to stand or sit before a wall
     * @param standAlongMm length of that place along the wall
     */
    public record Reaching(double reachMm, double standMm, double standAlongMm) {}

    /** The lowest and the highest rim, 0 for not asked. */
    public record RimHeight(double rimLeastMm, double rimMostMm) {
        static final RimHeight ANY = new RimHeight(0, 0);
    }

    /** Place to stand: 24 in, a Connecticut conservation-district text; cross fall: Approved Document M vol. 1, 1.6. */
    public static final AccessStandard USUAL = new AccessStandard(
            "usual", "the usual", false, new Walking(1200, 900, 600, 1500, 0, 0, 20, 40), new Reaching(600, 600, 300), RimHeight.ANY,
            Working.COMMON_PRACTICE);

    /** The same in whole feet: a bed of 4' is reached over from both sides, a path of 4' is wide enough. */
    private static final AccessStandard USUAL_IN_FEET = new AccessStandard(
            USUAL.id, USUAL.name, false, new Walking(1219.2, 914.4, 609.6, 1524, 0, 0, 20, 40), new Reaching(609.6, 609.6, 304.8), RimHeight.ANY,
            USUAL.source);

    /**
     * 2010 ADA Standards: 403.5.1 width 36 in, 32 in for at most 24 in; 403.3 slopes 1:20 and 1:48; 305.3 clear space
     * 30 x 48 in; 308.3.2 reach 24 in over an obstruction (these seen); 304.3 turning 60 in; 403.5.3 passing 60 in
     * every 200 ft (from memory). The standard's own rounded millimetres; a garden in feet takes its inches.
     */
    public static final AccessStandard ADA_2010 = new AccessStandard(
            "ada-2010", "ADA 2010", true, new Walking(915, 815, 610, 1525, 1525, 61_000, 20, 48), new Reaching(610, 760, 1220), RimHeight.ANY,
            "2010 ADA Standards 304.3, 305.3, 308.3.2, 403.3, 403.5");

    /** The same in the standard's inches, of 25.4 mm each: 36 in are enough where it asks for 36 in. */
    private static final AccessStandard ADA_2010_IN_FEET = new AccessStandard(
            ADA_2010.id, ADA_2010.name, true, new Walking(914.4, 812.8, 609.6, 1524, 1524, 60_960, 20, 48), new Reaching(609.6, 762, 1219.2), RimHeight.ANY,
            ADA_2010.source);

    /** Common practice, no source, save where a publication gives the same range. */
    public enum Gardener {
        KNEELING(200, 300),
        SEATED(600, 700),
        STANDING(750, 850);

        public final RimHeight height;

        Gardener(double rimLeastMm, double rimMostMm) {
            height = new RimHeight(rimLeastMm, rimMostMm);
        }
    }

    /** Those that a garden can name, the usual one first. */
    public static List<AccessStandard> all(boolean imperial) {
        return imperial ? List.of(USUAL_IN_FEET, ADA_2010_IN_FEET) : List.of(USUAL, ADA_2010);
    }

    /** The same, asked for by the garden or not. */
    public AccessStandard named(boolean asked) {
        return new AccessStandard(id, name, asked, walking, reaching, height, source);
    }

    public AccessStandard withHeight(RimHeight other) {
        return new AccessStandard(id, name, named, walking, reaching, other, source);
    }

    /** What it is called in a sentence. */
    public String called() {
        return id.equals("usual") ? "this garden's standard" : name;
    }
}
