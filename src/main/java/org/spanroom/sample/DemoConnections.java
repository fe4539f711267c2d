package org.spanroom.sample;

/** The invented connections that are wanted through the demo city. */
final class DemoConnections {
    static final String FILE = "connections.csv";

    /** One row for each; vaults are those of the city that {@link DemoCity#writeDemo} writes. */
    static final String TEXT = """
            name,from,to,cables,value,needed_by,must
            Breakwater pumps,V4-1045,V2-1037,6,180000,2027-04-30,yes
            Lantern Hill clinic,V4-1082,V2-1007,4,120000,2027-02-15,yes
            Signal tower,V2-1038,V1-1012,6,110000,2027-06-30,no
            Cooper street school,V2-1035,V3-1052,2,40000,,no
            Salt works,V4-1098,V1-1025,2,30000,,no
            Market hall,V4-1060,V3-1030,4,70000,2026-12-31,no
            Hillside reservoir,V4-1053,V1-1017,6,80000,,no
            Tram substation,V1-1047,V2-1013,6,60000,2027-03-31,yes
            Net loft studios,V1-1037,V1-1072,9,60000,,no
            """;

    private DemoConnections() {}
}
