package org.spanroom.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.Executor;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.model.effort.Rate;
import org.spanroom.model.effort.RateOverride;

/** Checks the code against the map of packages, the libraries that each room may use, and units in names. */
class ArchitectureTest {
    private static final String ROOT = "org.spanroom";

    private static final String MAP = """
            cli      -> pipeline config input output sample crs unpack finding model
            pipeline -> config input network bend bore pull effort permit rank survey program learn output select crs unpack finding model parallel
            sample   -> output crs finding model
            config   -> finding model
            input    -> config crs unpack finding model parallel
            network  -> finding model parallel
            bend     -> model
            bore     -> model
            pull     -> model
            effort   -> model
            permit   -> model
            rank     -> model
            survey   -> model
            program  -> finding model
            learn    -> model
            output   -> crs unpack finding model parallel
            select   -> finding model
            crs      -> unpack model parallel
            unpack   ->
            finding  ->
            model    ->
            parallel ->
            """;

    /** The rooms of the larger packages; each uses lines below its own only, so there is no circle. */
    private static final String ROOMS = """
            program           -> program.calendar program.annual program.bound program.design
            program.calendar  ->
            program.annual    -> program.bound program.design
            program.bound     -> program.design
            program.design    ->
            input             -> input.proposal input.fieldbook input.shapefile input.geopackage input.geojson input.fields input.layer
            input.shapefile   -> input.layer
            input.geopackage  -> input.layer
            input.geojson     -> input.layer
            input.proposal    -> input.fields input.layer
            input.fieldbook   -> input.fields input.layer
            input.fields      -> input.layer
            input.layer       ->
            output.sheet      -> output.explain output.columns output.text output.table output.folder
            output.report     -> output.explain output.columns output.style output.table output.folder
            output.explain    -> output.columns output.table
            output            -> output.text output.shapefile output.geopackage output.columns output.style output.table output.folder
            output.text       -> output.table
            output.shapefile  -> output.table output.folder
            output.geopackage -> output.style output.table output.folder
            output.columns    -> output.table
            output.style      -> output.table
            output.table      -> output.folder
            output.folder     ->
            model.learn       -> model.rank model.pull model.effort model.fieldwork model.network model
            model.rank        -> model.pull model.effort model.bore model.network model.permit model.bend model
            model.program     -> model.effort model.network model
            model.survey      -> model.network model
            model.pull        -> model.network model
            model.effort      -> model.network model.permit model
            model.bore        -> model.network model
            model.network     -> model.fieldwork model.permit model
            model.fieldwork   -> model
            model.permit      -> model
            model.bend        -> model
            model             ->
            """;

    /** The units that a double may carry in its name; a ratio, a score and a count-like weight have a word of their own. */
    private static final String UNITS =
            "(.*(M|Mm|Mm2|Km|Deg|Rad|N|NPerM|NPerM2|KgPerM|KgPerM3|In|In2|Kg|Mpa|MPerS2|RadPerM|M3|Positions|Hours|PerHour|Money|PerCableM|Liters|Days|Ratio|Percent|Points|InUnit|S|Si))|rad|money|[A-Z0-9_]+_(HOURS|M|MM|MM2|KM|DEG|RAD|N|N_PER_M|N_PER_M2|KG_PER_M|KG_PER_M3|IN|M_PER_S2|RATIO|POINTS)";

    private static JavaClasses code;

    @BeforeAll
    static void importCode() {
        code = new ClassFileImporter()
                .withImportOption(new ImportOption.DoNotIncludeTests())
                .importPackages(ROOT);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("mapLines")
    void packageUsesOnlyWhatTheMapAllows(String line) {
        String[] sides = line.split("->", -1);
        String from = sides[0].strip();
        Set<String> allowed = new TreeSet<>(List.of(sides[1].strip().split(" +", -1)));
        allowed.add(from);

        noClasses()
                .that()
                .resideInAPackage(ROOT + "." + from + "..")
                .should()
                .dependOnClassesThat(ofOurPackagesOtherThan(allowed))
                .allowEmptyShould(true)
                .check(code);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("roomLines")
    void roomUsesOnlyRoomsThatTheMapAllows(String line) {
        String room = left(line);
        Set<String> allowed = right(line);
        allowed.add(room);

        noClasses()
                .that()
                .resideInAPackage(ROOT + "." + room)
                .should()
                .dependOnClassesThat(DescribedPredicate.describe(
                        "in rooms of the same package other than " + allowed,
                        used -> stage(used).equals(hall(room)) && !allowed.contains(room(used))))
                .allowEmptyShould(true)
                .check(code);
    }

    @Test
    void noRoomUsesOneAboveItself() {
        List<String> rooms = roomLines().map(ArchitectureTest::left).toList();

        assertThat(roomLines())
                .allSatisfy(line -> assertThat(rooms.subList(rooms.indexOf(left(line)) + 1, rooms.size()))
                        .containsAll(right(line)));
    }

    @Test
    void everyRoomIsOnTheMap() {
        List<String> rooms = roomLines().map(ArchitectureTest::left).toList();
        Set<String> halls =
                new TreeSet<>(rooms.stream().map(ArchitectureTest::hall).toList());

        assertThat(code.stream())
                .filteredOn(used -> halls.contains(stage(used)) || room(used).contains("."))
                .allSatisfy(used -> assertThat(rooms).contains(room(used)));
    }

    @Test
    void everyPackageIsOnTheMap() {
        var onMap = new TreeMap<String, String>();
        mapLines().forEach(line -> onMap.put(line.split("->", -1)[0].strip(), line));

        assertThat(code.stream().map(ArchitectureTest::stage).filter(name -> !name.isEmpty()))
                .allSatisfy(name -> assertThat(onMap).containsKey(name));
    }

    @Test
    void theGuideShowsTheSameMap() throws IOException {
        assertThat(Files.readString(Path.of("DEVELOPERS.md"))).contains(MAP.strip(), ROOMS.strip());
    }

    @Test
    void librariesStayBehindTheirDoors() {
        onlyIn("config", "com.fasterxml.jackson.dataformat..");
        onlyIn("program", "org.jgrapht..");
        onlyIn("program pipeline", "com.google.ortools..");
        onlyIn("input output config", "com.fasterxml.jackson..");
        onlyIn("input output unpack", "org.sqlite..");
        onlyIn("crs select", "org.geotools..");
        onlyIn("input output crs", "java.sql..");
        onlyIn("input output", "org.apache.commons.csv..");
        onlyIn("output", "biweekly..", "com.github.mangstadt.vinnie..");
        onlyIn("output", "com.github.mustachejava..");
        onlyIn("output", "com.openhtmltopdf..", "org.apache.pdfbox..", "org.apache.fontbox..", "com.google.zxing..");
        onlyIn("cli", "picocli..");
    }

    @Test
    void futuresAreAwaitedInOnePackage() {
        noClasses()
                .that()
                .resideOutsideOfPackage(ROOT + ".parallel..")
                .should()
                .dependOnClassesThat()
                .areAssignableTo(Future.class)
                .orShould()
                .dependOnClassesThat()
                .areAssignableTo(Executor.class)
                .orShould()
                .dependOnClassesThat()
                .areAssignableTo(BlockingQueue.class)
                .check(code);
    }

    @Test
    void everyDoubleOfTheModelNamesItsUnit() {
        // A rate's unit is in its key.
        ArchRule rule = fields().that()
                .areDeclaredInClassesThat()
                .resideInAnyPackage(ROOT + ".model..", ROOT + ".finding..", ROOT + ".config..")
                .and()
                .haveRawType(double.class)
                .and()
                .areNotDeclaredIn(Rate.class)
                .and()
                .areNotDeclaredIn(RateOverride.class)
                .should()
                .haveNameMatching(UNITS);
        rule.check(code);
    }

    @Test
    void stagesDoNotPrint() {
        noClasses()
                .that()
                .resideOutsideOfPackage(ROOT + ".cli..")
                .should()
                .accessField(System.class, "out")
                .orShould()
                .accessField(System.class, "err")
                .check(code);
    }

    static Stream<String> mapLines() {
        return MAP.lines().filter(line -> !line.isBlank());
    }

    static Stream<String> roomLines() {
        return ROOMS.lines().filter(line -> !line.isBlank());
    }

    private static String left(String line) {
        return line.split("->", -1)[0].strip();
    }

    private static Set<String> right(String line) {
        Set<String> names =
                new TreeSet<>(List.of(line.split("->", -1)[1].strip().split(" +", -1)));
        names.remove("");
        return names;
    }

    private static String hall(String room) {
        return room.split("\\.", -1)[0];
    }

    private static String room(JavaClass used) {
        String name = used.getPackageName();
        return name.startsWith(ROOT + ".") ? name.substring(ROOT.length() + 1) : "";
    }

    private static void onlyIn(String stages, String... libraries) {
        String[] homes =
                Stream.of(stages.split(" ", -1)).map(s -> ROOT + "." + s + "..").toArray(String[]::new);
        classes()
                .that()
                .resideOutsideOfPackages(homes)
                .should()
                .onlyDependOnClassesThat()
                .resideOutsideOfPackages(libraries)
                .check(code);
    }

    private static DescribedPredicate<JavaClass> ofOurPackagesOtherThan(Set<String> allowed) {
        return DescribedPredicate.describe(
                "in our packages other than " + allowed,
                used -> !stage(used).isEmpty() && !allowed.contains(stage(used)));
    }

    private static String stage(JavaClass used) {
        String name = used.getPackageName();
        return name.startsWith(ROOT + ".") ? name.substring(ROOT.length() + 1).split("\\.", -1)[0] : "";
    }
}
