package lapyard.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.lang.reflect.Field;
import java.lang.reflect.Modifier;
import java.util.List;
import java.util.stream.Stream;
import lapyard.json.Wire.Part;
import org.junit.jupiter.api.Test;

class WireFormsTest {
    /** A part that was renamed in the core would keep its old form without a word until somebody asks for that answer. */
    @Test
    void everyFormNamesPartsThatItsRecordHasAndNoNameTwice() {
        assertFalse(WireForms.ALL.isEmpty());
        for (Class<?> type : WireForms.ALL.keySet()) {
            List<Part> parts = Stream.of(type.getDeclaredFields())
                    .filter(field -> !Modifier.isStatic(field.getModifiers())).map((Field field) -> Part.of(field)).toList();
            List<String> names = WireForms.changed(type, parts).stream().map(Part::name).toList();
            assertEquals(names.stream().distinct().toList(), names, type::getName);
        }
    }
}
