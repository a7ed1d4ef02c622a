//! Words for what records name by a key.

use crate::catalogue::{
    CardKey, Duty, Family, Fitting, InService, Reuse, Role, StampPlace, StandOutFrom, Status,
};
use crate::mixups::{Consequence, SeenBy, Summary};

/// What a part does, in the words of a parts list.
#[must_use]
pub fn role(role: Role) -> &'static str {
    match role {
        Role::Body => "Body",
        Role::Socket => "Socket",
        Role::Cone => "Cone",
        Role::Wedge => "Wedge",
        Role::Thimble => "Thimble",
        Role::Sleeve => "Sleeve",
        Role::Ferrule => "Ferrule",
        Role::RopeGrip => "Rope grip",
        Role::Screw => "Screw",
        Role::Nut => "Nut",
        Role::Lock => "Lock",
        Role::Pin => "Pin",
        Role::Keeper => "Keeper",
        Role::Bolt => "Bolt",
        Role::Other => "Part",
    }
}

/// How a fitting works.
#[must_use]
pub fn family(family: Family) -> &'static str {
    match family {
        Family::ConeDeadEnd => "Cone dead-end",
        Family::WedgeDeadEnd => "Wedge dead-end",
        Family::RopeThimble => "Rope round a thimble",
        Family::Sleeve => "Sleeve",
        Family::ParallelGroove => "Parallel-groove clamp",
        Family::Other => "Other fitting",
    }
}

/// What a conductor is for.
#[must_use]
pub fn duty(duty: Duty) -> &'static str {
    match duty {
        Duty::Messenger => "Messenger wire",
        Duty::Contact => "Contact wire",
        Duty::Feeder => "Feeder",
        Duty::Earth => "Earth wire",
        Duty::Stay => "Stay",
        Duty::TensioningRope => "Tensioning rope",
        Duty::Dropper => "Dropper",
        Duty::Other => "Other conductor",
    }
}

/// Whether a part may be used again.
#[must_use]
pub fn reuse(reuse: Reuse) -> &'static str {
    match reuse {
        Reuse::Never => "never reuse",
        Reuse::IfUndamaged => "reuse if undamaged",
    }
}

/// How somebody would notice a danger that no measurement shows; `None` where one does, or where it is none.
#[must_use]
pub fn unmeasured(comes: &Consequence) -> Option<&'static str> {
    match comes.seen_by {
        _ if !comes.danger => None,
        SeenBy::Mark => Some("seen by its mark only"),
        _ if comes.hidden => Some("not seen once closed"),
        SeenBy::Measurement | SeenBy::Nothing => None,
    }
}

/// What a table that fittings are built by says of a case: its summary, unless that would read as an order to build what
/// must not be built.
#[must_use]
pub fn to_build(fitting: &Fitting, comes: &Consequence) -> &'static str {
    if must_not_be_built(fitting, comes) { "do not use" } else { comes.summary.words() }
}

/// Whether a part is its fitting's own or proven there, and the fitting itself is withdrawn, superseded or on hold.
#[must_use]
pub fn must_not_be_built(fitting: &Fitting, comes: &Consequence) -> bool {
    fitting.status != Status::Current && matches!(comes.summary, Summary::Right | Summary::ProvenHereToo)
}

/// What a crew does about a status; empty for what may be used.
#[must_use]
pub fn status(status: Status, superseded_by: Option<&str>) -> String {
    match (status, superseded_by) {
        (Status::Current, _) => String::new(),
        (Status::OnHold, _) => "On hold: stop until told".to_owned(),
        (Status::Withdrawn, _) => "Withdrawn: do not use".to_owned(),
        (Status::Superseded, Some(number)) => format!("Superseded by {number}: do not use"),
        (Status::Superseded, None) => "Superseded: do not use".to_owned(),
    }
}

/// What becomes of fittings already in the line.
#[must_use]
pub fn in_service(in_service: InService) -> String {
    match in_service {
        InService::MayStay => "those in the line may stay".to_owned(),
        InService::Inspect => "inspect those in the line".to_owned(),
        InService::ReplaceBy(date) => format!("replace those in the line by {date}"),
        InService::StopNow => "those in the line: stop now, report".to_owned(),
    }
}

/// What the stand-out is measured on.
#[must_use]
pub fn stand_out(from: StandOutFrom) -> &'static str {
    match from {
        StandOutFrom::ConeFace | StandOutFrom::WedgeEnd => "stand-out",
        StandOutFrom::ScrewGap => "gap under screw",
        StandOutFrom::None => "",
    }
}

/// Where the stamp of a gripping part stands.
#[must_use]
pub fn stamp_place(place: StampPlace) -> &'static str {
    match place {
        StampPlace::ThickEnd => "on the thick end",
        StampPlace::Outside => "on the outside",
    }
}

/// Notches in words; empty without any.
#[must_use]
pub fn notches(count: u32) -> String {
    match count {
        0 => String::new(),
        1 => "1\u{a0}notch".to_owned(),
        count => format!("{count}\u{a0}notches"),
    }
}

/// What a card must not lack, as a card calls it.
#[must_use]
pub fn card_key(key: CardKey) -> &'static str {
    match key {
        CardKey::Steps => "steps",
        CardKey::RejectIf => "reject list",
        CardKey::LineTensionMax => "line tension max",
        CardKey::HoldingLoad => "holding load",
        CardKey::Proof => "proof",
        CardKey::Stamp => "stamp",
        CardKey::Mark => "mark",
        CardKey::Insertion => "insertion",
        CardKey::Tail => "tail",
        CardKey::StandOut => "stand-out",
        CardKey::Tightening => "tightening",
        CardKey::Torque => "torque",
        CardKey::Thimble => "thimble",
        CardKey::Ferrule => "ferrule or grips",
        CardKey::RopeGrip => "number of grips",
        CardKey::Die => "die",
        CardKey::Pressed => "pressed size",
        CardKey::Witness => "witness",
    }
}
