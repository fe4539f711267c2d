package org.spanroom.input.proposal;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.spanroom.config.ValueWords;
import org.spanroom.model.Term;

/** What the values of text fields are usually like, in the languages of {@link Vocabulary}. Common practice, no source. */
final class ValueVocabulary {
    private static final double MOST_SHARE = 0.8;
    private static final int MOST_WORDS = 8;

    private static final Set<String> MATERIALS = words("""
            pvc pvcu upvc hdpe pehd mdpe pe pp pe100 pe80 abs vcp vc vitc vitrified clay brick brk br concrete conc rcp rc cp cip \
            pcc rfc ac asbestos cement fibre fiber steel stl cs galvanized csp cmp corrugated iron ci di dip plastic polyethylene \
            polyvinyl chloride bituminized orangeburg creosoted wood transite grp frp fiberglass glass reinforced unk unknown \
            beton gres fonte acier amiante ciment plastique steinzeug stz stb stahl stahlbeton kunststoff guss gg ggg asbestzement az \
            gfk ton mauerwerk hormigon gres acero fundicion fibrocemento plastico polietileno barro gresbuis staal gietijzer \
            asbestcement kunststof gewapend metselwerk polyester high density""");

    private static final Set<String> CONDITIONS = words("""
            sound good ok fair poor bad excellent average intact oval deformed damaged collapsed crushed blocked obstructed broken new \
            worn serviceable unknown unk bon mauvais moyen neuf gut mittel schlecht mangelhaft bueno malo regular goed matig slecht""");

    private static final Set<String> SHAPES = words("""
            round circular circle cir circ square rectangular rect rectangle egg oval ellipse elliptical arch horseshoe oblong box \
            kreis rund kreisprofil ei eiprofil rechteck quadrat circulaire ovoide rectangulaire circular ovalado cuadrado rond \
            eivormig rechthoekig vierkant closed unk unknown""");

    private final Map<String, Predicate<String>> understood;

    ValueVocabulary(ValueWords words) {
        Set<String> yesNo =
                Stream.of(words.yes(), words.no()).flatMap(List::stream).collect(Collectors.toSet());
        Set<String> wet = Stream.of(words.flooded(), words.notFlooded())
                .flatMap(List::stream)
                .collect(Collectors.toSet());
        Set<String> service = Stream.of(words.live(), words.dead(), words.serviceUnknown())
                .flatMap(List::stream)
                .collect(Collectors.toSet());
        Set<String> condition = Stream.of(
                        words.sound(), words.oval(), words.collapsed(), words.blocked(), words.serviceUnknown())
                .flatMap(List::stream)
                .collect(Collectors.toSet());
        Set<String> shape = Stream.of(words.roundBore(), words.squareBore())
                .flatMap(List::stream)
                .collect(Collectors.toSet());
        this.understood = Map.of(
                "flag", yesNo::contains,
                "wet", wet::contains,
                "service", service::contains,
                "condition", condition::contains,
                "shape", shape::contains);
    }

    private static Set<String> words(String text) {
        return Set.copyOf(Stream.of(text.strip().split("\\s+", -1)).distinct().toList());
    }

    /** Returns whether most values are words for the term; for terms whose values may be anything, that they are no numbers. */
    boolean fits(Term term, SeenField field) {
        return switch (term) {
            case DUCT_MATERIAL -> share(field, MATERIALS) >= MOST_SHARE;
            case CONDITION -> share(field, CONDITIONS) >= MOST_SHARE;
            case BORE_SHAPE -> share(field, SHAPES) >= MOST_SHARE;
            default -> !field.isWhole() && !field.hasDecimals();
        };
    }

    /** Returns whether most values say the material, the condition or the shape, so that the name need not. */
    boolean suggests(Term term, SeenField field) {
        Set<String> unsaid = Set.of("unk", "unknown");
        boolean says = field.textShare(text -> !unsaid.contains(ValueWords.fold(text))) >= MOST_SHARE / 2;
        return says && term == Term.DUCT_MATERIAL && fits(term, field);
    }

    private static double share(SeenField field, Set<String> vocabulary) {
        return field.textShare(text -> {
            List<String> words = Stream.of(Vocabulary.fold(text).split("[^\\p{L}\\p{N}]+", -1))
                    .filter(word -> !word.isEmpty() && !word.matches("\\p{N}+"))
                    .toList();
            long known = words.stream().filter(vocabulary::contains).count();
            return known > 0 && 2 * known >= words.size();
        });
    }

    /** Returns the first values that the words of the config give no meaning. */
    List<String> notUnderstood(Term term, SeenField field) {
        return understood(term)
                .map(known -> field.texts().stream()
                        .filter(text -> !known.test(ValueWords.fold(text)))
                        .limit(MOST_WORDS)
                        .toList())
                .orElse(List.of());
    }

    /** Returns the share of values that the words of the config give a meaning; 1 for terms that need none. */
    double understoodShare(Term term, SeenField field) {
        return understood(term)
                .map(known -> field.textShare(text -> known.test(ValueWords.fold(text))))
                .orElse(1.0);
    }

    private Optional<Predicate<String>> understood(Term term) {
        String list = switch (term) {
            case FLOODED -> "wet";
            case IN_SERVICE -> "service";
            case CONDITION -> "condition";
            case BORE_SHAPE -> "shape";
            default -> term.kind() == Term.Kind.FLAG ? "flag" : "";
        };
        return Optional.ofNullable(understood.get(list));
    }
}
