package org.spanroom.program.annual;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.StringTokenizer;

/** Multidimensional knapsacks of the OR-Library as problems of one year; see the README beside them. */
final class KnapsackInstances {
    private KnapsackInstances() {}

    static List<YearProblem> problems() {
        var words = new StringTokenizer(text("mknapcb1-first5.txt"));
        List<YearProblem> problems = new ArrayList<>();
        int count = Integer.parseInt(words.nextToken());
        for (int problem = 0; problem < count; problem++) {
            problems.add(problem(words));
        }
        return problems;
    }

    private static YearProblem problem(StringTokenizer words) {
        int items = Integer.parseInt(words.nextToken());
        int resources = Integer.parseInt(words.nextToken());
        words.nextToken();
        List<Double> profits = numbers(words, items);
        List<List<Double>> weights = new ArrayList<>();
        for (int resource = 0; resource < resources; resource++) {
            weights.add(numbers(words, items));
        }
        List<Task> tasks = new ArrayList<>();
        for (int item = 0; item < items; item++) {
            int of = item;
            List<Double> uses = weights.stream().map(row -> row.get(of)).toList();
            tasks.add(new Task(List.of(profits.get(item)), 0, uses, 0, 0, false, List.of()));
        }
        return new YearProblem(List.of(numbers(words, resources)), tasks, 0, Optional.empty());
    }

    private static List<Double> numbers(StringTokenizer words, int count) {
        List<Double> numbers = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            numbers.add(Double.parseDouble(words.nextToken()));
        }
        return numbers;
    }

    static List<Double> optima() {
        return text("mkcbres-first5.txt")
                .lines()
                .map(line ->
                        Double.parseDouble(line.strip().substring(line.strip().lastIndexOf(' ') + 1)))
                .toList();
    }

    private static String text(String file) {
        try (InputStream in = KnapsackInstances.class.getResourceAsStream("/mknap/" + file)) {
            return new String(Objects.requireNonNull(in, file).readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
