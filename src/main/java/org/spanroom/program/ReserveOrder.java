package org.spanroom.program;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.spanroom.model.program.EligibleSpan;
import org.spanroom.model.program.ProgramItem;
import org.spanroom.model.program.ReserveItem;
import org.spanroom.program.annual.YearProblem;

/**
 * The eligible spans that are not in a program: first those that can take the place of a span that fails, those that the draws choose most often
 * first, then those that are worth most for their money.
 */
final class ReserveOrder {
    private final ProgramInputs inputs;
    private final YearProblem problem;
    private final Map<Integer, Double> chosen;
    private final Set<String> inProgram = new HashSet<>();
    private final double highestMoney;

    ReserveOrder(ProgramInputs inputs, YearProblem problem, Map<Integer, Double> chosen, List<ProgramItem> items) {
        this.inputs = inputs;
        this.problem = problem;
        this.chosen = chosen;
        double highest = 0;
        for (ProgramItem item : items) {
            inProgram.add(item.span().facts().spanId());
            if (item.connections().isEmpty() && !item.span().isMust()) {
                highest = Math.max(highest, moneyPerPosition(item.span(), item.budgetMoney()));
            }
        }
        highestMoney = highest;
    }

    List<ReserveItem> list() {
        var able = new ArrayList<Integer>();
        var unable = new ArrayList<Integer>();
        for (int task = 0; task < inputs.eligibleSpans().size(); task++) {
            EligibleSpan span = inputs.eligibleSpans().get(task);
            if (!inProgram.contains(span.facts().spanId())) {
                boolean isAble = span.worthMoney() > 0
                        && WhyImpossible.words(inputs, problem, task).isEmpty();
                (isAble ? able : unable).add(task);
            }
        }
        able.sort(Comparator.comparingDouble((Integer task) -> -chosen.getOrDefault(task, 0.0))
                .thenComparingDouble(
                        task -> -worthPerMoney(inputs.eligibleSpans().get(task))));
        var items = new ArrayList<ReserveItem>();
        able.forEach(task -> items.add(item(items.size() + 1, task)));
        unable.forEach(task -> items.add(item(0, task)));
        return items;
    }

    private static double worthPerMoney(EligibleSpan span) {
        return span.worthMoney() / Math.max(1, span.budgetMoney());
    }

    private static double moneyPerPosition(EligibleSpan span, double money) {
        int positions = span.facts().positionsGained();
        return positions > 0 ? money / positions : 0;
    }

    private ReserveItem item(int place, int task) {
        EligibleSpan span = inputs.eligibleSpans().get(task);
        Double often = chosen.get(task);
        return new ReserveItem(
                place,
                span,
                inputs.network().sections().get(span.section()).id(),
                often == null ? OptionalDouble.empty() : OptionalDouble.of(often),
                whyNot(task, span));
    }

    private String whyNot(int task, EligibleSpan span) {
        Optional<String> impossible = WhyImpossible.words(inputs, problem, task);
        if (impossible.isPresent()) {
            return impossible.get();
        }
        if (span.worthMoney() <= 0) {
            return span.facts().reasons().isEmpty()
                    ? "it adds nothing that the objective counts"
                    : "only a connection or a must brings it in: "
                            + String.join(";", span.facts().reasons());
        }
        double money = moneyPerPosition(span, span.budgetMoney());
        if (highestMoney > 0 && money > highestMoney) {
            return String.format(
                    Locale.ROOT,
                    "a position costs %,.0f; the most expensive one in the program costs %,.0f",
                    money,
                    highestMoney);
        }
        return "other work is worth more for the budgets, hours and dates of the years";
    }
}
