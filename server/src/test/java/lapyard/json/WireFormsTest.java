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
        assertFalse(WireForms.types().isEmpty());
        for (Class<?> type : WireForms.types()) {
            List<Part> parts = Stream.of(type.getDeclaredFields())
                    .filter(field -> !Modifier.isStatic(field.getModifiers())).map((Field field) -> Part.of(field)).toList();
            List<Part> changed = WireForms.changed(type, parts);
            List<String> names = changed.stream().map(Part::name).toList();
            assertFalse(changed.equals(parts), () -> type + " has a form that changes nothing, or one that is not found");
            assertEquals(names.stream().distinct().toList(), names, type::getName);
        }
    }
}
