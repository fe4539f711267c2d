package org.spanroom.sample;

import java.util.ArrayList;
import java.util.List;

/** Records drafts as features, each with the fault whose turn it is, or with none. */
final class RouteRecorder {
    private static final double SHORTEST_TO_SPOIL_M = 55;
    private static final double M_PER_FT = 0.3048;
    private static final double MM_PER_IN = 25.4;
    private static final List<RouteField> CONTENTS_FIELDS = List.of(
            RouteField.INNERDUCTS,
            RouteField.INNERDUCT_OD_IN,
            RouteField.INNERDUCT_SDR,
            RouteField.CABLES,
            RouteField.CABLE_OD_IN,
            RouteField.CABLE_LB_KFT,
            RouteField.IN_SERVICE);
    private static final List<RouteField> SIZE_FIELDS = List.of(
            RouteField.INNERDUCT_OD_IN, RouteField.INNERDUCT_SDR, RouteField.CABLE_OD_IN, RouteField.CABLE_LB_KFT);
    private static final List<RouteField> FIELDS_OF_A =
            List.of(RouteField.VAULT_A, RouteField.HOLE_A, RouteField.SLACK_A, RouteField.UNCUT_A);
    private static final List<RouteField> FIELDS_OF_B =
            List.of(RouteField.VAULT_B, RouteField.HOLE_B, RouteField.SLACK_B, RouteField.UNCUT_B);
    private static final List<RouteField> FORGETTABLE = List.of(
            RouteField.BORE_IN,
            RouteField.DUCT_TYPE,
            RouteField.OWNER,
            RouteField.YEAR,
            RouteField.CONDITION,
            RouteField.FLOODED);

    private final CitySink sink;
    private final Chance chance;
    private final Chance naming;
    private final ItemNotes notes;
    private int recorded;
    private String idBefore = "";

    /**
     * A recorder.
     *
     * @param chance decides on the faults
     * @param naming decides which rows of the contents table name a catalog's row
     * @param noting decides on what crews noted of innerducts and cables
     */
    RouteRecorder(CitySink sink, Chance chance, Chance naming, Chance noting) {
        this.sink = sink;
        this.chance = chance;
        this.naming = naming;
        this.notes = new ItemNotes(noting);
    }

    /** Returns whether a fault can be put into a draft without becoming another one. */
    static boolean suits(Fault fault, Draft draft) {
        boolean direct = draft.bank().direct();
        return switch (fault) {
            case ZERO_LENGTH_PART, DUPLICATE_VERTEX, NULL_GEOMETRY -> true;
            case OFFSET, PIECES_DRAWN_APART -> isPlain(draft) && draft.bank().spacingM() == 0;
            case END_WITHOUT_VAULT -> isPlain(draft) && draft.rank() != Street.Rank.LINK;
            case GAP_AT_VAULT, PIECES, PIECES_THAT_DIFFER, PIECES_WITH_A_GAP -> isPlain(draft);
            // Empty ducts stay what they are, so that as many sections have one as are meant to.
            case BORE_IN_MILLIMETERS -> !direct;
            case CONTENTS_ONLY_IN_TABLE, MISSING_ATTRIBUTES ->
                !direct && !draft.filling().isEmpty();
            case MISSING_CONTENTS ->
                draft.filling().rows().isEmpty() && !draft.filling().isEmpty();
            case UNKNOWN_CATALOG_NAME, SIZE_AGAINST_CATALOG -> !direct;
            // In banks that are worth a crew, so that a rank depends on what has not been measured.
            case MISSING_SIZES ->
                draft.filling().rows().isEmpty()
                        && draft.filling().cables() >= 2
                        && draft.filling().innerducts() >= 3
                        && isPlain(draft);
            case UNUSABLE_ROW -> !draft.filling().rows().isEmpty();
            case MORE_CABLES_THAN_INNERDUCTS ->
                draft.filling().innerducts() > 0
                        && draft.filling().cables() > 0
                        && draft.filling().rows().isEmpty();
            default -> true;
        };
    }

    private static boolean isPlain(Draft draft) {
        return !draft.cornered() && draft.legsM().stream().allMatch(legM -> legM > SHORTEST_TO_SPOIL_M);
    }

    /** Records a draft that is as it should be; a few are drawn as multi-lines. */
    void record(Draft draft) {
        DrawnLine trace = draft.trace();
        if (draft.rank() != Street.Rank.LOOP && chance.happens(0.04)) {
            put(draft, draft.attributes(), List.of(trace.cutAt(draft.placeInsideASpan(chance))));
        } else {
            put(draft, draft.attributes(), List.of(trace));
        }
        table(draft, draft.filling());
    }

    void record(Draft draft, Fault fault) {
        if (fault.spoilsWords()) {
            String detail = spoilWords(draft.attributes(), draft, fault);
            record(draft);
            known(fault, draft, detail);
        } else if (fault.spoilsLine()) {
            spoilLine(draft, fault);
            table(draft, draft.filling());
        } else {
            spoilRecord(draft, fault);
        }
    }

    private static String spoilWords(Attributes attributes, Draft draft, Fault fault) {
        return switch (fault) {
            case UNKNOWN_CATALOG_NAME -> {
                String name = "pvc41 " + (draft.bank().bore().insideIn() < 3 ? "2 in" : "4 in");
                attributes.with(RouteField.DUCT_SIZE, name).without(RouteField.BORE_IN);
                yield name;
            }
            case SIZE_AGAINST_CATALOG -> {
                String name = draft.bank().bore().insideIn() < 4.6 ? "pvc40 6 in" : "pvc40 2 in";
                attributes.with(RouteField.DUCT_SIZE, name);
                yield name + " for " + draft.bank().bore().insideIn() + " in";
            }
            case MISSING_SIZES -> {
                SIZE_FIELDS.forEach(attributes::without);
                yield "";
            }
            default -> {
                attributes.with(RouteField.EMBARGO, "after the regatta");
                yield "";
            }
        };
    }

    private void spoilLine(Draft draft, Fault fault) {
        Attributes attributes = draft.attributes();
        DrawnLine trace = draft.trace();
        switch (fault) {
            case OFFSET -> {
                double asideM = chance.between(0.4, 0.5);
                put(draft, measured(attributes, trace), List.of(trace.beside(chance.sign() * asideM)));
                known(fault, draft, meters(asideM) + " aside");
            }
            case GAP_AT_VAULT -> {
                double gapM = chance.between(1.6, 2.6);
                put(draft, attributes, List.of(trace.shortened(gapM)));
                known(fault, draft, meters(gapM) + " short of " + draft.to().vaultId());
            }
            case END_WITHOUT_VAULT -> {
                double beyondM = chance.between(8, 30);
                DrawnLine longer = trace.extended(beyondM);
                put(draft, measured(attributes, longer).without(FIELDS_OF_B), List.of(longer));
                known(fault, draft, meters(beyondM) + " beyond " + draft.to().vaultId());
            }
            case ZERO_LENGTH_PART -> {
                put(draft, attributes, List.of(trace, trace.dot(chance.below(trace.size()))));
                known(fault, draft, "part 2");
            }
            case DUPLICATE_VERTEX -> {
                int vertex = chance.below(trace.size());
                put(draft, attributes, List.of(trace.withVertexTwice(vertex)));
                known(fault, draft, "vertex " + (vertex + 1));
            }
            case NULL_GEOMETRY -> {
                put(draft, attributes, List.of());
                known(fault, draft, "");
            }
            default -> pieces(draft, fault);
        }
    }

    private void pieces(Draft draft, Fault fault) {
        DrawnLine[] pieces = draft.trace().cutAt(draft.placeInsideASpan(chance));
        DrawnLine second = pieces[1];
        Attributes later = draft.attributes().copy();
        String detail = "";
        if (fault == Fault.PIECES_WITH_A_GAP) {
            double gapM = chance.between(1.5, 2.5);
            second = second.reversed().shortened(gapM).reversed();
            detail = ", " + meters(gapM) + " missing";
        } else if (fault == Fault.PIECES_DRAWN_APART) {
            double asideM = chance.between(0.25, 0.6);
            second = second.beside(chance.sign() * asideM);
            detail = ", the second " + meters(asideM) + " aside";
        } else {
            second = second.movedBy(chance.wobble(0.02), chance.wobble(0.02));
        }
        if (fault == Fault.PIECES_THAT_DIFFER) {
            later.with(RouteField.SURFACE, "gravel").with(RouteField.YEAR, (int) later.number(RouteField.YEAR) + 3);
            detail = ", surface and year differ";
        }
        put(draft, measured(draft.attributes(), pieces[0]).without(FIELDS_OF_B), List.of(pieces[0]));
        put(draft, measured(later, second).without(FIELDS_OF_A), List.of(second));
        sink.fault(new KnownFault(fault, "ducts", draft.duct(), "R" + (recorded - 1) + " and R" + recorded + detail));
    }

    private void spoilRecord(Draft draft, Fault fault) {
        Attributes attributes = draft.attributes();
        boolean inTable = fault == Fault.ROW_OF_UNKNOWN_DUCT || fault == Fault.UNUSABLE_ROW;
        String detail = inTable ? spoilTable(draft, fault) : spoil(attributes, draft, fault);
        if (fault == Fault.DUPLICATE_ROUTE_ID && !idBefore.isEmpty()) {
            recorded++;
            sink.route(draft.feature(attributes.with(RouteField.ROUTE_ID, idBefore), List.of(draft.trace())));
        } else {
            put(draft, attributes, List.of(draft.trace()));
        }
        sink.fault(new KnownFault(fault, inTable ? "contents" : "ducts", draft.duct(), detail));
        boolean mixed = fault == Fault.CONTENTS_ONLY_IN_TABLE;
        table(draft, mixed ? new Filler(chance).mixed(draft.bank().bore()) : draft.filling());
    }

    private String spoilTable(Draft draft, Fault fault) {
        boolean unusable = fault == Fault.UNUSABLE_ROW;
        String duct = unusable ? draft.duct() : draft.duct() + "9";
        ListedItem row = ListedItem.innerduct(unusable ? "X1" : "I1", InnerductSize.ONE, false)
                .inDuct(duct);
        sink.contents(unusable ? row.ofKind("spare") : row);
        return unusable ? "item X1" : duct;
    }

    /** Changes what is recorded and returns what was done. */
    private String spoil(Attributes attributes, Draft draft, Fault fault) {
        return switch (fault) {
            case MISSING_ATTRIBUTES -> forget(attributes);
            case MISSING_CONTENTS, CONTENTS_ONLY_IN_TABLE -> {
                CONTENTS_FIELDS.forEach(attributes::without);
                yield "";
            }
            case BORE_IN_MILLIMETERS -> {
                double boreIn = attributes.number(RouteField.BORE_IN);
                attributes.with(RouteField.BORE_IN, boreIn * MM_PER_IN);
                yield boreIn + " in";
            }
            case LENGTH_IN_METERS -> stretch(attributes, M_PER_FT);
            case WRONG_LENGTH -> stretch(attributes, 1 + chance.sign() * chance.between(0.15, 0.4));
            case WRONG_VAULT -> rename(attributes, draft, draft.other().vaultId());
            case UNKNOWN_VAULT -> rename(attributes, draft, draft.to().vaultId().replace("-", "-9"));
            case UNUSABLE_WORD -> {
                attributes.with(RouteField.FLOODED, "see file");
                yield "";
            }
            case MORE_CABLES_THAN_INNERDUCTS -> {
                int innerducts = draft.filling().innerducts();
                attributes.with(RouteField.CABLES, innerducts + 1);
                yield innerducts + 1 + " in " + innerducts;
            }
            case DUPLICATE_ROUTE_ID -> idBefore;
            default -> throw new IllegalArgumentException("no fault of a route's record: " + fault);
        };
    }

    private static String rename(Attributes attributes, Draft draft, String vault) {
        attributes.with(RouteField.VAULT_B, vault);
        return vault + " for " + draft.to().vaultId();
    }

    private String forget(Attributes attributes) {
        List<RouteField> fields = new ArrayList<>(FORGETTABLE);
        chance.shuffle(fields);
        List<RouteField> forgotten = fields.subList(0, chance.from(1, 4));
        forgotten.forEach(attributes::without);
        return String.join(
                " ", forgotten.stream().map(RouteField::field).sorted().toList());
    }

    private static String stretch(Attributes attributes, double factor) {
        double feet = attributes.number(RouteField.LENGTH_FT);
        attributes.with(RouteField.LENGTH_FT, Math.rint(feet * factor));
        return attributes.text(RouteField.LENGTH_FT) + " for " + feet;
    }

    private static Attributes measured(Attributes attributes, DrawnLine trace) {
        return attributes.copy().with(RouteField.LENGTH_FT, Math.rint(Draft.feet(trace)));
    }

    private void put(Draft draft, Attributes attributes, List<DrawnLine> parts) {
        recorded++;
        idBefore = "R" + recorded;
        sink.route(draft.feature(attributes.with(RouteField.ROUTE_ID, idBefore), parts));
    }

    private void known(Fault fault, Draft draft, String detail) {
        sink.fault(new KnownFault(fault, "ducts", draft.duct(), detail));
    }

    private void table(Draft draft, Filling filling) {
        notes.turnTo(draft, filling);
        for (ListedItem row : filling.rows()) {
            boolean byName = naming.happens(0.12);
            boolean fixed = naming.happens(0.06);
            sink.contents(row.inDuct(draft.duct()).written(byName, fixed).noted(notes.draw(row)));
        }
    }

    private static String meters(double value) {
        return Math.rint(value * 100) / 100 + " m";
    }
}
