package org.spanroom.testing;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;

/** GDAL's check of GeoPackages against the requirements of the standard; where it is not installed the test is skipped, but not on a build server. */
public final class GeoPackageValidator {
    private static final String MODULE = "osgeo_utils.samples.validate_gpkg";

    private GeoPackageValidator() {}

    /** Demands that it finds nothing in a file, with its further checks, and with warnings as errors. */
    public static void demandNothingFound(Path file) {
        String found = ExternalTool.pythonWith(MODULE).run("-m", MODULE, "--extra", "--warning-as-error", "-k", file);
        assertThat(found.strip()).as(file.toString()).isEmpty();
    }
}
