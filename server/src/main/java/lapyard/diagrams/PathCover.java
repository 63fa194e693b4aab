package lapyard.diagrams;

import java.util.List;
import lapyard.geometry.Outline;

/**
 * The ground that a path covers, ready to be drawn.
 *
 * @param id       of the path
 * @param name     of the path, may be empty
 * @param cover    in the yard, millimetres
 * @param material what lies on top, in plain words or as the catalogue calls it; may be empty
 */
public record PathCover(String id, String name, List<Outline> cover, String material) {}
