package org.spanroom.sample;

import java.util.Locale;
import java.util.function.Function;
import org.spanroom.output.table.Column;

/** The fields of the routes layer, in the order of its columns. */
enum RouteField {
    ROUTE_ID("route_id", 't', "name of the drawn line"),
    DUCT_ID("duct_id", 't', "name of the duct; pieces of one duct have the same name"),
    BANK_ID("bank_id", 't', "name of the duct bank"),
    BORE_IN("bore_in", 3, "inside diameter of the duct in inches, or the side of a square bore"),
    BORE_SHAPE("bore_shape", 't', "round or square"),
    DUCT_TYPE("duct_type", 't', "type of duct"),
    MATERIAL("material", 't', "material of the duct"),
    INNERDUCTS("innerducts", 'i', "number of innerducts"),
    INNERDUCT_OD_IN("innerd_od", 3, "outside diameter of the innerducts in inches"),
    INNERDUCT_SDR("innerd_sdr", 1, "outside diameter over wall of the innerducts"),
    CABLES("cables", 'i', "number of cables"),
    CABLE_OD_IN("cable_od", 3, "outside diameter of the cables in inches"),
    CABLE_LB_KFT("cable_lbkf", 1, "mass of one cable in pounds per 1000 feet"),
    IN_SERVICE("in_service", 't', "live, dead or unknown"),
    FLOODED("flooded", 't', "yes or no"),
    SURFACE("surface", 't', "surface above the duct"),
    OWNER("owner", 't', "owner of the duct"),
    YEAR("year", 'i', "year in which the duct was laid"),
    CONDITION("condition", 't', "sound, oval, collapsed or blocked"),
    LENGTH_FT("length_ft", 1, "recorded length in feet"),
    VAULT_A("vault_a", 't', "vault at the first vertex"),
    VAULT_B("vault_b", 't', "vault at the last vertex"),
    QUALITY("quality", 't', "position quality, QL-A (best) to QL-D"),
    DUCT_SIZE("duct_size", 't', "catalog row of the duct; for some, instead of the bore"),
    INNERDUCT_SIZE("innerd_siz", 't', "catalog row of the innerducts; for some, instead of diameter and SDR"),
    MAY_MOVE("may_move", 't', "whether the cables may be moved into sleeves"),
    CONSENT("consent", 't', "whether the owner consents to the work"),
    LOOSE_OK("loose_ok", 't', "whether the owner allows loose fiber in the duct"),
    SPLICED("spliced", 't', "whether a cable is spliced between the vaults"),
    GROUTED("grouted", 't', "whether the innerducts are grouted in"),
    CIRCUITS("circuits", 'i', "number of circuits on the cables"),
    CO_OWNERS("co_owners", 't', "other owners of the duct"),
    EMBARGO("embargo", 't', "no work until this day"),
    RESERVED("reserved", 'i', "number of positions promised to the owner or to customers"),
    BESIDE_OK("beside_ok", 't', "whether the owner allows cables beside rigid innerducts"),
    HOLE_A("hole_a", 't', "hole of the duct at the first vertex: a number, or row/column"),
    HOLE_B("hole_b", 't', "hole of the duct at the last vertex"),
    SLACK_A("slack_a", 't', "cable slack of this duct at the first vertex, with its unit"),
    SLACK_B("slack_b", 't', "cable slack of this duct at the last vertex, with its unit"),
    UNCUT_A("uncut_a", 't', "whether all its innerducts run uncut through the vault at the first vertex"),
    UNCUT_B("uncut_b", 't', "whether all its innerducts run uncut through the vault at the last vertex");

    private final String shortName;
    private final int form;
    private final String meaning;

    RouteField(String shortName, int form, String meaning) {
        this.shortName = shortName;
        this.form = form;
        this.meaning = meaning;
    }

    String field() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Returns the name in Shapefiles, of at most ten characters. */
    String shortName() {
        return shortName;
    }

    String meaning() {
        return meaning;
    }

    Column<RouteFeature> column() {
        Function<RouteFeature, Object> cell = route -> route.attributes().find(this);
        return switch (form) {
            case 't' -> Column.text(field(), shortName, meaning, cell);
            case 'i' -> Column.integer(field(), shortName, meaning, cell);
            default -> Column.real(field(), shortName, form, meaning, cell);
        };
    }
}
