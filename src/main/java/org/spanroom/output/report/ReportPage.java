package org.spanroom.output.report;

import com.github.mustachejava.DefaultMustacheFactory;
import com.github.mustachejava.Mustache;
import com.github.mustachejava.MustacheException;
import java.io.IOException;
import java.io.StringReader;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The page: one HTML file with its styles, scripts and data in it. Its policy lets it run these scripts only and load nothing, except for
 * map tiles from the place that the user named.
 */
public final class ReportPage {
    private final PageTexts texts;
    private final Optional<TileSource> tiles;

    /**
     * Prepares a page.
     *
     * @param tiles where the user wants map tiles to come from; none for a page without requests
     */
    public ReportPage(PageTexts texts, Optional<TileSource> tiles) {
        this.texts = texts;
        this.tiles = tiles;
    }

    /**
     * Writes the page.
     *
     * @param chunks its data
     */
    public void write(Writer out, List<Chunk> chunks) throws IOException {
        List<String> scripts = PageParts.scripts();
        Map<String, Object> model = new LinkedHashMap<>();
        model.put("csp", policy(scripts));
        model.put("styles", PageParts.styles());
        model.put("scripts", scripts);
        model.put("chunks", chunks);
        model.put("tiles", tiles.map(TileSource::template).orElse(""));
        putTexts(model);
        Mustache template = new DefaultMustacheFactory().compile(new StringReader(PageParts.template()), "page");
        try {
            template.execute(out, model).flush();
        } catch (MustacheException failure) {
            throw unwritten(failure).orElseThrow(() -> failure);
        }
    }

    /** The library wraps what the file's own writer throws, at times more than once. */
    private static Optional<IOException> unwritten(Throwable failure) {
        for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
            if (cause instanceof IOException found) {
                return Optional.of(found);
            }
        }
        return Optional.empty();
    }

    private void putTexts(Map<String, Object> model) {
        model.put("title", texts.title());
        model.put("runFolder", texts.runFolder());
        model.put("madeAt", texts.madeAt());
        model.put("version", texts.version());
        model.put("headline", texts.headline());
        model.put("statements", texts.statements());
        model.put("cautions", texts.cautions());
        model.put("first", texts.first());
        model.put("firstNote", texts.firstNote());
        model.put("uncertain", texts.uncertain());
        model.put("program", new ArrayList<>(texts.program().stream().toList()));
        model.put("record", texts.record());
        model.put("inputs", texts.inputs());
        model.put("rates", texts.rates());
        model.put("assumptions", texts.assumptions());
        model.put("findings", texts.findings());
        model.put("safety", texts.safety());
    }

    private String policy(List<String> scripts) {
        var policy = new StringBuilder("default-src 'none'; script-src");
        for (String script : scripts) {
            policy.append(" 'sha256-").append(sha256(script)).append('\'');
        }
        policy.append("; style-src 'unsafe-inline'; img-src data: blob:");
        tiles.ifPresent(source -> policy.append(' ').append(source.origin()));
        return policy.append("; base-uri 'none'; form-action 'none'").toString();
    }

    /** A browser hashes a script as UTF-8, without the element around it. */
    private static String sha256(String script) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(script.getBytes(StandardCharsets.UTF_8));
            return Base64.getEncoder().encodeToString(digest);
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException(impossible);
        }
    }
}
