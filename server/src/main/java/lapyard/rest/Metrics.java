package lapyard.rest;

import java.lang.management.ManagementFactory;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.concurrent.atomic.LongAdder;
import lapyard.answers.AnswerService;

/** Plain counters of this process, in the Prometheus text format 0.0.4. */
final class Metrics {
    private final ConcurrentHashMap<String, LongAdder> requests = new ConcurrentHashMap<>();
    private final LongAdder nanos = new LongAdder();
    private final LongAdder running = new LongAdder();
    final LongAdder saves = new LongAdder();
    final LongAdder stale = new LongAdder();

    void began() {
        running.increment();
    }

    void ended(String method, int status, long tookNanos) {
        running.decrement();
        nanos.add(tookNanos);
        String labels = "{method=\"" + method + "\",status=\"" + status + "\"}";
        requests.computeIfAbsent(labels, key -> new LongAdder()).increment();
    }

    String text(AnswerService.Figures answers, Live live) {
        StringBuilder text = new StringBuilder();
        head(text, "lapyard_requests_total", "counter", "requests answered");
        for (Map.Entry<String, LongAdder> entry : new ConcurrentSkipListMap<>(requests).entrySet())
            line(
                    text,
                    "lapyard_requests_total" + entry.getKey(),
                    entry.getValue().sum());
        value(text, "lapyard_requests_running", "gauge", "requests being answered", running.sum());
        value(text, "lapyard_request_seconds_total", "counter", "time spent on answered requests", nanos.sum() / 1e9);
        value(text, "lapyard_saves_total", "counter", "changes put on disk", saves.sum());
        value(text, "lapyard_stale_saves_total", "counter", "changes refused as stale", stale.sum());
        value(text, "lapyard_output_hits_total", "counter", "job sheets and drawings found ready", answers.hits());
        value(text, "lapyard_output_misses_total", "counter", "job sheets and drawings made", answers.misses());
        value(text, "lapyard_output_bytes", "gauge", "job sheets and drawings kept", answers.keptBytes());
        value(text, "lapyard_listeners", "gauge", "browsers that wait for news", live.listeners());
        value(text, "lapyard_solves_running", "gauge", "job sheets, drawings and solves being worked out", answers.running());
        value(text, "lapyard_solves_waiting", "gauge", "those that wait for their turn", answers.waiting());
        Runtime runtime = Runtime.getRuntime();
        value(text, "lapyard_heap_used_bytes", "gauge", "heap in use", runtime.totalMemory() - runtime.freeMemory());
        double up = ManagementFactory.getRuntimeMXBean().getUptime() / 1e3;
        value(text, "lapyard_uptime_seconds", "gauge", "since the start", up);
        return text.toString();
    }

    private static void value(StringBuilder text, String name, String type, String help, Number value) {
        head(text, name, type, help);
        line(text, name, value);
    }

    private static void head(StringBuilder text, String name, String type, String help) {
        text.append("# HELP ").append(name).append(' ').append(help).append('\n');
        text.append("# TYPE ").append(name).append(' ').append(type).append('\n');
    }

    private static void line(StringBuilder text, String name, Number value) {
        text.append(name).append(' ').append(value).append('\n');
    }
}
