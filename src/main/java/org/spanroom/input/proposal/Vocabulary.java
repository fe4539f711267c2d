package org.spanroom.input.proposal;

import java.text.Normalizer;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.spanroom.model.Unit;

/**
 * Words that fields are called by, in English, French, German, Spanish and Dutch with the abbreviations of city layers, each with the concept
 * that it means. Common practice, no source. Words are folded: lower case, without accents, ss for sharp s.
 */
final class Vocabulary {
    /** A concept, then the words for it. A word occurs once; what a word means in a name is decided by the words beside it. */
    private static final String CONCEPTS = """
            id: id ids uid guid uuid identifier identifiant ident key kennung schluessel schlussel clave identificador sleutel
            number: number num no nr nbr numero nummer nombre nro
            name: name nom naam bezeichnung bez title label tag ref reference
            code: code codigo kode
            asset: asset assets facility fac feature object infrastructure compkey comp element unit
            from: from frm start begin beginning upstream us up ups upst upstr upstrm upper source amont debut depart origine von anfang \
            beginn oben oberhalb inicio inicial desde origen arriba aguasarriba van bovenstrooms boven beg
            to: to end stop downstream ds down dwn dwnst dnst downstr downstrm dwnstrm dnstrm lower destination dest target aval fin arrivee bis nach \
            ende unten unterhalb hasta hacia final destino abajo aguasabajo naar tot eind einde benedenstrooms beneden
            dn: dn
            vault: vault manhole manholes mh mhs handhole hh node nodes chamber pit junction struct structure mainthole pullbox \
            regard regards chambre puits noeud schacht schaechte schachte knoten kabelschacht pozo pozos arqueta camara nodo put \
            putten rioolput knoop knooppunt kamer inspectieput
            route: route segment seg link line span tramo linea ligne troncon haltung leitung leitungs strang trasse leiding streng traject
            duct: duct ducts conduit conduits ducto conducto canalizacion fourreau gaine leerrohr schutzrohr mantelbuis kabelbuis
            pipe: pipe pipes main mains tube tubo tuberia conduite canalisation tuyau rohr rohre buis pijp culvert sewer kanal riool
            bank: bank ductbank rohrblock block bloc banco bloque
            innerduct: innerduct innerducts subduct subducts innerpipe innerd sousfourreau soustube innenrohr innenrohre subrohr \
            unterrohr subconducto subducto binnenbuis microduct
            cable: cable cables cbl kabel kabels
            inside: inside inner internal interieur interne innen interior interno inwendig inwendige binnen
            outside: outside outer external od exterieur externe aussen ausser exterior externo uitwendig uitwendige buiten
            diameter: diameter dia diam diamtr diamet durchmesser diametre diametro nennweite middellijn doorsnede
            size: size taille grosse groesse tamano maat afmeting
            width: width breite largeur ancho breedte wid
            material: material mat matl mtl mater materiau matiere werkstoff materiaal pipemat
            owner: owner owned ownedby ownership proprietaire proprio eigentumer eigentuemer besitzer propietario titular eigenaar
            provider: provider organisation organization
            supplier: supplier fournisseur lieferant proveedor leverancier
            physical: physical
            condition: condition cond etat zustand estado toestand staat
            status: status statut stat lifecycle
            year: year yr annee jahr ano anio jaar jr baujahr bouwjaar einbaujahr aanlegjaar
            install: install installed installation instal inst built build construction constructed constr const laid pose mise bau \
            einbau verlegung verlegt instalacion construccion aanleg gelegd bouw geplaatst
            date: date datum fecha dat time timestamp
            length: length len lng lgth longueur longitud lange laenge lengte
            measured: measured meas recorded mesuree gemessen medida gemeten
            elevation: elevation elev elv altitude cote hohe hoehe elevacion cota hoogte altura
            rim: rim lid cover deckel deksel tapa tampon ground grnd gelande gelaende maaiveld terrain terreno top
            invert: invert inv radier sohle sohl sohlhohe solera rasante bodem bob binnenonderkant
            surface: surface pavement paving revetement belag oberflache oberflaeche pavimento verharding wegdek
            type: type typ tipo art soort kind category categorie class klasse subtype
            shape: shape shp forme form forma vorm profil profile
            geometry: geom geometry geometrie geometria st
            cross: cross section querschnitt
            count: count cnt qty quantity anzahl nb cantidad cant aantal
            volume: volume vol volumen inhoud
            wall: wall thickness epaisseur wand starke staerke espesor dikte paroi pared wanddikte wandstarke wandstaerke
            sdr: sdr
            mass: mass weight gewicht masse poids peso masa massa
            service: service svc betrieb servicio dienst bedrijf
            in: in en
            live: live
            water: water wet eau wasser agua
            flooded: flooded inonde geflutet inundado
            quality: quality qual accuracy qualite genauigkeit lagegenauigkeit calidad nauwkeurigheid
            position: position positions
            reserved: reserved reserviert reservado gereserveerd
            consent: consent
            loose: loose
            allowed: allowed ok
            splice: splice spliced epissure spleiss empalme
            fixed: fixed grouted
            circuit: circuit circuits
            risk: risk
            joint: joint co
            embargo: embargo
            beside: beside
            sleeve: sleeve
            may: may
            move: move movable
            hold: hold
            anchor: anchor
            slack: slack
            coil: coil
            hole: hole holes
            uncut: uncut continuous
            trade: trade nominal
            gas: gas
            found: found
            history: history hist
            power: power electric electrical
            catalog: catalog catalogue
            zone: zone area
            permit: permit
            restriction: restriction
            until: until expiry expires expire
            valid: valid
            day: day
            first: first
            last: last latest
            street: street road strasse rue calle straat address location loc ort
            depth: depth tiefe profondeur profundidad diepte dep
            slope: slope grade gradient gefalle pente pendiente helling
            distance: distance dist
            height: height hgt high
            host: host carrier
            rehab: rehab liner lining lined relined inliner renovation
            assumed: assumed derived estimated flag verified ind indicator
            user: user editor edited edit created create creator creation modified modify update updated changed lastedited
            inspection: inspection insp inspected cctv survey surveyed
            drawing: drawing dwg plan sheet plot project contract
            fiber: fibre fiber fibres fibers core cores strand strands
            capacity: capacity flow discharge velocity
            coordinate: x y z lat lon latitude longitude easting northing xcoord ycoord coord
            row: objectid fid ogc gid rowid oid globalid pk
            network: network net
            old: old previous prev legacy former
            comment: text txt desc description descr comment comments remark remarks note notes bemerkung memo
            cost: cost price value
            phase: phase
            rotation: rotation symbol angle
            calculated: gis calc calculated computed
            little: at of de del la le les du des der die das el by the d l and
            """;

    /** What may follow the last mark of a name. */
    private static final Map<String, Unit> UNITS = units("""
            in: in inch inches zoll pouce pouces pulg pulgada pulgadas duim
            mm: mm millimetre millimeter
            cm: cm
            m: m metre metres meter meters metros mtr
            ft: ft feet foot pies pieds
            ft_us: ftus usft
            km: km kilometre kilometer
            kg/m: kgm
            kg/km: kgkm
            lb/ft: lbft
            lb/1000ft: lbkft lbkf
            m3: m3 cbm
            ft3: ft3 cuft cf
            """);

    /** Glued names may hold these, though they have fewer than three letters. */
    private static final Set<String> SHORT_GLUED =
            Set.of("mh", "hh", "us", "ds", "up", "dn", "to", "id", "no", "nr", "yr", "od", "ft", "mm", "cm", "nb");

    /** Glued names may hold no word of these concepts: their words are parts of too many others. */
    private static final Set<String> NEVER_GLUED = Set.of("little", "in", "coordinate", "asset", "allowed", "may");

    private static final Map<String, String> CONCEPT_BY_WORD = concepts();
    private static final TreeSet<String> SORTED = new TreeSet<>(CONCEPT_BY_WORD.keySet());
    private static final Set<String> GLUED = glued();

    private Vocabulary() {}

    private static Map<String, String> concepts() {
        var byWord = new HashMap<String, String>();
        lists(CONCEPTS).forEach((concept, words) -> words.forEach(word -> byWord.put(word, concept)));
        byWord.put("fnode", "from");
        byWord.put("tnode", "to");
        return Map.copyOf(byWord);
    }

    private static Map<String, Unit> units(String text) {
        var byWord = new HashMap<String, Unit>();
        lists(text).forEach((symbol, words) -> {
            Unit unit = Unit.findBySymbol(symbol).orElseThrow();
            words.forEach(word -> byWord.put(word, unit));
        });
        return Map.copyOf(byWord);
    }

    private static Map<String, List<String>> lists(String text) {
        return text.lines()
                .map(line -> line.split(": ", 2))
                .collect(Collectors.toMap(
                        pair -> pair[0],
                        pair -> List.of(pair[1].strip().split("\\s+", -1)),
                        (a, b) -> a,
                        TreeMap::new));
    }

    private static Set<String> glued() {
        var words = new HashSet<String>();
        CONCEPT_BY_WORD.forEach((word, concept) -> {
            if ((word.length() > 2 && !NEVER_GLUED.contains(concept)) || SHORT_GLUED.contains(word)) {
                words.add(word);
            }
        });
        words.addAll(List.of("facility", "asset", "mm", "cm", "ft", "feet", "inch", "inches", "meters", "metres"));
        return words;
    }

    /** Returns a name in the letters that words are compared by. */
    static String fold(String text) {
        return Normalizer.normalize(text.replace("\u00df", "ss"), Normalizer.Form.NFD)
                .replaceAll("\\p{M}", "")
                .toLowerCase(Locale.ROOT);
    }

    static Optional<String> concept(String word) {
        String concept = CONCEPT_BY_WORD.get(word);
        if (concept == null && word.length() > 3 && word.endsWith("s")) {
            concept = CONCEPT_BY_WORD.get(word.substring(0, word.length() - 1));
        }
        return Optional.ofNullable(concept);
    }

    static Optional<Unit> unit(String word) {
        return Optional.ofNullable(UNITS.get(word));
    }

    static boolean isKnown(String word) {
        return concept(word).isPresent() || UNITS.containsKey(word);
    }

    static boolean mayBeGlued(String word) {
        return GLUED.contains(word);
    }

    /** Returns the concepts of all words with such a beginning. */
    static Set<String> completions(String beginning) {
        return SORTED.subSet(beginning, true, beginning + Character.MAX_VALUE, false).stream()
                .map(CONCEPT_BY_WORD::get)
                .collect(Collectors.toCollection(TreeSet::new));
    }
}
