package org.spanroom.crs;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.geotools.api.parameter.GeneralParameterValue;
import org.geotools.api.parameter.ParameterValue;
import org.geotools.api.parameter.ParameterValueGroup;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.api.referencing.crs.GeographicCRS;
import org.geotools.api.referencing.crs.ProjectedCRS;

/**
 * Writes a system as .prj files do: prefixed names, methods and parameters by their names there, no axes, no codes.
 *
 * <p>A method that is not in the table is written as OGC WKT 1 without axes, which GIS programs read as well.
 */
final class EsriWkt {
    private static final String OFFSETS = "False_Easting=false_easting,False_Northing=false_northing,";
    private static final String CENTER = "Central_Meridian=central_meridian,";
    private static final String SCALE = "Scale_Factor=scale_factor,";
    private static final String ORIGIN = "Latitude_Of_Origin=latitude_of_origin";
    private static final String PARALLELS =
            "Standard_Parallel_1=standard_parallel_1,Standard_Parallel_2=standard_parallel_2,";

    /** Against GeoTools's name of each method: the name in .prj files, and its parameters against GeoTools's. */
    private static final Map<String, String> METHODS = Map.of(
            "Transverse_Mercator", "Transverse_Mercator:" + OFFSETS + CENTER + SCALE + ORIGIN,
            "Lambert_Conformal_Conic_2SP", "Lambert_Conformal_Conic:" + OFFSETS + CENTER + PARALLELS + ORIGIN,
            "Lambert_Conformal_Conic_1SP",
                    "Lambert_Conformal_Conic:" + OFFSETS + CENTER + "Standard_Parallel_1=latitude_of_origin," + SCALE
                            + ORIGIN,
            "Albers_Conic_Equal_Area", "Albers:" + OFFSETS + CENTER + PARALLELS + ORIGIN,
            "Popular Visualisation Pseudo Mercator",
                    "Mercator_Auxiliary_Sphere:" + OFFSETS + CENTER
                            + "Standard_Parallel_1=latitude_of_origin,Auxiliary_Sphere_Type=latitude_of_origin",
            "Oblique_Stereographic", "Double_Stereographic:" + OFFSETS + CENTER + SCALE + ORIGIN,
            "Polar_Stereographic",
                    "Polar_Stereographic:latitude_of_origin=latitude_of_origin,central_meridian=central_meridian,"
                            + "scale_factor=scale_factor,false_easting=false_easting,false_northing=false_northing",
            "Polar Stereographic (variant B)",
                    "Stereographic_{POLE}_Pole:" + OFFSETS + CENTER + "Standard_Parallel_1=standard_parallel_1",
            "Lambert_Azimuthal_Equal_Area",
                    "Lambert_Azimuthal_Equal_Area:" + OFFSETS
                            + "Central_Meridian=longitude_of_center,Latitude_Of_Origin=latitude_of_center",
            "Oblique_Mercator",
                    "Hotine_Oblique_Mercator_Azimuth_Center:" + OFFSETS + SCALE + "Azimuth=azimuth,"
                            + "Longitude_Of_Center=longitude_of_center,Latitude_Of_Center=latitude_of_center");

    private final CoordinateReferenceSystem plane;
    private final GeographicCRS geographic;
    private final boolean ofDataset;

    private EsriWkt(CoordinateReferenceSystem plane, boolean ofDataset) {
        this.plane = plane;
        this.ofDataset = ofDataset;
        this.geographic = Transforms.geographic(plane);
    }

    static String of(CoordinateReferenceSystem plane, boolean ofDataset) {
        var writer = new EsriWkt(plane, ofDataset);
        return plane instanceof ProjectedCRS projected
                ? writer.projected(projected).orElseGet(writer::fallback)
                : writer.geographicText();
    }

    private String fallback() {
        return WktWriter.ogc(plane, OptionalInt.empty()).replaceAll(",AUTHORITY\\[[^\\]]*\\]", "");
    }

    private Optional<String> projected(ProjectedCRS projected) {
        ParameterValueGroup group = projected.getConversionFromBase().getParameterValues();
        String method = METHODS.get(group.getDescriptor().getName().getCode());
        if (method == null || isSouthOrientated(projected)) {
            return Optional.empty();
        }
        Map<String, Double> values = values(group);
        String[] nameAndParameters = method.split(":", -1);
        var text = new StringBuilder("PROJCS[\"" + underscored(plane.getName().getCode()) + "\"," + geographicText()
                + ",PROJECTION[\"" + nameAndParameters[0].replace("{POLE}", pole(values)) + "\"]");
        for (String parameter : nameAndParameters[1].split(",", -1)) {
            String[] names = parameter.split("=", -1);
            text.append(",PARAMETER[\"" + names[0] + "\"," + values.getOrDefault(names[1], 0.0) + "]");
        }
        return Optional.of(text + "," + lengthUnit() + "]");
    }

    private static boolean isSouthOrientated(ProjectedCRS projected) {
        return projected.getConversionFromBase().getMethod().getName().getCode().contains("South");
    }

    private static String pole(Map<String, Double> values) {
        return values.getOrDefault("standard_parallel_1", 0.0) < 0 ? "South" : "North";
    }

    /** Lengths and angles in the system's own units, as .prj files want them; GeoTools keeps meters and degrees. */
    private Map<String, Double> values(ParameterValueGroup group) {
        double unitM = Transforms.unitLengthM(plane).orElse(1);
        double unitDeg = Transforms.unitDeg(geographic);
        var values = new TreeMap<String, Double>(String.CASE_INSENSITIVE_ORDER);
        for (GeneralParameterValue any : group.values()) {
            if (any instanceof ParameterValue<?> value && value.getValue() instanceof Double number) {
                String name = any.getDescriptor().getName().getCode();
                double inUnit = name.startsWith("false_") ? unitM : name.equals("scale_factor") ? 1 : unitDeg;
                values.put(name, WktWriter.tidy(number / inUnit));
            }
        }
        return values;
    }

    private String geographicText() {
        String name = Datums.findPrjName(geographic)
                .orElseGet(() -> underscored(geographic.getName().getCode()));
        var ellipsoid = geographic.getDatum().getEllipsoid();
        boolean sphere = ellipsoid.getSemiMajorAxis() == ellipsoid.getSemiMinorAxis();
        String meridian =
                underscored(geographic.getDatum().getPrimeMeridian().getName().getCode());
        double meridianDeg = Transforms.meridianDeg(geographic, ofDataset);
        double unitDeg = Transforms.unitDeg(geographic);
        return "GEOGCS[\"GCS_" + name + (meridianDeg == 0 ? "" : "_" + meridian) + "\",DATUM[\"D_" + name
                + "\",SPHEROID[\"" + underscored(ellipsoid.getName().getCode()) + "\"," + ellipsoid.getSemiMajorAxis()
                + "," + (sphere ? 0.0 : ellipsoid.getInverseFlattening()) + "]],PRIMEM[\"" + meridian + "\","
                + meridianDeg
                + "],UNIT[\"" + (unitDeg == 1 ? "Degree" : "Grad") + "\"," + Math.toRadians(unitDeg) + "]]";
    }

    private String lengthUnit() {
        double unitM = Transforms.unitLengthM(plane).orElse(1);
        if (unitM == 1) {
            return "UNIT[\"Meter\",1.0]";
        }
        if (Math.abs(unitM - 0.3048) < 1e-12) {
            return "UNIT[\"Foot\",0.3048]";
        }
        boolean surveyFoot = Math.abs(unitM - 1200.0 / 3937) < 1e-12;
        return "UNIT[\"" + (surveyFoot ? "Foot_US" : "Unit") + "\"," + unitM + "]";
    }

    private static String underscored(String name) {
        return name.replaceAll("[ /,]+", "_").replaceAll("[\"\\[\\]]", "");
    }
}
