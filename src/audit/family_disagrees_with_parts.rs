#![doc = include_str!("../explain/codes/family-disagrees-with-parts.md")]

use super::Context;
use super::inspected::on_fitting;
use crate::catalogue::{Family, Fitting, Part, Role};
use crate::diagnostics::{Finding, Findings, Severity};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for fitting in context.catalogue.fittings.values() {
        match holders(fitting.family) {
            [] => check_free(fitting, findings),
            holders => check_held(fitting, holders, findings),
        }
    }
}

/// The roles that hold the conductor in a family; none where the family leaves that open.
fn holders(family: Family) -> &'static [Role] {
    match family {
        Family::ConeDeadEnd => &[Role::Cone],
        Family::WedgeDeadEnd => &[Role::Wedge],
        Family::RopeThimble => &[Role::Ferrule, Role::RopeGrip],
        Family::Sleeve => &[Role::Sleeve],
        Family::ParallelGroove | Family::Other => &[],
    }
}

/// A family that some role holds. Where nothing holds at all, `no-gripping-part` tells.
fn check_held(fitting: &Fitting, holders: &[Role], findings: &mut Findings) {
    let own = fitting.gripping().find(|item| holders.contains(&item.part.role));
    match (own, fitting.gripping().next()) {
        (Some(own), _) => {
            check_beside(fitting, holders, findings);
            check_seat(fitting, &own.part, findings);
        }
        (None, Some(other)) => {
            let (words, part) = (words(holders), &other.part);
            let message = format!(
                "no {words} is among its parts: {}, a {}, holds the conductor",
                part.number,
                part.role.word()
            );
            findings.push(wrong_family(Severity::Error, fitting, part, message));
        }
        (None, None) => {}
    }
}

/// What grips in another way beside what holds: a slip in the list, most often.
fn check_beside(fitting: &Fitting, holders: &[Role], findings: &mut Findings) {
    for (nth, item) in fitting.items.iter().enumerate() {
        let (part, role) = (&item.part, item.part.role);
        // A joint of two metals has a tube for the core inside the sleeve.
        let in_sleeve = fitting.family == Family::Sleeve && role == Role::Ferrule;
        if !role.grips() || holders.contains(&role) || in_sleeve {
            continue;
        }
        let message = format!(
            "{}, a {}, is among its parts; in a {} a {} holds the conductor",
            part.number,
            role.word(),
            fitting.family.word(),
            words(holders)
        );
        let finding = disagreement(Severity::Warning, fitting, &format!("parts.{nth}"), message);
        findings.push(finding.related(part.origin.of("role"), "its role"));
    }
}

/// A cone or wedge holds by what it is drawn into; a list without that is not complete.
fn check_seat(fitting: &Fitting, own: &Part, findings: &mut Findings) {
    let is_seat = |role| matches!(role, Role::Body | Role::Socket);
    if is_taper(own.role) && !fitting.items.iter().any(|item| is_seat(item.part.role)) {
        let message = format!("no body or socket is among its parts for {} to go into", own.number);
        findings.push(disagreement(Severity::Warning, fitting, "parts", message));
    }
}

/// A family of clamps and of what has none: a cone or wedge in it belongs to a dead-end, but for joints,
/// which have no family of their own.
fn check_free(fitting: &Fitting, findings: &mut Findings) {
    let Some(taper) = fitting.gripping().find(|item| is_taper(item.part.role)) else { return };
    let (part, joins) = (&taper.part, fitting.conductors.len() > 1);
    let severity = match (fitting.family, part.role) {
        (Family::Other, _) if joins => return,
        // A joint of one conductor names it once.
        (Family::Other, _) => Severity::Warning,
        // A wedge can press two conductors together in a clamp.
        (_, Role::Wedge) if joins => Severity::Warning,
        _ => Severity::Error,
    };
    let message = format!(
        "the fitting is not checked as a dead-end, and {}, a {}, is among its parts",
        part.number,
        part.role.word()
    );
    findings.push(wrong_family(severity, fitting, part, message));
}

fn is_taper(role: Role) -> bool {
    matches!(role, Role::Cone | Role::Wedge)
}

fn wrong_family(severity: Severity, fitting: &Fitting, part: &Part, message: String) -> Finding {
    disagreement(severity, fitting, "family", message)
        .found(fitting.family.word())
        .expected(format!("`{}`, or another role of {}", family_of(part.role).word(), part.number))
        .related(part.origin.of("role"), "its role")
}

/// The family that a gripping part holds in.
fn family_of(role: Role) -> Family {
    let mut families = Family::ALL.iter().copied();
    families.find(|family| holders(*family).contains(&role)).unwrap_or(Family::Other)
}

fn disagreement(severity: Severity, fitting: &Fitting, field: &str, message: String) -> Finding {
    on_fitting(severity, "family-disagrees-with-parts", fitting, field, message)
        .help("check `family`, the list of parts, and the role of each")
}

fn words(roles: &[Role]) -> String {
    let words: Vec<&str> = roles.iter().map(|role| role.word()).collect();
    words.join(" or ")
}
