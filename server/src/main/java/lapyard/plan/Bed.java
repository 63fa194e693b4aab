package lapyard.plan;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import lapyard.catalogue.Section;
import lapyard.geometry.Outline;
import lapyard.geometry.Placement;

/**
 * A bed as drawn, outside faces, with every default filled in.
 *
 * @param id      code used in marks, unique in the garden
 * @param type    id of its bed type, empty for a bed of its own
 * @param outline in the bed's own frame, counter-clockwise, from the front left corner: side 0 is wall A
 * @param hidden  letters of walls that nobody sees; all others are seen
 * @param low     letters of walls named low by hand; empty leaves it to the fall of the ground
 * @param seams   whether a wall longer than stock may be joined
 * @param weekend stage in which it is built, 1 or more
 * @param joints  joint by corner number, counted from 0, corner i being where wall i starts; corners that are not in it
 *     get the usual joint of their angle
 * @param ties    brackets and ties
 * @param near    what makes the bed a case for an engineer, words of {@link #NEAR}
 * @param seal    on cut ends and in notches
 */
public record Bed(
        String id,
        String name,
        String type,
        Outline outline,
        Placement placement,
        int courses,
        Section section,
        Lap lap,
        Set<String> hidden,
        Set<String> low,
        boolean seams,
        Screws screws,
        Notches notches,
        Base base,
        Liner liner,
        Fill fill,
        Finish finish,
        boolean food,
        int weekend,
        Map<Integer, Joint> joints,
        Ties ties,
        Set<String> near,
        Seal seal) {
    /** Word of the document to the case that is not designed here. */
    public static final Map<String, String> NEAR = cases();

    public Bed {
        hidden = Set.copyOf(hidden);
        low = Set.copyOf(low);
        joints = Map.copyOf(joints);
        near = Set.copyOf(near);
    }

    /** A bed whose corners all have the usual joint of their angle, without ties, near nothing, its cut ends unsealed. */
    public Bed(
            String id,
            String name,
            String type,
            Outline outline,
            Placement placement,
            int courses,
            Section section,
            Lap lap,
            Set<String> hidden,
            Set<String> low,
            boolean seams,
            Screws screws,
            Notches notches,
            Base base,
            Liner liner,
            Fill fill,
            Finish finish,
            boolean food,
            int weekend) {
        this(id, name, type, outline, placement, courses, section, lap, hidden, low, seams, screws, notches, base, liner,
                fill, finish, food, weekend, Map.of(), Ties.USUAL, Set.of(), Seal.NONE);
    }

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
        near.put("suspended-slab", "on a slab that hangs free");
        near.put("basement", "over a basement");
        near.put("seat", "used as a seat or guard over a drop");
        return Collections.unmodifiableMap(near);
    }

    /**
     * The joint at the corner where wall {@code side} starts: as named, else a lap at a square corner, a mitre at a
     * blunt one, and a lap at a sharp one, whose mitre no common saw can be set to.
     */
    public Joint joint(int side) {
        int corner = Math.floorMod(side, outline.sides());
        double turn = Math.abs(outline.turnDeg(corner));
        return joints.getOrDefault(corner, turn < 90 ? Joint.MITRE : Joint.LAP);
    }

    /** Wall height in millimetres. */
    public double heightMm() {
        return courses * section.heightMm();
    }

    /** A, B... Z, AA, AB... for side 0, 1, ... */
    public static String wallLetter(int side) {
        return side < 26 ? String.valueOf((char) ('A' + side)) : wallLetter(side / 26 - 1) + wallLetter(side % 26);
    }

    public List<String> walls() {
        return java.util.stream.IntStream.range(0, outline.sides()).mapToObj(Bed::wallLetter).toList();
    }

    /** The outline as it lies in the yard. */
    public Outline inYard() {
        return outline.placed(placement);
    }

    public Bed withBase(Base other) {
        return new Bed(id, name, type, outline, placement, courses, section, lap, hidden, low, seams, screws,
                notches, other, liner, fill, finish, food, weekend, joints, ties, near, seal);
    }

    /** The same making in another outline. */
    public Bed withOutline(Outline other) {
        return new Bed(id, name, type, other, placement, courses, section, lap, hidden, low, seams, screws,
                notches, base, liner, fill, finish, food, weekend, joints, ties, near, seal);
    }

    public Bed withPlacement(Placement moved) {
        return placedAs(id, name, moved, weekend);
    }

    /** The same making under another code at another place. */
    public Bed placedAs(String newId, String newName, Placement newPlacement, int newWeekend) {
        return new Bed(newId, newName, type, outline, newPlacement, courses, section, lap, hidden, low, seams, screws,
                notches, base, liner, fill, finish, food, newWeekend, joints, ties, near, seal);
    }

    /** The same bed with these walls hidden besides those that are. */
    public Bed hiding(Set<String> walls) {
        Set<String> all = new HashSet<>(hidden);
        all.addAll(walls);
        return new Bed(id, name, type, outline, placement, courses, section, lap, all, low, seams, screws, notches, base,
                liner, fill, finish, food, weekend, joints, ties, near, seal);
    }
}
