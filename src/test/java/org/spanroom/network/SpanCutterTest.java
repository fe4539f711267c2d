package org.spanroom.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.spanroom.config.ShippedConfig;
import org.spanroom.finding.FindingCode;
import org.spanroom.model.Line;
import org.spanroom.model.ValueSource;
import org.spanroom.model.network.NetworkSettings;
import org.spanroom.model.network.Route;
import org.spanroom.model.network.Span;

/** Small drawn cases whose result is plain to see. Expected lengths are those of the sketch. */
class SpanCutterTest {
    private static final NetworkSettings RECORDS_COUNT =
            new NetworkSettings(1, 0.5, 5, 0.3, 1, ValueSource.RECORDED, ValueSource.RECORDED, 10, 0.05, 2);

    @Test
    void aRouteIsCutAtEveryVaultOnIt() {
        var result = Sketch.of("""
                vault A 0,0
                vault B 60,0
                vault C 100,30
                route r1 d1 0,0 30,0 100,0 100,30
                """).cut();

        assertThat(result.spans()).containsExactly("d1:A:B 60.00 r1", "d1:B:C 70.00 r1");
        assertThat(result.findings()).isEmpty();
        assertThat(result.network().vaults()).extracting(use -> use.spanCount()).containsExactly(1, 2, 1);
    }

    @Test
    void theGroundLineHasTheVerticesInMetersFromTheFirst() {
        Span span = Sketch.of("""
                vault A 0,0
                vault B 100,30
                route r1 d1 0,0 30,0 100,0 100,30
                """).cut().network().spans().get(0);

        assertThat(span.lonLat().size()).isEqualTo(4);
        assertThat(span.ground().x(0)).isZero();
        assertThat(span.ground().y(0)).isZero();
        assertThat(span.ground().x(2)).isCloseTo(100, within(1e-3));
        assertThat(span.ground().x(3)).isCloseTo(100, within(1e-3));
        assertThat(span.ground().y(3)).isCloseTo(30, within(1e-3));
        assertThat(span.ground().planeLength()).isCloseTo(span.drawnLengthM(), within(1e-6));
    }

    @Test
    void aVaultBesideTheLineCutsAtItsFootAndSaysHowFarItLies() {
        var result = Sketch.of("""
                vault A 0,0.9
                vault B 60,-0.7
                vault C 100.5,0
                route r1 d1 0,0 100,0
                """).cut();

        assertThat(result.spans()).containsExactly("d1:A:B 60.00 r1", "d1:B:C 40.00 r1");
        assertThat(result.findings()).isEmpty();
        Span first = result.network().spans().get(0);
        assertThat(first.fromOffsetM()).isCloseTo(0.9, within(1e-3));
        assertThat(first.toOffsetM()).isCloseTo(0.7, within(1e-3));
        assertThat(result.network().spans().get(1).toOffsetM()).isCloseTo(0.5, within(1e-3));
    }

    @Test
    void aLineDrawnALittlePastItsLastVaultEndsThere() {
        var result = Sketch.of("""
                vault A 0.6,0
                vault B 99.5,0.2
                route r1 d1 0,0 100,0
                """).cut();

        assertThat(result.spans()).containsExactly("d1:A:B 100.00 r1");
        assertThat(result.findings()).isEmpty();
    }

    @Test
    void aRouteThatComesByTwiceIsCutTwice() {
        var result = Sketch.of("""
                vault A 0,0
                vault B 50,0
                vault C 100,20
                route r1 d1 0,0 100,0 100,20 50,20 50,0.5 50,-30
                """).cut();

        assertThat(result.spans()).containsExactly("d1:A:B 50.00 r1", "d1:B:C 70.00 r1", "d1:C:B 70.00 r1");
        assertThat(result.findings()).containsExactly("END_WITHOUT_VAULT r1 30.00");
    }

    @Test
    void aVaultOnTwoCrossingRoutesCutsBothAndACrossingWithoutCutsNone() {
        var result = Sketch.of("""
                vault A -50,0
                vault B 50,0
                vault C 0,-50
                vault D 0,50
                vault X 0,0
                vault E 30,-50
                vault F 30,50
                route r1 d1 -50,0 50,0
                route r2 d2 0,-50 0,50
                route r3 d3 30,-50 30,50
                """).cut();

        assertThat(result.spans())
                .containsExactly(
                        "d1:A:X 50.00 r1", "d1:X:B 50.00 r1", "d2:C:X 50.00 r2", "d2:X:D 50.00 r2", "d3:E:F 100.00 r3");
    }

    @Test
    void vaultsAtOnePlaceCountAsTheFirst() {
        var result = Sketch.of("""
                vault A 0,0
                vault B 100,0
                vault B2 100.2,0.1
                vault C 200,0
                route r1 d1 0,0 100,0
                route r2 d2 100.2,0.1 200,0
                """).cut();

        assertThat(result.spans()).containsExactly("d1:A:B 100.00 r1", "d2:B:C 99.80 r2");
        assertThat(result.findings()).containsExactly("DUPLICATE_VAULT B2");
        assertThat(result.network().vaults().get(1).mergedIds()).containsExactly("B2");
    }

    @Test
    void piecesDrawnEndToEndMakeOneSpanWhicheverWayTheyAreDrawn() {
        var result = Sketch.of("""
                vault A 0,0
                vault B 100,0
                route p2 d1 70,0 30,0
                route p1 d1 0,0 30,0
                route p3 d1 70,0 100,0
                """).cut();

        assertThat(result.spans()).containsExactly("d1:B:A 100.00 p3+p2+p1");
        assertThat(result.findings()).isEmpty();
        assertThat(result.network().spans().get(0).lonLat().size()).isEqualTo(4);
    }

    @Test
    void aBridgedGapCountsInNoLength() {
        var result = Sketch.of("""
                vault A 0,0
                vault B 100,0
                route p1 d1 0,0 40,0
                route p2 d1 40.4,0 100,0
                """).cut();

        assertThat(result.spans()).containsExactly("d1:A:B 99.60 p1+p2");
        assertThat(result.findings()).containsExactly("GAP_BRIDGED p1");
        Span span = result.network().spans().get(0);
        assertThat(span.lonLat().size())
                .as("the two ends become the point midway")
                .isEqualTo(3);
        assertThat(span.ground().planeLength()).isCloseTo(100, within(1e-3));
    }

    @Test
    void aGapALittleTooWideIsReportedFromEndToEnd() {
        var result = Sketch.of("""
                vault A 0,0
                vault B 100,0
                route p1 d1 0,0 40,0
                route p2 d1 43,0 100,0
                """).cut();

        assertThat(result.spans()).isEmpty();
        assertThat(result.findings())
                .containsExactly("END_WITHOUT_VAULT p1 40.00", "END_WITHOUT_VAULT p2 57.00", "GAP_BEYOND_TOLERANCE p1");
        assertThat(result.details()).contains("the end of route p2 is 3.00 m away");
    }

    @Test
    void aGapALittleTooWideIsReportedFromEndToVault() {
        var result = Sketch.of("""
                vault A 0,0
                vault B 100,0
                route r1 d1 0,0 98.2,0
                """).cut();

        assertThat(result.spans()).isEmpty();
        assertThat(result.findings())
                .containsExactly("VAULT_FAR_FROM_ROUTES B", "END_WITHOUT_VAULT r1 98.20", "GAP_BEYOND_TOLERANCE r1");
        assertThat(result.details())
                .contains("vault B is 1.80 m from the line's end")
                .contains("the nearest route passes at 1.80 m");
    }

    /** A plot of 900 m that holds the vaults of three streets: no span ends at them, and it is named. */
    @Test
    void anOutlineThatHoldsOtherVaultsIsNamed() {
        var result = Sketch.of("""
                vault plot -450,-450 450,-450 450,450 -450,450
                vault A 0,0
                vault B 100,0
                vault C 200,0
                vault D 700,0
                route r1 d1 0,0 100,0
                route r2 d1 100,0 200,0
                route r3 d1 200,0 700,0
                """).cut();

        assertThat(result.findings())
                .filteredOn(finding -> finding.startsWith("VAULT_HOLDS"))
                .containsExactly("VAULT_HOLDS_VAULTS plot");
        assertThat(result.details())
                .contains("its outline holds 3 other vaults (A, B, C), and lines inside end at it instead of at them");
    }

    /** A chamber with a second cover and a twin is no plot. */
    @Test
    void anOutlineThatHoldsTwoOtherVaultsIsNot() {
        var result = Sketch.of("""
                vault chamber -5,-5 5,-5 5,5 -5,5
                vault cover 2,2
                vault twin 0,0
                vault D 100,0
                route r1 d1 0,0 100,0
                """).cut();

        assertThat(result.findings()).noneMatch(finding -> finding.startsWith("VAULT_HOLDS"));
    }

    @Test
    void aChangeOfAttributesAtAJointIsNamed() {
        var result = Sketch.of("""
                vault A 0,0
                vault B 100,0
                route p1 d1 0,0 40,0 material=PVC
                route p2 d1 40,0 100,0 material=clay
                """).cut();

        assertThat(result.spans()).containsExactly("d1:A:B 100.00 p1+p2");
        assertThat(result.findings()).containsExactly("ATTRIBUTES_CHANGE_AT_JOINT p1");
        assertThat(result.log().all().get(0).field()).isEqualTo("duct_material");
        assertThat(result.log().all().get(0).place())
                .hasValueSatisfying(place -> assertThat(new GroundStep()
                                .measure(Sketch.LON_DEG, Sketch.LAT_DEG, place.lonDeg(), place.latDeg()))
                        .isCloseTo(40, within(1e-3)));
        assertThat(result.network().spans().get(0).duct().material()).isEqualTo("PVC");
    }

    @Test
    void whatIsRecordedOfOnePieceCountsBeforeWhatIsAssumedOfAnother() {
        var result = Sketch.of("""
                vault A 0,0
                vault B 100,0
                route p1 d1 0,0 40,0 material=HDPE?
                route p2 d1 40,0 100,0 material=clay
                """).cut();

        assertThat(result.spans()).containsExactly("d1:A:B 100.00 p1+p2");
        assertThat(result.network().spans().get(0).duct().material()).isEqualTo("clay");
    }

    @Test
    void threeEndsOfADuctAreNotJoined() {
        var result = Sketch.of("""
                vault A 0,0
                vault B 100,0
                vault C 50,50
                route p1 d1 0,0 50,0
                route p2 d1 50,0 100,0
                route p3 d1 50,0 50,50
                """).cut();

        assertThat(result.spans()).isEmpty();
        assertThat(result.findings())
                .containsExactly(
                        "END_WITHOUT_VAULT p1 50.00",
                        "END_WITHOUT_VAULT p2 50.00",
                        "END_WITHOUT_VAULT p3 50.00",
                        "AMBIGUOUS_JOINT p1");
    }

    @Test
    void ductsOfABankDrawnUponEachOtherAreNotConfused() {
        var result = Sketch.of("""
                vault A 0,0
                vault B 100,0
                route p1 d1 0,0 50,0
                route p2 d1 50,0 100,0
                route q1 d2 0,0 50,0
                route q2 d2 50,0 100,0
                """).cut();

        assertThat(result.spans()).containsExactly("d1:A:B 100.00 p1+p2", "d2:A:B 100.00 q1+q2");
        assertThat(result.findings()).isEmpty();
    }

    /** If no better place is known, as in a file whose first vertices were lost. */
    @Test
    @Timeout(60)
    void hundredThousandLinesMayBeginAtOnePlace() {
        var sketch = Sketch.of("""
                vault A 0,0
                route r1 - 5000,5000 5000,5050
                """);
        Route pattern = sketch.routes.remove(0);
        for (int i = 0; i < 100_000; i++) {
            double[] ordinates = {-29.9, 40.1, -29.8 + i % 400 * 0.001, 40.2 + (i - i % 400) * 0.0000025};
            sketch.routes.add(new Route(
                    i,
                    "r" + i,
                    Sketch.duct("r" + i, "HDPE", true),
                    Line.wrap(ordinates, false),
                    pattern.recordedLengthM(),
                    Optional.empty(),
                    Optional.empty(),
                    ""));
        }

        assertThat(sketch.cut().findings())
                .filteredOn(text -> text.startsWith("AMBIGUOUS_JOINT"))
                .containsExactly("AMBIGUOUS_JOINT r0");
    }

    @Test
    void routesWithoutARecordedDuctJoinOnlyWhereExactlyTwoMeet() {
        var result = Sketch.of("""
                vault A 0,0
                vault B 100,0
                vault C 0,50
                vault D 100,50
                vault E 50,90
                route p1 - 0,0 50,0
                route p2 - 50,0 100,0
                route q1 - 0,50 50,50
                route q2 - 50,50 100,50
                route q3 - 50,50 50,90
                """).cut();

        assertThat(result.spans()).containsExactly("p1:A:B 100.00 p1+p2");
        assertThat(result.findings()).contains("AMBIGUOUS_JOINT q1").hasSize(4);
    }

    @Test
    void aLoopBackToTheSameVaultIsASpanAndAFinding() {
        var result = Sketch.of("""
                vault A 0,0
                route r1 d1 0,0 20,0 20,20 0,20 0,0
                """).cut();

        assertThat(result.spans()).containsExactly("d1:A:A 80.00 r1");
        assertThat(result.findings()).containsExactly("LOOP_TO_SAME_VAULT r1");
    }

    @Test
    void aClosedLineIsCutAroundAndNotAtItsSeam() {
        var result = Sketch.of("""
                vault A 20,5
                vault B 0,10
                route r1 d1 0,0 20,0 20,20 0,20 0,0
                """).cut();

        assertThat(result.spans()).containsExactly("d1:B:A 35.00 r1", "d1:A:B 45.00 r1");
        assertThat(result.findings()).isEmpty();
    }

    @Test
    void aClosedChainOfPiecesIsCutAround() {
        var result = Sketch.of("""
                vault A 20,5
                route r1 d1 0,0 20,0 20,20
                route r2 d1 0,0 0,20 20,20
                """).cut();

        assertThat(result.spans()).containsExactly("d1:A:A 80.00 r1+r2+r1");
        assertThat(result.findings()).containsExactly("LOOP_TO_SAME_VAULT r1");
    }

    @Test
    void linesWithoutAVaultAreRemaindersClosedOrNot() {
        var result = Sketch.of("""
                route r1 d1 0,0 20,0 20,20 0,20 0,0
                route r2 d2 0,50 20,50
                route r3 d2 20,50 50,50
                """).cut();

        assertThat(result.spans()).isEmpty();
        assertThat(result.findings())
                .containsExactly(
                        "ROUTE_WITHOUT_VAULT r1 80.00", "ROUTE_WITHOUT_VAULT r2 20.00", "ROUTE_WITHOUT_VAULT r3 30.00");
        assertThat(result.network().remainderLengthM()).isCloseTo(130, within(1e-3));
    }

    @Test
    void whatLiesInsideAFootprintBelongsToNoSpan() {
        var result = Sketch.of("""
                vault A 0,0
                vault B 48,-2 52,-2 52,2 48,2
                vault C 100,-2 104,-2 104,2 100,2
                route r1 d1 0,0 102,0
                """).cut();

        assertThat(result.spans()).containsExactly("d1:A:B 48.00 r1", "d1:B:C 48.00 r1");
        assertThat(result.findings()).containsExactly("LENGTH_INSIDE_VAULT r1 2.00", "LENGTH_INSIDE_VAULT r1 4.00");
        assertThat(result.network().spans().get(0).toOffsetM()).isCloseTo(0, within(1e-6));
    }

    @Test
    void aRouteIsAtAFootprintItPassesBesideOrEndsBefore() {
        var result = Sketch.of("""
                vault A 0,0
                vault B 48,0.5 52,0.5 52,4 48,4
                vault C 100,-2 104,-2 104,2 100,2
                route r1 d1 0,0 99.3,0
                """).cut();

        assertThat(result.spans()).containsExactly("d1:A:B 50.00 r1", "d1:B:C 49.30 r1");
        assertThat(result.network().spans().get(0).toOffsetM()).isCloseTo(0.5, within(1e-3));
        assertThat(result.findings()).isEmpty();
    }

    @Test
    void ofTwoVaultsTooCloseAlongTheLineTheNearerCuts() {
        var result = Sketch.of("""
                vault A 0,0
                vault B 50,0.8
                vault C 50.5,-0.4
                vault D 100,0
                route r1 d1 0,0 100,0
                route r2 d2 0,0 100,0
                """).cut();

        assertThat(result.spans())
                .containsExactly("d1:A:C 50.50 r1", "d1:C:D 49.50 r1", "d2:A:C 50.50 r2", "d2:C:D 49.50 r2");
        assertThat(result.findings()).containsExactly("VAULTS_TOO_CLOSE B");
        assertThat(result.details()).isEqualTo("on 2 lines, vault C cuts the line instead");
    }

    @Test
    void twoVaultsAtALinesEndAreOneBehindTheOtherWhereThereIsRoomForASpan() {
        var result = Sketch.of("""
                vault A 0,0
                vault B 98.9,0.1
                vault C 100,0
                route r1 d1 0,0 100,0
                """).cut();

        assertThat(result.spans()).containsExactly("d1:A:B 98.90 r1", "d1:B:C 1.10 r1");
    }

    @Test
    void aLineWhollyAtOneVaultIsNoSpan() {
        var result = Sketch.of("""
                vault A 0,0
                route r1 d1 -0.4,0 0.5,0
                """).cut();

        assertThat(result.spans()).isEmpty();
        assertThat(result.findings()).containsExactly("LENGTH_INSIDE_VAULT r1 0.90");
    }

    @Test
    void verticesDrawnTwiceAndLinesWithoutLengthAreReported() {
        var result = Sketch.of("""
                vault A 0,0
                vault B 100,0
                route r1 d1 0,0 0,0 50,0 50,0 50,0 100,0
                route r2 d2 30,0 30,0
                """).cut();

        assertThat(result.spans()).containsExactly("d1:A:B 100.00 r1");
        assertThat(result.network().spans().get(0).lonLat().size()).isEqualTo(3);
        assertThat(result.findings()).containsExactly("DUPLICATE_VERTEX r1", "ZERO_LENGTH_PART r2");
        assertThat(result.details()).contains("3 vertices repeat the one before them; the first is vertex 2");
    }

    @Test
    void repeatedSpansOfADuctAreNumberedInOrder() {
        var result = Sketch.of("""
                vault A 0,0
                vault B 100,0
                vault B:2 100,80
                route r1 d1 0,0 100,0
                route r2 d1 0,0 50,10 100,0
                route r3 d1 0,0 50,20 100,0
                route r4 d1 0,0 100,80
                """).cut();

        assertThat(result.network().spans())
                .extracting(Span::id)
                .containsExactly("d1:A:B", "d1:A:B:2", "d1:A:B:3", "d1:A:B%3A2");
    }

    @Test
    void recordedLengthsAreComparedAndCountOnlyWhereTheConfigSaysSo() {
        String sketch = """
                vault A 0,0
                vault B 60,0
                vault C 100,0
                route r1 d1 0,0 100,0 length=120
                route r2 d2 0,0 60,0 length=61.5
                """;

        var drawn = Sketch.of(sketch).cut();
        var recorded = Sketch.of(sketch).cut(RECORDS_COUNT);

        assertThat(drawn.spans()).containsExactly("d1:A:B 60.00 r1", "d1:B:C 40.00 r1", "d2:A:B 60.00 r2");
        assertThat(drawn.findings()).containsExactly("RECORDED_LENGTH_DIFFERS r1");
        assertThat(drawn.details()).isEqualTo("recorded 120.00 m, drawn 100.00 m; the drawn length was used");
        assertThat(recorded.spans()).containsExactly("d1:A:B 72.00 r1", "d1:B:C 48.00 r1", "d2:A:B 61.50 r2");
        assertThat(recorded.network().spanLengthM())
                .as("the account is of drawn length")
                .isCloseTo(160, within(1e-3));
    }

    @Test
    void recordedVaultsAreComparedWithThoseAtTheLinesEnds() {
        var result = Sketch.of("""
                vault A 0,0
                vault B 100,0
                vault C 104,0
                route r1 d1 0,0 100,0 from=A to=B
                route r2 d2 0,0 100,0 from=A to=C
                route r3 d3 0,0 100,0 from=Z to=B
                route r4 d4 0,0 100,0 from=B to=A
                route r5 d5 100,0 104,0
                """).cut();

        assertThat(result.findings())
                .containsExactly("RECORDED_VAULT_DIFFERS r2", "RECORDED_VAULT_DIFFERS r4", "RECORDED_VAULT_UNKNOWN r3");
        assertThat(result.details())
                .contains("the recorded vault is C, 4.00 m from the line's end; the drawn vault is B")
                .contains("the recorded vaults are swapped: the line is drawn from A to B")
                .contains("recorded vault Z is not in the vaults layer");
    }

    @Test
    void aPieceMayNameTheVaultsOfTheWholeDuct() {
        var result = Sketch.of("""
                vault A 0,0
                vault B 100,0
                route p1 d1 0,0 40,0 from=A to=B
                route p2 d1 100,0 40,0 from=B to=A
                """).cut();

        assertThat(result.spans()).containsExactly("d1:A:B 100.00 p1+p2");
        assertThat(result.findings()).isEmpty();
    }

    @Test
    void aRecordedVaultInReachTakesTheEndWhereTheConfigSaysSo() {
        String sketch = """
                vault A 0,0
                vault B 104,0
                vault C 200,0.5
                vault D 200,-0.2
                route r1 d1 0,0 100,0 from=A to=B
                route r2 d2 104,0 200,0 from=B to=C
                """;

        assertThat(Sketch.of(sketch).cut().spans()).containsExactly("d2:B:D 96.00 r2");
        var recorded = Sketch.of(sketch).cut(RECORDS_COUNT);
        assertThat(recorded.spans()).containsExactly("d1:A:B 100.00 r1", "d2:B:C 96.00 r2");
        assertThat(recorded.network().spans().get(0).toOffsetM()).isCloseTo(4, within(1e-3));
        assertThat(recorded.findings()).containsExactly("VAULTS_TOO_CLOSE D");
    }

    @Test
    void elevationsComeFromTheLineOrEvenlyFromTheVaults() {
        var result = Sketch.of("""
                vault A 0,0 z=10
                vault B 100,0 z=14
                vault C 200,0
                route r1 d1 0,0,5 50,0,6 100,0,9
                route r2 d2 0,0 25,0 100,0
                route r3 d3 100,0 200,0
                """).cut();

        Span drawn = result.network().spans().get(0);
        Span even = result.network().spans().get(1);
        Span flat = result.network().spans().get(2);
        assertThat(drawn.lonLat().z(1)).isEqualTo(6);
        assertThat(new double[] {
                    drawn.ground().z(0), drawn.ground().z(1), drawn.ground().z(2)
                })
                .containsExactly(0, 1, 4);
        assertThat(even.lonLat().hasZ()).isFalse();
        assertThat(even.ground().z(1)).isCloseTo(1, within(1e-6));
        assertThat(even.ground().z(2)).isCloseTo(4, within(1e-6));
        assertThat(flat.ground().hasZ()).isFalse();
    }

    @Test
    void theAntimeridianIsNoBorder() {
        var result = Sketch.at(180, -17, """
                vault A -50,0
                vault B 3,0.5
                vault C 80,0
                route p1 d1 -50,0 -10,0
                route p2 d1 -10,0 30,0 80,0
                """).cut();

        assertThat(result.spans()).containsExactly("d1:A:B 53.00 p1+p2", "d1:B:C 77.00 p2");
        assertThat(result.findings()).isEmpty();
    }

    @Test
    void theSourceOfAFindingIsTheLayerItComesFrom() {
        var log = new org.spanroom.finding.FindingLog();
        Sketch sketch = Sketch.of("vault A 0,0\nroute r1 d1 50,0 60,0");

        new SpanCutter(ShippedConfig.get().network(), 1, "ducts.gpkg", "holes.gpkg")
                .cut(sketch.routes, sketch.vaults, log);

        assertThat(log.all())
                .extracting(finding -> finding.code() + " " + finding.source())
                .containsExactly(
                        FindingCode.VAULT_FAR_FROM_ROUTES + " holes.gpkg",
                        FindingCode.ROUTE_WITHOUT_VAULT + " ducts.gpkg");
    }

    @Test
    void nothingGivesNothing() {
        var result = Sketch.of("").cut();

        assertThat(result.spans()).isEmpty();
        assertThat(result.network().routeLengthM()).isZero();
    }
}
