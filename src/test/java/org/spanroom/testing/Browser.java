package org.spanroom.testing;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.logging.Level;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.openqa.selenium.JavascriptExecutor;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.WebDriver;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;
import org.openqa.selenium.support.ui.WebDriverWait;

/**
 * The system's chromium without a window, which keeps a log of its console and of its requests.
 *
 * <p>Where it is not installed the test is skipped, and fails on a build server, as with {@link ExternalTool}.
 */
public final class Browser implements AutoCloseable {
    private static final Duration PATIENCE = Duration.ofSeconds(60);

    private final ChromeDriver driver;

    private Browser(ChromeDriver driver) {
        this.driver = driver;
    }

    /** Starts a browser whose window has this size in CSS pixels; files that it saves go to the folder. */
    public static Browser start(int widthPx, int heightPx, Path downloads) {
        Path chromium = ExternalTool.named("chromium").path();
        Path chromedriver = ExternalTool.named("chromedriver").path();
        var options = new ChromeOptions();
        options.setBinary(chromium.toFile());
        // Root in a container has no sandbox of its own; shared memory is small there.
        options.addArguments(
                "--headless=new",
                "--no-sandbox",
                "--disable-dev-shm-usage",
                "--disable-gpu",
                "--hide-scrollbars",
                "--force-prefers-reduced-motion",
                "--window-size=" + widthPx + "," + heightPx);
        options.setExperimentalOption("prefs", Map.of("download.default_directory", downloads.toString()));
        var logging = new LoggingPreferences();
        logging.enable(LogType.BROWSER, Level.ALL);
        logging.enable(LogType.PERFORMANCE, Level.ALL);
        options.setCapability(ChromeOptions.LOGGING_PREFS, logging);
        ChromeDriverService service = new ChromeDriverService.Builder()
                .usingDriverExecutable(chromedriver.toFile())
                .build();
        return new Browser(new ChromeDriver(service, options));
    }

    /** Opens a page from a file and waits until it says that it is ready. */
    public void open(Path page) {
        driver.get(page.toUri().toString());
        waitUntil("return document.body.dataset.ready === 'true'");
    }

    /** Makes the page's view this large in CSS pixels, also narrower than a window may be. */
    public void resize(int widthPx, int heightPx) {
        driver.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", widthPx, "height", heightPx, "deviceScaleFactor", 1, "mobile", false));
    }

    /** Waits until a script returns true. */
    public void waitUntil(String script) {
        new WebDriverWait(driver, PATIENCE).until(any -> Boolean.TRUE.equals(run(script)));
    }

    /** Runs a script in the page and returns what it returns. */
    public Object run(String script, Object... arguments) {
        return ((JavascriptExecutor) driver).executeScript(script, arguments);
    }

    /** Returns the driver, for keys and clicks. */
    public WebDriver driver() {
        return driver;
    }

    /** Returns what the console said that is an error or a warning. */
    public List<String> problems() {
        return entries(LogType.BROWSER)
                .filter(entry -> entry.getLevel().intValue() >= Level.WARNING.intValue())
                .map(LogEntry::getMessage)
                .toList();
    }

    /** Returns what was requested, other than the page itself and what it holds. */
    public List<String> requests(Path page) {
        return entries(LogType.PERFORMANCE)
                .map(LogEntry::getMessage)
                .filter(message -> message.contains("\"Network.requestWillBeSent\""))
                .map(message -> message.replaceAll("(?s).*?\"documentURL\":\"[^\"]*\".*?\"url\":\"([^\"]*)\".*", "$1"))
                .filter(url ->
                        !url.equals(page.toUri().toString()) && !url.startsWith("data:") && !url.startsWith("blob:"))
                .toList();
    }

    private Stream<LogEntry> entries(String type) {
        return StreamSupport.stream(driver.manage().logs().get(type).spliterator(), false);
    }

    /** Saves what the window shows. */
    public void picture(Path file) {
        try {
            Files.write(file, driver.getScreenshotAs(OutputType.BYTES));
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
    }

    @Override
    public void close() {
        driver.quit();
    }
}
