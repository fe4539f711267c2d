package org.spanroom.bore;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.spanroom.model.bore.Arrangement;
import org.spanroom.model.bore.Packing;
import org.spanroom.model.bore.PackingOutcome;
import org.spanroom.model.bore.PlacedCircle;
import org.spanroom.model.bore.PlacedCircle.Kind;
import org.spanroom.model.network.BoreShape;

/** Packs the things that lie in a bore, and what lies in them, and draws up the arrangement. */
final class ContentsPacker {
    /** Few hundred bytes each. */
    private static final int ANSWERS_KEPT = 150_000;

    private final Packer packer;
    private final int cellsPerSleeve;
    private final RecentAnswers<Question, Packing> answered = new RecentAnswers<>(ANSWERS_KEPT);
    private final RecentAnswers<Resting, double[]> resting = new RecentAnswers<>(ANSWERS_KEPT);

    ContentsPacker(Packer packer, int cellsPerSleeve) {
        this.packer = packer;
        this.cellsPerSleeve = cellsPerSleeve;
    }

    /** What many cross-sections ask: whether things, from the widest, go into so much of a bore. */
    private record Question(BoreShape shape, double boreMm, double usableMm, List<Item> items) {}

    /** Circles at rest in a bore, as they lie after packing into so much of it. */
    private record Resting(PackingTask task, double usableMm) {}

    /** Returns whether things go into a bore, without what lies in them. */
    PackingOutcome outcome(BoreShape shape, double usableMm, List<Item> items) {
        return usableMm > 0 ? packer.pack(task(shape, usableMm, items)).outcome() : PackingOutcome.DOES_NOT_FIT;
    }

    /**
     * Returns whether things, and what lies in them, go into a bore.
     *
     * @param boreMm the whole bore, which the drawing shows
     * @param usableMm what of it they may take up
     */
    Packing pack(BoreShape shape, double boreMm, double usableMm, List<Item> items) {
        if (usableMm <= 0) {
            return new Packing(
                    PackingOutcome.DOES_NOT_FIT, usableMm, "no bore is left by the allowance", Optional.empty());
        }
        var question = new Question(
                shape,
                boreMm,
                usableMm,
                items.stream().sorted(Item.WIDEST_FIRST).toList());
        return answered.get(question, this::answer);
    }

    private Packing answer(Question question) {
        List<Item> items = question.items();
        Packed packed = packer.pack(task(question.shape(), question.usableMm(), items));
        List<Packed> nested = items.stream().map(this::packWithin).toList();
        PackingOutcome outcome = worst(packed, nested);
        Optional<Arrangement> arrangement = outcome == PackingOutcome.DOES_NOT_FIT
                ? Optional.empty()
                : Optional.of(new Arrangement(question.shape(), question.boreMm(), place(question, packed, nested)));
        return new Packing(
                outcome,
                marginMm(question.usableMm(), items, packed, nested),
                bound(items, packed, nested),
                arrangement);
    }

    private static PackingTask task(BoreShape shape, double boreMm, List<Item> items) {
        return PackingTask.of(
                shape,
                boreMm,
                items.stream().mapToDouble(Item::outsideDiameterMm).toArray());
    }

    private static PackingTask taskWithin(Item item) {
        double[] diametersMm = item.within().stream()
                .mapToDouble(BoreContents.Wire::outsideDiameterMm)
                .toArray();
        return PackingTask.of(BoreShape.ROUND, item.insideDiameterMm(), diametersMm);
    }

    private Packed packWithin(Item item) {
        return packer.pack(taskWithin(item));
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

    private static String bound(List<Item> items, Packed packed, List<Packed> nested) {
        if (packed.outcome() == PackingOutcome.DOES_NOT_FIT) {
            return packed.bound();
        }
        for (int i = 0; i < items.size(); i++) {
            if (nested.get(i).outcome() == PackingOutcome.DOES_NOT_FIT) {
                return "cables within an innerduct: " + nested.get(i).bound();
            }
        }
        return "";
    }

    private List<PlacedCircle> place(Question question, Packed packed, List<Packed> nested) {
        List<Item> items = question.items();
        double[] centres = atRest(task(question.shape(), question.boreMm(), items), question.usableMm(), packed);
        int[] sleeves = sleeves(items, centres);
        var circles = new ArrayList<PlacedCircle>();
        for (int i = 0; i < items.size(); i++) {
            Item item = items.get(i);
            double x = centres[2 * i];
            double y = centres[2 * i + 1];
            int at = circles.size();
            circles.add(new PlacedCircle(
                    item.kind(), x, y, item.outsideDiameterMm(), item.insideDiameterMm(), -1, sleeves[i]));
            double[] inner = atRest(taskWithin(item), item.insideDiameterMm(), nested.get(i));
            for (int k = 0; k < item.within().size(); k++) {
                Item wire = Item.of(item.within().get(k));
                circles.add(new PlacedCircle(
                        wire.kind(), x + inner[2 * k], y + inner[2 * k + 1], wire.outsideDiameterMm(), 0, at, 0));
            }
        }
        return circles;
    }

    private double[] atRest(PackingTask task, double usableMm, Packed packed) {
        if (!packed.isFit() || task.size() == 0) {
            return packed.centresMm();
        }
        return resting.get(new Resting(task, usableMm), key -> Settling.settle(task, packed.centresMm()));
    }

    /** Cells that lie side by side make one sleeve: new cables are numbered from left to right. */
    private int[] sleeves(List<Item> items, double[] centres) {
        int[] sleeves = new int[items.size()];
        var cells = IntStream.range(0, items.size())
                .boxed()
                .filter(i -> items.get(i).kind() == Kind.NEW_CABLE)
                .sorted(Comparator.<Integer>comparingDouble(i -> centres[2 * i]).thenComparing(i -> i))
                .toList();
        for (int k = 0; k < cells.size(); k++) {
            sleeves[cells.get(k)] = 1 + k / cellsPerSleeve;
        }
        return sleeves;
    }
}
