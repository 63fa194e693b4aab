package lapyard.rest;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import org.junit.jupiter.api.Test;

/** Modules of the page as one: order and scopes as ECMA-262 (module records, evaluation) gives them to modules without cycles. */
class PageBundleTest {
    @Test
    void modulesRunOnceAfterThoseTheyImport() {
        Map<String, String> files = Map.of(
                "main.js", "import { b } from './x/b.js';\nimport './x/a.js';\nrun(b);\n",
                "x/b.js", "import { a as first } from './a.js';\nexport const b = first + 1;\n",
                "x/a.js", "const hidden = 1;\nexport const a = hidden;\nexport function f() {}\nexport class C {}\n");
        assertEquals(
                "const $0 = (() => {\nconst hidden = 1;\nconst a = hidden;\nfunction f() {}\nclass C {}\n\nreturn { C, a, f };\n})();\n"
                        + "const $1 = (() => {\nconst { a: first } = $0;\nconst b = first + 1;\n\nreturn { b };\n})();\n"
                        + "const $2 = (() => {\nconst { b } = $1;\nrun(b);\n\nreturn {  };\n})();\n",
                PageBundle.script("main.js", files::get));
    }

    @Test
    void circlesAndOtherWaysToExportAreRefusedByName() {
        Map<String, String> circle = Map.of("a.js", "import './b.js';\n", "b.js", "import './a.js';\n");
        assertTrue(assertThrows(IllegalStateException.class, () -> PageBundle.script("a.js", circle::get)).getMessage().startsWith("a.js imports itself"));
        Map<String, String> other = Map.of("a.js", "export default 1;\n");
        assertTrue(assertThrows(IllegalStateException.class, () -> PageBundle.script("a.js", other::get)).getMessage().startsWith("a.js: \"export default"));
    }

    @Test
    void styleSheetsStandInTheirOrderAndPaperApart() {
        Map<String, String> files = Map.of("a.css", "a {}\n", "p.css", "p {}\n");
        assertEquals("a {}\n@media print {\np {}\n}\n", PageBundle.styles("/* css: a.css */\n/* css: p.css print */", files::get));
    }
}
