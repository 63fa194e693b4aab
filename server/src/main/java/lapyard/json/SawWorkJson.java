package lapyard.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;
import lapyard.construction.Nest;
import lapyard.cutting.Batches;
import lapyard.cutting.CuttingProblem;
import lapyard.cutting.Ledger;
import lapyard.cutting.SawBoard;
import lapyard.job.JobSheet.SawWork;
import lapyard.job.JobSheet.Way;
import lapyard.job.SawAdvice;

/** What stands beside a section's cutting result: boards, batches, ledger and ways to buy. */
final class SawWorkJson {
    private static final JsonNodeFactory NODES = JsonNodeFactory.withExactBigDecimals(true);

    private SawWorkJson() {}

    static ObjectNode of(SawWork work) {
        ObjectNode json = NODES.objectNode();
        ArrayNode boards = json.putArray("boards");
        work.boards().forEach(board -> boards.add(board(board)));
        json.set("batches", batches(work.batches()));
        json.set("ledger", ledger(work.ledger()));
        ArrayNode ways = json.putArray("ways");
        work.ways().forEach(way -> ways.add(way(way)));
        ArrayNode nests = json.putArray("nests");
        work.nests().forEach(nest -> nests.add(nest(nest)));
        work.ripping().ifPresent(ripping -> {
            ObjectNode one = json.putObject("ripping");
            one.put("boards", ripping.boards());
            one.set("thickness", JobSheetJson.number(ripping.thicknessMm(), 1));
            one.put("stripsPerBoard", ripping.stripsPerBoard());
            one.put("rips", ripping.rips());
        });
        ArrayNode onHand = json.putArray("onHand");
        work.problem().stock().stream()
                .filter(stock -> stock.available().isPresent())
                .forEach(stock -> onHand.add(onHand(stock, work.boards())));
        return json;
    }

    /** A board on hand, what it is worth kept and how many of it the plan opens. */
    private static ObjectNode onHand(CuttingProblem.Stock stock, List<SawBoard> boards) {
        ObjectNode json = NODES.objectNode();
        json.put("stock", stock.id());
        json.set("length", JobSheetJson.number(stock.lengthMm(), 1));
        json.put("available", stock.available().orElse(0));
        json.put("opened", boards.stream().filter(board -> board.stock().equals(stock.id())).count());
        json.set("salvage", NODES.numberNode(stock.salvage()));
        return json;
    }

    /** A length that is parted by slanted cuts: places from its square end, on the board's face and on its back. */
    private static ObjectNode nest(Nest nest) {
        ObjectNode json = NODES.objectNode();
        json.put("mark", nest.mark());
        json.set("length", JobSheetJson.number(nest.lengthMm(), 1));
        json.put("goodFaces", nest.goodFaces());
        ArrayNode pieces = json.putArray("pieces");
        for (Nest.Part part : nest.parts()) {
            ObjectNode one = pieces.addObject();
            one.put("mark", part.piece().mark());
            one.put("outer", part.outerOnFace() ? "face" : "back");
            one.set("face", span(part.faceFromMm(), part.faceToMm()));
            one.set("back", span(part.backFromMm(), part.backToMm()));
        }
        ArrayNode cuts = json.putArray("cuts");
        for (Nest.Cut cut : nest.cuts()) {
            ObjectNode one = cuts.addObject();
            one.set("face", JobSheetJson.number(cut.faceMm(), 1));
            one.set("back", JobSheetJson.number(cut.backMm(), 1));
            one.set("set", JobSheetJson.number(cut.setDeg(), 1));
        }
        return json;
    }

    private static ArrayNode span(double fromMm, double toMm) {
        ArrayNode json = NODES.arrayNode();
        json.add(JobSheetJson.number(fromMm, 1));
        json.add(JobSheetJson.number(toMm, 1));
        return json;
    }

    private static ObjectNode way(Way way) {
        ObjectNode json = NODES.objectNode();
        json.put("way", way.way());
        json.put("boards", way.boards());
        JobSheetJson.money(json, "cost", way.cost());
        return json;
    }

    static ArrayNode advice(List<SawAdvice> all) {
        ArrayNode json = NODES.arrayNode();
        for (SawAdvice advice : all) {
            ObjectNode section = json.addObject();
            section.put("section", advice.section());
            section.set("pooledOnce", way(advice.pooledOnce()));
            section.set("weekendByWeekend", way(advice.weekendByWeekend()));
            section.put("changesTried", advice.changesTried());
            section.put("changesThere", advice.changesThere());
            ArrayNode misses = section.putArray("nearMisses");
            for (SawAdvice.NearMiss miss : advice.nearMisses()) {
                ObjectNode one = misses.addObject();
                one.set("beds", texts(miss.sizes().beds()));
                one.set("walls", texts(miss.sizes().walls()));
                one.put("narrower", miss.sizes().narrower());
                one.put("shallower", miss.sizes().shallower());
                one.put("shorter", miss.shorterMm());
                one.put("text", miss.sizes().words(miss.shorterMm() + " mm"));
                one.put("sure", miss.sure());
                JobSheetJson.money(one, "saved", miss.saved());
                one.put("boardsSaved", miss.boardsSaved());
                one.set("pieces", texts(miss.marks()));
            }
        }
        return json;
    }

    static ObjectNode board(SawBoard board) {
        ObjectNode json = NODES.objectNode();
        json.put("number", board.number());
        json.put("stock", board.stock());
        json.set("length", JobSheetJson.number(board.lengthMm(), 1));
        json.set("trim", JobSheetJson.number(board.trimMm(), 1));
        ArrayNode cuts = json.putArray("cuts");
        for (SawBoard.Cut cut : board.cuts()) {
            ObjectNode one = cuts.addObject();
            one.put("mark", cut.mark());
            one.put("stage", cut.stage());
            one.set("length", JobSheetJson.number(cut.lengthMm(), 1));
            one.set("from", JobSheetJson.number(cut.fromMm(), 1));
            one.set("to", JobSheetJson.number(cut.toMm(), 1));
        }
        json.set("rest", JobSheetJson.number(board.restMm(), 1));
        return json;
    }

    static ObjectNode batches(Batches batches) {
        ObjectNode json = NODES.objectNode();
        Batches.Rates rates = batches.rates();
        json.set("minutesACut", JobSheetJson.number(rates.minutesACut(), 1));
        json.set("minutesASetting", JobSheetJson.number(rates.minutesASetting(), 1));
        json.set("minutes", JobSheetJson.number(batches.minutes(), 1));
        ArrayNode stages = json.putArray("stages");
        for (Batches.Stage stage : batches.stages()) {
            ObjectNode one = stages.addObject();
            one.put("stage", stage.stage());
            one.put("boards", stage.boards());
            one.put("pieces", stage.pieces());
            one.put("trims", stage.trims());
            one.put("cuts", stage.cuts());
            one.put("handlings", stage.handlings());
            one.set("minutes", JobSheetJson.number(stage.minutes(rates), 1));
            ObjectNode single = one.putObject("boardByBoard");
            single.put("settings", stage.settingsBoardByBoard());
            single.put("handlings", stage.boards());
            single.set("minutes", JobSheetJson.number(stage.minutesBoardByBoard(rates), 1));
            ArrayNode settings = one.putArray("settings");
            for (Batches.Setting setting : stage.settings()) {
                ObjectNode line = settings.addObject();
                line.set("stop", JobSheetJson.number(setting.stopMm(), 1));
                line.put("pieces", setting.pieces());
                ArrayNode from = line.putArray("from");
                for (Batches.Draw draw : setting.draws()) {
                    ObjectNode board = from.addObject();
                    board.put("board", draw.board());
                    board.set("pieces", texts(draw.marks()));
                }
            }
        }
        return json;
    }

    static ObjectNode ledger(Ledger ledger) {
        ObjectNode json = NODES.objectNode();
        ArrayNode stages = json.putArray("stages");
        for (Ledger.Stage stage : ledger.stages()) {
            ObjectNode one = stages.addObject();
            one.put("stage", stage.stage());
            ArrayNode opened = one.putArray("opened");
            stage.opened().forEach(opened::add);
            one.set("taken", texts(stage.taken()));
            one.put("open", stage.open());
            one.set("longest", JobSheetJson.number(stage.longestMm(), 1));
        }
        ArrayNode offcuts = json.putArray("offcuts");
        for (Ledger.Offcut offcut : ledger.offcuts()) {
            ObjectNode one = offcuts.addObject();
            one.put("tag", offcut.tag());
            one.put("board", offcut.board());
            one.put("madeIn", offcut.madeIn());
            one.set("length", JobSheetJson.number(offcut.lengthMm(), 1));
            one.put("fate", offcut.fate().name().toLowerCase(Locale.ROOT));
            if (offcut.usedIn().isPresent()) {
                one.put("usedIn", offcut.usedIn().getAsInt());
            } else {
                one.putNull("usedIn");
            }
            one.set("pieces", texts(offcut.marks()));
        }
        return json;
    }

    private static ArrayNode texts(List<String> texts) {
        ArrayNode json = NODES.arrayNode();
        texts.forEach(json::add);
        return json;
    }
}
