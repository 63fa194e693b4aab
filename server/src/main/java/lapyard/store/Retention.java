package lapyard.store;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Which revisions are thinned out. Ages are counted back from the garden's own newest revision, so a clock that
 * jumped drops nothing, and a garden that lies untouched keeps what it has.
 *
 * @param allDays   whole days for which every revision stays
 * @param dailyDays whole days after those for which the last of each day stays; of what is older, the last of each week
 */
public record Retention(int allDays, int dailyDays) {
    public Retention {
        if (allDays < 1 || dailyDays < 0)
            throw new IllegalArgumentException("revisions stay for 1 day or more, was " + allDays + " and " + dailyDays);
    }

    /**
     * @param history of one garden, newest first
     * @return numbers to drop; never the first, the newest, one with a stamp or a print, one that created, deleted or
     *     restored, or one that a restoring brought back
     */
    List<Long> dropped(List<Revision> history) {
        List<Long> dropped = new ArrayList<>();
        if (history.isEmpty()) return dropped;
        Set<Long> broughtBack = new HashSet<>();
        for (Revision revision : history) revision.restored().ifPresent(broughtBack::add);
        Instant newest = history.get(0).saved();
        Set<LocalDate> days = new HashSet<>();
        Set<LocalDate> weeks = new HashSet<>();
        for (int i = 0; i < history.size(); i++) {
            Revision revision = history.get(i);
            LocalDate day = LocalDate.ofInstant(revision.saved(), ZoneOffset.UTC);
            boolean lastOfDay = days.add(day);
            boolean lastOfWeek = weeks.add(day.with(DayOfWeek.MONDAY));
            long age = ChronoUnit.DAYS.between(revision.saved(), newest);
            boolean held = age < allDays
                    || i == 0
                    || i == history.size() - 1
                    || revision.kind() != Revision.Kind.SAVED
                    || revision.stamp().isPresent()
                    || revision.printed()
                    || broughtBack.contains(revision.number());
            if (!held && !(age < (long) allDays + dailyDays ? lastOfDay : lastOfWeek)) dropped.add(revision.number());
        }
        return dropped;
    }
}
