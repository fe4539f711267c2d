package org.spanroom.output.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.spanroom.model.bore.Arrangement;
import org.spanroom.model.bore.Packing;
import org.spanroom.model.bore.PackingOutcome;
import org.spanroom.model.bore.PlacedCircle;
import org.spanroom.model.bore.PlacedCircle.Kind;
import org.spanroom.model.network.BoreShape;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

class CrossSectionPictureTest {
    private static final PlacedCircle INNERDUCT = new PlacedCircle(Kind.INNERDUCT, 0, -30, 40, 34, -1, 0);
    private static final PlacedCircle CABLE_IN_IT = new PlacedCircle(Kind.CABLE, 0, -40, 14, 0, 0, 0);

    @Test
    void circlesAreToScaleInWholePixels() throws Exception {
        Document drawing = parse(CrossSectionPicture.draw("now", packing(List.of(INNERDUCT, CABLE_IN_IT))));

        // the bore of 100 mm is 360 pixels wide about (188, 188), inside a line of 5
        assertEquals(List.of("188 188 183", "188 296 72", "188 296 61", "188 332 25"), circles(drawing));
        assertEquals("0 0 376 376", drawing.getDocumentElement().getAttribute("viewBox"));
    }

    @Test
    void itHasALightGroundOfItsOwnAndLettersWithoutOutline() throws Exception {
        PlacedCircle cell = new PlacedCircle(Kind.NEW_CABLE, -15, -35, 14, 13, -1, 2);
        Document drawing = parse(CrossSectionPicture.draw("after", packing(List.of(cell))));

        Element ground = (Element) drawing.getElementsByTagName("rect").item(0);
        assertEquals("#ffffff", ground.getAttribute("fill"));
        assertEquals("none", ground.getAttribute("stroke"));
        Element letter = (Element) drawing.getElementsByTagName("text").item(0);
        assertEquals("2", letter.getTextContent());
        assertEquals("none", letter.getAttribute("stroke"));
    }

    @Test
    void nineCellsInThreeSleevesTakeFewBytes() {
        List<PlacedCircle> cells = new ArrayList<>();
        for (int i = 0; i < 9; i++) {
            cells.add(new PlacedCircle(Kind.NEW_CABLE, i % 3 * 17 - 17, i / 3 * 17 - 17, 16, 15, -1, 1 + i / 3));
        }

        int bytes = CrossSectionPicture.draw("3 of 3 out, 9 positions (proposed)", packing(cells))
                .length();

        assertTrue(bytes < 2600, bytes + " bytes");
    }

    @Test
    void aBoreWithoutAnArrangementSaysSo() {
        var none = new Packing(PackingOutcome.DOES_NOT_FIT, -3, "area", 0, Optional.empty());

        assertTrue(CrossSectionPicture.draw("now", none).contains("No arrangement: the contents do not fit."));
    }

    @Test
    void namesAreEscaped() {
        String drawing = CrossSectionPicture.draw("a <b> & c", packing(List.of(INNERDUCT)));

        assertTrue(drawing.contains("<title>a &lt;b&gt; &amp; c</title>"), drawing);
    }

    private static Packing packing(List<PlacedCircle> circles) {
        return new Packing(PackingOutcome.FITS, 1, "", 0, Optional.of(new Arrangement(BoreShape.ROUND, 100, circles)));
    }

    private static Document parse(String drawing) throws Exception {
        return DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new ByteArrayInputStream(drawing.getBytes(StandardCharsets.UTF_8)));
    }

    private static List<String> circles(Document drawing) {
        var found = new ArrayList<String>();
        var circles = drawing.getElementsByTagName("circle");
        for (int i = 0; i < circles.getLength(); i++) {
            Element circle = (Element) circles.item(i);
            found.add(circle.getAttribute("cx") + " " + circle.getAttribute("cy") + " " + circle.getAttribute("r"));
        }
        return found;
    }
}
