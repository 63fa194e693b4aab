package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import lapyard.geometry.Lengths;
import lapyard.geometry.Measure;
import lapyard.geometry.Outline;
import lapyard.json.Wire.To;
import lapyard.layout.LaidOut;
import lapyard.layout.Proposal;
import lapyard.plan.Bed;
import lapyard.plan.Garden;
import lapyard.plan.GardenPath;
import lapyard.words.Wording;

/** Proposals for a yard with their figures, each with the outlines to show it by and the whole document that it would make. */
public final class LayOutJson {
    private LayOutJson() {}

    private record Figures(int beds, @To(2) double plantingM2, @To(2) double pathM2, @To(1) Optional<Double> sunHours,
            @To(0) double barrowM, @To(1) Optional<Double> hoseM, BigDecimal cost, boolean atLeast) {}

    private record Place(String id, Outline outline, boolean pinned) {}

    private record Offered(String order, String text, Figures figures, List<String> ground, List<Place> beds, List<Outline> paths,
            ObjectNode garden) {}

    private record Shape(String currency, int mostBeds, int shortOf, boolean complete, LaidOut.Orders orders, String text,
            List<Offered> proposals) {}

    /** @param document that {@code garden} was read from */
    public static ObjectNode of(JsonNode document, Garden garden, LaidOut laid) {
        int best = laid.proposals().stream().mapToInt(one -> one.figures().beds()).max().orElse(0);
        return Wire.of(new Shape(garden.terms().currency(), laid.mostBeds(), laid.shortOf(), laid.complete(), laid.orders(), summary(laid, best),
                laid.proposals().stream().map(one -> offered(document, garden, one)).toList()));
    }

    private static Offered offered(JsonNode document, Garden garden, Proposal one) {
        Set<String> pinned = garden.asking().wishes().pinned();
        ObjectNode made = document(document, garden, one.garden(), pinned);
        Proposal.Figures figures = one.figures();
        boolean sun = garden.ground().sun().isPresent();
        Figures shown = new Figures(figures.beds(), figures.plantingM2(), figures.pathM2(),
                sun ? Optional.of(Lengths.toTenth(figures.sunHours())) : Optional.empty(), figures.barrowM(),
                figures.hoseM() > 0 ? Optional.of(Lengths.toTenth(figures.hoseM())) : Optional.empty(), figures.cost(), figures.atLeast());
        return new Offered(one.order(), text(one, shown, garden.terms().currency(), garden.imperial()), shown, one.ground(),
                places(made, one.garden(), pinned), one.sheet().paths().stream().flatMap(path -> path.cover().stream()).toList(), made);
    }

    private static String summary(LaidOut laid, int best) {
        if (laid.proposals().isEmpty() && !laid.complete()) return "It ended before the first order was laid out. Give it longer.";
        if (laid.proposals().isEmpty()) {
            return "No order of these beds was found that passes every check" + (laid.mostBeds() == 0 ? ", and none fits" : "; more than " + laid.mostBeds() + " cannot fit")
                    + ". Ask for fewer beds, a narrower path or a smaller margin.";
        }
        String found = best + (best == 1 ? " bed fits" : " beds fit") + (best == laid.mostBeds() ? "; more cannot, which is proved."
                : "; more than " + laid.mostBeds() + " cannot.");
        if (!laid.complete()) found += " It ended before every order was tried.";
        if (laid.few()) found += " " + few(laid.proposals().size(), laid.orders());
        return laid.shortOf() == 0 ? found
                : found + " " + laid.shortOf() + (laid.shortOf() == 1 ? " bed that is wanted has" : " beds that are wanted have") + " no room.";
    }

    /** Why there is no choice of three. */
    private static String few(int proposals, LaidOut.Orders orders) {
        List<String> rest = new ArrayList<>();
        if (orders.alike() > 0) rest.add(orders.alike() + " came out nearly alike");
        if (orders.worse() > 0) rest.add(orders.worse() + " had fewer beds and nothing better");
        if (orders.without() > 0) rest.add(orders.without() + " left no bed that passes every check");
        return "Only " + Measure.counted(proposals, "proposal") + " of " + Measure.counted(orders.tried(), "order")
                + " tried" + (rest.isEmpty() ? "." : ": " + String.join(", ", rest) + ".");
    }

    private static String text(Proposal one, Figures figures, String currency, boolean imperial) {
        return Wording.capital(one.order()) + ": " + Measure.counted(figures.beds(), "bed") + ", "
                + Measure.SQUARE_METRES.written(figures.plantingM2(), 1, imperial) + " to plant, "
                + Measure.SQUARE_METRES.written(figures.pathM2(), 1, imperial) + " of paths, "
                + figures.sunHours().map(hours -> hours + " h of sun, ").orElse("")
                + Measure.METRES.written(figures.barrowM(), 0, imperial) + " with the barrow, "
                + figures.hoseM().map(metres -> Measure.METRES.written(metres.doubleValue(), 1, imperial) + " of hose, ").orElse("")
                + (figures.atLeast() ? "at least " : "") + currency + " " + figures.cost();
    }

    private static List<Place> places(ObjectNode made, Garden proposed, Set<String> pinned) {
        List<Place> places = new ArrayList<>();
        for (int i = 0; i < proposed.beds().size(); i++) {
            String id = made.path("beds").path(i).path("id").asText();
            places.add(new Place(id, proposed.beds().get(i).inYard(), pinned.contains(id)));
        }
        return places;
    }

    /**
     * Pinned beds as they stand, every other bed as one of its making in the document or of its type, at its new place. A bed
     * of the document keeps its code and name; paths are as the document's first.
     */
    private static ObjectNode document(JsonNode document, Garden garden, Garden proposed, Set<String> pinned) {
        ObjectNode copy = document.deepCopy();
        JsonNode before = document.path("beds");
        ArrayNode beds = copy.putArray("beds");
        Set<Integer> used = new HashSet<>();
        boolean own = garden.asking().wishes().beds().isEmpty();
        for (Bed bed : proposed.beds()) {
            int like = like(garden, bed, pinned, used, own);
            boolean stays = pinned.contains(bed.id());
            if (own || stays) used.add(like);
            ObjectNode node = like >= 0 ? before.get(like).deepCopy() : copy.objectNode().put("type", bed.type());
            String id = own || stays ? garden.beds().get(like).id() : bed.id();
            if (!stays) {
                if (!own) node.remove(List.of("name", "stage", "weekend"));
                node.remove(List.of("turn", "mirror"));
                node.set("at", Wire.tree(bed.placement().at()));
                if (bed.placement().turnDeg() != 0) node.set("turn", Wire.number(bed.placement().turnDeg(), 1));
            }
            node.put("id", id);
            beds.add(node);
        }
        JsonNode style = document.path("paths").path(0);
        ArrayNode paths = copy.putArray("paths");
        for (GardenPath path : proposed.paths()) {
            ObjectNode node = style.isObject() ? style.deepCopy() : copy.objectNode();
            node.remove("name");
            node.put("id", path.id());
            node.set("line", Wire.tree(path.line()));
            node.set("width", Wire.number(path.widthMm(), 1));
            paths.add(node);
        }
        return copy;
    }

    /** A bed of the document that is made as this one, -1 where there is none. */
    private static int like(Garden garden, Bed bed, Set<String> pinned, Set<Integer> used, boolean own) {
        for (int i = 0; i < garden.beds().size(); i++) {
            Bed other = garden.beds().get(i);
            boolean stays = pinned.contains(other.id());
            if (stays ? other.id().equals(bed.id())
                    : own && !used.contains(i) && other.type().equals(bed.type()) && other.outline().equals(bed.outline())
                            && other.making().equals(bed.making()) && other.walls().withHidden(Set.of()).equals(bed.walls().withHidden(Set.of()))
                            && other.planting().equals(bed.planting())) {
                return i;
            }
        }
        return -1;
    }
}
