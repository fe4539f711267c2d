package org.spanroom.input;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.function.IntFunction;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.spanroom.config.FieldMap;
import org.spanroom.model.Term;
import org.spanroom.model.Unit;

/**
 * Draws layers of lines and vaults with the field names of a language in a naming style, with decoys, and says what each field means. Names and
 * decoys are those that city layers use; common practice, no source.
 */
final class NamedLayers {
    /** How names are written. */
    enum Style {
        UPPER_SNAKE,
        LOWER_SNAKE,
        CAMEL,
        PASCAL,
        KEBAB,
        GLUED,
        TITLE,
        PREFIXED,
        DOTTED,
        CUT;

        private String written(List<String> words) {
            String snake = String.join("_", words);
            String pascal = words.stream().map(Style::capital).collect(Collectors.joining());
            return switch (this) {
                case UPPER_SNAKE -> snake.toUpperCase(Locale.ROOT);
                case LOWER_SNAKE -> snake;
                case CAMEL -> pascal.substring(0, 1).toLowerCase(Locale.ROOT) + pascal.substring(1);
                case PASCAL -> pascal;
                case KEBAB -> String.join("-", words);
                case GLUED -> String.join("", words).toUpperCase(Locale.ROOT);
                case TITLE -> words.stream().map(Style::capital).collect(Collectors.joining(" "));
                case PREFIXED -> "qv_" + snake;
                case DOTTED -> "properties.attrs." + String.join(".", words);
                case CUT -> snake.substring(0, Math.min(10, snake.length())).toUpperCase(Locale.ROOT);
            };
        }

        private static String capital(String word) {
            return word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1);
        }
    }

    /** Words for each of our terms, in one language; several names for one term are drawn from. */
    enum Language {
        ENGLISH(
                "ROUTE=facility id|asset id|segment id|line id",
                "VAULT_A=from mh|us mh|upstream node id|mh from|from manhole|start node",
                "VAULT_B=to mh|ds mh|downstream node id|mh to|to manhole|end node",
                "INSIDE_DIAMETER=diameter|inside diameter|pipe diameter|diam",
                "DUCT_MATERIAL=material|pipe material|matl",
                "OWNER=owner|owned by",
                "YEAR=install year|year built|yr inst",
                "RECORDED_LENGTH=length|recorded length|pipe length",
                "CONDITION=condition|cond",
                "INNERDUCT_COUNT=innerduct count|innerducts",
                "CABLE_COUNT=cable count|num cables",
                "HOLE_A=from hole|us duct hole|upstream duct position",
                "HOLE_B=to hole|ds duct hole|downstream duct position",
                "CONTINUOUS_AT_A=from uncut|upstream continuous|us innerduct uncut",
                "CONTINUOUS_AT_B=to uncut|downstream continuous|ds innerduct uncut",
                "VAULT=manhole id|facility id|mh number|asset id",
                "VAULT_ELEVATION=rim elevation|ground elev|rim elev",
                "VAULT_KIND=manhole type|vault kind",
                "GAS_FOUND=gas found|gas history",
                "JOINT_POWER=joint power|power",
                "VAULT_INSPECTED=last inspection date|inspection date",
                "DECOYS=hole|duct position|slack|continuous|innerduct color|from inv|to invert|host material|outside diameter|last inspection year|street name|slope"),
        FRENCH(
                "ROUTE=id troncon|numero conduite|id canalisation",
                "VAULT_A=regard amont|noeud debut|id regard amont",
                "VAULT_B=regard aval|noeud fin|id regard aval",
                "INSIDE_DIAMETER=diametre|diametre interieur",
                "DUCT_MATERIAL=materiau|mat\u00e9riau",
                "OWNER=proprietaire|propri\u00e9taire",
                "YEAR=annee pose|ann\u00e9e|annee construction",
                "RECORDED_LENGTH=longueur|longueur mesuree",
                "CONDITION=etat",
                "INNERDUCT_COUNT=nb sousfourreau",
                "CABLE_COUNT=nb cables",
                "VAULT=id regard|numero chambre|code regard",
                "VAULT_ELEVATION=cote tampon|altitude tampon",
                "VAULT_KIND=type regard|type chambre",
                "DECOYS=radier amont|radier aval|rue|pente|profondeur|date pose"),
        GERMAN(
                "ROUTE=haltung id|leitung nr|strang nr",
                "VAULT_A=schacht von|von schacht|schacht oben|anfang knoten",
                "VAULT_B=schacht bis|bis schacht|schacht unten|ende knoten",
                "INSIDE_DIAMETER=innen durchmesser|durchmesser|nennweite",
                "DUCT_MATERIAL=material|werkstoff|rohr material",
                "OWNER=eigentuemer|besitzer",
                "YEAR=baujahr|jahr einbau|einbau jahr",
                "RECORDED_LENGTH=laenge|l\u00e4nge|laenge gemessen",
                "CONDITION=zustand",
                "INNERDUCT_COUNT=anzahl innenrohre",
                "CABLE_COUNT=anzahl kabel",
                "VAULT=schacht nr|schacht id|schacht nummer",
                "VAULT_ELEVATION=deckel hoehe|gelaende hoehe",
                "VAULT_KIND=schacht art|schacht typ",
                "DECOYS=sohle oben|sohlhohe unten|strasse|gefalle|tiefe|inspektion jahr"),
        SPANISH(
                "ROUTE=id tramo|codigo tramo|id linea",
                "VAULT_A=pozo inicio|nodo inicial|pozo desde|pozo aguas arriba",
                "VAULT_B=pozo final|nodo final|pozo hasta|pozo aguas abajo",
                "INSIDE_DIAMETER=diametro|diametro interior|di\u00e1metro",
                "DUCT_MATERIAL=material",
                "OWNER=propietario|titular",
                "YEAR=a\u00f1o|ano instalacion|a\u00f1o construccion",
                "RECORDED_LENGTH=longitud|longitud medida",
                "CONDITION=estado",
                "INNERDUCT_COUNT=cantidad subducto",
                "CABLE_COUNT=cantidad cables",
                "VAULT=id pozo|numero arqueta|codigo pozo",
                "VAULT_ELEVATION=cota tapa|cota terreno",
                "VAULT_KIND=tipo pozo|tipo arqueta",
                "DECOYS=cota solera inicio|solera final|calle|pendiente|profundidad|fecha alta"),
        DUTCH(
                "ROUTE=leiding id|streng nummer|id leiding",
                "VAULT_A=put van|van put|begin put|knoop van",
                "VAULT_B=put naar|put tot|eind put|knoop naar",
                "INSIDE_DIAMETER=diameter|inwendige diameter|buis diameter",
                "DUCT_MATERIAL=materiaal|buis materiaal",
                "OWNER=eigenaar",
                "YEAR=bouwjaar|jaar aanleg|aanlegjaar",
                "RECORDED_LENGTH=lengte|lengte gemeten",
                "CONDITION=toestand|staat",
                "INNERDUCT_COUNT=aantal binnenbuis",
                "CABLE_COUNT=aantal kabels",
                "VAULT=put nummer|put id|put code",
                "VAULT_ELEVATION=hoogte deksel|maaiveld hoogte",
                "VAULT_KIND=put type|put soort",
                "DECOYS=bob begin|bob eind|straat|helling|diepte|inspectie jaar");

        private final String entries;

        Language(String... entries) {
            this.entries = String.join(", ", entries);
        }

        private Map<String, List<String>> names() {
            var names = new LinkedHashMap<String, List<String>>();
            for (String entry : entries.split(", ", -1)) {
                String[] both = entry.split("=", 2);
                names.put(both[0], List.of(both[1].split("\\|", -1)));
            }
            return names;
        }
    }

    private static final List<String> EXPORT_DECOYS =
            List.of("objectid", "global id", "shape length", "install date", "last edited date", "fiber count");
    private static final int LINES = 120;

    final FakeLayer lines;
    final FakeLayer points;
    final Map<String, Term> meaning = new LinkedHashMap<>();
    final Map<String, Term> vaultMeaning = new LinkedHashMap<>();
    final Unit diameterUnit;
    final Unit lengthUnit;
    private final Random random;

    /** A field: its name, and what it holds for line or vault number n. */
    private record Column(String name, IntFunction<@Nullable Object> value) {}

    NamedLayers(Language language, Style style, long seed) {
        random = new Random(seed);
        diameterUnit = List.of(Unit.IN, Unit.MM, Unit.M).get(random.nextInt(3));
        lengthUnit = List.of(Unit.M, Unit.FT).get(random.nextInt(2));
        var columns = new ArrayList<Column>();
        var vaultColumns = new ArrayList<Column>();
        var used = new HashSet<String>();
        var vaultUsed = new HashSet<String>();
        language.names().forEach((key, names) -> {
            if (key.equals("DECOYS")) {
                names.forEach(name -> columns.add(new Column(unlike(style, name, used), decoy(name))));
                return;
            }
            Term term = Term.valueOf(key);
            boolean ofVault = FieldMap.VAULT_TERMS.contains(term);
            String name = names.get(random.nextInt(names.size()));
            String written = unlike(style, name, ofVault ? vaultUsed : used);
            (ofVault ? vaultMeaning : meaning).put(written, term);
            (ofVault ? vaultColumns : columns).add(new Column(written, ofVault ? vaultValue(term) : value(term)));
        });
        EXPORT_DECOYS.forEach(name -> columns.add(new Column(unlike(style, name, used), decoy(name))));
        EXPORT_DECOYS
                .subList(0, 2)
                .forEach(name -> vaultColumns.add(new Column(unlike(style, name, vaultUsed), decoy(name))));
        Collections.shuffle(columns, random);
        lines = new FakeLayer("OGC:CRS84", names(columns)).named("lines.geojson");
        points = new FakeLayer("OGC:CRS84", names(vaultColumns)).named("points.geojson");
        for (int n = 0; n < LINES; n++) {
            lines.line(new double[] {lon(n), lat(n), lon(n + 1), lat(n + 1)}, row(columns, n));
            // Every seventh vault is of another layer, so that not all ids resolve.
            if (n % 7 != 3) {
                points.point(lon(n), lat(n), row(vaultColumns, n));
            }
        }
    }

    private static String[] names(List<Column> columns) {
        return columns.stream().map(Column::name).toArray(String[]::new);
    }

    private static @Nullable Object[] row(List<Column> columns, int n) {
        return columns.stream().map(column -> column.value().apply(n)).toArray();
    }

    /** Names that are cut to the same get a number, as Shapefile writers give. */
    private static String unlike(Style style, String name, Set<String> used) {
        String written = style.written(List.of(name.split(" ", -1)));
        UnaryOperator<String> numbered = base -> {
            for (int n = 1; ; n++) {
                String other = base.substring(0, Math.min(8, base.length())) + "_" + n;
                if (!used.contains(other)) {
                    return other;
                }
            }
        };
        String own = used.contains(written) ? numbered.apply(written) : written;
        used.add(own);
        return own;
    }

    private static double lon(int n) {
        return 5 + (n % 12) * 0.0011 + Math.floorDiv(n, 12) * 0.00003;
    }

    private static double lat(int n) {
        return 47 + Math.floorDiv(n, 12) * 0.0008 + (n % 12) * 0.00002;
    }

    private static double metres(int n) {
        double north = (lat(n + 1) - lat(n)) * 111_170;
        double east = (lon(n + 1) - lon(n)) * 76_050;
        return Math.hypot(north, east);
    }

    private IntFunction<@Nullable Object> value(Term term) {
        return switch (term) {
            case ROUTE -> n -> "L" + (5000 + n);
            case VAULT_A -> n -> "K" + (100 + n);
            case VAULT_B -> n -> "K" + (101 + n);
            case INSIDE_DIAMETER -> n -> diameter(List.of(4, 6, 8, 12, 4, 6).get(random.nextInt(6)));
            case DUCT_MATERIAL -> n -> List.of("PVC", "HDPE", "Beton", "VCP").get(random.nextInt(4));
            case OWNER -> n -> List.of("City", "Tramway Board").get(random.nextInt(2));
            case YEAR -> n -> (long) (1950 + random.nextInt(70));
            case HOLE_A, HOLE_B -> n -> n % 3 == 0 ? n % 4 + "/" + n % 3 : Integer.toString(n % 12);
            case CONTINUOUS_AT_A, CONTINUOUS_AT_B -> n -> List.of("yes", "no").get(n % 2);
            case CONDITION -> n -> List.of("good", "fair", "poor").get(random.nextInt(3));
            case RECORDED_LENGTH -> n -> Math.round(metres(n) / lengthUnit.toSi(1) * 10) / 10.0;
            default -> n -> (long) random.nextInt(4);
        };
    }

    private Object diameter(int inches) {
        return switch (diameterUnit) {
            case IN -> (long) inches;
            case MM -> inches * 25L;
            default -> inches * 0.0254;
        };
    }

    private IntFunction<@Nullable Object> vaultValue(Term term) {
        return switch (term) {
            case VAULT -> n -> "K" + (100 + n);
            case VAULT_ELEVATION -> n -> 210 + random.nextInt(3000) / 100.0;
            case GAS_FOUND, JOINT_POWER -> n -> List.of("yes", "no", "N").get(random.nextInt(3));
            case VAULT_INSPECTED -> n -> "20%02d-0%d-1%d".formatted(18 + n % 8, 1 + n % 9, n % 10);
            default -> n -> List.of("manhole", "handhole").get(random.nextInt(2));
        };
    }

    private IntFunction<@Nullable Object> decoy(String name) {
        if (name.equals("objectid")) {
            return n -> (long) (n + 1);
        }
        if (name.equals("global id")) {
            return n -> String.format(Locale.ROOT, "{%08X-00AA-4C01-8B77-%012X}", n * 7919, n);
        }
        if (name.equals("shape length")) {
            return NamedLayers::metres;
        }
        if (name.equals("fiber count")) {
            return n -> 144L;
        }
        if (Stream.of("date", "fecha").anyMatch(name::contains)) {
            return n -> 915_148_800_000L + n * 86_400_000L;
        }
        if (Stream.of("year", "jahr", "jaar").anyMatch(name::contains)) {
            return n -> 2015L + n % 8;
        }
        if (Stream.of("street", "rue", "strasse", "calle", "straat").anyMatch(name::contains)) {
            return n -> "Street " + n / 12;
        }
        if (name.equals("hole") || name.equals("duct position")) {
            return n -> n % 9;
        }
        if (name.equals("continuous")) {
            return n -> "yes";
        }
        if (name.equals("innerduct color")) {
            return n -> "orange";
        }
        if (name.contains("material")) {
            return n -> "PVC";
        }
        return n -> 205 - n * 0.11;
    }

    /** Returns the unit that is right for a term; empty for terms without one. */
    Optional<Unit> unit(Term term) {
        return switch (term) {
            case INSIDE_DIAMETER -> Optional.of(diameterUnit);
            case RECORDED_LENGTH -> Optional.of(lengthUnit);
            case VAULT_ELEVATION -> Optional.of(lengthUnit);
            default -> Optional.empty();
        };
    }
}
