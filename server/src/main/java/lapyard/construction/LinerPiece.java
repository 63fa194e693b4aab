package lapyard.construction;

import lapyard.geometry.Rectangle;

/**
 * One rectangle of liner as cut.
 *
 * @param id      bed and rectangle, {@code M-R1}, or wall, {@code M-LA}
 * @param wall    letter of the wall that it hangs on; empty where it covers floor
 * @param floor   the part of the bed's floor that it covers, own frame; on a wall alone, as long as the inner face and as
 *     wide as what is turned in, at the origin
 * @param widthMm cut size across (x) and {@code heightMm} up (y), laps and rises included; along and up a wall
 * @param layingOrder 1 is laid first: the downhill piece
 */
public record LinerPiece(String id, String wall, Rectangle floor, double widthMm, double heightMm, int layingOrder) {}
