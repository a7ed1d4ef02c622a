//! The tones of materials, for light paper and for dark screens.

use crate::section::MaterialGroup;

/// The three shades of a material, on light paper and on a dark screen.
pub(super) fn shades(group: MaterialGroup) -> ([&'static str; 3], [&'static str; 3]) {
    GROUPS.iter().find(|row| row.0 == group).map_or((GROUPS[3].1, GROUPS[3].2), |row| (row.1, row.2))
}

/// The tone of a gripping part, on light paper and on a dark screen.
pub(super) fn grip(group: MaterialGroup) -> (&'static str, &'static str) {
    GRIPS.iter().find(|row| row.0 == group).map_or((GRIPS[3].1, GRIPS[3].2), |row| (row.1, row.2))
}

/// Every material, in a fixed order.
pub(super) fn groups() -> impl Iterator<Item = MaterialGroup> {
    GROUPS.iter().map(|row| row.0)
}

type Row = (MaterialGroup, [&'static str; 3], [&'static str; 3]);

/// Our own tones: pale, plain and deep of one material differ in lightness enough for grey copies.
const GROUPS: [Row; 8] = [
    (MaterialGroup::Copper, ["#fbe6d8", "#f2c4a4", "#dd9d74"], ["#3a2418", "#5c3723", "#7c4d31"]),
    (MaterialGroup::Bronze, ["#f8efcf", "#ebd793", "#cfb45f"], ["#302a12", "#4c421b", "#695b27"]),
    (MaterialGroup::Aluminium, ["#f1f5f8", "#d9e2e9", "#b9c6d1"], ["#262c31", "#3b454d", "#525f6a"]),
    (MaterialGroup::Steel, ["#e3e7eb", "#c0c9d1", "#9aa6b1"], ["#1d232a", "#2f3a45", "#475563"]),
    (MaterialGroup::Stainless, ["#e6eeec", "#c4d5d1", "#9db4af"], ["#1b2826", "#2c403c", "#425d57"]),
    (MaterialGroup::Iron, ["#ebe7e2", "#d0c8bf", "#aba094"], ["#28241f", "#3f3931", "#595147"]),
    (MaterialGroup::Zinc, ["#eeeef4", "#d3d3e0", "#b0b0c4"], ["#232330", "#37374b", "#4e4e68"]),
    (MaterialGroup::Polymer, ["#e4f2e1", "#c0dfba", "#94c08c"], ["#18281a", "#264029", "#3a5f3e"]),
];

/// What is looked at first: 3:1 off white bodies, yet lines on it are 4.5:1 off it.
const GRIPS: [(MaterialGroup, &str, &str); 8] = [
    (MaterialGroup::Copper, "#c37848", "#9e5e36"),
    (MaterialGroup::Bronze, "#a0882f", "#7c6924"),
    (MaterialGroup::Aluminium, "#7e8c99", "#5e6c78"),
    (MaterialGroup::Steel, "#7c8c9d", "#5d6c7b"),
    (MaterialGroup::Stainless, "#6c918a", "#53706a"),
    (MaterialGroup::Iron, "#94897b", "#73695d"),
    (MaterialGroup::Zinc, "#8787a6", "#67678b"),
    (MaterialGroup::Polymer, "#619857", "#4a7443"),
];
