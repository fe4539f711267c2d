package org.spanroom.input;

import static org.spanroom.input.HardCase.contents;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.List;

/** Hard cases in the contents table. */
final class HardTables {
    private static final String TABLE = """
            duct,item,kind,inside,outside_diameter,sdr,mass,in_service
            R1,a,innerduct,,40,11,,
            R1,b,cable,a,12,,0.1,live
            R1,c,innerduct,,40,11,,
            """;

    private HardTables() {}

    private static HardCase table(String name, String text) {
        return table(name, text, StandardCharsets.UTF_8);
    }

    private static HardCase table(String name, String text, Charset charset) {
        return contents(name, folder -> Files.write(folder.resolve("contents.csv"), text.getBytes(charset)));
    }

    static List<HardCase> cases() {
        return List.of(
                table("plain", TABLE).reads(3, 0),
                table("semicolons", TABLE.replace(',', ';')).reads(3, 0),
                table("tabs", TABLE.replace(',', '\t')).reads(3, 0),
                table("vertical bars", TABLE.replace(',', '|')).reads(3, 0),
                table("carriage returns", TABLE.replace("\n", "\r\n")).reads(3, 0),
                table("old line ends", TABLE.replace('\n', '\r')).reads(3, 0),
                table("empty lines", "\n\n" + TABLE.replace("\n", "\n\n")).reads(3, 0),
                table("decimal commas", TABLE.replace(',', ';').replace("12;", "12,5;"))
                        .reads(3, 0),
                table("quotes", TABLE.replace("a,innerduct", "\"a\"\"1\",\"innerduct\""))
                        .reads(3, 0),
                table("separator in quotes", TABLE.replace("R1,c", "\"R,1\",c")).reads(3, 0),
                table("inch marks", TABLE.replace("40,", "1.5\",")).reads(3, 0),
                table("UTF-8 with a mark", "\uFEFF" + TABLE).reads(3, 0),
                table("UTF-16LE with a mark", "\uFEFF" + TABLE, StandardCharsets.UTF_16LE)
                        .reads(3, 0),
                table("UTF-16BE with a mark", "\uFEFF" + TABLE, StandardCharsets.UTF_16BE)
                        .reads(3, 0),
                table("UTF-16LE", TABLE, StandardCharsets.UTF_16LE).reads(3, 0),
                table("Windows-1252", TABLE.replace("R1,c", "Stra\u00dfe,c"), Charset.forName("windows-1252"))
                        .reads(3, 0, "encoding_assumed: the table is not UTF-8"),
                table("zero length", "").isRefused("contents.csv: the contents table is empty"),
                table("header alone", "duct,kind\n").reads(0, 0, "layer_issue: the contents table has no rows"),
                table("two columns of one name", TABLE.replace("mass", "Item"))
                        .isRefused("two columns are called item", "Remove one"),
                table("separator stated first", "sep=;\r\n" + TABLE.replace(',', ';'))
                        .reads(3, 0),
                table(
                                "separator stated in UTF-16",
                                "\uFEFFsep=;\n" + TABLE.replace(',', ';'),
                                StandardCharsets.UTF_16LE)
                        .reads(3, 0),
                table("separator stated, then a bad row", "sep=,\n" + TABLE + "R1,d,pipe,,10,,,\n")
                        .reads(3, 1, "contents_row_unusable: line 6: its kind is 'pipe'"),
                table("nothing but a separator", "sep=;").isRefused("contents.csv: the contents table is empty"),
                table("rows and columns of a spreadsheet that are empty", TABLE.replace("\n", ",,\n") + ",,,,,,,,,\n")
                        .reads(3, 0),
                table("decimal commas without quotes", TABLE + "R1,d,cable,,12,5,,0,1,live\n")
                        .reads(3, 1, "contents_row_unusable: line 5: it has 10 cells, and the header 8"),
                table(
                                "blanks that cannot be seen",
                                TABLE.replace(",", "\u00A0,\u200B").replace("R1", "\uFEFFR1"))
                        .reads(3, 0),
                table("workbook", "PK\u0003\u0004\u0014\0xl/workbook.xml").isRefused("a workbook", "Save it as CSV"),
                contents(
                                "old workbook",
                                folder -> Files.write(folder.resolve("contents.csv"), new byte[] {
                                    (byte) 0xD0,
                                    (byte) 0xCF,
                                    0x11,
                                    (byte) 0xE0,
                                    (byte) 0xA1,
                                    (byte) 0xB1,
                                    0x1A,
                                    (byte) 0xE1
                                }))
                        .isRefused("a workbook", "Save it as CSV"),
                contents(
                                "compressed",
                                folder -> Files.write(
                                        folder.resolve("contents.csv"), new byte[] {0x1F, (byte) 0x8B, 8, 0, 0, 0}))
                        .isRefused("it is compressed", "Unpack it"),
                table("other header", "a,b\n1,2\n").isRefused("needs the columns duct and kind; its header is a, b"),
                table("header of a megabyte", "x,".repeat(500_000) + "\n").isRefused("needs the columns duct and kind"),
                table("rows too short and too long", TABLE + "R1\nR1,d,cable,,10,,0.1,live,more,and more\n")
                        .reads(
                                3,
                                2,
                                "contents_row_unusable: line 5: its kind is ''",
                                "contents_row_unusable: line 6: it has 10 cells, and the header 8"),
                table("numbers that are none", TABLE + "R1,d,cable,,10,,Infinity,live\nR1,e,cable,,1e999,,-5,live\n")
                        .reads(
                                5,
                                0,
                                "unusable_value: line 5: 'Infinity' is not a valid number",
                                "unusable_value: line 6: '1e999' is not a valid number"),
                table("quote that is never closed", TABLE + "R1,\"d,cable,,10,,0.1,live\nR1,e,cable,,10,,0.1,live\n")
                        .reads(3, 1, "contents_row_unusable: check for an unclosed quote"),
                table(
                                "quote closed rows later",
                                TABLE
                                        + "\"R1,d,cable,,10,,0.1,live\nR1,e,cable,,10,,0.1,live\nR1,f,\"cable\",,10,,0.1,live\n")
                        .reads(3, 1, "contents_row_unusable: check for an unclosed quote"),
                table("cell of ten megabytes", TABLE + "R1," + "x".repeat(10_000_000) + ",cable,,10,,0.1,live\n")
                        .reads(4, 0),
                table("a hundred thousand rows that are wrong", TABLE + "R1,x,pipe,,1,,,\n".repeat(100_000))
                        .reads(3, 100_000, "contents_row_unusable: 99,000 more features of this kind, not listed"),
                table("zeros", "\0\0\0\0").isRefused("contents.csv: "),
                contents("folder", folder -> Files.createDirectory(folder.resolve("contents.csv")))
                        .isRefused("contents.csv: ", "Name the file in it"),
                contents("nothing there", folder -> folder.resolve("contents.csv"))
                        .isRefused("there is no such file"));
    }
}
