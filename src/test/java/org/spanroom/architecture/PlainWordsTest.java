package org.spanroom.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Keeps all texts in plain American engineering English: the words below are correct, but read as if translated. Checked are the
 * string literals and comments of the program, its configs, the pages, and the scripts; the data dictionary is generated from these.
 */
class PlainWordsTest {
    /** A pattern that must not occur, and what to write instead. */
    private record Rule(Pattern pattern, String instead) {
        static Rule of(String regex, String instead) {
            return new Rule(Pattern.compile(regex, Pattern.CASE_INSENSITIVE), instead);
        }
    }

    /** Words are spelled with a class of one letter, so that a search for them does not find this list. */
    private static final List<Rule> RULES = List.of(
            Rule.of("\\breck[o]n\\w*", "calculate"),
            Rule.of("\\bwork(s|ed|ing)? (it )?out\\b", "calculate"),
            Rule.of("\\bm[e]nd(s|ed|er|ing)?\\b", "fix, repair"),
            Rule.of("\\b(is|are|be|been|was|were) t[o]ld\\b|\\bt[o]ld of\\b", "is reported"),
            Rule.of("\\ban[e]w\\b", "again"),
            Rule.of("\\b(no[b]ody|who(so)?[e]ver)\\b", "name the person or the thing"),
            Rule.of("\\b(like[w]ise|beside[s])\\b", "also"),
            Rule.of("\\bfor want of\\b", "because no ... is recorded"),
            Rule.of("\\b(goes|go|went) by\\b", "is based on"),
            Rule.of("\\bits own account\\b", "by itself"),
            Rule.of("\\bin the place of\\b", "instead of, replaces"),
            Rule.of("\\balike\\b", "the same, similar"),
            Rule.of("\\bmakes? of (it|them|that|this)\\b", "uses"),
            Rule.of("\\b(lies? in|belongs? to|in) n[o] (span|section|duct)s?\\b", "is not assigned to a span"),
            Rule.of("\\bstands? in (where|for)\\b", "is used, replaces"),
            Rule.of("\\b(rules?|reasons?|rates?) (that )?holds?\\b", "applies"),
            Rule.of("\\ban? (cable|duct|position|place|span|vault|meter|line) more\\b", "an additional ..."),
            Rule.of("\\ba place for a cable\\b", "cable position"),
            Rule.of("(?<!such )\\bas \\d{4}-\\d\\d-\\d\\d", "e.g. 2027-03-31"),
            Rule.of("\\bday that the run is made for\\b", "run date"),
            Rule.of("\\b[a-z]{2,}\\(s\\)(?!\\w)", "1 zone, 2 zones (Counted)"),
            Rule.of("\\bmakers? not named\\b", "title and number of the document"),
            Rule.of("\\bdrawings? of (the )?rates\\b", "draws of the rates"),
            Rule.of("\\bstands? elsewhere\\b", "changed, moved"),
            Rule.of("\\b(degrees|drawn|bends|spans) in all\\b", "in total"),
            Rule.of("\\bbears? in mind\\b", "cautions"),
            Rule.of("\\bhow sure\\b", "how certain"),
            Rule.of("\\bmake a whole run\\b", "run rank on the inputs"),
            Rule.of("\\b(positions|bends|meters|money|hours|units?|dollars) an? (hour|meter|span|foot|unit)\\b", "per"),
            Rule.of("\\bas (it|they|these|those) (is|are) pulled\\b", "during the pull"),
            Rule.of("\\bstands? in(?=[.;,\\n])", "is used, is assumed"),
            // American spelling; names of licenses, standards and documents keep theirs.
            Rule.of("\\bfib(?:res?\\b(?! data))", "fiber"),
            Rule.of("(?<!\")\\b(centi|milli|kilo)?metres?\\b", "meter"),
            Rule.of("\\b(colour|behaviour|neighbour|labour)\\w*", "-or"),
            Rule.of("\\b(centre|litre)s?\\b", "-er"),
            Rule.of("(?<!Power Cables )\\bcatalogue\\b|\\b(grey|draughts\\w+)\\b", "catalog, gray, drafts-"),
            Rule.of("\\b(organis|recognis|normalis|summaris|initialis|generalis|optimis)(e|ed|es|ing)\\b", "-ize"));

    /** Words that users write must be recognized in every spelling. */
    private static final List<String> VOCABULARIES =
            List.of("Vocabulary.java", "ValueVocabulary.java", "NamedRows.java");

    static Stream<Path> javaFiles() throws IOException {
        return below(Path.of("src/main/java"), ".java");
    }

    static Stream<Path> textFiles() throws IOException {
        return Stream.of(
                        Stream.of(Path.of("README.md"), Path.of("DEVELOPERS.md"), Path.of("sample-gis/README.md")),
                        below(Path.of("config"), ".yaml"),
                        below(Path.of("src/bench"), ".sh"),
                        below(Path.of("src/main/resources"), ".mustache"),
                        below(Path.of("src/main/resources"), ".js"),
                        below(Path.of("src/site/markdown"), ".md").filter(file -> !file.endsWith("data-dictionary.md")))
                .flatMap(files -> files);
    }

    private static Stream<Path> below(Path folder, String ending) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(file -> file.toString().endsWith(ending)).sorted().toList().stream();
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("javaFiles")
    void textsAndCommentsOfTheProgramAreInPlainWords(Path file) throws IOException {
        if (VOCABULARIES.contains(file.getFileName().toString())) {
            return;
        }
        String source = Files.readString(file);
        demandPlain(file, JavaTexts.of(source));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("textFiles")
    void configsPagesAndScriptsAreInPlainWords(Path file) throws IOException {
        demandPlain(file, Files.readString(file));
    }

    private static void demandPlain(Path file, String text) {
        String name = file.toString().replace('\\', '/');
        assertThat(hits(text)).as("words of %s", name).isEmpty();
    }

    /** Returns line, word and what to write instead, of every hit. */
    private static List<String> hits(String text) {
        var hits = new ArrayList<String>();
        for (Rule rule : RULES) {
            Matcher matcher = rule.pattern().matcher(text);
            while (matcher.find()) {
                long line = 1
                        + text.substring(0, matcher.start())
                                .chars()
                                .filter(c -> c == '\n')
                                .count();
                hits.add("line " + line + ": '" + matcher.group() + "', write: " + rule.instead());
            }
        }
        return hits;
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    We reck_on the force.            | reck_on
                    The length is worked out.        | worked out
                    M_end the file.                  | M_end
                    N_obody knows, who_ever asks.    | who_ever
                    Like_wise the vaults             | Like_wise
                    The crew is to_ld.               | is to_ld
                    calculated an_ew                 | an_ew
                    Both ends are alike.             | alike
                    It lies in_ no span.             | lies in_ no span
                    It belongs to_ no section.       | belongs to_ no section
                    A place for a_ cable more        | a_ cable more
                    write it as 2027-03-31           | as 2027-03-31
                    3 zone(s)                        | zone(s)
                    144 fibres                       | fibres
                    0.5 metres                       | metres
                    for want of a bore               | for want of
                    by drawings of the rates         | drawings of the rates
                    It stands elsewhere.             | stands elsewhere
                    180 degrees in all               | degrees in all
                    What to bear in mind             | bear in mind
                    How sure a rank is               | How sure
                    It gains most positions an hour. | positions an hour
                    42.2 mm stands in; report it.    | stands in
                    """)
    void eachKindOfWordIsFound(String text, String word) {
        assertThat(hits(plain(text))).anyMatch(hit -> hit.contains("'" + plain(word) + "'"));
    }

    /** Samples are written with underscores, for the same reason as the rules. */
    private static String plain(String sample) {
        return sample.replace("_", "");
    }

    @ParameterizedTest
    @CsvSource({
        "I recommend amending it.",
        "a date such as 2027-03-31",
        "an Open Fibre Data Standard file",
        "beside the duct",
        "net working outside",
        "1 zone and 2 zones"
    })
    void plainWordsAreNotFound(String text) {
        assertThat(hits(text)).isEmpty();
    }

    /** Codes and identifiers are no texts; comments and literals of every kind are. */
    @Test
    void textsOfJavaAreItsLiteralsAndComments() {
        String source = """
                /** One. */
                class Two { // Three
                    String four = "five \\" six"; char seven = '"'; /* eight */
                    String nine = \"""
                        ten
                        \""";
                }
                """;

        String texts = JavaTexts.of(source);

        assertThat(texts)
                .contains("One", "Three", "five", "six", "eight", "ten")
                .doesNotContain("Two", "seven", "nine");
        assertThat(texts.lines().count()).isEqualTo(source.lines().count());
    }
}
