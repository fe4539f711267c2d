package org.spanroom.model.fieldwork;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * A fact that crews report: the schema of close-out files and of the field book. The lower-case name is its word in the column
 * {@code fact}. Every blank of a sheet is one of these.
 */
@SuppressWarnings("ImmutableEnumChecker") // The lists are unmodifiable.
public enum FieldFact {
    // How far the work is.
    STATUS(FactSubject.SPAN, FactUse.STATUS, FactKind.WORD, FactItem.NONE, statuses()),
    STATUS_REASON(FactSubject.SPAN, FactUse.STATUS, FactKind.TEXT, FactItem.NONE),

    // What the duct and its contents are.
    BORE_DIAMETER(FactSubject.SPAN, FactUse.DUCT, FactKind.DIAMETER, FactItem.NONE),
    DUCT_CONDITION(
            FactSubject.SPAN,
            FactUse.DUCT,
            FactKind.WORD,
            FactItem.NONE,
            List.of("sound", "oval", "collapsed", "blocked")),
    /** Distance of the obstruction from the vault at the end that the item names. */
    BLOCKED_AT(FactSubject.SPAN, FactUse.DUCT, FactKind.LENGTH, FactItem.END),
    DUCT_FLOODED(FactSubject.SPAN, FactUse.DUCT, FactKind.ANSWER, FactItem.NONE),
    /** How many rigid innerducts were found in the duct, before the work. */
    INNERDUCTS_FOUND(FactSubject.SPAN, FactUse.DUCT, FactKind.COUNT, FactItem.NONE),
    /** How many cables were found in the duct, before the work. */
    CABLES_FOUND(FactSubject.SPAN, FactUse.DUCT, FactKind.COUNT, FactItem.NONE),
    /** Whether an innerduct is there; one of a new name is in addition to the recorded ones. */
    INNERDUCT_THERE(FactSubject.SPAN, FactUse.DUCT, FactKind.ANSWER, FactItem.INNERDUCT),
    INNERDUCT_DIAMETER(FactSubject.SPAN, FactUse.DUCT, FactKind.DIAMETER, FactItem.INNERDUCT),
    INNERDUCT_WALL(FactSubject.SPAN, FactUse.DUCT, FactKind.DIAMETER, FactItem.INNERDUCT),
    INNERDUCT_COLOR(FactSubject.SPAN, FactUse.DUCT, FactKind.TEXT, FactItem.INNERDUCT),
    INNERDUCT_UNCUT(FactSubject.SPAN, FactUse.DUCT, FactKind.ANSWER, FactItem.INNERDUCT_AT_END),
    /** Whether a cable is there; one of a new name is in addition to the recorded ones. */
    CABLE_THERE(FactSubject.SPAN, FactUse.DUCT, FactKind.ANSWER, FactItem.CABLE),
    CABLE_DIAMETER(FactSubject.SPAN, FactUse.DUCT, FactKind.DIAMETER, FactItem.CABLE),
    CABLE_SERVICE(FactSubject.SPAN, FactUse.DUCT, FactKind.WORD, FactItem.CABLE, List.of("live", "dead")),
    CABLE_TAG(FactSubject.SPAN, FactUse.DUCT, FactKind.TEXT, FactItem.CABLE),
    /** The name of the innerduct or sleeve that holds the cable, or {@code loose}. */
    CABLE_IN(FactSubject.SPAN, FactUse.DUCT, FactKind.TEXT, FactItem.CABLE),
    CABLE_SLACK_FOUND(FactSubject.SPAN, FactUse.DUCT, FactKind.LENGTH, FactItem.END),
    /** Row and column, or the number, of the hole in the bank's face at an end. */
    DUCT_HOLE(FactSubject.SPAN, FactUse.DUCT, FactKind.TEXT, FactItem.END),
    /** Whether the innerduct was pulled out. */
    INNERDUCT_OUT(FactSubject.SPAN, FactUse.DUCT, FactKind.ANSWER, FactItem.INNERDUCT),
    /** Whether a dead cable was taken out. */
    CABLE_OUT(FactSubject.SPAN, FactUse.DUCT, FactKind.ANSWER, FactItem.CABLE),
    /** A sleeve that was placed: how many cells it has. */
    SLEEVE_CELLS(FactSubject.SPAN, FactUse.DUCT, FactKind.COUNT, FactItem.SLEEVE),

    // What the work took.
    STEP_HOURS(FactSubject.SPAN, FactUse.PRODUCTION, FactKind.HOURS, FactItem.STEP),
    CREW_PERSONS(FactSubject.SPAN, FactUse.PRODUCTION, FactKind.COUNT, FactItem.NONE),
    /** Largest force on the gauge as the innerduct came out. */
    PULL_FORCE(FactSubject.SPAN, FactUse.PRODUCTION, FactKind.FORCE, FactItem.INNERDUCT),
    /** Largest force with which its cables were held. */
    HOLD_FORCE(FactSubject.SPAN, FactUse.PRODUCTION, FactKind.FORCE, FactItem.INNERDUCT),
    /** The end at which it came out. */
    PULLED_FROM(FactSubject.SPAN, FactUse.PRODUCTION, FactKind.WORD, FactItem.INNERDUCT, List.of("a", "b")),
    /** Length that had come out when the pull stalled. */
    STALLED_AT(FactSubject.SPAN, FactUse.RECORD, FactKind.LENGTH, FactItem.INNERDUCT),
    LUBRICANT_USED(FactSubject.SPAN, FactUse.PRODUCTION, FactKind.LIQUID, FactItem.NONE),
    SLEEVE_USED(FactSubject.SPAN, FactUse.PRODUCTION, FactKind.LENGTH, FactItem.NONE),
    INNERDUCT_MASS(FactSubject.SPAN, FactUse.PRODUCTION, FactKind.MASS, FactItem.NONE),
    RECYCLED_MASS(FactSubject.SPAN, FactUse.PRODUCTION, FactKind.MASS, FactItem.NONE),
    BAGS(FactSubject.SPAN, FactUse.PRODUCTION, FactKind.COUNT, FactItem.NONE),
    LOADS(FactSubject.SPAN, FactUse.PRODUCTION, FactKind.COUNT, FactItem.NONE),
    SEALS_USED(FactSubject.SPAN, FactUse.PRODUCTION, FactKind.COUNT, FactItem.NONE),
    /** All that the work on the span cost. */
    COST(FactSubject.SPAN, FactUse.PRODUCTION, FactKind.MONEY, FactItem.NONE),

    // What is written down for people.
    /** How far the owner lets a live cable move; the crew does not decide it. */
    CABLE_MOVEMENT_ALLOWED(FactSubject.SPAN, FactUse.RECORD, FactKind.LENGTH, FactItem.CABLE),
    CABLE_MOVED(FactSubject.SPAN, FactUse.RECORD, FactKind.LENGTH, FactItem.CABLE),
    LIGHT_BEFORE(FactSubject.SPAN, FactUse.RECORD, FactKind.LIGHT, FactItem.CABLE),
    LIGHT_AFTER(FactSubject.SPAN, FactUse.RECORD, FactKind.LIGHT, FactItem.CABLE),
    /** Who watches the light level, and who is called: name and telephone. */
    CONTACT(FactSubject.SPAN, FactUse.RECORD, FactKind.TEXT, FactItem.OCCASION),
    /** The second, independent method by which a cable was identified. */
    CABLE_IDENTIFIED_BY(FactSubject.SPAN, FactUse.RECORD, FactKind.TEXT, FactItem.CABLE_AT_END),
    /** How a cable that is recorded as dead was proved dead before it was cut. */
    CABLE_PROVED_DEAD_BY(FactSubject.SPAN, FactUse.RECORD, FactKind.TEXT, FactItem.CABLE),
    SPAN_PERMIT(FactSubject.SPAN, FactUse.RECORD, FactKind.TEXT, FactItem.OCCASION),
    NOT_AS_RECORDED(FactSubject.SPAN, FactUse.RECORD, FactKind.TEXT, FactItem.NONE),
    SIGNED_BY(FactSubject.SPAN, FactUse.RECORD, FactKind.TEXT, FactItem.NONE),

    // What the vault is.
    VAULT_KIND(FactSubject.VAULT, FactUse.VAULT, FactKind.TEXT, FactItem.NONE),
    VAULT_VOLUME(FactSubject.VAULT, FactUse.VAULT, FactKind.AIR_VOLUME, FactItem.NONE),
    VAULT_DEPTH(FactSubject.VAULT, FactUse.VAULT, FactKind.LENGTH, FactItem.NONE),
    VAULT_LENGTH(FactSubject.VAULT, FactUse.VAULT, FactKind.LENGTH, FactItem.NONE),
    VAULT_WIDTH(FactSubject.VAULT, FactUse.VAULT, FactKind.LENGTH, FactItem.NONE),
    VAULT_HEIGHT(FactSubject.VAULT, FactUse.VAULT, FactKind.LENGTH, FactItem.NONE),
    COVER_SIZE(FactSubject.VAULT, FactUse.VAULT, FactKind.DIAMETER, FactItem.NONE),
    VAULT_WATER(FactSubject.VAULT, FactUse.VAULT, FactKind.ANSWER, FactItem.NONE),
    VAULT_SURFACE(FactSubject.VAULT, FactUse.VAULT, FactKind.TEXT, FactItem.NONE),
    CABLE_HOLD(FactSubject.VAULT, FactUse.VAULT, FactKind.ANSWER, FactItem.NONE),
    CABLE_SLACK(FactSubject.VAULT, FactUse.VAULT, FactKind.LENGTH, FactItem.NONE),
    GAS_FOUND(FactSubject.VAULT, FactUse.VAULT, FactKind.ANSWER, FactItem.NONE),
    JOINT_POWER(FactSubject.VAULT, FactUse.VAULT, FactKind.ANSWER, FactItem.NONE),
    VAULT_INSPECTED(FactSubject.VAULT, FactUse.VAULT, FactKind.DAY, FactItem.NONE),

    // What was written down at the vault.
    VENTILATED(FactSubject.VAULT, FactUse.RECORD, FactKind.MINUTES, FactItem.NONE),
    OXYGEN(FactSubject.VAULT, FactUse.RECORD, FactKind.PERCENT, FactItem.OCCASION),
    /** Share of the lower flammable limit. */
    FLAMMABLE(FactSubject.VAULT, FactUse.RECORD, FactKind.PERCENT, FactItem.OCCASION),
    TOXIC(FactSubject.VAULT, FactUse.RECORD, FactKind.TEXT, FactItem.OCCASION),
    VAULT_PERMIT(FactSubject.VAULT, FactUse.RECORD, FactKind.TEXT, FactItem.OCCASION),
    ATTENDANT(FactSubject.VAULT, FactUse.RECORD, FactKind.TEXT, FactItem.NONE);

    private final FactSubject subject;
    private final FactUse use;
    private final FactKind kind;
    private final FactItem item;
    private final List<String> words;

    FieldFact(FactSubject subject, FactUse use, FactKind kind, FactItem item) {
        this(subject, use, kind, item, List.of());
    }

    FieldFact(FactSubject subject, FactUse use, FactKind kind, FactItem item, List<String> words) {
        this.subject = subject;
        this.use = use;
        this.kind = kind;
        this.item = item;
        this.words = List.copyOf(words);
    }

    private static List<String> statuses() {
        return Arrays.stream(WorkStatus.values()).map(WorkStatus::key).toList();
    }

    public FactSubject subject() {
        return subject;
    }

    public FactUse use() {
        return use;
    }

    public FactKind kind() {
        return kind;
    }

    public FactItem item() {
        return item;
    }

    /** Returns the words that a value may be; empty for kinds other than {@link FactKind#WORD}. */
    public List<String> words() {
        return words;
    }

    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Finds a fact by its word. */
    public static Optional<FieldFact> find(String word) {
        return Optional.ofNullable(ByWord.FACTS.get(word));
    }

    /** Made when all facts are. */
    private static final class ByWord {
        static final Map<String, FieldFact> FACTS =
                Arrays.stream(values()).collect(Collectors.toUnmodifiableMap(FieldFact::key, fact -> fact));
    }
}
