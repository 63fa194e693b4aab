package lapyard.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;
import lapyard.job.Buying;
import lapyard.job.JobSheet;
import lapyard.job.StagingCost;
import lapyard.plan.Crew;
import lapyard.plan.Rate;
import lapyard.weekends.Weekends;
import lapyard.weekends.Work;

/** The wire form of the weekends: days count from 0, minutes from the beginning of a day. */
final class WeekendsJson {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private WeekendsJson() {}

    static ObjectNode of(JobSheet sheet) {
        Weekends weekends = sheet.weekends();
        Crew crew = sheet.garden().people().crew();
        ObjectNode json = NODES.objectNode();
        json.put("described", crew.described());
        crew.dates().start().ifPresentOrElse(start -> json.put("start", start.toString()), () -> json.putNull("start"));
        json.put("zone", crew.dates().zone());
        json.put("from", crew.dates().from().toString());
        json.set("hours", JobSheetJson.number(crew.dates().hours(), 2));
        json.set("load", JobSheetJson.number(weekends.loadHours(), 2));
        json.put("lastDay", weekends.lastDay());
        json.put("endDay", weekends.endDay());
        json.put("leastDay", weekends.leastDay());
        ArrayNode days = json.putArray("days");
        weekends.days().forEach(day -> days.add(day(day)));
        ArrayNode tasks = json.putArray("tasks");
        weekends.tasks().forEach(task -> tasks.add(task(task)));
        ArrayNode waits = json.putArray("waits");
        for (Weekends.Wait wait : weekends.waits()) {
            ObjectNode one = waits.addObject();
            one.put("task", wait.task());
            one.put("after", wait.after());
            one.put("why", wait.why());
            one.put("fromDay", wait.fromDay());
            one.put("toDay", wait.toDay());
        }
        Buying buying = Buying.of(sheet);
        json.put("drops", buying.drops());
        ArrayNode rows = json.putArray("buying");
        for (Buying.Row row : buying.rows()) {
            ObjectNode one = rows.addObject();
            one.put("weekend", row.weekend());
            one.put("needDay", row.needDay());
            one.put("orderDay", row.orderDay());
            crew.dates().start().ifPresent(start -> {
                one.put("needBy", start.plusDays(row.needDay()).toString());
                one.put("orderBy", start.plusDays(row.orderDay()).toString());
            });
            one.put("item", row.item());
            one.put("label", row.label());
            one.set("amount", JobSheetJson.number(row.amount(), 3));
            one.put("unit", row.unit());
            ObjectNode boards = one.putObject("boards");
            row.boards().forEach(boards::put);
            ObjectNode packs = one.putObject("packs");
            row.packs().forEach(packs::put);
        }
        ArrayNode rates = json.putArray("rates");
        for (Rate rate : Rate.values()) {
            ObjectNode one = rates.addObject();
            one.put("rate", rate.field());
            one.set("minutes", JobSheetJson.number(crew.minutes(rate), 2));
            one.put("per", rate.per());
        }
        return json;
    }

    /** What it costs to buy and cut in stages, beside all at once. */
    static ArrayNode cost(StagingCost cost) {
        ArrayNode ways = NODES.arrayNode();
        for (StagingCost.Way way : cost.ways()) {
            ObjectNode one = ways.addObject();
            one.put("way", way.way());
            one.put("boards", way.boards());
            JobSheetJson.money(one, "boardsCost", way.boardsCost());
            one.put("drops", way.drops());
            one.put("delivery", way.delivery().toPlainString());
            JobSheetJson.money(one, "sum", way.sum());
            JobSheetJson.money(one, "more", way.more());
        }
        return ways;
    }

    private static ObjectNode day(Weekends.Day day) {
        ObjectNode json = NODES.objectNode();
        json.put("number", day.number());
        json.put("weekend", day.weekend());
        day.date().ifPresentOrElse(date -> json.put("date", date.toString()), () -> json.putNull("date"));
        json.put("day", day.dayOfWeek().name().substring(0, 3).toLowerCase(Locale.ROOT));
        json.put("state", day.wet() ? "wet" : day.hoursLeft() < 0.25 ? "full" : "open");
        strings(json.putArray("people"), day.people());
        json.set("there", JobSheetJson.number(day.hoursThere(), 2));
        json.set("used", JobSheetJson.number(day.hoursUsed(), 2));
        json.set("left", JobSheetJson.number(day.hoursLeft(), 2));
        ArrayNode parts = json.putArray("parts");
        for (Weekends.Part part : day.parts()) {
            ObjectNode one = parts.addObject();
            one.put("task", part.task());
            one.put("from", part.fromMinute());
            one.put("to", part.toMinute());
            one.put("people", part.people());
            one.put("together", part.togetherMinutes());
            one.put("part", part.number());
            one.put("of", part.of());
        }
        return json;
    }

    private static ObjectNode task(Weekends.Task task) {
        Work work = task.work();
        ObjectNode json = NODES.objectNode();
        json.put("id", work.id());
        json.put("place", work.place());
        json.put("bed", work.bed());
        json.put("step", work.step());
        json.put("label", work.label());
        json.set("minutes", JobSheetJson.number(work.minutes(), 1));
        json.put("people", work.people());
        json.put("lifts", work.lifts());
        json.put("dry", work.dry());
        json.put("firstDay", task.firstDay());
        json.put("lastDay", task.lastDay());
        json.put("done", task.done());
        ArrayNode after = json.putArray("after");
        for (Work.After earlier : work.after()) {
            ObjectNode one = after.addObject();
            one.put("task", earlier.task());
            one.put("days", earlier.days());
            one.put("why", earlier.why());
        }
        strings(json.putArray("marks"), work.marks());
        strings(json.putArray("loads"), work.loads());
        strings(json.putArray("cautions"), work.cautions());
        return json;
    }

    private static void strings(ArrayNode list, List<String> texts) {
        texts.forEach(list::add);
    }
}
