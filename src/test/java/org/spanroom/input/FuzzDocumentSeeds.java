package org.spanroom.input;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.spanroom.config.ConfigReader;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.ColumnGroup;
import org.spanroom.model.fieldwork.FactItem;
import org.spanroom.model.fieldwork.FactSubject;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.output.RecordedSpans;
import org.spanroom.output.columns.SpanColumns;
import org.spanroom.output.columns.SpanLayout;
import org.spanroom.output.table.CellRange;
import org.spanroom.output.table.Column;

/** Writes small valid tables, configs and records for a coverage-guided fuzzer to begin with, and the words that they are made of. */
final class FuzzDocumentSeeds {
    static final List<String> TARGETS = List.of(
            "ConnectionsFuzz",
            "ProgramConfigFuzz",
            "RunConfigFuzz",
            "CloseoutFuzz",
            "FieldBookFuzz",
            "StreetsFuzz",
            "ProposalFuzz",
            "RunRecordFuzz",
            "RunSpansFuzz");

    /** Small inputs are tried sooner. */
    private static final int FACTS_A_SEED = 8;

    private static final ObjectMapper JSON = new ObjectMapper();

    private FuzzDocumentSeeds() {}

    /** Writes a folder of files for each reader, and a dictionary beside it. */
    static void write(Path folder) throws IOException {
        for (String target : TARGETS) {
            Files.createDirectories(folder.resolve(target));
        }
        write(folder, "ConnectionsFuzz/all", """
                name,from,to,cables,value,needed_by,must
                Depot,V1,V2,3,"1,250.50",2027-03-31,yes
                "Pier \"\"B\"\"\",V2,V3,1,,,
                """);
        write(folder, "ConnectionsFuzz/few", "sep=;\nTo;From;Name;Cables\nV2;V1;A;2\n");
        write(folder, "ProgramConfigFuzz/shipped", Files.readString(Path.of("config/program.yaml")));
        write(folder, "ProgramConfigFuzz/demo", Files.readString(Path.of("sample-gis/program.yaml")));
        write(folder, "RunConfigFuzz/demo", Files.readString(Path.of("sample-gis/spanroom.yaml")));
        sections(Files.readString(Path.of("config/spanroom.yaml")))
                .forEach((key, text) -> write(folder, "RunConfigFuzz/" + key, text));
        List<FieldFact> facts = List.of(FieldFact.values());
        for (int first = 0; first < facts.size(); first += FACTS_A_SEED) {
            List<FieldFact> some = facts.subList(first, Math.min(facts.size(), first + FACTS_A_SEED));
            write(folder, "CloseoutFuzz/facts" + first, closeout(some));
            write(folder, "FieldBookFuzz/facts" + first, book(some));
        }
        write(
                folder,
                "StreetsFuzz/lines",
                HardJson.collection(
                        HardJson.line(1).replace("\"route\"", "\"name\""),
                        HardJson.feature(
                                2, "{\"type\":\"MultiLineString\",\"coordinates\":[[[1,2],[3,4]],[[5,6],[7,8]]]}")));
        write(folder, "ProposalFuzz/layers", proposed());
        write(folder, "RunRecordFuzz/run", runRecord(2));
        write(folder, "RunSpansFuzz/spans", spans());
        dictionaries(folder);
    }

    /** Routes that name their vaults, the vaults and a zone, with fields of many kinds. */
    private static String proposed() {
        var routes = new ArrayList<String>();
        var vaults = new ArrayList<String>();
        for (int i = 0; i < 4; i++) {
            routes.add(
                    ("{'type':'Feature','properties':{'OBJECTID':%d,'duct_id':'D-%d','from_mh':'V-%d','to_mh':'V-%d','size_in':4,"
                                    + "'mat':'PVC','len_ft':328.1,'innerducts':3,'inst_yr':1987,'own':'city','status':'LIVE'},"
                                    + "'geometry':{'type':'LineString','coordinates':[[%d,0],[%d,0]]}}")
                            .formatted(i, i, i, i + 1, i, i + 1));
            vaults.add(
                    ("{'type':'Feature','properties':{'mh_id':'V-%d','kind':'manhole','rim_ft':12.5,'depth_ft':8,'traffic':'high'},"
                                    + "'geometry':{'type':'Point','coordinates':[%d,0]}}")
                            .formatted(i, i));
        }
        String zones = FuzzSeeds.ZONES;
        return String.join(FuzzedProposal.SEPARATOR, collection(routes), collection(vaults), zones);
    }

    private static String collection(List<String> features) {
        return HardJson.collection(
                features.stream().map(feature -> feature.replace('\'', '"')).toArray(String[]::new));
    }

    /** One fact as a row of a table. */
    private record FactCells(FieldFact fact) {
        /** Returns its cells from span to unit. */
        String cells() {
            String subject = fact.subject() == FactSubject.SPAN ? "D1:V1:V2," : ",V1";
            return String.join(
                    ",",
                    subject,
                    fact.key(),
                    item(fact.item()),
                    "",
                    value(),
                    fact.kind().units().get(0).symbol());
        }

        private String value() {
            return switch (fact.kind()) {
                case ANSWER -> "yes";
                case DAY -> "2027-02-28";
                case WORD -> fact.words().get(0);
                case TEXT -> "innerduct-1";
                case DIAMETER -> fact == FieldFact.COVER_SIZE ? "700" : fact == FieldFact.INNERDUCT_WALL ? "3" : "33";
                default -> "3";
            };
        }

        private static String item(FactItem item) {
            return switch (item) {
                case INNERDUCT -> "innerduct-1";
                case CABLE -> "cable-1";
                case SLEEVE -> "sleeve-1";
                case END -> "a";
                case INNERDUCT_AT_END -> "innerduct-1 b";
                case CABLE_AT_END -> "cable-1 a";
                case STEP -> "pulling";
                default -> "";
            };
        }
    }

    private static String closeout(List<FieldFact> facts) {
        return facts.stream()
                .map(fact -> "," + new FactCells(fact).cells() + ",C,2027-03-01,,\n")
                .collect(Collectors.joining(
                        "", "code,span,vault,fact,item,planned,value,unit,by,date,supersedes,note\n", ""));
    }

    private static String book(List<FieldFact> facts) {
        var rows = new StringBuilder(
                "format,entry,run,span,vault,fact,item,planned,value,unit,by,date,supersedes,note,entered\n");
        for (int i = 0; i < facts.size(); i++) {
            rows.append("1,").append(i + 1).append(",00c0ffee,").append(new FactCells(facts.get(i)).cells());
            rows.append(",C,2027-03-01,,,2027-03-02\n");
        }
        return rows.toString();
    }

    /** Splits a config at its outermost keys. */
    private static Map<String, String> sections(String config) {
        var sections = new LinkedHashMap<String, String>();
        String key = "head";
        for (String line : config.lines().filter(text -> !text.startsWith("#")).toList()) {
            if (line.matches("[a-z_]+:.*")) {
                key = line.substring(0, line.indexOf(':'));
            }
            sections.merge(key, line + "\n", String::concat);
        }
        sections.remove("head");
        return sections;
    }

    /** Returns the record of a run of so many spans. */
    static String runRecord(int spans) {
        Map<String, Object> config = new LinkedHashMap<>(ConfigReader.asMap(ShippedConfig.get()));
        config.keySet().retainAll(List.of("assumed", "bend", "network", "output", "inputs", "threads"));
        var record = new LinkedHashMap<String, Object>();
        record.put("program", "Spanroom");
        record.put("version", "1");
        record.put("started_at", "2027-01-15T00:00:00Z");
        record.put(
                "inputs",
                List.of(Map.of(
                        "role",
                        "routes",
                        "file",
                        "ducts.geojson",
                        "layer",
                        "ducts",
                        "crs",
                        "OGC:CRS84",
                        "sha256",
                        "8fac1f4c",
                        "parts",
                        List.of(Map.of("file", "ducts.prj", "sha256", "00")),
                        "features_read",
                        3,
                        "features_used",
                        2,
                        "features_rejected",
                        1,
                        "rejected_by_code",
                        Map.of("empty_geometry", 1))));
        record.put("run_spans", spans);
        record.put("run_spans_format", RecordedSpans.FORMAT);
        record.put("spans_ranked", spans);
        record.put("lengths_m", Map.of("routes", 9.5, "spans", 9.5, "remainders", 0, "spans_ranked", 9.5));
        record.put(
                "money_ranked",
                Map.of("currency", "USD", "recovery_money", 1.5, "build_money", 2, "saving_money", 0.5));
        record.put(
                "contents",
                Map.of(
                        "statement",
                        "2 of 2",
                        "spans_ranked_assumed",
                        0,
                        "missing",
                        List.of(Map.of("term", "owner", "without", 1, "of", 2))));
        record.put("findings_by_code", Map.of("missing_value", 24));
        record.put("output_crs", "WGS 84");
        record.put("output_crs_definition", "OGC:CRS84");
        record.put("notes", List.of("a note"));
        record.put("filter", Map.of("where", "rank < 3"));
        record.put("config", config);
        return json(record);
    }

    private static String spans() {
        List<? extends Column<?>> columns = SpanColumns.all(
                        new SpanLayout(List.of(), false, List.of(), ColumnGroup.all()))
                .columns();
        String header = columns.stream().map(Column::name).collect(Collectors.joining(","));
        String row = columns.stream().map(FuzzDocumentSeeds::cell).collect(Collectors.joining(","));
        return header + ",line_wkt\r\n" + (row + ",\"LINESTRING (1.5 2,3 4)\"\r\n").repeat(2);
    }

    /** Returns a cell that goes together with all others: most are 0, and a text that has a range is empty. */
    private static String cell(Column<?> column) {
        if (column.range() instanceof CellRange.Numbers numbers) {
            return column.type() == Column.Type.INTEGER ? numbers.accepts(0) ? "0" : "1" : "0.00";
        }
        return switch (column.type()) {
            case TEXT -> column.range() == CellRange.UNDECLARED ? "a;b" : "";
            case FLAG -> "true";
            case INTEGER, REAL -> "0";
        };
    }

    static String json(Object value) {
        try {
            return JSON.writeValueAsString(value);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Words, so that the fuzzer need not find them letter by letter. */
    private static void dictionaries(Path folder) throws IOException {
        for (String target : TARGETS) {
            var words = new TreeSet<String>();
            try (var seeds = Files.list(folder.resolve(target))) {
                for (Path seed : seeds.toList()) {
                    String text = new String(Files.readAllBytes(seed), StandardCharsets.ISO_8859_1);
                    List.of(text.split("[^A-Za-z0-9_.:-]+", -1)).stream()
                            .filter(word -> word.matches("[A-Za-z0-9_.:-]{2,40}"))
                            .limit(2_000)
                            .forEach(words::add);
                }
            }
            write(
                    folder,
                    target + ".dict",
                    words.stream().map(word -> "\"" + word + "\"\n").collect(Collectors.joining()));
        }
    }

    private static void write(Path folder, String name, String text) {
        try {
            Files.write(folder.resolve(name), text.getBytes(StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(name + " cannot be written", e);
        }
    }
}
