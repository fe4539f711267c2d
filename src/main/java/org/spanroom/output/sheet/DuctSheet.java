package org.spanroom.output.sheet;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.spanroom.model.effort.Effort;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Service;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.network.Vault;
import org.spanroom.model.pull.InnerductPull;
import org.spanroom.model.pull.PullLimits;
import org.spanroom.output.explain.Explanation;
import org.spanroom.output.explain.ExplanationSection;

/**
 * What the pages of one duct are made from.
 *
 * @param explanation the tree of {@code explain}, whose words the pages repeat
 * @param names those of the duct that did not fit
 */
record DuctSheet(SheetBook book, SectionWork section, DuctWork work, ExplanationSection explanation, SheetNames names) {
    static DuctSheet of(SheetBook book, SectionWork section, DuctWork work) {
        return new DuctSheet(book, section, work, Explanation.of(work.explained(), book.units()), new SheetNames());
    }

    SheetUnits units() {
        return book.in();
    }

    Span span() {
        return work.span();
    }

    PullLimits limits() {
        return work.explained().pulling().limits();
    }

    List<InnerductPull> pulls() {
        return work.explained().assessment().pull().pulls();
    }

    Optional<Effort> effort() {
        return work.explained().assessment().effort();
    }

    List<Cable> cables() {
        return span().duct().contents().cables();
    }

    /** Returns the cables that carry traffic, or of which that is not known. */
    List<Cable> liveCables() {
        return cables().stream().filter(DuctSheet::isLive).toList();
    }

    static boolean isLive(Cable cable) {
        return cable.service() != Service.DEAD;
    }

    SpanEnd pullingEnd() {
        return work.pullingEnd();
    }

    Vault pullingVault() {
        return pullingEnd().vaultOf(span());
    }

    Vault holdingVault() {
        return pullingEnd().opposite().vaultOf(span());
    }

    /** Returns a word of the calculation, as {@code explain} shows it. */
    String words(String path) {
        return explanation.words(path);
    }

    /** Returns a key of a fixed list as people read it. */
    static String spaced(Enum<?> key) {
        return key.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
