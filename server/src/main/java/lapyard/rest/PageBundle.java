package lapyard.rest;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The page's modules as one module, so that a browser far away asks once and not a hundred times. Each module becomes a
 * function that runs once, after those that it imports, and hands out what it exports: the same order and the same scopes
 * as the browser gives them. Modules may not import each other in a circle.
 */
record PageBundle(UnaryOperator<String> read, Set<String> under, List<String> order, StringBuilder out) {
    private static final Pattern IMPORT = Pattern.compile("^import (?:\\{([^}]*)} from )?'([^']+)';\\n", Pattern.MULTILINE);
    private static final Pattern EXPORT = Pattern.compile("^export ((?:async )?function|class|const) (\\w+)", Pattern.MULTILINE);
    /** A comment on lines of its own: a third of what would be sent. */
    private static final Pattern NOTE = Pattern.compile("^[ \\t]*/\\*\\*.*?\\*/[ \\t]*\\n", Pattern.MULTILINE | Pattern.DOTALL);
    private static final Pattern OTHER = Pattern.compile("^(?:import|export)\\b[^\\n]*", Pattern.MULTILINE);
    private static final Pattern STYLE = Pattern.compile("/\\*\\*? css: ([\\w/.-]+)(?: (print))? \\*/");

    /**
     * @param entry the module that is run last, {@code main.js}
     * @param read  a module's text by its path
     * @throws IllegalStateException where a module says something that cannot be bundled, naming it
     */
    static String script(String entry, UnaryOperator<String> read) {
        PageBundle bundle = new PageBundle(read, new LinkedHashSet<>(), new ArrayList<>(), new StringBuilder());
        bundle.add(entry);
        return bundle.out.toString();
    }

    /** @param list names one style sheet a line, {@code css: yard.css} in a comment; {@code print} after it for paper only */
    static String styles(String list, UnaryOperator<String> read) {
        StringBuilder all = new StringBuilder();
        Matcher style = STYLE.matcher(list);
        while (style.find()) {
            String text = read.apply(style.group(1));
            all.append(style.group(2) == null ? text : "@media print {\n" + text + "}\n");
        }
        return all.toString();
    }

    private void add(String path) {
        if (order.contains(path)) return;
        if (!under.add(path)) throw new IllegalStateException(path + " imports itself through " + under);
        String text = NOTE.matcher(read.apply(path).replace("\r\n", "\n")).replaceAll("");
        StringBuilder head = new StringBuilder();
        Matcher imports = IMPORT.matcher(text);
        while (imports.find()) {
            String from = resolved(path, imports.group(2));
            add(from);
            if (imports.group(1) != null) {
                head.append("const {").append(imports.group(1).replaceAll("(\\w+) as (\\w+)", "$1: $2")).append("} = ").append(name(from)).append(";\n");
            }
        }
        String body = IMPORT.matcher(text).replaceAll("");
        Set<String> exported = new TreeSet<>();
        Matcher exports = EXPORT.matcher(body);
        while (exports.find()) exported.add(exports.group(2));
        body = EXPORT.matcher(body).replaceAll("$1 $2");
        Matcher other = OTHER.matcher(body);
        if (other.find()) throw new IllegalStateException(path + ": \"" + other.group() + "\" cannot be bundled");
        under.remove(path);
        order.add(path);
        out.append("const ").append(name(path)).append(" = (() => {\n").append(head).append(body).append("\nreturn { ")
                .append(String.join(", ", exported)).append(" };\n})();\n");
    }

    private String name(String path) {
        return "$" + order.indexOf(path);
    }

    private static String resolved(String from, String to) {
        List<String> parts = new ArrayList<>(List.of(from.split("/")));
        parts.remove(parts.size() - 1);
        for (String part : to.split("/")) {
            if (part.equals("..")) parts.remove(parts.size() - 1);
            else if (!part.equals(".")) parts.add(part);
        }
        return String.join("/", parts);
    }
}
