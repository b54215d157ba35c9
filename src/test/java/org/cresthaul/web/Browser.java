package org.cresthaul.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.lang.reflect.InvocationHandler;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Proxy;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Base64;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.logging.Level;
import java.util.stream.Stream;
import org.openqa.selenium.By;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.Keys;
import org.openqa.selenium.NoSuchElementException;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.WindowType;
import org.openqa.selenium.WrapsElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.interactions.PointerInput;
import org.openqa.selenium.interactions.Sequence;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;
import org.openqa.selenium.support.ui.Select;
import org.openqa.selenium.support.ui.WebDriverWait;

/**
 * A headless Chromium with an empty profile. It keeps a list of every address that a page asks for and of every error a
 * page writes to its console.
 */
final class Browser implements AutoCloseable {
    private static final Duration PATIENCE = Duration.ofSeconds(60);
    private static final ObjectMapper JSON = new ObjectMapper();

    private final Path profile;
    private final ChromeDriver driver;

    Browser() throws IOException {
        profile = Files.createTempDirectory("cresthaul-browser");
        ChromeOptions options = new ChromeOptions();
        options.setBinary(program("chromium"));
        options.addArguments(
                "--headless",
                "--no-sandbox",
                "--disable-gpu",
                "--disable-quic",
                "--no-first-run",
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-sync",
                "--disable-dev-shm-usage",
                "--force-prefers-reduced-motion",
                "--lang=en-US",
                "--user-data-dir=" + profile);
        LoggingPreferences logs = new LoggingPreferences();
        logs.enable(LogType.PERFORMANCE, Level.ALL);
        logs.enable(LogType.BROWSER, Level.ALL);
        options.setCapability("goog:loggingPrefs", logs);
        // The driver's path is given, so nothing is looked for or loaded from elsewhere.
        ChromeDriverService service = new ChromeDriverService.Builder()
                .usingDriverExecutable(program("chromedriver"))
                .build();
        driver = new ChromeDriver(service, options);
        resize(1280, 900);
    }

    private static File program(String name) {
        return Stream.of(System.getenv("PATH").split(File.pathSeparator))
                .map(folder -> new File(folder, name))
                .filter(File::canExecute)
                .findFirst()
                .orElseThrow(() -> new IllegalStateException(
                        name + " is not on the path; .ci/run installs Debian's chromium and chromium-driver"));
    }

    void open(String url) {
        driver.get(url);
    }

    /** Sets the size of the page's viewport. Headless windows have a least width, so the page is emulated in one. */
    void resize(int width, int height) {
        driver.manage().window().setSize(new Dimension(Math.max(width, 600), height));
        driver.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", false));
    }

    /** Lets what is pressed be pressed by a finger, as on a phone, or by a mouse again. */
    void touch(boolean byFinger) {
        driver.executeCdpCommand(
                "Emulation.setTouchEmulationEnabled", Map.of("enabled", byFinger, "maxTouchPoints", byFinger ? 5 : 1));
    }

    /** Lets the page believe that its reader prefers "light" or "dark". */
    void prefer(String colorScheme) {
        driver.executeCdpCommand(
                "Emulation.setEmulatedMedia",
                Map.of("features", List.of(Map.of("name", "prefers-color-scheme", "value", colorScheme))));
    }

    /** Lays the page out as it is printed, in a window as wide as the sheet between its margins; or again as before. */
    void layOutForPrint(boolean print) {
        run("window.dispatchEvent(new Event(arguments[0]))", print ? "beforeprint" : "afterprint");
        driver.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", print ? "print" : ""));
    }

    /** Puts the browser at a place, and lets the pages of an origin know it. */
    void locate(String origin, double lonDeg, double latDeg, double accuracyM) {
        driver.executeCdpCommand(
                "Browser.grantPermissions", Map.of("origin", origin, "permissions", List.of("geolocation")));
        driver.executeCdpCommand(
                "Emulation.setGeolocationOverride",
                Map.of("longitude", lonDeg, "latitude", latDeg, "accuracy", accuracyM));
    }

    /** The first that matches, there now; where the page draws it anew, whatever matches then stands for it. */
    WebElement find(String selector) {
        return new Drawn(() -> driver.findElement(By.cssSelector(selector))).element();
    }

    List<WebElement> list(String selector) {
        return driver.findElements(By.cssSelector(selector));
    }

    /** Waits until {@code condition} gives something that is neither null nor false. */
    <T> T await(String what, Function<Browser, T> condition) {
        return new WebDriverWait(driver, PATIENCE)
                .pollingEvery(Duration.ofMillis(50))
                .ignoring(NoSuchElementException.class)
                .ignoring(StaleElementReferenceException.class)
                .withMessage(() -> what + "\n" + errors() + "\n" + find("body").getText())
                .until(d -> condition.apply(this));
    }

    Object run(String script, Object... arguments) {
        return driver.executeScript(script, arguments);
    }

    void press(CharSequence... keys) {
        driver.switchTo().activeElement().sendKeys(keys);
    }

    /** Chooses from a list what begins so. */
    void choose(WebElement list, String beginning) {
        new Select(list)
                .getOptions().stream()
                        .filter(option -> option.getText().startsWith(beginning))
                        .findFirst()
                        .orElseThrow(() -> new AssertionError("no choice begins with " + beginning))
                        .click();
    }

    /** Keys for whatever has the focus, as a keyboard sends them. */
    void keys(CharSequence... keys) {
        new Actions(driver).sendKeys(keys).perform();
    }

    /** Keys for whatever has the focus while another is held down. */
    void keysWith(Keys held, CharSequence... keys) {
        new Actions(driver).keyDown(held).sendKeys(keys).keyUp(held).perform();
    }

    /** Brings an element into sight and taps it with a finger. */
    void tap(WebElement element) {
        run("arguments[0].scrollIntoView({block: 'center'})", element);
        PointerInput finger = new PointerInput(PointerInput.Kind.TOUCH, "finger");
        Sequence tap = new Sequence(finger, 0)
                .addAction(finger.createPointerMove(Duration.ZERO, PointerInput.Origin.fromElement(element), 0, 0))
                .addAction(finger.createPointerDown(PointerInput.MouseButton.LEFT.asArg()))
                .addAction(finger.createPointerUp(PointerInput.MouseButton.LEFT.asArg()));
        driver.perform(List.of(tap));
    }

    /** Takes what is in the middle of an element by the mouse and lets go of it beside. */
    void drag(String selector, int byX, int byY) {
        new Actions(driver)
                .clickAndHold(find(selector))
                .moveByOffset(byX, byY)
                .release()
                .perform();
    }

    /** Presses Tab until the focus is on an element that matches; fails after {@code most} times. */
    WebElement tabTo(String selector, int most) {
        for (int i = 0; i < most; i++) {
            press(Keys.TAB);
            WebElement focused = driver.switchTo().activeElement();
            if (Boolean.TRUE.equals(run("return arguments[0].matches(arguments[1])", focused, selector))) {
                return focused;
            }
        }
        throw new AssertionError("Tab does not reach " + selector + " within " + most + " steps");
    }

    /** What axe-core finds wrong with the page as it stands; empty when nothing. */
    List<String> accessibilityViolations() throws IOException {
        return accessibilityViolations("html");
    }

    /** The same of the parts of the page that match. */
    List<String> accessibilityViolations(String parts) throws IOException {
        try (InputStream axe = Browser.class.getResourceAsStream("/axe.min.js")) {
            run(new String(axe.readAllBytes(), StandardCharsets.UTF_8));
        }
        Object result = driver.executeAsyncScript(
                "const done = arguments[arguments.length - 1];"
                        + "axe.run(arguments[0], {resultTypes: ['violations']}).then("
                        + "r => done(JSON.stringify({passes: r.passes.length, violations: r.violations})), e => done(String(e)))",
                parts);
        JsonNode found = JSON.readTree((String) result);
        if (found.path("passes").asInt() == 0) {
            throw new AssertionError("axe-core checked nothing: " + result);
        }
        List<String> violations = new ArrayList<>();
        found.path("violations")
                .forEach(v -> v.path("nodes")
                        .forEach(n -> violations.add(
                                v.path("id").asText() + ": " + n.path("html").asText() + " "
                                        + n.path("failureSummary").asText())));
        return violations;
    }

    /** Every address that was asked for since the last call. */
    List<String> requests() throws IOException {
        List<String> addresses = new ArrayList<>();
        for (LogEntry entry : driver.manage().logs().get(LogType.PERFORMANCE)) {
            JsonNode message = JSON.readTree(entry.getMessage()).path("message");
            if (message.path("method").asText().equals("Network.requestWillBeSent")) {
                addresses.add(message.at("/params/request/url").asText());
            }
        }
        return addresses;
    }

    /** What pages wrote to the console as an error since the last call: failed loads, refused scripts, exceptions. */
    List<String> errors() {
        return driver.manage().logs().get(LogType.BROWSER).getAll().stream()
                .filter(e -> e.getLevel().intValue() >= Level.SEVERE.intValue())
                .map(LogEntry::getMessage)
                .toList();
    }

    /** What is on the screen, as PNG. */
    byte[] screen() {
        Object picture = driver.executeCdpCommand("Page.captureScreenshot", Map.of("format", "png"))
                .get("data");
        return Base64.getDecoder().decode((String) picture);
    }

    /** The page as it is printed on a sheet, inches, as PDF. */
    byte[] printed(double width, double height) {
        return Base64.getDecoder().decode((String) driver.executeCdpCommand(
                        "Page.printToPDF",
                        Map.of(
                                "paperWidth",
                                width,
                                "paperHeight",
                                height,
                                "printBackground",
                                true,
                                "preferCSSPageSize",
                                false))
                .get("data"));
    }

    /** Opens an address in a window of its own and goes there; its handle, and by it back to any other. */
    String openBeside(String url) {
        driver.switchTo().newWindow(WindowType.TAB);
        driver.get(url);
        return driver.getWindowHandle();
    }

    /** Runs a script in every page that is opened from now on, before the page's own. */
    void beforePages(String script) {
        driver.executeCdpCommand("Page.addScriptToEvaluateOnNewDocument", Map.of("source", script));
    }

    /** Forgets what pages of an address have kept. */
    void forget(String origin) {
        driver.executeCdpCommand(
                "Storage.clearDataForOrigin", Map.of("origin", origin, "storageTypes", "local_storage"));
    }

    void reload() {
        driver.navigate().refresh();
    }

    /** Goes to the window that a press has opened. */
    void toOtherWindow(String own) {
        new WebDriverWait(driver, PATIENCE).until(d -> d.getWindowHandles().size() > 1);
        driver.getWindowHandles().stream()
                .filter(h -> !h.equals(own))
                .findFirst()
                .ifPresent(this::toWindow);
    }

    /** Closes every window but the first. */
    void closeOthers() {
        List<String> handles = List.copyOf(driver.getWindowHandles());
        for (String handle : handles.subList(1, handles.size())) {
            driver.switchTo().window(handle).close();
        }
        driver.switchTo().window(handles.get(0));
    }

    String window() {
        return driver.getWindowHandle();
    }

    void toWindow(String handle) {
        driver.switchTo().window(handle);
    }

    /** What the window that was opened last says, once it is there; it is closed again. */
    String textOfTheOtherWindow() {
        String own = driver.getWindowHandle();
        new WebDriverWait(driver, PATIENCE).until(d -> d.getWindowHandles().size() > 1);
        String other = driver.getWindowHandles().stream()
                .filter(h -> !h.equals(own))
                .findFirst()
                .orElseThrow();
        try {
            driver.switchTo().window(other);
            new WebDriverWait(driver, PATIENCE)
                    .until(d -> !d.findElements(By.cssSelector("body h2")).isEmpty());
            return driver.findElement(By.cssSelector("body")).getDomProperty("textContent");
        } finally {
            driver.close();
            driver.switchTo().window(own);
        }
    }

    /** An element by how it is found: what is asked of one that was drawn anew meanwhile is asked of the new one. */
    private static final class Drawn implements InvocationHandler {
        /** A page that draws it anew between every two looks is at fault. */
        private static final int MOST = 5;

        private final Supplier<WebElement> look;
        private WebElement found;

        Drawn(Supplier<WebElement> look) {
            this.look = look;
            found = look.get();
        }

        WebElement element() {
            return (WebElement) Proxy.newProxyInstance(
                    Browser.class.getClassLoader(), new Class<?>[] {WebElement.class, WrapsElement.class}, this);
        }

        @Override
        public Object invoke(Object proxy, Method method, Object[] arguments) throws Throwable {
            boolean itself = method.getDeclaringClass() == WrapsElement.class;
            for (int i = 1; ; i++) {
                try {
                    if (itself) {
                        // Asked anything, one that is not there any more says so.
                        found.isEnabled();
                        return found;
                    }
                    return method.invoke(found, arguments);
                } catch (InvocationTargetException e) {
                    if (!(e.getCause() instanceof StaleElementReferenceException) || i == MOST) {
                        throw e.getCause();
                    }
                } catch (StaleElementReferenceException e) {
                    if (i == MOST) {
                        throw e;
                    }
                }
                found = look.get();
            }
        }
    }

    @Override
    public void close() throws IOException {
        driver.quit();
        try (Stream<Path> files = Files.walk(profile)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(file);
            }
        }
    }
}
