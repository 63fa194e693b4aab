package lapyard.job;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiFunction;
import lapyard.construction.BedWork;
import lapyard.construction.LinerPiece;
import lapyard.construction.Piece;
import lapyard.construction.SeamSplit;
import lapyard.plan.Bed;
import lapyard.plan.Garden;

/**
 * The ways to join and to line beds among which somebody chooses who builds and buys for one bed alone.
 *
 * @param ways of each bed, in the order of the document; the way that the garden takes first
 * @param all  of each bed, whether there is no other way by the rules of joints and liner
 */
record OwnWays(List<List<BedWay>> ways, List<Boolean> all) {
    /** Ways of one bed; each is a search of its own. */
    private static final int MOST = 32;

    /** What the joints of a bed depend on. */
    private record Alike(List<Object> bed) {
        Alike(Bed bed) {
            this(List.of(bed.outline(), bed.courses(), bed.section(), bed.walls(), bed.making(), bed.planting().food()));
        }
    }

    /** The beds as the garden builds them. */
    List<BedWay> chosen() {
        return ways.stream().map(own -> own.get(0)).toList();
    }

    /** The ways of these beds alone. */
    OwnWays of(List<Integer> beds) {
        return new OwnWays(beds.stream().map(ways::get).toList(), beds.stream().map(all::get).toList());
    }

    /** Each bed in the one way in which it is built. */
    static OwnWays none(List<BedWork> works) {
        return new OwnWays(works.stream().map(work -> List.of(BedWay.of(work))).toList(), works.stream().map(work -> true).toList());
    }

    /**
     * @param built  before the liner was chosen for the whole garden
     * @param works  as the garden builds them
     * @param joined for each bed's id, how the garden joins its walls
     * @param work   a bed, told by its number, with its walls joined in another way
     * @param goods  amounts that a bed, told by its number, takes in packs if it is built so
     */
    static OwnWays of(Garden garden, List<BedWork> built, List<BedWork> works, Lining lining, Map<String, Map<Integer, SeamSplit>> joined,
            BiFunction<Integer, Map<Integer, SeamSplit>, BedWork> work, SearchOptions looking, BiFunction<Integer, BedWork, Map<String, Double>> goods) {
        Map<Alike, Joining.Ways> known = new HashMap<>();
        List<List<BedWay>> ways = new ArrayList<>();
        List<Boolean> all = new ArrayList<>();
        for (int i = 0; i < built.size(); i++) {
            Bed bed = built.get(i).bed();
            List<List<LinerPiece>> lined = lining.alone(built.get(i));
            Joining.Ways joints = known.computeIfAbsent(new Alike(bed), alike -> Joining.alone(garden, bed, MOST, looking));
            boolean few = (long) joints.joined().size() * lined.size() <= MOST;
            List<BedWay> own = new ArrayList<>(List.of(BedWay.of(works.get(i))));
            Map<Piece, Piece> shared = new HashMap<>();
            for (Map<Integer, SeamSplit> one : joints.joined()) {
                BedWork other = one.equals(joined.getOrDefault(bed.id(), Map.of())) ? built.get(i) : work.apply(i, one);
                List<Piece> timbers = other.pieces();
                Map<String, Double> takes = null;
                for (List<LinerPiece> pieces : few ? lined : lined.subList(0, 1)) {
                    BedWay way = new BedWay(bed, timbers, pieces, Map.of());
                    if (own.stream().anyMatch(way::buysAs)) continue;
                    if (own.size() == 1) {
                        own.set(0, own.get(0).with(goods.apply(i, works.get(i))));
                        own.get(0).pieces().forEach(piece -> shared.put(piece, piece));
                    }
                    if (takes == null) takes = goods.apply(i, other); // a liner's cut changes nothing that is sold in packs
                    own.add(way.with(way.pieces().stream().map(piece -> shared.computeIfAbsent(piece, same -> same)).toList()).with(takes));
                }
            }
            ways.add(own);
            all.add(joints.all() && few);
        }
        return new OwnWays(ways, all);
    }
}
