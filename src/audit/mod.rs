//! What an inspector would say of a catalogue: one file a rule.

mod aluminium_against_copper;
mod body_too_small;
mod breaking_load_outside_material;
mod clauses_of_text;
mod conductor_names_alike;
#[cfg(test)]
mod conductor_tests;
mod conductors;
mod cone_as_hard_as_body;
mod cone_thinner_than_hole;
mod contact_wire_outside_standard;
mod contact_wire_width_differs;
mod context;
mod contradicting_dies;
mod contradicting_figures;
mod contradicting_names;
mod contradicting_plain_texts;
mod contradicting_wires;
mod copies_not_issued;
mod copies_still_out;
mod copper_against_zinc;
mod date_before_edition;
mod date_gone_by;
mod date_to_come;
mod draw_in_contradicts_windows;
mod drum_tags_alike;
mod edition_behind;
mod family_disagrees_with_parts;
mod ferrule_of_one_leg;
mod figure_not_in_record;
mod figures_of_gear;
mod figures_of_text;
mod fitting_texts;
mod forced_under_load;
mod grease_on_grip;
mod grip_not_known;
mod hidden_mix_up;
mod hidden_mix_up_marks_alike;
mod hidden_mix_up_without_witness;
mod hold_notice_stands;
mod hold_without_notice;
mod holding_load_above_proof;
mod holding_load_above_termination;
mod holding_load_too_low;
mod hyphened_words;
mod incomplete;
mod insertion_too_long;
mod insertion_too_short;
mod inspected;
mod interface_of_no_fitting;
mod interfaces_alike;
mod known_figures;
mod known_names;
mod known_parts;
mod layer_not_full;
mod length_implausible;
mod limit_looser;
mod line_tension_near_breaking;
mod line_tension_too_high;
mod load_orders;
mod load_words;
mod look_alike_conductors;
mod mark_colour_forbidden;
mod mark_colour_reserved;
mod mark_colours_too_close;
mod mark_missing;
mod mark_text_confusable;
mod mark_text_is_marking;
mod mark_text_is_nominal_size;
mod mark_text_is_stamp;
mod marks_alike;
mod marks_alike_in_grey;
mod marks_contradict;
mod name_contradicts_record;
mod no_gripping_part;
mod nominal_size_differs;
mod not_lacking;
mod not_yet_in_force;
mod notice_dates_contradict;
mod notice_named_nowhere;
mod opened_under_load;
#[cfg(test)]
mod opening_tests;
mod opening_verbs;
mod opening_words;
mod orders_of_text;
mod other_units_of_text;
mod own_part_does_not_grip;
mod plain_texts;
mod pressed_size_implausible;
mod procedure_of_other_family;
mod proof_above_breaking_load;
mod proof_contradicts_geometry;
mod proof_does_not_count;
mod proof_given_up;
mod proposals;
mod prose_of_note;
mod readings_not_apart;
mod receipt_before_issue;
mod receipt_without_copies;
mod replaced_after_action;
mod reused_against_record;
mod rope_grip_on_single_strand;
mod rope_grips_outside_standard;
mod socket_misses_throat;
mod spanner_implausible;
mod stamp_differs;
mod stamps_alike;
mod stand_out_contradicts_geometry;
mod stand_out_grows_under_tension;
mod stand_out_of_other_family;
mod stand_out_too_deep;
mod stated_diameter_differs;
mod stated_diameter_from_section;
mod stated_diameter_in_inches;
mod stated_load_in_kilograms_force;
mod stated_load_in_tonnes;
mod stated_mass_differs;
mod stated_mass_in_pounds;
mod stated_mass_per_hundred_metres;
mod stated_resistance_differs;
mod stated_section_differs;
mod stated_section_is_circle_area;
mod stated_section_is_nominal_size;
mod stated_section_is_outer_group;
mod steps_out_of_order;
mod stretch_of_text;
mod supersession_does_not_fit;
mod tail_contradicts_insertion;
mod tail_too_short;
mod taper_not_self_holding;
mod text_contradicts_record;
mod thimble_does_not_fit;
mod thread_not_read;
mod thread_of_no_part;
mod tolerance_implausible;
mod tools_of_text;
mod torque_above_bolt_strength;
mod torque_implausible;
mod torque_unlike_others;
mod torque_window_wide;
mod touching;
mod travel_too_long;
mod two_parts_for_one_place;
mod units_of_text;
mod unknown_card;
mod unknown_value;
mod unseen;
mod unusable_part_in_fitting;
mod value_absent;
mod value_behind_other_word;
mod value_run_on;
mod verb_forms;
mod wear_limits_disagree;
mod window_not_measured;
mod wires_through_hole_differ;
mod witness_reads_nothing;
mod words_of_text;
mod worn_wire_not_held;

pub use context::Context;

use crate::diagnostics::Findings;
use rayon::prelude::*;

/// A rule adds what it finds.
type Rule = fn(Context<'_>, &mut Findings);

/// Every rule, in the order of its file's name.
const RULES: &[Rule] = &[
    aluminium_against_copper::check,
    body_too_small::check,
    breaking_load_outside_material::check,
    conductor_names_alike::check,
    cone_as_hard_as_body::check,
    cone_thinner_than_hole::check,
    contact_wire_outside_standard::check,
    contact_wire_width_differs::check,
    copies_not_issued::check,
    copies_still_out::check,
    copper_against_zinc::check,
    date_before_edition::check,
    date_gone_by::check,
    date_to_come::check,
    draw_in_contradicts_windows::check,
    drum_tags_alike::check,
    edition_behind::check,
    family_disagrees_with_parts::check,
    ferrule_of_one_leg::check,
    figure_not_in_record::check,
    forced_under_load::check,
    grease_on_grip::check,
    grip_not_known::check,
    hidden_mix_up::check,
    hidden_mix_up_marks_alike::check,
    hidden_mix_up_without_witness::check,
    hold_notice_stands::check,
    hold_without_notice::check,
    holding_load_above_proof::check,
    holding_load_above_termination::check,
    holding_load_too_low::check,
    incomplete::check,
    insertion_too_long::check,
    insertion_too_short::check,
    interface_of_no_fitting::check,
    interfaces_alike::check,
    layer_not_full::check,
    length_implausible::check,
    limit_looser::check,
    line_tension_near_breaking::check,
    line_tension_too_high::check,
    look_alike_conductors::check,
    mark_colour_forbidden::check,
    mark_colour_reserved::check,
    mark_colours_too_close::check,
    mark_missing::check,
    mark_text_confusable::check,
    mark_text_is_marking::check,
    mark_text_is_nominal_size::check,
    mark_text_is_stamp::check,
    marks_alike::check,
    marks_alike_in_grey::check,
    marks_contradict::check,
    name_contradicts_record::check,
    no_gripping_part::check,
    nominal_size_differs::check,
    not_lacking::check,
    not_yet_in_force::check,
    notice_dates_contradict::check,
    notice_named_nowhere::check,
    opened_under_load::check,
    own_part_does_not_grip::check,
    pressed_size_implausible::check,
    procedure_of_other_family::check,
    proof_above_breaking_load::check,
    proof_contradicts_geometry::check,
    proof_does_not_count::check,
    proof_given_up::check,
    readings_not_apart::check,
    receipt_before_issue::check,
    receipt_without_copies::check,
    replaced_after_action::check,
    reused_against_record::check,
    rope_grip_on_single_strand::check,
    rope_grips_outside_standard::check,
    socket_misses_throat::check,
    spanner_implausible::check,
    stamp_differs::check,
    stamps_alike::check,
    stand_out_contradicts_geometry::check,
    stand_out_grows_under_tension::check,
    stand_out_of_other_family::check,
    stand_out_too_deep::check,
    stated_diameter_differs::check,
    stated_diameter_from_section::check,
    stated_diameter_in_inches::check,
    stated_load_in_kilograms_force::check,
    stated_load_in_tonnes::check,
    stated_mass_differs::check,
    stated_mass_in_pounds::check,
    stated_mass_per_hundred_metres::check,
    stated_resistance_differs::check,
    stated_section_differs::check,
    stated_section_is_circle_area::check,
    stated_section_is_nominal_size::check,
    stated_section_is_outer_group::check,
    steps_out_of_order::check,
    supersession_does_not_fit::check,
    tail_contradicts_insertion::check,
    tail_too_short::check,
    taper_not_self_holding::check,
    text_contradicts_record::check,
    thimble_does_not_fit::check,
    thread_not_read::check,
    thread_of_no_part::check,
    tolerance_implausible::check,
    torque_above_bolt_strength::check,
    torque_implausible::check,
    torque_unlike_others::check,
    torque_window_wide::check,
    travel_too_long::check,
    two_parts_for_one_place::check,
    unknown_card::check,
    unknown_value::check,
    unusable_part_in_fitting::check,
    value_absent::check,
    value_behind_other_word::check,
    value_run_on::check,
    wear_limits_disagree::check,
    window_not_measured::check,
    wires_through_hole_differ::check,
    witness_reads_nothing::check,
    worn_wire_not_held::check,
];

/// Everything that the rules find.
#[must_use]
pub fn check(context: Context<'_>) -> Findings {
    let of_rule = |rule: &Rule| {
        let mut findings = Findings::new();
        rule(context, &mut findings);
        findings
    };
    // One by one: some rules take far longer than others.
    let found: Vec<Findings> = RULES.par_iter().with_max_len(1).map(of_rule).collect();
    let mut findings = Findings::new();
    found.into_iter().for_each(|found| findings.extend(found));
    findings
}
