/** Names of columns and criteria where the payload gives only their keys, written with spaces. */
(function (S) {
  'use strict';

  const COLUMNS = {
    span_id: 'Span',
    score_points: 'Score',
    exclusion: 'Why excluded',
    reasons: 'All reasons why excluded',
    duct_bank: 'Bank',
    routes: 'Lines drawn',
    vault_a: 'Vault A',
    vault_b: 'Vault B',
    inside_diameter_mm: 'Inside diameter',
    bend_total_deg: 'Bends in total',
    fill_now_pct: 'Fill today',
    fill_removed_pct: 'Fill once innerducts are out',
    fill_final_pct: 'Fill with new cables',
    innerducts_out: 'Innerducts that come out',
    positions_now: 'Positions today',
    positions_after: 'Positions after recovery',
    binding_rule: 'What limits the positions',
    pull_outcome: 'Pull',
    pull_better_vault: 'Better end to pull from',
    pull_utilization_pct: 'Pull limit used',
    pull_tightest_limit: 'Tightest pull limit',
    feasible_chance_pct: 'Chance that it works',
    top_chance_pct: 'Chance to be at the top',
    knowledge_pct: 'Recorded values',
    zone_kinds: 'Permit zones',
    recovery_needs: 'Permits needed',
    recovery_lead_days: 'Time to get permits',
    site_hours: 'Work on site',
    recovery_money: 'Recovery, at the rates',
    build_money: 'New build, at the rates',
    saving_money: 'Saving, at the rates',
    recovery_low_money: 'Recovery, low',
    recovery_likely_money: 'Recovery, likely',
    recovery_high_money: 'Recovery, high',
    build_low_money: 'New build, low',
    build_likely_money: 'New build, likely',
    build_high_money: 'New build, high',
    saving_low_money: 'Saving, low',
    saving_likely_money: 'Saving, likely',
    saving_high_money: 'Saving, high',
    saving_ratio: 'Saved per money spent',
    ease_pull_pct: 'Pull limit used, for the score',
    ease_water_places: 'Wet places',
    ease_access_drawbacks: 'Access drawbacks',
    score_low_points: 'Score, low',
    score_high_points: 'Score, high',
    permits_avoided_count: 'Permits avoided',
    new_build_lead_days: 'Permit time of new build',
    contents_source: 'Where the contents are from',
    circuits_at_risk: 'Live circuits at risk',
    innerduct_out_kg: 'Innerduct that comes out',
    co2e_ice_kg: 'CO2e avoided',
    drawn_length_m: 'Length as drawn',
    positions_gained_few: 'Positions gained, few in the duct',
    positions_gained_many: 'Positions gained, many in the duct',
    spare: 'Spare duct',
    shared_a_hours: 'Time shared with a neighbor at A',
    shared_b_hours: 'Time shared with a neighbor at B',
    site_hour_money: 'Cost of an hour on site',
    nights: 'Night shifts',
    bore_avoided_m: 'Boring avoided',
    new_duct_positions: 'Positions of new duct',
    new_duct_money: 'First new duct',
    further_duct_money: 'Each additional new duct',
  };

  const CRITERIA = {
    room_gained: 'Positions gained',
    shortage: 'Few positions today',
    ease_pull: 'Easy pull',
    ease_bends: 'Few bends',
    ease_water: 'Little water',
    ease_access: 'Easy access',
    saving: 'Saving over new build',
    permits_avoided: 'Permits avoided',
    knowledge: 'Well recorded',
    length: 'Length',
  };

  const upper = (text) => text.charAt(0).toUpperCase() + text.slice(1);

  /** A column's name; a better one in the payload comes first. */
  S.columnLabel = (column) => {
    const metric = column.key.replace(/_ft$/, '_m').replace(/_in$/, '_mm').replace(/_lb$/, '_kg');
    const fromKey = column.key.replaceAll('_', ' ');
    return fromKey.startsWith(column.label) && COLUMNS[metric] ? COLUMNS[metric] : upper(column.label);
  };

  S.criterionLabel = (criterion) =>
    criterion.label === criterion.key.replaceAll('_', ' ') && CRITERIA[criterion.key]
      ? CRITERIA[criterion.key]
      : upper(criterion.label);
})(window.Spanroom);
