package org.spanroom.output.explain;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.bore.Arrangement;
import org.spanroom.model.bore.CrossSection;
import org.spanroom.model.bore.Packing;
import org.spanroom.model.bore.PackingOutcome;
import org.spanroom.model.bore.PlacedCircle;
import org.spanroom.model.bore.PlacedCircle.Kind;
import org.spanroom.model.bore.Positions;
import org.spanroom.model.bore.PullChoice;
import org.spanroom.model.bore.Room;
import org.spanroom.model.network.BoreShape;
import org.spanroom.model.network.Unrecoverable;
import org.spanroom.testing.Rooms;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

class CrossSectionSvgTest {
    private static final PlacedCircle INNERDUCT = new PlacedCircle(Kind.INNERDUCT, 0, -30, 40, 34, -1, 0);
    private static final PlacedCircle CABLE_IN_IT = new PlacedCircle(Kind.CABLE, 0, -40, 14, 0, 0, 0);
    private static final PlacedCircle LOOSE_CABLE = new PlacedCircle(Kind.CABLE, 0, -43, 14, 0, -1, 0);
    private static final PlacedCircle DEAD_CABLE = new PlacedCircle(Kind.DEAD_CABLE, 30, -30, 10, 0, -1, 0);
    private static final PlacedCircle NEW_CABLE = new PlacedCircle(Kind.NEW_CABLE, -15, -35, 14, 13, -1, 2);

    @Test
    void circlesStandToScaleWithTheBore() throws Exception {
        Document drawing =
                parse(CrossSectionSvg.draw("Duct 7", room(BoreShape.ROUND, Optional.empty()), "", UnitSystem.METRIC)
                        .orElseThrow());

        // the bore of 100 mm is 360 pixels wide inside its line of 5: 3.6 pixels for a millimeter, about (240, 275)
        assertThat(circles(drawing)).contains("240 275 182.5", "240 383 72", "240 383 61.2", "240 419 25.2");
        // after: about (700, 275)
        assertThat(circles(drawing)).contains("700 429.8 25.2", "646 401 25.2", "646 401 23.4", "808 383 18");
    }

    @Test
    void theWordsSayWhatThePictureShows() {
        String drawing = CrossSectionSvg.draw(
                        "Duct 7 <a&b>", room(BoreShape.ROUND, Optional.empty()), "", UnitSystem.METRIC)
                .orElseThrow();

        assertThat(drawing)
                .contains("Duct 7 &lt;a&amp;b&gt;")
                .contains("51.0 % of the bore filled; positions today: 1, 0 of them beside")
                .contains("3 of 3 out; 3 sleeves, 9 new cables, positions gained: 8; limited by sleeves per duct")
                .contains("fits, with 2.5 mm of inside diameter to spare")
                .contains(">2</text>");
    }

    @Test
    void aSquareBoreIsDrawnSquare() {
        String drawing = CrossSectionSvg.draw("Duct 7", room(BoreShape.SQUARE, Optional.empty()), "", UnitSystem.METRIC)
                .orElseThrow();

        assertThat(drawing).contains("points=\"57.50,92.50 422.50,92.50 422.50,457.50 57.50,457.50 57.50,92.50\"");
    }

    @Test
    void aDuctThatNothingNewGoesIntoShowsTheReasonInsteadOfAnAfter() {
        Room room = room(BoreShape.ROUND, Optional.empty()).unrecovered(Unrecoverable.NO_OUTER_DUCT);

        String drawing = CrossSectionSvg.draw("Duct 7", room, "the duct is a trench", UnitSystem.METRIC)
                .orElseThrow();

        assertThat(drawing).contains("the duct is a trench").doesNotContain("After");
    }

    @Test
    void recordsThatCannotBeTrueAreSaidToBeSo() {
        Room room = room(BoreShape.ROUND, Optional.of("4 innerducts do not fit in 101.5 mm"));

        assertThat(CrossSectionSvg.draw("Duct 7", room, "", UnitSystem.METRIC).orElseThrow())
                .contains("The records contradict each other: 4 innerducts do not fit in 101.5 mm")
                .contains("proven not to fit: bore 0.24 mm too small");
    }

    @Test
    void unknownContentsAreNotDrawn() {
        Room room = Room.unknown(7854);

        assertThat(CrossSectionSvg.draw("Duct 7", room, "", UnitSystem.METRIC)).isEmpty();
    }

    private static Room room(BoreShape shape, Optional<String> contradiction) {
        var before = new Arrangement(shape, 100, List.of(INNERDUCT, CABLE_IN_IT));
        var after = new Arrangement(shape, 100, List.of(LOOSE_CABLE, NEW_CABLE, DEAD_CABLE));
        Packing packed = contradiction.isPresent()
                ? new Packing(PackingOutcome.DOES_NOT_FIT, -0.24, "a bound", 0, Optional.empty())
                : new Packing(PackingOutcome.FITS, 60, "", 0, Optional.of(before));
        PullChoice now = Rooms.choice(0, 3, new Positions(1, 0, 0, 0), 1, 0, Room.BORE_FILL, packed);
        PullChoice all = Rooms.choice(
                3,
                0,
                new Positions(0, 0, 9, 0),
                1,
                3,
                Room.SLEEVES_PER_DUCT,
                new Packing(PackingOutcome.FITS, 2.5, "", 0, Optional.of(after)));
        var section = new CrossSection(packed, contradiction, OptionalDouble.empty(), List.of(now, all));
        return new Room(7854, Optional.of(section), Optional.of(all), Optional.empty());
    }

    private static List<String> circles(Document drawing) {
        var list = new ArrayList<String>();
        var nodes = drawing.getElementsByTagName("circle");
        for (int i = 0; i < nodes.getLength(); i++) {
            var circle = (Element) nodes.item(i);
            list.add(number(circle, "cx") + " " + number(circle, "cy") + " " + number(circle, "r"));
        }
        return list;
    }

    private static String number(Element circle, String name) {
        return circle.getAttribute(name).replaceAll("(\\.\\d)0$", "$1");
    }

    private static Document parse(String xml) throws Exception {
        return DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new ByteArrayInputStream(xml.getBytes(StandardCharsets.UTF_8)));
    }
}
