package lapyard.construction;

import lapyard.geometry.Rectangle;

/**
 * One rectangle of liner as cut.
 *
 * @param id      bed and rectangle, {@code M-R1}
 * @param floor   the part of the bed's floor that it covers, own frame
 * @param widthMm cut size across (x) and {@code heightMm} up (y), laps and rises included
 * @param layingOrder 1 is laid first: the downhill piece
 */
public record LinerPiece(String id, Rectangle floor, double widthMm, double heightMm, int layingOrder) {}
