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
import lapyard.working.Abandonable;

/**
 * The ways to join and to line beds among which somebody chooses who builds and buys for one bed alone.
 *
 * @param ways of each bed, in the order of the document; the way that the garden takes first
 * @param all  of each bed, whether there is no other way by the rules of joints and liner
 */
record OwnWays(List<List<BedWay>> ways, List<Boolean> all) {
    /** What the joints of a bed depend on. */
    private static List<Object> alike(Bed bed) {
        return List.of(bed.outline(), bed.courses(), bed.section(), bed.walls(), bed.making(), bed.planting().food());
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

    /** How the walls of beds can be joined where each is built alone; alike beds are looked at once. */
    static List<Joining.Ways> joints(Garden garden, List<Bed> beds, SearchOptions looking) {
        Map<List<Object>, Joining.Ways> known = new HashMap<>();
        return beds.stream().map(bed -> known.computeIfAbsent(alike(bed), same -> Joining.alone(garden, bed, looking))).toList();
    }

    /**
     * The ways of each bed, whatever the garden chooses.
     *
     * @param built  before the liner was chosen for the whole garden
     * @param joined a bed, told by its number, with its walls joined in a way
     * @param goods  amounts that a bed, told by its number, takes in packs if it is built so
     */
    static OwnWays all(List<BedWork> built, List<Joining.Ways> joints, Lining lining, BiFunction<Integer, Map<Integer, SeamSplit>, BedWork> joined,
            BiFunction<Integer, BedWork, Map<String, Double>> goods) {
        List<List<BedWay>> ways = new ArrayList<>();
        List<Boolean> all = new ArrayList<>();
        for (int i = 0; i < built.size(); i++) {
            Abandonable.check();
            Bed bed = built.get(i).bed();
            List<List<LinerPiece>> lined = lining.alone(built.get(i));
            boolean few = (long) joints.get(i).joined().size() * lined.size() <= Joining.MOST_ALONE;
            List<BedWay> own = new ArrayList<>();
            for (Map<Integer, SeamSplit> one : joints.get(i).joined()) {
                BedWork work = joined.apply(i, one);
                // a liner's cut changes nothing that is sold in packs
                Map<String, Double> takes = goods.apply(i, work);
                for (List<LinerPiece> pieces : few ? lined : lined.subList(0, 1)) own.add(new BedWay(bed, work.pieces(), pieces, takes));
            }
            ways.add(own);
            all.add(joints.get(i).all() && few);
        }
        return new OwnWays(ways, all);
    }

    /**
     * The same with the way that the garden takes first, and no way twice.
     *
     * @param works as the garden builds them
     * @param goods as above
     */
    OwnWays behind(List<BedWork> works, BiFunction<Integer, BedWork, Map<String, Double>> goods) {
        List<List<BedWay>> sorted = new ArrayList<>();
        for (int i = 0; i < works.size(); i++) {
            List<BedWay> own = new ArrayList<>(List.of(BedWay.of(works.get(i))));
            Map<Piece, Piece> shared = new HashMap<>();
            for (BedWay way : ways.get(i)) {
                if (own.stream().anyMatch(way::buysAs)) continue;
                if (own.size() == 1) {
                    own.set(0, own.get(0).with(goods.apply(i, works.get(i))));
                    own.get(0).pieces().forEach(piece -> shared.put(piece, piece));
                }
                own.add(way.with(way.pieces().stream().map(piece -> shared.computeIfAbsent(piece, same -> same)).toList()));
            }
            sorted.add(own);
        }
        return new OwnWays(sorted, all);
    }
}
