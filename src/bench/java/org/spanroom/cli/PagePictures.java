package org.spanroom.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.openqa.selenium.By;
import org.spanroom.testing.Browser;

/**
 * How large a page that {@code report} made is and how soon it is ready, and pictures of it: every part at three sizes, light and dark, and
 * the two pictures of the documentation.
 */
public final class PagePictures {
    private static final List<String> PARTS =
            List.of("summary", "map", "table", "whatif", "charts", "findings", "rates", "record", "safety");
    private static final List<Size> SIZES = List.of(new Size(390, 844), new Size(1440, 900), new Size(3840, 2160));
    private static final long DRAWN_WITHIN_MS = 900;
    private static final double BYTES_PER_MB = 1e6;
    private static final int TIMES = 5;

    private final Browser browser;
    private final Path page;
    private final Path folder;

    private PagePictures(Browser browser, Path page, Path folder) {
        this.browser = browser;
        this.page = page;
        this.folder = folder;
    }

    /** A window in CSS pixels. */
    private record Size(int widthPx, int heightPx) {}

    /** Takes the page and the folder for the pictures. */
    public static void main(String[] args) throws IOException, InterruptedException {
        Path folder = Files.createDirectories(Path.of(args[1]));
        try (Browser browser = Browser.start(1440, 900, folder)) {
            var pictures = new PagePictures(browser, Path.of(args[0]).toAbsolutePath(), folder);
            pictures.printFigures();
            for (Size size : SIZES) {
                pictures.takeParts(size, false);
                pictures.takeParts(size, true);
            }
            pictures.takeDocumented();
            for (String problem : browser.problems()) {
                System.out.println("message: " + problem);
            }
        }
    }

    /** How large the page is, and how long after its start the browser shows everything, five times. */
    private void printFigures() throws IOException {
        System.out.printf(Locale.ROOT, "%s: %.1f MB%n", page.getFileName(), Files.size(page) / BYTES_PER_MB);
        for (int time = 0; time < TIMES; time++) {
            browser.open(page);
            var readyMs = (Number) browser.run("return performance.getEntriesByName('ready')[0].startTime");
            System.out.printf(Locale.ROOT, "ready after %.2f s%n", readyMs.doubleValue() / 1000);
        }
    }

    private void takeParts(Size size, boolean isDark) throws InterruptedException {
        open(size);
        if (isDark) {
            browser.driver().findElement(By.id("theme")).click();
        }
        String begin = size.widthPx() + (isDark ? "-dark-" : "-light-");
        for (String part : PARTS) {
            browser.run("document.getElementById(arguments[0]).scrollIntoView()", part);
            take(begin + part);
        }
        openCard();
        take(begin + "card");
    }

    /** The summary, and the card of the best span beside the map, each as a window shows it. */
    private void takeDocumented() throws InterruptedException {
        open(new Size(1440, 1080));
        take("report-page");
        open(new Size(1440, 900));
        browser.run("document.getElementById('map').scrollIntoView()");
        openCard();
        take("report-card");
    }

    private void open(Size size) {
        browser.resize(size.widthPx(), size.heightPx());
        browser.open(page);
    }

    private void openCard() {
        browser.run("Spanroom.select(0, {from: 'summary'})");
        browser.waitUntil("return document.querySelectorAll('#card-body svg').length > 0");
    }

    /** Charts and the map are drawn a moment after they come into view. */
    private void take(String name) throws InterruptedException {
        Thread.sleep(DRAWN_WITHIN_MS);
        browser.picture(folder.resolve(name + ".png"));
    }
}
