package lapyard.catalogue;

/**
 * What brings goods.
 *
 * @param payloadKg   as its plate says, people aboard taken off
 * @param bedLengthMm of the loading bed, diagonal and overhang not counted
 * @param volumeM3    that the bed holds
 */
public record Vehicle(String name, double payloadKg, double bedLengthMm, double volumeM3) {}
