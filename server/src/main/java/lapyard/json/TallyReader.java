package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import lapyard.plan.Finding.Amount;
import lapyard.plan.Tally;

/** Reads {@code tally}: what was done, cut and bought so far. */
final class TallyReader {
    private static final int MOST = 20_000;
    private static final int LAST_DAY = 2_000;

    private TallyReader() {}

    /** @param start first day of work: dates of the tally are counted from it */
    static Tally read(Cursor tally, Optional<LocalDate> start) {
        int day = day(tally, "asOf", "day", start, 0);
        List<Tally.Done> done = new ArrayList<>();
        Set<String> told = new HashSet<>();
        for (Cursor one : tally.objects("done", "task done", MOST)) {
            String task = one.text("task", "", 120);
            if (task.isEmpty()) one.missing("task", "name the task as the weekends do, as in M.course-1");
            if (!told.add(task)) one.stop("task", "\"" + Cursor.cut(task) + "\" stands twice", "take one of them out");
            done.add(new Tally.Done(task, day(one, "on", "day", start, day)));
            one.refuseUnknown();
        }
        List<Tally.Board> boards = new ArrayList<>();
        Set<String> names = new HashSet<>();
        for (Cursor one : tally.objects("boards", "board", MOST)) boards.addAll(board(one, boards.size(), names));
        List<Tally.Bought> bought = new ArrayList<>();
        for (Cursor one : tally.objects("bought", "thing bought", MOST)) {
            int count = one.count("count", 1, 1, 1_000_000);
            int arrived = one.count("arrived", 0, 0, 1_000_000);
            if (arrived > count) {
                one.stopBy("arrived", arrived + " arrived, " + count + " were bought", new Amount(arrived - count, "packs"), "set count to what was bought");
            }
            bought.add(new Tally.Bought(one.text("item", "", 100), one.text("pack", "", 100), count, arrived));
            one.refuseUnknown();
        }
        tally.refuseUnknown();
        return new Tally(day, done, boards, bought);
    }

    /** A date where the garden has a first day of work, or a number of the plan's days. */
    private static int day(Cursor cursor, String dateField, String dayField, Optional<LocalDate> start, int usual) {
        Optional<LocalDate> date = CrewReader.date(cursor, dateField);
        int day = cursor.count(dayField, usual, 0, LAST_DAY);
        if (date.isEmpty()) return day;
        if (start.isEmpty()) {
            cursor.stop(dateField, "a date needs a first day of work", "give crew its start, or count the day with \"" + dayField + "\"");
            return day;
        }
        long counted = ChronoUnit.DAYS.between(start.get(), date.get());
        if (counted < 0 || counted > LAST_DAY) {
            cursor.stopBy(dateField, date.get() + (counted < 0 ? " is past: work begins on " : " is too far from ") + start.get(),
                    new Amount(Math.abs(counted), "days"), "mend the date, or begin earlier");
            return day;
        }
        return (int) counted;
    }

    private static List<Tally.Board> board(Cursor one, int before, Set<String> names) {
        String name = one.text("board", "#" + (before + 1), 40);
        int count = one.count("count", 1, 1, 1_000);
        String section = one.text("section", BedReader.Usual.OURS.section(), 40);
        String stock = one.text("stock", "", 40);
        if (stock.isEmpty()) one.missing("stock", "give the stock length, as in \"4800\", or the id of the board on hand");
        List<String> cut = marks(one, "cut");
        List<String> spoiled = marks(one, "spoiled");
        boolean opened = one.flag("opened", !cut.isEmpty() || !spoiled.isEmpty());
        double lost = one.length("lost", 0, 0, 30_000);
        OptionalDouble left = one.has("left") ? OptionalDouble.of(one.length("left", 0, 0, 30_000)) : OptionalDouble.empty();
        one.refuseUnknown();
        if (count > 1 && (!cut.isEmpty() || !spoiled.isEmpty())) {
            one.stop("count", count + " boards cannot give the same pieces", "name each board that was opened by itself");
        }
        List<Tally.Board> boards = new ArrayList<>();
        for (int i = 1; i <= count; i++) {
            String own = count == 1 ? name : name + "." + i;
            if (!names.add(own)) one.stop("board", "\"" + Cursor.cut(own) + "\" stands twice", "give one of the two another number");
            boards.add(new Tally.Board(own, section, stock, opened, cut, spoiled, lost, left));
        }
        return boards;
    }

    private static List<String> marks(Cursor board, String field) {
        List<String> marks = new ArrayList<>();
        for (JsonNode one : board.list(field, 1_000)) {
            if (one.isTextual()) marks.add(one.textValue());
            else board.stop(field, Cursor.shown(one) + " is no mark", "write marks in quotes, as in [\"M-1A\"]");
        }
        return marks;
    }
}
