package org.spanroom.sample;

/** The config that comes with an invented city: its files and its fields. */
final class SampleConfig {
    private static final String TEXT = """
            # The config of the invented city: its files, its fields, and the run date. All other keys have the values of
            # config/spanroom.yaml, which explains every key.

            inputs:
              routes:
                file: %s
                fields:
                  route: route_id
                  duct: duct_id
                  duct_bank: bank_id
                  inside_diameter: {field: bore_in, unit: in}
                  bore_shape: bore_shape
                  duct_type: duct_type
                  duct_material: material
                  innerduct_count: innerducts
                  innerduct_outside_diameter: {field: innerduct_od_in, unit: in}
                  innerduct_sdr: innerduct_sdr
                  cable_count: cables
                  cable_outside_diameter: {field: cable_od_in, unit: in}
                  cable_mass: {field: cable_lb_kft, unit: lb/1000ft}
                  in_service: in_service
                  flooded: flooded
                  surface: surface
                  owner: owner
                  year: year
                  condition: condition
                  recorded_length: {field: length_ft, unit: ft}
                  vault_a: vault_a
                  vault_b: vault_b
                  position_quality: quality
                  owner_consent: consent
                  loose_cable_allowed: loose_ok
                  splice_inside: spliced
                  innerduct_fixed: grouted
                  circuits_at_risk: circuits
                  joint_owners: co_owners
                  embargo_until: embargo
                  beside_allowed: beside_ok
                  positions_reserved: reserved
                  duct_size: duct_size
                  innerduct_size: innerduct_size
                  cable_may_move: may_move
                  hole_a: hole_a
                  hole_b: hole_b
                  slack_a: slack_a
                  slack_b: slack_b
                  continuous_at_a: uncut_a
                  continuous_at_b: uncut_b
              vaults:
                file: %s
                fields:
                  vault: vault_id
                  vault_kind: kind
                  vault_elevation: {field: elev_m, unit: m}
                  vault_volume: {field: volume, unit: m3}
                  vault_water: water
                  vault_surface: surface
                  cable_hold: hold
                  cable_slack: {field: slack_ft, unit: ft}
                  vault_depth: {field: depth_ft, unit: ft}
                  vault_length: {field: in_len_ft, unit: ft}
                  vault_width: {field: in_wid_ft, unit: ft}
                  vault_height: {field: in_high_ft, unit: ft}
                  cover_size: {field: lid_in, unit: in}
                  gas_found: gas
                  joint_power: power
                  vault_inspected: inspected
              contents:
                file: contents.csv
                diameter_unit: in
                mass_unit: lb/1000ft
              zones:
                file: zones.gpkg
                fields:
                  zone: zone_id
                  zone_kind: zone_type
                  zone_name: title
                  zone_from: starts
                  zone_until: until

            permit:
              on_date: 2026-11-29         # run date for zones and embargoes, so that the demo always gives the same results
            """;

    private static final String DEMO_OUTPUT = """

            output:
              folder: output/demo
            """;

    private SampleConfig() {}

    /**
     * Returns the text of the config.
     *
     * @param demo whether it is the demo city, whose results have a folder of their own
     */
    static String text(DemoCity.Format format, boolean demo) {
        return TEXT.formatted(source(format.routes()), source(format.vaults())) + (demo ? DEMO_OUTPUT : "");
    }

    /** From {@code file (layer name)} to the lines of the config. */
    private static String source(String file) {
        return file.replace(" (layer ", "\n    layer: ").replace(")", "");
    }
}
