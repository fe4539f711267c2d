package org.spanroom.output.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.spanroom.model.Counted;
import org.spanroom.model.effort.Effort;
import org.spanroom.model.fieldwork.FieldFact;

/**
 * The cover page of a section: its ducts in the order of the work, a sketch map, both vaults once with all the work at them, what to bring
 * in all, and whom to call.
 *
 * @param totals what to bring and to take away, in all
 * @param shared what the ducts share, in one sentence
 */
public record Cover(
        SheetTable order,
        SheetDrawing map,
        List<VaultSheet> vaults,
        List<String> totals,
        String shared,
        List<SheetCell> contacts) {
    static final List<String> CONTACTS = List.of("network operations", "safety officer", "owner", "rescue");
    private static final List<SheetHead> ORDER_HEADS =
            List.of(new SheetHead("", 6), new SheetHead("Duct and work", 77), new SheetHead("Hours", 15));
    private static final double DUCT_ROOM_MM = 75;

    /** Width of what is said of a duct below its name. */
    static final double WORK_ROOM_MM = 89;

    static Cover of(SheetBook book, SectionWork section, SheetNames names, SheetBlanks page) {
        var room = new CoverRoom(book, section, names);
        return new Cover(
                room.order().first(page),
                SectionMap.draw(section, book.units()),
                vaults(book, section, names, page, room),
                totals(book, section),
                JobWords.together(section),
                CONTACTS.stream().map(contact -> contact(contact, page)).toList());
    }

    /** Returns what the cover page had no room for. */
    static Stream<MoreRows> rest(SheetBook book, SectionWork section, SheetNames names) {
        var room = new CoverRoom(book, section, names);
        return Stream.concat(
                room.order().rest(),
                words(book, section).stream()
                        .flatMap(words -> room.air(words)
                                .rest()
                                .map(more -> new MoreRows(
                                        "Air tests at "
                                                + names.fit(words.vault().id(), 60),
                                        more.style(),
                                        more.heads(),
                                        more.rows()))));
    }

    static LongTable<Integer> order(SheetBook book, SectionWork section, SheetNames names) {
        return new LongTable<>(
                "Ducts in the order of the work",
                "order",
                ORDER_HEADS,
                IntStream.range(0, section.ducts().size()).boxed().toList(),
                Integer.MAX_VALUE,
                (page, place) -> rows(
                        place + 1,
                        section.ducts().get(place),
                        words(book, section.ducts().get(place), section),
                        names));
    }

    private static List<SheetRow> rows(int number, DuctWork duct, String words, SheetNames names) {
        var lines = new ArrayList<SheetRow>();
        OptionalDouble hours = duct.siteHours();
        lines.add(SheetRow.of(
                SheetCell.strong(Integer.toString(number)),
                SheetCell.strong(names.fitBold(duct.span().id(), DUCT_ROOM_MM, 9)),
                SheetCell.number(hours.isPresent() ? StepRows.hours(hours.getAsDouble()) : "none")));
        lines.add(SheetRow.of(SheetCell.words(""), SheetCell.words(words).over(2)));
        return lines;
    }

    /** Returns what is said of a duct below its name. */
    static String words(SheetBook book, DuctWork duct, SectionWork section) {
        String work = work(duct, duct.explained().assessment().effort()) + turned(duct, section) + ".";
        return Stream.concat(Stream.of(work), JobWords.of(book, duct, section).stream())
                .collect(Collectors.joining(" "));
    }

    private static String work(DuctWork duct, Optional<Effort> effort) {
        if (duct.explained().ranked().verdict().isExcluded()) {
            return "not a candidate; see its pages";
        }
        String ends = duct.hasPulls()
                ? "pull at " + duct.pullingEnd() + ", hold at "
                        + duct.pullingEnd().opposite()
                : "";
        return effort.map(found -> found.quantities().innerductsOut() + " out, "
                                + Counted.of(found.quantities().sleeves(), "sleeve") + " in; ")
                        .orElse("")
                + ends;
    }

    /** A duct may be drawn the other way: its A is then the vault that is B here. */
    private static String turned(DuctWork duct, SectionWork section) {
        boolean same = duct.span().from().id().equals(section.vaultA().vault().id());
        return same ? "" : " (its A is B here)";
    }

    static List<VaultWords> words(SheetBook book, SectionWork section) {
        var a = new VaultWords(section.vaultA(), book.in());
        var b = new VaultWords(section.vaultB(), book.in());
        return a.vault().id().equals(b.vault().id()) ? List.of(a) : List.of(a, b);
    }

    private static List<VaultSheet> vaults(
            SheetBook book, SectionWork section, SheetNames names, SheetBlanks page, CoverRoom room) {
        List<VaultWords> words = words(book, section);
        return IntStream.range(0, words.size())
                .mapToObj(place -> VaultSheet.of(
                        place == 0 ? "A" : "B",
                        words.get(place),
                        room.air(words.get(place)),
                        room.rowMm(),
                        names,
                        page))
                .toList();
    }

    static List<String> totals(SheetBook book, SectionWork section) {
        List<Effort> efforts = section.ducts().stream()
                .flatMap(duct -> duct.explained().assessment().effort().stream())
                .toList();
        if (efforts.isEmpty()) {
            return List.of("No hours and no material are planned.");
        }
        SheetUnits units = book.in();
        long bags =
                efforts.stream().mapToLong(effort -> effort.material().bags()).sum();
        long loads =
                efforts.stream().mapToLong(effort -> effort.material().loads()).sum();
        long sleeves = efforts.stream()
                .mapToLong(effort -> effort.quantities().sleeves())
                .sum();
        return List.of(
                "Bring for all ducts: " + Counted.of(sleeves, "sleeve") + ", "
                        + units.both(sum(efforts, effort -> effort.material().sleeveM()), 1, "m") + "; lubricant "
                        + units.one(sum(efforts, effort -> effort.material().lubricantLiters()), 1, "l") + "; "
                        + Counted.of(bags, "bag") + ".",
                "Take away from all ducts: "
                        + units.both(sum(efforts, effort -> effort.material().innerductKg()), 0, "kg")
                        + " of innerduct, " + Counted.of(loads, "load") + ".");
    }

    private static double sum(List<Effort> efforts, ToDoubleFunction<Effort> figure) {
        return efforts.stream().mapToDouble(figure).sum();
    }

    private static SheetCell contact(String contact, SheetBlanks page) {
        String label = contact.substring(0, 1).toUpperCase(Locale.ROOT) + contact.substring(1);
        return SheetCell.of(SheetPart.words(label + ", phone "), SheetPart.blank(page.of(FieldFact.CONTACT, contact)));
    }
}
