package lapyard.history;

import static lapyard.history.DifferenceTest.object;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Random;
import org.junit.jupiter.api.Test;

class MergeTest {
    private static final String BASE = "{'name':'Yard','beds':[{'id':'A','width':1},{'id':'B','width':1}],'saw':{'kerf':4}}";

    private static ObjectNode both(String base, String mine, String theirs) {
        return assertInstanceOf(Merge.Both.class, Merge.of(object(base), object(mine), object(theirs))).document();
    }

    private static Merge.Clash clash(String base, String mine, String theirs) {
        return assertInstanceOf(Merge.Clash.class, Merge.of(object(base), object(mine), object(theirs)));
    }

    @Test
    void changesOfDifferentBedsBothStand() {
        assertEquals(
                object("{'name':'Yard','beds':[{'id':'A','width':2},{'id':'B','width':3}],'saw':{'kerf':4}}"),
                both(
                        BASE,
                        "{'name':'Yard','beds':[{'id':'A','width':2},{'id':'B','width':1}],'saw':{'kerf':4}}",
                        "{'name':'Yard','beds':[{'id':'A','width':1},{'id':'B','width':3}],'saw':{'kerf':4}}"));
    }

    @Test
    void theOrderThatOneChangedStands() {
        String turned = "{'beds':[{'id':'C'},{'id':'A'},{'id':'B'}]}";
        String changed = "{'beds':[{'id':'A','width':2},{'id':'B'},{'id':'C'},{'id':'D'}]}";
        String both = "{'beds':[{'id':'C'},{'id':'A','width':2},{'id':'B'},{'id':'D'}]}";
        String base = "{'beds':[{'id':'A'},{'id':'B'},{'id':'C'}]}";
        assertEquals(object(both), both(base, turned, changed));
        assertEquals(object(both), both(base, changed, turned));
    }

    @Test
    void whatOneAddsAndTheOtherTakesOutBothHappen() {
        assertEquals(
                object("{'name':'Yard','beds':[{'id':'B','width':1},{'id':'C'}],'saw':{'kerf':4}}"),
                both(
                        BASE,
                        "{'name':'Yard','beds':[{'id':'A','width':1},{'id':'B','width':1},{'id':'C'}],'saw':{'kerf':4}}",
                        "{'name':'Yard','beds':[{'id':'B','width':1}],'saw':{'kerf':4}}"));
    }

    @Test
    void aClashShowsBothSides() {
        Merge.Clash clash = clash(
                BASE,
                "{'name':'Yard','beds':[{'id':'A','width':2},{'id':'B','width':1}],'saw':{'kerf':3}}",
                "{'name':'Hof','beds':[{'id':'B','width':1}],'saw':{'kerf':5}}");
        assertEquals(2, clash.sides().size());
        Merge.Side bed = clash.sides().stream().filter(side -> side.where().equals("bed A")).findFirst().orElseThrow();
        assertEquals(object("{'id':'A','width':2}"), bed.mine().orElseThrow());
        assertEquals(true, bed.theirs().isEmpty());
        Merge.Side saw = clash.sides().stream().filter(side -> side.where().equals("saw")).findFirst().orElseThrow();
        assertEquals("{\"kerf\":5}", saw.theirs().orElseThrow().toString());
    }

    @Test
    void theSameChangeOnBothSidesIsKeptOnce() {
        String same = "{'name':'Hof','beds':[{'id':'A','width':9},{'id':'B','width':1}],'saw':{'kerf':4}}";
        assertEquals(object(same), both(BASE, same, same));
    }

    /** Whichever of two is taken first, the same beds stand with the same widths. */
    @Test
    void bothOrdersEndAlike() {
        Random random = new Random(44);
        for (int round = 0; round < 500; round++) {
            ObjectNode base = object("{'beds':[]}");
            for (int bed = 0; bed < 8; bed++)
                base.withArray("beds").addObject().put("id", "b" + bed).put("width", 1);
            ObjectNode mine = base.deepCopy();
            ObjectNode theirs = base.deepCopy();
            for (int bed = 0; bed < 8; bed++) {
                ObjectNode changed = (ObjectNode) (random.nextBoolean() ? mine : theirs).withArray("beds").get(bed);
                if (random.nextBoolean()) changed.put("width", 2 + random.nextInt(9));
            }
            assertEquals(Merge.of(base, mine, theirs), Merge.of(base, theirs, mine), "round " + round);
        }
    }
}
