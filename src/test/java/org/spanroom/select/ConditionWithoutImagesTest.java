package org.spanroom.select;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;

import java.io.File;
import java.io.IOException;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Conditions as the runnable jar evaluates them, which leaves the library of images out; every other test has it. */
class ConditionWithoutImagesTest {
    private static final Map<String, Class<?>> TYPES =
            Map.of("rank", Long.class, "spare", Boolean.class, "duct", String.class);

    private static URLClassLoader jar;
    private static Method parse;

    private ClassLoader before = getClass().getClassLoader();

    /** Loads all classes itself, and none of the library of images. */
    private static final class WithoutImages extends URLClassLoader {
        WithoutImages(URL[] urls) {
            super(urls, ClassLoader.getPlatformClassLoader());
        }

        @Override
        protected Class<?> findClass(String name) throws ClassNotFoundException {
            if (name.startsWith("javax.media.")) {
                throw new ClassNotFoundException(name);
            }
            return super.findClass(name);
        }
    }

    @BeforeAll
    static void load() throws ReflectiveOperationException {
        URL[] urls = Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
                .map(ConditionWithoutImagesTest::url)
                .toArray(URL[]::new);
        jar = new WithoutImages(urls);
        parse = jar.loadClass(Condition.class.getName())
                .getMethod("parse", String.class, Map.class, UnaryOperator.class);
    }

    /** The library finds its parts by the loader of the thread. */
    @BeforeEach
    void enter() {
        before = Thread.currentThread().getContextClassLoader();
        Thread.currentThread().setContextClassLoader(jar);
    }

    @AfterEach
    void leave() {
        Thread.currentThread().setContextClassLoader(before);
    }

    @AfterAll
    static void close() throws IOException {
        jar.close();
    }

    private static URL url(String entry) {
        try {
            return Path.of(entry).toUri().toURL();
        } catch (IOException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    private static Object parsed(String text) throws Throwable {
        try {
            return parse.invoke(null, text, TYPES, UnaryOperator.<String>identity());
        } catch (InvocationTargetException thrown) {
            throw thrown.getCause();
        }
    }

    private static boolean holds(String text) throws Throwable {
        Map<String, Object> row = Map.of("rank", 7L, "spare", false, "duct", "B18");
        Object condition = parsed(text);
        Function<String, Optional<Object>> cells = name -> Optional.ofNullable(row.get(name));
        try {
            return (boolean)
                    condition.getClass().getMethod("holds", Function.class).invoke(condition, cells);
        } catch (InvocationTargetException thrown) {
            throw thrown.getCause();
        }
    }

    @Test
    void whatCanBeComparedIsCompared() throws Throwable {
        assertThat(holds("rank <= '7' AND spare = 'false' AND duct LIKE 'B%'")).isTrue();
        assertThat(holds("rank > 7.5 OR spare = true OR duct > 'C'")).isFalse();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"rank = 'seven'", "rank BETWEEN 'a' AND 3", "spare = 'maybe'", "rank > duct", "duct * 2 > 3"})
    void aTextThatIsNoNumberIsRefusedByAMessage(String text) {
        assertThat(catchThrowable(() -> holds(text)))
                .isNotNull()
                .satisfies(thrown ->
                        assertThat(thrown.getClass().getName()).isEqualTo("org.spanroom.finding.UsageException"))
                .hasMessageStartingWith("--where");
    }
}
