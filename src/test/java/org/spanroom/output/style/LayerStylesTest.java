package org.spanroom.output.style;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.Schema;
import javax.xml.validation.SchemaFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.output.ResultTables;
import org.spanroom.output.columns.AnnualColumns;
import org.spanroom.output.columns.AnnualNetworkColumns;
import org.spanroom.output.columns.AnnualVaultColumns;
import org.spanroom.output.columns.ConnectColumns;
import org.spanroom.output.columns.CorridorColumns;
import org.spanroom.output.columns.MoveColumns;
import org.spanroom.output.columns.PathColumns;
import org.spanroom.output.columns.SpanLayout;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.GeometryKind;
import org.spanroom.output.table.Shape;
import org.spanroom.output.table.Table;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

class LayerStylesTest {
    private static final Pattern QUOTED = Pattern.compile("\"([^\"]+)\"");

    static Stream<Table<?>> all() {
        Stream<Table<?>> ofRun =
                ResultTables.ALL.stream().map(entry -> entry.layout().apply(SpanLayout.PLAIN));
        Stream<Table<?>> ofCommands = Stream.of(
                AnnualColumns.PROGRAM,
                AnnualVaultColumns.VAULTS,
                AnnualNetworkColumns.NEW_DUCTS,
                AnnualNetworkColumns.CONNECTIONS,
                MoveColumns.TABLE,
                CorridorColumns.CORRIDORS,
                CorridorColumns.SECTIONS,
                ConnectColumns.CONNECTIONS,
                ConnectColumns.SECTIONS,
                PathColumns.PATHS,
                PathColumns.SECTIONS,
                zones());
        return Stream.concat(ofRun, ofCommands);
    }

    static Stream<Arguments> layers() {
        return all().filter(table -> table.geometry() != GeometryKind.NONE)
                .map(table -> Arguments.of(table.name(), table));
    }

    private static Table<String> zones() {
        return Table.layer(
                "zones",
                "Zones.",
                GeometryKind.POLYGON,
                row -> Shape.EMPTY,
                List.of(
                        Column.text("kind", "kind", "Kind.", row -> row),
                        Column.text("name", "name", "Name.", row -> row)));
    }

    @Test
    void everyLayerHasAStyleAndNoOtherTable() {
        all().forEach(table -> assertEquals(
                table.geometry() != GeometryKind.NONE, LayerStyles.find(table).isPresent(), table.name()));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("layers")
    void descriptorsFollowTheSchema(String name, Table<?> table) throws Exception {
        schema().newValidator()
                .validate(new StreamSource(new StringReader(style(table).sld())));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("layers")
    void namesAreThoseOfColumns(String name, Table<?> table) throws Exception {
        Set<String> columns = names(table, Column::name);

        assertTrue(columns.containsAll(namesIn(style(table))), () -> namesIn(style(table)) + " in " + columns);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("layers")
    void namesForShapefilesAreTheShortOnes(String name, Table<?> table) throws Exception {
        LayerStyle style = LayerStyles.findForShortNames(table).orElseThrow();

        assertTrue(
                names(table, Column::shortName).containsAll(namesIn(style)),
                () -> namesIn(style).toString());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("layers")
    void everyRuleHasItsSymbol(String name, Table<?> table) throws Exception {
        Document style = parsed(style(table).qml());

        List<String> asked = attributes(style, "rule", "symbol")
                .filter(text -> !text.isEmpty())
                .toList();
        List<String> there = attributes(style, "symbol", "name")
                .filter(text -> !text.startsWith("@"))
                .toList();
        assertFalse(asked.isEmpty());
        assertEquals(asked, there);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("layers")
    void theSameLayerHasTheSameStyle(String name, Table<?> table) {
        assertEquals(style(table), style(table));
    }

    /** Ranked spans are written the best first, so the level of a class decides what lies on top. */
    @Test
    void betterRanksAreDrawnAboveOthers() {
        List<StyleRule> rules = RankLooks.sections(GeometryKind.LINE).rules();

        assertEquals(Palette.rankClasses().size(), rules.size());
        IntStream.range(1, rules.size())
                .forEach(i -> assertTrue(rules.get(i - 1).level() > rules.get(i).level()));
    }

    @Test
    void theSectionsOfCorridorsHaveAStyleOfTheirOwn() {
        Table<?> ofRun = all().filter(table -> table.name().equals("sections"))
                .findFirst()
                .orElseThrow();

        assertEquals(ofRun.name(), CorridorColumns.SECTIONS.name());
        assertNotEquals(style(ofRun), style(CorridorColumns.SECTIONS));
    }

    /** A run that was recorded before a column came into being, or without a group of columns, has a style all the same. */
    @Test
    void spansWithFewColumnsHaveAStyleWithoutTheOthers() {
        Table<String> few = Table.layer(
                "spans",
                "Spans.",
                GeometryKind.LINE,
                row -> Shape.EMPTY,
                List.of(Column.integer("rank", "rank", "Rank.", row -> 1)));

        assertEquals(Set.of("rank"), namesIn(style(few)));
    }

    @Test
    void wordsOfConditionsAreEscaped() throws Exception {
        Condition hostile = Condition.equal("kind", "O'Hara <&> \"x\"");
        var style = new MapStyle(
                "A & B",
                GeometryKind.LINE,
                List.of(StyleRule.of("<b>", hostile, 0, Symbol.Stroke.of("#000000", 1))),
                List.of());

        Document qml = parsed(QmlWriter.document(style, name -> name));
        Document sld = parsed(SldWriter.document("kinds", style, name -> name));

        assertEquals(
                List.of("\"kind\" = 'O''Hara <&> \"x\"'"),
                attributes(qml, "rule", "filter").toList());
        assertEquals(
                "O'Hara <&> \"x\"",
                sld.getElementsByTagName("ogc:Literal").item(0).getTextContent());
    }

    private static LayerStyle style(Table<?> table) {
        return LayerStyles.find(table).orElseThrow();
    }

    private static Set<String> names(Table<?> table, Function<Column<?>, String> name) {
        return table.columns().stream().map(name).collect(Collectors.toCollection(TreeSet::new));
    }

    private static Set<String> namesIn(LayerStyle style) {
        Set<String> names = new TreeSet<>();
        NodeList properties = parsed(style.sld()).getElementsByTagName("ogc:PropertyName");
        for (int i = 0; i < properties.getLength(); i++) {
            names.add(properties.item(i).getTextContent());
        }
        Document qml = parsed(style.qml());
        Stream.concat(
                        attributes(qml, "rule", "filter"),
                        elements(qml, "Option")
                                .filter(option -> option.getAttribute("name").equals("expression"))
                                .map(option -> option.getAttribute("value")))
                .forEach(text -> QUOTED.matcher(text).results().forEach(found -> names.add(found.group(1))));
        attributes(qml, "text-style", "fieldName").forEach(names::add);
        return names;
    }

    private static Stream<String> attributes(Document document, String element, String attribute) {
        return elements(document, element).map(found -> found.getAttribute(attribute));
    }

    private static Stream<Element> elements(Document document, String name) {
        NodeList found = document.getElementsByTagName(name);
        return IntStream.range(0, found.getLength()).mapToObj(i -> (Element) found.item(i));
    }

    private static Document parsed(String text) {
        try {
            var factory = DocumentBuilderFactory.newInstance();
            factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
            return factory.newDocumentBuilder().parse(new InputSource(new StringReader(text)));
        } catch (Exception failure) {
            throw new AssertionError(text, failure);
        }
    }

    private static Schema schema() throws Exception {
        return SchemaFactory.newInstance(XMLConstants.W3C_XML_SCHEMA_NS_URI)
                .newSchema(LayerStylesTest.class.getResource("/sld/used-sld-1.0.0.xsd"));
    }
}
