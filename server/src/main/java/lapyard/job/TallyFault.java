package lapyard.job;

import java.util.List;
import lapyard.cutting.Replan;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Place;
import lapyard.plan.Place.What;
import lapyard.plan.WayKind;

/** A contradiction in the report of sawn boards as a finding. */
public final class TallyFault {
    private TallyFault() {}

    public static Finding of(Replan.Stop stop) {
        Fact told = Fact.mm(stop.told());
        Fact most = Fact.mm(stop.most());
        return switch (stop.wrong()) {
            case BOARD_TWICE -> board(stop, FindingKind.TALLY_BOARD_TWICE).way(WayKind.KEEP_ONE);
            case BOARD_NAME -> board(stop, FindingKind.TALLY_BOARD_NAME).way(WayKind.OWN_NUMBER, Fact.name(stop.name()));
            case CUT_MORE -> Finding.of(FindingKind.TALLY_CUT_MORE, tally(What.PIECE, stop.of()))
                    .with("cut", pieces(stop.told())).with("planned", pieces(stop.most())).by(pieces(stop.told() - stop.most()))
                    .way(WayKind.TAKE_PIECES_OFF, pieces(stop.told() - stop.most())).way(WayKind.PLAN_PIECES, pieces(stop.told()));
            case STOCK_MORE -> board(stop, FindingKind.TALLY_STOCK_MORE).with("told", boards(stop.told())).with("there", boards(stop.most()))
                    .by(boards(stop.told() - stop.most())).way(WayKind.NAME_STOCK);
            case STOCK_UNKNOWN -> board(stop, FindingKind.TALLY_STOCK_UNKNOWN).with("stock", Fact.name(stop.name())).way(WayKind.USE_STOCK);
            case PIECE_UNKNOWN -> board(stop, FindingKind.TALLY_PIECE_UNKNOWN).with("mark", Fact.name(stop.name())).way(WayKind.TAKE_OFF_TALLY);
            case NOT_OPENED -> board(stop, FindingKind.TALLY_NOT_OPENED).with("pieces", pieces(stop.told()))
                    .with("marks", Fact.names(List.of(stop.name().split(", ")))).way(WayKind.OPEN_BOARD).way(WayKind.TAKE_PIECES_OFF, pieces(stop.told()));
            case NEGATIVE -> board(stop, FindingKind.TALLY_NEGATIVE).way(WayKind.MEASURE_AGAIN);
            case CUT_OVER -> board(stop, FindingKind.TALLY_CUT_OVER).with("cut", told).with("length", most)
                    .by(Fact.mm(stop.told() - stop.most())).way(WayKind.WHICH_BOARD);
            case LEFT_OVER -> board(stop, FindingKind.TALLY_LEFT_OVER).with("left", told).with("most", most)
                    .by(Fact.mm(stop.told() - stop.most())).way(WayKind.MEASURE_AGAIN).way(WayKind.TAKE_PIECE_OFF);
            case LOST_OVER -> board(stop, FindingKind.TALLY_LOST_OVER).with("lost", told).with("most", most)
                    .by(Fact.mm(stop.told() - stop.most())).way(WayKind.GIVE_LEFT);
        };
    }

    private static Finding board(Replan.Stop stop, FindingKind kind) {
        return Finding.of(kind, tally(What.BOARD, stop.of()));
    }

    private static Place tally(What what, String id) {
        return Place.of(What.TALLY).then(what, id);
    }

    private static Fact pieces(double count) {
        return Fact.count(Math.round(count), "pieces");
    }

    private static Fact boards(double count) {
        return Fact.count(Math.round(count), "boards");
    }
}
