package lapyard.plan;

import java.util.Collection;
import java.util.Collections;
import java.util.HashSet;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import lapyard.catalogue.Section;
import lapyard.geometry.Outline;
import lapyard.geometry.Placement;

/**
 * A bed as drawn, outside faces, with every default filled in.
 *
 * @param id    code used in marks, unique in the garden
 * @param type  id of its bed type, empty for a bed of its own
 * @param stage group of beds with which it is built, 1 or more
 */
public record Bed(
        String id,
        String name,
        String type,
        int stage,
        Siting siting,
        Walls walls,
        Making making,
        Inside inside,
        Planting planting) {
    /**
     * Where the bed stands.
     *
     * @param outline in the bed's own frame, counter-clockwise, from the front left corner: side 0 is wall A
     * @param near    what makes the bed a case for an engineer, words of {@link #NEAR}
     */
    public record Siting(Outline outline, Placement placement, Set<String> near) {
        public Siting {
            near = Set.copyOf(near);
        }
    }

    /**
     * How the walls are stacked.
     *
     * @param joints joint by corner number, counted from 0, corner i being where wall i starts; corners that are not
     *     in it get the usual joint of their angle
     * @param hidden letters of the walls that are not seen; all others are
     * @param low    letters of walls named low by hand; empty leaves it to the fall of the ground
     * @param seams  whether a wall longer than stock may be joined
     */
    public record Walls(
            int courses, Section section, Lap lap, Map<Integer, Joint> joints, Set<String> hidden, Set<String> low, boolean seams) {
        public Walls {
            joints = Map.copyOf(joints);
            hidden = Set.copyOf(hidden);
            low = Set.copyOf(low);
        }

        public Walls of(Section other) {
            return new Walls(courses, other, lap, joints, hidden, low, seams);
        }

        public Walls withHidden(Set<String> others) {
            return new Walls(courses, section, lap, joints, others, low, seams);
        }
    }

    /**
     * What the timber gets besides its place: fixings, drain notches and coats.
     *
     * @param ties brackets and ties
     * @param seal on cut ends and in notches
     */
    public record Making(Screws screws, Notches notches, Ties ties, Finish finish, Seal seal) {
        public static final Making USUAL = new Making(Screws.USUAL, Notches.USUAL, Ties.USUAL, Finish.USUAL, Seal.NONE);

        public Making withScrews(Screws others) {
            return new Making(others, notches, ties, finish, seal);
        }
    }

    /** Base and liner. */
    public record Inside(Base base, Liner liner) {
        public static final Inside USUAL = new Inside(Base.USUAL, Liner.USUAL);

        public Inside withBase(Base other) {
            return new Inside(other, liner);
        }
    }

    /** What the bed is filled with, and whether food grows in it. */
    public record Planting(Fill fill, boolean food) {
        public static final Planting USUAL = new Planting(Fill.USUAL, false);
    }

    /** Word of the document to the case that is not designed here. */
    public static final Map<String, String> NEAR = cases();

    private static Map<String, String> cases() {
        Map<String, String> near = new LinkedHashMap<>();
        near.put("retained-ground", "it holds back natural ground");
        near.put("slope", "a slope within its own height");
        near.put("vehicles", "vehicles within its own height");
        near.put("pool", "a pool within its own height");
        near.put("foundation", "a foundation within its own height");
        near.put("building", "it touches a wall of a building");
        near.put("balcony", "on a balcony");
        near.put("roof", "on a roof");
        near.put("suspended-slab", "on a suspended slab");
        near.put("basement", "over a basement");
        near.put("seat", "used as a seat or guard over a drop");
        return Collections.unmodifiableMap(near);
    }

    public Outline outline() {
        return siting.outline();
    }

    public Placement placement() {
        return siting.placement();
    }

    public int courses() {
        return walls.courses();
    }

    public Section section() {
        return walls.section();
    }

    /**
     * The joint at the corner where wall {@code side} starts: as named, else a lap at a square corner, a mitre at a
     * blunt one, and a lap at a sharp one, whose mitre no common saw can be set to.
     */
    public Joint joint(int side) {
        int corner = Math.floorMod(side, outline().sides());
        double turn = Math.abs(outline().turnDeg(corner));
        return walls.joints().getOrDefault(corner, turn < 90 ? Joint.MITRE : Joint.LAP);
    }

    /** Wall height in millimetres. */
    public double heightMm() {
        return courses() * section().heightMm();
    }

    /** From the floor, or the ground where there is none, to the rim, mm. */
    public double roomMm() {
        return heightMm() - inside.base().heightMm();
    }

    /** Soil and mulch, which push on the walls: from the floor up to the gap below the rim, mm; 0 or less where there is no room. */
    public double filledMm() {
        return roomMm() - planting.fill().freeboardMm();
    }

    /** Settled soil without the mulch, mm; 0 or less where there is no room. */
    public double soilMm() {
        return filledMm() - planting.fill().mulchMm();
    }

    /** A, B... Z, AA, AB... for side 0, 1, ... */
    public static String wallLetter(int side) {
        return side < 26 ? String.valueOf((char) ('A' + side)) : wallLetter(side / 26 - 1) + wallLetter(side % 26);
    }

    /** The letters that members of a list without a code of their own take one after the other. */
    public static Iterator<String> freeLetters(Collection<String> given) {
        return IntStream.iterate(0, next -> next + 1).mapToObj(Bed::wallLetter).filter(letter -> !given.contains(letter)).iterator();
    }

    /** a, b ... z, aa, ab ... */
    public static String smallLetter(int i) {
        return wallLetter(i).toLowerCase(Locale.ROOT);
    }

    /** Letters of all walls, in order. */
    public List<String> wallLetters() {
        return wallLetters(outline());
    }

    public static List<String> wallLetters(Outline outline) {
        return IntStream.range(0, outline.sides()).mapToObj(Bed::wallLetter).toList();
    }

    /** The outline as it lies in the yard. */
    public Outline inYard() {
        return outline().placed(placement());
    }

    /** The same making under another code at another place. */
    public Bed placedAs(String newId, String newName, Placement placement, int newStage) {
        return new Bed(newId, newName, type, newStage, new Siting(outline(), placement, siting.near()), walls, making, inside, planting);
    }

    /** The same making in another outline. */
    public Bed withOutline(Outline other) {
        return withSiting(new Siting(other, placement(), siting.near()));
    }

    public Bed withSiting(Siting other) {
        return new Bed(id, name, type, stage, other, walls, making, inside, planting);
    }

    public Bed withWalls(Walls others) {
        return new Bed(id, name, type, stage, siting, others, making, inside, planting);
    }

    public Bed withMaking(Making other) {
        return new Bed(id, name, type, stage, siting, walls, other, inside, planting);
    }

    public Bed withInside(Inside other) {
        return new Bed(id, name, type, stage, siting, walls, making, other, planting);
    }

    /** The same bed with these walls hidden besides those that are. */
    public Bed hiding(Set<String> letters) {
        Set<String> all = new HashSet<>(walls.hidden());
        all.addAll(letters);
        return withWalls(walls.withHidden(all));
    }
}
