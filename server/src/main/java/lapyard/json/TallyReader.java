package lapyard.json;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import lapyard.plan.Fact;
import lapyard.plan.FindingKind;
import lapyard.plan.Tally;
import lapyard.plan.WayKind;
import lapyard.working.BrokenRule;

/** Reads {@code tally}: what was done, cut and bought so far. */
final class TallyReader {
    private static final int LAST_DAY = 2_000;

    private TallyReader() {}

    /** @param start first day of work: dates of the tally are counted from it */
    static Tally read(Cursor tally, Optional<LocalDate> start) {
        int day = day(tally, "asOf", start, 0);
        Set<String> told = new HashSet<>();
        List<Tally.Done> done = tally.each("done", "task done", one -> {
            String task = one.text("task");
            if (task.isEmpty()) one.missing("task", "\"task\": \"M.course-1\"");
            if (!told.add(task)) one.twice("task", "task", Fact.name(BrokenRule.cut(task)), WayKind.KEEP_ONE);
            return new Tally.Done(task, day(one, "on", start, day));
        });
        List<Tally.Board> boards = new ArrayList<>();
        Set<String> names = new HashSet<>();
        for (Cursor one : tally.objects("boards", "board")) boards.addAll(board(one, boards.size(), names));
        List<Tally.Bought> bought = tally.each("bought", "thing bought", one -> {
            int count = one.count("count");
            int arrived = one.count("arrived");
            if (arrived > count) one.against("arrived", Fact.count(arrived, "packs"), "count", Fact.count(count, "packs"));
            return new Tally.Bought(one.text("item"), one.text("pack"), count, arrived, one.text("supplier"), one.price("paid"));
        });
        return new Tally(day, done, boards, bought);
    }

    /** A date where the garden has a first day of work, or a number of the plan's days. */
    private static int day(Cursor cursor, String dateField, Optional<LocalDate> start, int usual) {
        Optional<LocalDate> date = CrewReader.date(cursor, dateField);
        int day = cursor.count("day", usual);
        if (date.isEmpty()) return day;
        if (start.isEmpty()) {
            cursor.add(cursor.fault(FindingKind.DATE_NO_START, dateField).way(WayKind.GIVE_START).way(WayKind.COUNT_DAYS, Fact.name("day")));
            return day;
        }
        long counted = ChronoUnit.DAYS.between(start.get(), date.get());
        if (counted < 0) {
            CrewReader.past(cursor, dateField, date.get(), start.get());
            return day;
        }
        if (counted > LAST_DAY) {
            cursor.add(cursor.fault(FindingKind.DATE_FAR, dateField).with("date", new Fact.Day(date.get())).with("start", new Fact.Day(start.get()))
                    .with("most", Fact.count(LAST_DAY, "days")).by(Fact.count(counted - LAST_DAY, "days")).way(WayKind.CORRECT_DATE));
            return day;
        }
        return (int) counted;
    }

    private static List<Tally.Board> board(Cursor one, int before, Set<String> names) {
        String name = one.text("board", "#" + (before + 1));
        int count = one.count("count");
        String section = one.text("section", BedReader.Manner.OURS.section());
        String stock = one.text("stock");
        if (stock.isEmpty()) one.missing("stock", "\"stock\": \"4800\", or the code of the board on hand");
        List<String> cut = marks(one, "cut");
        List<String> spoiled = marks(one, "spoiled");
        boolean opened = one.flag("opened", !cut.isEmpty() || !spoiled.isEmpty());
        double lost = one.number("lost");
        OptionalDouble left = one.numberIfAny("left");
        Map<String, Double> sawn = new HashMap<>();
        for (Cursor piece : one.objects("sawn", "piece sawn")) {
            String mark = piece.text("piece");
            if (sawn.put(mark, piece.neededLength("length")) != null) piece.twice("piece", "piece", Fact.name(BrokenRule.cut(mark)), WayKind.KEEP_ONE);
            if (!cut.contains(mark) && !spoiled.contains(mark)) {
                piece.add(piece.fault(FindingKind.TALLY_SAWN_UNMARKED, "piece").with("board", Fact.name(BrokenRule.cut(name))).with("piece", Fact.name(BrokenRule.cut(mark)))
                        .way(WayKind.CUT_OR_SPOILED).way(WayKind.TAKE_OUT));
            }
            piece.refuseUnknown();
        }
        one.refuseUnknown();
        if (count > 1 && (!cut.isEmpty() || !spoiled.isEmpty())) {
            one.add(one.fault(FindingKind.TALLY_SAME_PIECES, "count").with("boards", Fact.count(count, "boards")).way(WayKind.NAME_EACH_BOARD));
        }
        List<Tally.Board> boards = new ArrayList<>();
        for (int i = 1; i <= count; i++) {
            String own = count == 1 ? name : name + "." + i;
            if (!names.add(section + " " + own)) one.twice("board", "board", Fact.name(BrokenRule.cut(own)), WayKind.ANOTHER_CODE);
            boards.add(new Tally.Board(own, section, stock, opened, cut, spoiled, lost, left, sawn));
        }
        return boards;
    }

    private static List<String> marks(Cursor board, String field) {
        return board.words(field, mark -> true, other -> board.misshapen(field, "marks in quotes", other, "[\"M-1A\"]"));
    }
}
