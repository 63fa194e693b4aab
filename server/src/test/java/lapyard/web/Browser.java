package lapyard.web;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.logging.Level;
import org.openqa.selenium.By;
import org.openqa.selenium.ElementClickInterceptedException;
import org.openqa.selenium.ElementNotInteractableException;
import org.openqa.selenium.Keys;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;
import org.openqa.selenium.support.ui.WebDriverWait;

/** A headless browser with a folder of its own. */
final class Browser implements AutoCloseable {
    private static final List<String> BROWSERS = List.of("chromium", "chromium-browser", "google-chrome", "chrome");
    private static final Duration PATIENCE = Duration.ofSeconds(Long.getLong("lapyard.patience", 60));

    final ChromeDriver driver;
    final Path downloads;
    private final Path profile;

    private Browser(Path browser, Path driverFile, String traced) throws IOException {
        profile = Files.createTempDirectory("lapyard-browser");
        downloads = Files.createDirectory(profile.resolve("downloads"));
        ChromeOptions options = new ChromeOptions();
        options.setBinary(browser.toFile());
        options.addArguments(
                "--headless=new",
                "--no-sandbox",
                "--disable-gpu",
                "--disable-dev-shm-usage",
                "--disable-quic",
                "--no-first-run",
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-sync",
                "--window-size=1440,900",
                "--user-data-dir=" + profile.resolve("profile"));
        options.setExperimentalOption(
                "prefs", Map.of("download.default_directory", downloads.toString(), "download.prompt_for_download", false));
        LoggingPreferences logs = new LoggingPreferences();
        logs.enable(LogType.BROWSER, Level.WARNING);
        if (!traced.isEmpty()) {
            logs.enable(LogType.PERFORMANCE, Level.ALL);
            options.setExperimentalOption("perfLoggingPrefs", Map.of("traceCategories", traced, "enableNetwork", false, "enablePage", false));
        }
        options.setCapability("goog:loggingPrefs", logs);
        ChromeDriverService service =
                new ChromeDriverService.Builder().usingDriverExecutable(driverFile.toFile()).usingAnyFreePort().build();
        driver = new ChromeDriver(service, options);
    }

    /** What to do where there is no browser, told loudly; empty where there is one. */
    static Optional<String> missing() {
        if (program().isPresent() && driver().isPresent()) return Optional.empty();
        String missing = "NO BROWSER WAS FOUND: the page is NOT tested. Install chromium and chromedriver"
                + " (Debian: apt-get install chromium chromium-driver) and run the tests again.";
        System.err.println("\n" + "!".repeat(100) + "\n" + missing + "\n" + "!".repeat(100) + "\n");
        return Optional.of(missing);
    }

    /** @throws AssertionError where there is none */
    static Browser open() {
        return traced("");
    }

    /** One that writes down what it works on, see {@link #traces}. @param categories of the browser's tracing, with commas */
    static Browser traced(String categories) {
        Path browser = program().orElseThrow(() -> new AssertionError("no browser"));
        Path driver = driver().orElseThrow(() -> new AssertionError("no driver"));
        try {
            return new Browser(browser, driver, categories);
        } catch (IOException noFolder) {
            throw new UncheckedIOException(noFolder);
        }
    }

    private static Optional<Path> program() {
        return BROWSERS.stream().map(Browser::onPath).flatMap(Optional::stream).findFirst();
    }

    private static Optional<Path> driver() {
        return onPath("chromedriver");
    }

    private static Optional<Path> onPath(String program) {
        return Arrays.stream(System.getenv().getOrDefault("PATH", "").split(File.pathSeparator))
                .map(folder -> Path.of(folder, program))
                .filter(Files::isExecutable)
                .findFirst();
    }

    WebElement find(String selector) {
        return waiting("there is no " + selector).until(page -> {
            List<WebElement> found = driver.findElements(By.cssSelector(selector));
            return found.isEmpty() ? null : found.get(0);
        });
    }

    List<WebElement> all(String selector) {
        return driver.findElements(By.cssSelector(selector));
    }

    /** Presses what the selector finds once it stands still; looks for it again where it is drawn anew or covered. */
    void click(String selector) {
        onStanding(selector, WebElement::click);
    }

    /** Types into a field in place of what stands there, and leaves it with the tab key. */
    void enter(String selector, String text) {
        type(selector, text);
        send(selector, Keys.TAB);
    }

    void type(String selector, String text) {
        onStanding(selector, field -> {
            field.clear();
            field.sendKeys(text);
        });
    }

    /** Keys to the element itself, such as a choice's first letters. */
    void send(String selector, CharSequence... keys) {
        onStanding(selector, element -> element.sendKeys(keys));
    }

    /** Chooses from a list by the option's value. */
    void choose(String selector, String value) {
        onStanding(selector + " option[value=\"" + value + "\"]", WebElement::click);
    }

    private void onStanding(String selector, Consumer<WebElement> act) {
        WebDriverWait wait = waiting("nothing can be done with " + selector);
        wait.ignoreAll(List.of(StaleElementReferenceException.class, ElementClickInterceptedException.class, ElementNotInteractableException.class));
        wait.until(page -> {
            List<WebElement> found = all(selector);
            if (found.isEmpty() || !standsStill(found.get(0))) return false;
            act.accept(found.get(0));
            return true;
        });
    }

    /** A press is aimed at a place on the screen: it misses what moves, and what something lies over is brought into the open. */
    private boolean standsStill(WebElement element) {
        return Boolean.TRUE.equals(driver.executeAsyncScript("const [at, done] = arguments; const place = () => { const box = at.getBoundingClientRect();"
                + " return [box.left, box.top, box.width, box.height].join(); };"
                + " const { left, top, width, height } = at.getBoundingClientRect();"
                + " const seen = document.elementFromPoint(left + width / 2, top + height / 2);"
                + " if (width && !(seen && (at.contains(seen) || seen.contains(at)))) at.scrollIntoView({ block: 'center', inline: 'center', behavior: 'instant' });"
                + " const before = place(); requestAnimationFrame(() => requestAnimationFrame(() => done(at.isConnected && place() === before)));", element));
    }

    void keys(CharSequence... keys) {
        new Actions(driver).sendKeys(keys).perform();
    }

    /** A key with others held down. */
    void chord(CharSequence key, Keys... held) {
        Actions actions = new Actions(driver);
        for (Keys one : held) actions.keyDown(one);
        actions.sendKeys(key);
        for (Keys one : held) actions.keyUp(one);
        actions.perform();
    }

    Object js(String script, Object... arguments) {
        return driver.executeScript(script, arguments);
    }

    String text(String selector) {
        return String.valueOf(js("return document.querySelector(arguments[0])?.textContent ?? null", selector));
    }

    /** Waits until a script's answer is true. */
    void until(String what, String script, Object... arguments) {
        waiting(what).until(page -> Boolean.TRUE.equals(js(script, arguments)));
    }

    /** Waits until what was changed is drawn. */
    void drawn() {
        driver.executeAsyncScript("const done = arguments[0]; requestAnimationFrame(() => requestAnimationFrame(() => done()))");
    }

    private WebDriverWait waiting(String what) {
        WebDriverWait wait = new WebDriverWait(driver, PATIENCE, Duration.ofMillis(60));
        wait.withMessage(what);
        return wait;
    }

    /** The page as a screen of this size shows it. */
    void size(int width, int height, boolean mobile) {
        driver.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", mobile));
    }

    /** How the reader likes pages: for example {@code prefers-color-scheme} to {@code dark}. */
    void prefers(String feature, String value) {
        driver.executeCdpCommand(
                "Emulation.setEmulatedMedia", Map.of("features", List.of(Map.of("name", feature, "value", value))));
    }

    /** What a page has kept in the browser, such as which places lie open. */
    void forget(URI page) {
        driver.executeCdpCommand(
                "Storage.clearDataForOrigin",
                Map.of("origin", page.getScheme() + "://" + page.getAuthority(), "storageTypes", "local_storage"));
    }

    /** What the browser complained of since the last time: refused requests, refused styles, errors. */
    List<String> complaints() {
        return driver.manage().logs().get(LogType.BROWSER).getAll().stream().map(LogEntry::getMessage).toList();
    }

    /** The traced events since the last time, each as JSON. */
    List<String> traces() {
        return driver.manage().logs().get(LogType.PERFORMANCE).getAll().stream().map(LogEntry::getMessage).toList();
    }

    @Override
    public void close() {
        driver.quit();
        try (var files = Files.walk(profile)) {
            files.sorted(java.util.Comparator.reverseOrder()).forEach(file -> file.toFile().delete());
        } catch (IOException | UncheckedIOException stillWritten) {
            profile.toFile().deleteOnExit();
        }
    }
}
