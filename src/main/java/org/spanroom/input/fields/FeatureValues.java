package org.spanroom.input.fields;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.spanroom.config.RunConfig;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.input.layer.CappedLog;
import org.spanroom.input.layer.Interner;
import org.spanroom.input.layer.LayerHeader;
import org.spanroom.input.layer.SourceFeature;
import org.spanroom.input.layer.SourceNumber;
import org.spanroom.model.CalendarDay;
import org.spanroom.model.Term;
import org.spanroom.model.network.CatalogUse;
import org.spanroom.model.network.RejectedValue;

/** The values of one feature. One object reads all features of a layer in turn; what is wrong goes to the layer's log. */
public final class FeatureValues extends TermValues {
    /** Length of a day in ISO 8601; a time may follow. */
    private static final int ISO_DAY = 10;

    private final LayerFields fields;
    private final CappedLog log;
    private final Map<Set<Term>, Set<Term>> assumedSets = new HashMap<>();
    private final Map<CatalogUse, CatalogUse> distinctUses = new HashMap<>();
    private final Interner distinctRejected = new Interner();
    private final Interner interner = new Interner();
    private final Optional<LocalDate> runDate;
    private CatalogUse listedUse = CatalogUse.NONE;

    private List<@Nullable Object> values = List.of();
    private String featureId = "";
    private double lonDeg;
    private double latDeg;

    public FeatureValues(RunConfig config, LayerFields fields, CappedLog log) {
        super(config);
        this.fields = fields;
        this.log = log;
        this.runDate = config.permit().findOnDate();
    }

    /** Turns to a next feature. */
    public void start(SourceFeature feature, Term idTerm, double atLonDeg, double atLatDeg) {
        values = feature.values();
        lonDeg = atLonDeg;
        latDeg = atLatDeg;
        clear();
        listedUse = CatalogUse.NONE;
        featureId = Long.toString(feature.number());
        String name = text(idTerm);
        if (!name.isEmpty()) {
            featureId = name;
        }
    }

    /** Returns the owner's name of the feature, or its number in the layer where it has none. */
    public String featureId() {
        return featureId;
    }

    /** Returns the terms that the values read so far were assumed for; one object for equal sets. */
    Set<Term> assumedTerms() {
        Set<Term> known = assumedSets.get(assumed());
        if (known == null) {
            known = Set.copyOf(assumed());
            assumedSets.put(known, known);
        }
        return known;
    }

    /** Notes what the rows of a table assumed for this feature and took from the catalog. */
    void note(ContentsTable.Listed listed) {
        assumed().addAll(listed.assumed());
        rejected().addAll(listed.rejected());
        listedUse = listed.catalogUse();
    }

    /** Returns what was recorded so far and could not be used; one object for equal lists, for a wrong unit rejects every value. */
    public List<RejectedValue> rejectedValues() {
        return rejected().isEmpty() ? List.of() : distinctRejected.one(List.copyOf(rejected()));
    }

    /** Returns the fields that are kept, as they are recorded, "" where nothing is; neighbors share one list. */
    public List<String> kept() {
        if (fields.kept().isEmpty()) {
            return List.of();
        }
        var recorded = new ArrayList<String>();
        for (LayerFields.Column column : fields.kept()) {
            Object value = value(column);
            recorded.add(value == null ? "" : interner.one(SourceNumber.text(value)));
        }
        return interner.one(List.copyOf(recorded));
    }

    /** Returns what was taken from the catalog so far; one object for equal uses. */
    CatalogUse catalogUse() {
        return distinctUses.computeIfAbsent(offers().use().and(listedUse), key -> key);
    }

    /** Returns the recorded day, or nothing; a text that is no day of the calendar is a finding. */
    public Optional<LocalDate> dateQuietly(Term term) {
        String text = textQuietly(term);
        if (text.isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(LocalDate.parse(text.length() > ISO_DAY ? text.substring(0, ISO_DAY) : text));
        } catch (DateTimeParseException e) {
            reject(FindingCode.UNUSABLE_VALUE, term, text, "'" + text + "' is not a date in the form 2027-03-31");
            return Optional.empty();
        }
    }

    /** Returns the recorded day of something that has happened, or nothing; one that cannot be, or lies after the run date, is a finding. */
    public Optional<LocalDate> pastDateQuietly(Term term) {
        Optional<LocalDate> day = dateQuietly(term);
        Optional<String> problem = day.flatMap(this::whyNotPast);
        problem.ifPresent(why -> reject(FindingCode.UNUSABLE_VALUE, term, String.valueOf(day.orElseThrow()), why));
        return problem.isPresent() ? Optional.empty() : day;
    }

    private Optional<String> whyNotPast(LocalDate day) {
        if (CalendarDay.find(day.toString()).isEmpty()) {
            return Optional.of("'" + day + "' is not " + CalendarDay.YEARS);
        }
        return runDate.filter(day::isAfter).map(today -> "'" + day + "' is after the run date, " + today);
    }

    @Override
    public void add(FindingCode code, String field, Supplier<String> detail) {
        log.add(
                code,
                field,
                () -> Finding.of(code, log.source(), featureId, detail.get())
                        .inField(field)
                        .at(lonDeg, latDeg));
    }

    @Override
    Optional<LayerFields.Column> find(Term term) {
        return fields.find(term);
    }

    @Override
    @Nullable
    Object value(LayerFields.Column column) {
        return values.get(column.index());
    }

    /** Returns the mapped fields that the layer does not have, each with the first term that it is mapped to, or {@code keep}; to be asked when it has been read. */
    public Map<String, String> absentFields(LayerHeader header) {
        var absent = new TreeMap<String, String>();
        for (Term term : Term.values()) {
            fields.find(term)
                    .filter(column -> !wasEverRecorded(term) && !header.fields().contains(column.field()))
                    .ifPresent(column -> absent.putIfAbsent(column.field(), term.key()));
        }
        for (LayerFields.Column column : fields.kept()) {
            if (!header.fields().contains(column.field())) {
                absent.putIfAbsent(column.field(), "keep");
            }
        }
        return absent;
    }
}
