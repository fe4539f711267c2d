package org.spanroom.bore;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.spanroom.model.bore.Arrangement;
import org.spanroom.model.bore.Packing;
import org.spanroom.model.bore.PackingOutcome;
import org.spanroom.model.bore.PlacedCircle;
import org.spanroom.model.network.BoreShape;

/** Packs the things that are in a bore, and what is in them, and draws up the arrangement. */
final class ContentsPacker {
    /** Few hundred bytes each. */
    private static final int ANSWERS_KEPT = 150_000;

    private final Packer packer;
    private final double sleeveSlackMm;
    private final RecentAnswers<Question, Answered> answered = new RecentAnswers<>(ANSWERS_KEPT);
    private final RecentAnswers<Resting, Settling.Rest> resting = new RecentAnswers<>(ANSWERS_KEPT);

    /**
     * A packer of what is in bores.
     *
     * @param sleeveSlackMm fabric between neighboring cells of a sleeve
     */
    ContentsPacker(Packer packer, double sleeveSlackMm) {
        this.packer = packer;
        this.sleeveSlackMm = sleeveSlackMm;
    }

    /** What many cross-sections ask: whether things, from the widest, go into so much of a bore. */
    private record Question(BoreShape shape, double boreMm, double usableMm, List<Item> items) {}

    /** Circles at rest in a bore, as they lie after packing into so much of it. */
    private record Resting(PackingTask task, double usableMm) {}

    /** An answer with the work that it takes. */
    private record Answered(Packing packing, Work work) {}

    /** Returns whether things go into a bore, without what is in them. */
    PackingOutcome outcome(BoreShape shape, double usableMm, List<Item> items, Work work) {
        return usableMm > 0
                ? packer.outcome(task(shape, usableMm, Item.inOrder(items)), work)
                : PackingOutcome.DOES_NOT_FIT;
    }

    /**
     * Returns whether things, and what is in them, go into a bore.
     *
     * @param boreMm the whole bore, which the drawing shows
     * @param usableMm what of it they may take up
     * @param work what it takes is added to
     */
    Packing pack(BoreShape shape, double boreMm, double usableMm, List<Item> items, Work work) {
        if (usableMm <= 0) {
            return new Packing(
                    PackingOutcome.DOES_NOT_FIT, usableMm, "the allowance leaves no usable bore", 0, Optional.empty());
        }
        var question = new Question(shape, boreMm, usableMm, Item.inOrder(items));
        if (work.isSpent()) {
            return answer(question, work);
        }
        Answered known = answered.get(question, this::answered);
        work.add(known.work());
        return known.packing();
    }

    /** Work ends here as if the question were all of a cross-section, so that the answer depends on nothing else. */
    private Answered answered(Question question) {
        Work work = Work.ofSection();
        if (isSoonFit(question, work)) {
            return new Answered(
                    Packing.of(
                            PackingOutcome.FITS,
                            () -> answer(question, Work.ofSection()).evidence()),
                    work);
        }
        Work searched = Work.ofSection();
        return new Answered(answer(question, searched), searched);
    }

    private boolean isSoonFit(Question question, Work work) {
        return packer.isSoonFit(task(question.shape(), question.usableMm(), question.items()), work)
                && question.items().stream().allMatch(item -> packer.isSoonFit(taskWithin(item), work));
    }

    private Packing answer(Question question, Work work) {
        List<Item> items = question.items();
        Packed packed = packer.pack(task(question.shape(), question.usableMm(), items), work);
        List<Packed> nested =
                items.stream().map(item -> packer.pack(taskWithin(item), work)).toList();
        PackingOutcome outcome = worst(packed, nested);
        Optional<Arrangement> arrangement = outcome == PackingOutcome.DOES_NOT_FIT
                ? Optional.empty()
                : Optional.of(
                        new Arrangement(question.shape(), question.boreMm(), place(question, packed, nested, work)));
        return new Packing(
                outcome,
                marginMm(question.usableMm(), items, packed, nested),
                bound(items, packed, nested),
                gapMm(packed, nested),
                arrangement);
    }

    private PackingTask task(BoreShape shape, double boreMm, List<Item> items) {
        return PackingTask.jointed(
                shape,
                boreMm,
                items.stream().mapToDouble(Item::outsideDiameterMm).toArray(),
                items.stream().mapToInt(Item::sleeve).toArray(),
                sleeveSlackMm);
    }

    private static PackingTask taskWithin(Item item) {
        double[] diametersMm = item.within().stream()
                .mapToDouble(BoreContents.Wire::outsideDiameterMm)
                .toArray();
        return PackingTask.of(BoreShape.ROUND, item.insideDiameterMm(), diametersMm);
    }

    private static PackingOutcome worst(Packed packed, List<Packed> nested) {
        PackingOutcome worst = packed.outcome();
        for (Packed inner : nested) {
            if (inner.outcome() == PackingOutcome.DOES_NOT_FIT || worst == PackingOutcome.FITS) {
                worst = inner.outcome();
            }
        }
        return worst;
    }

    /** The margin of the bore; or of the innerduct that its cables do not go into. */
    private static double marginMm(double usableMm, List<Item> items, Packed packed, List<Packed> nested) {
        if (packed.outcome() != PackingOutcome.DOES_NOT_FIT) {
            for (int i = 0; i < items.size(); i++) {
                if (nested.get(i).outcome() == PackingOutcome.DOES_NOT_FIT) {
                    return items.get(i).insideDiameterMm() - nested.get(i).leastBoreMm();
                }
            }
        }
        return usableMm - packed.leastBoreMm();
    }

    /** That of the bore; else of the first innerduct whose cables do not go in, or may not. */
    private static String bound(List<Item> items, Packed packed, List<Packed> nested) {
        if (packed.outcome() == PackingOutcome.DOES_NOT_FIT) {
            return packed.bound();
        }
        for (int i = 0; i < items.size(); i++) {
            if (nested.get(i).outcome() == PackingOutcome.DOES_NOT_FIT) {
                return "cables within an innerduct: " + nested.get(i).bound();
            }
        }
        for (Packed inner : nested) {
            if (packed.isFit() && !inner.isFit()) {
                return "cables within an innerduct: " + inner.bound();
            }
        }
        return packed.bound();
    }

    /** The widest gap of what is undecided. */
    private static double gapMm(Packed packed, List<Packed> nested) {
        double widestMm = packed.gapMm();
        for (Packed inner : nested) {
            widestMm = Math.max(widestMm, inner.gapMm());
        }
        return worst(packed, nested) == PackingOutcome.UNDECIDED ? widestMm : 0;
    }

    private List<PlacedCircle> place(Question question, Packed packed, List<Packed> nested, Work work) {
        List<Item> items = question.items();
        double[] centers = atRest(task(question.shape(), question.boreMm(), items), question.usableMm(), packed, work);
        int[] sleeves = sleeves(items, centers);
        var circles = new ArrayList<PlacedCircle>();
        for (int i = 0; i < items.size(); i++) {
            Item item = items.get(i);
            double x = centers[2 * i];
            double y = centers[2 * i + 1];
            int at = circles.size();
            circles.add(new PlacedCircle(
                    item.kind(), x, y, item.outsideDiameterMm(), item.insideDiameterMm(), -1, sleeves[i]));
            double[] inner = atRest(taskWithin(item), item.insideDiameterMm(), nested.get(i), work);
            for (int k = 0; k < item.within().size(); k++) {
                Item wire = Item.of(item.within().get(k));
                circles.add(new PlacedCircle(
                        wire.kind(), x + inner[2 * k], y + inner[2 * k + 1], wire.outsideDiameterMm(), 0, at, 0));
            }
        }
        return circles;
    }

    private double[] atRest(PackingTask task, double usableMm, Packed packed, Work work) {
        if (!packed.isFit() || task.size() == 0 || work.isSpent()) {
            return packed.centersMm();
        }
        Settling.Rest rest = resting.get(new Resting(task, usableMm), key -> Settling.settle(task, packed.centersMm()));
        work.add(rest.moves() * task.moveWork());
        return rest.centersMm();
    }

    /** Returns the number of each thing's sleeve, from left to right; 0 for none. */
    private static int[] sleeves(List<Item> items, double[] centers) {
        var middles = new TreeMap<Integer, Double>();
        for (int i = 0; i < items.size(); i++) {
            if (items.get(i).sleeve() > 0) {
                middles.merge(items.get(i).sleeve(), centers[2 * i] / cells(items, i), Double::sum);
            }
        }
        List<Integer> fromLeft = middles.keySet().stream()
                .sorted(Comparator.<Integer>comparingDouble(middles::get).thenComparing(sleeve -> sleeve))
                .toList();
        return items.stream()
                .mapToInt(item -> 1 + fromLeft.indexOf(item.sleeve()))
                .toArray();
    }

    private static long cells(List<Item> items, int cell) {
        int sleeve = items.get(cell).sleeve();
        return items.stream().filter(item -> item.sleeve() == sleeve).count();
    }
}
