//! The measurements of a part as written.

use crate::records::record::{one_of, record};
use crate::records::{BearsOnWord, Count, Deg, Mm, Position, Size, SizeOrZero, Text};
use crate::units::Range;

one_of! {
    /// The measurements of a part, by what it is.
    GeometryRecord ("a geometry") {
        /// A cone split lengthwise that closes round the conductor.
        Collet = "collet": ColletRecord;
        /// A cone driven between the wires.
        SpreadingCone = "spreading_cone": SpreadingConeRecord;
        /// The tapered seat round a spreading cone.
        Socket = "socket": SocketRecord;
        /// A body with a conical seat.
        Body = "body": BodyRecord;
        /// A wedge that lies beside the conductor.
        Wedge = "wedge": WedgeRecord;
        /// The body that a wedge goes into.
        WedgeBody = "wedge_body": WedgeBodyRecord;
        /// A grooved eye that a rope lies round.
        Thimble = "thimble": ThimbleRecord;
        /// A pressed tube on a rope.
        Ferrule = "ferrule": FerruleRecord;
        /// A pressed tube on a conductor.
        Sleeve = "sleeve": FerruleRecord;
        /// A screwed grip on a rope.
        RopeGrip = "rope_grip": RopeGripRecord;
    }
}

record! {
    /// A collet.
    ColletRecord ("a collet") {
        /// Bore as made, before it closes.
        bore as "bore_mm": Size<Mm, 200>, Optional;
        /// Half-width of the bore's tolerance.
        bore_tolerance as "bore_tolerance_mm": SizeOrZero<Mm, 10>, Optional;
        /// Pieces that the cone is made of.
        pieces: Count<1, 12>, Optional;
        /// Slits that let it close.
        slits: Count<0, 24>, Optional;
        /// Width of one slit.
        slit_width as "slit_width_mm": Size<Mm, 50>, Optional;
        /// Between the axis and the outside taper.
        half_angle as "half_angle_deg": Size<Deg, 60>, Optional;
        /// Length along the axis.
        length as "length_mm": Size<Mm, 1000>, Optional;
        /// Stand-out where the conductor just fills the bore; negative below the face.
        stand_out_at_bore as "stand_out_at_bore_mm": Position<Mm, 500>, Optional;
    }
}

record! {
    /// A spreading cone.
    SpreadingConeRecord ("a spreading cone") {
        /// Diameter of the large end.
        large_diameter as "large_diameter_mm": Size<Mm, 200>, Optional;
        /// Between the axis and the flank.
        half_angle as "half_angle_deg": Size<Deg, 60>, Optional;
        /// Length along the axis.
        length as "length_mm": Size<Mm, 1000>, Optional;
        /// Hole through which the inner wires go.
        hole_diameter as "hole_diameter_mm": Size<Mm, 200>, Optional;
        /// Wires that go through the hole on the conductor it is made for.
        wires_through_hole: Count<1, 1000>, Optional;
        /// Slits that let the hole close.
        slits: Count<0, 24>, Optional;
        /// Width of one slit.
        slit_width as "slit_width_mm": Size<Mm, 50>, Optional;
    }
}

record! {
    /// A socket.
    SocketRecord ("a socket") {
        /// Diameter of the large end.
        large_diameter as "large_diameter_mm": Size<Mm, 300>, Optional;
        /// Between the axis and the flank.
        half_angle as "half_angle_deg": Size<Deg, 60>, Optional;
        /// Length of the taper along the axis.
        length as "length_mm": Size<Mm, 1000>, Optional;
        /// Hole that the conductor comes through.
        throat_diameter as "throat_diameter_mm": Size<Mm, 300>, Optional;
        /// How far the closing part can push the cone in.
        travel as "travel_mm": SizeOrZero<Mm, 500>, Optional;
    }
}

record! {
    /// A body.
    BodyRecord ("a body") {
        /// Between the axis and the seat.
        half_angle as "half_angle_deg": Size<Deg, 60>, Optional;
        /// Diameter of the seat's large end.
        large_diameter as "large_diameter_mm": Size<Mm, 300>, Optional;
        /// Length along the axis.
        length as "length_mm": Size<Mm, 2000>, Optional;
        /// What the fitting is fastened by.
        eye: Text, Optional;
    }
}

record! {
    /// A wedge.
    WedgeRecord ("a wedge") {
        /// Thickness at the large end.
        thickness as "thickness_mm": Size<Mm, 300>, Optional;
        /// Taper of its one sloping flank.
        taper as "taper_deg": Size<Deg, 60>, Optional;
        /// Length along the conductor.
        length as "length_mm": Size<Mm, 1000>, Optional;
    }
}

record! {
    /// The body that a wedge goes into.
    WedgeBodyRecord ("a wedge body") {
        /// Width of the mouth.
        mouth as "mouth_mm": Size<Mm, 500>, Optional;
        /// Taper of the sloping wall.
        taper as "taper_deg": Size<Deg, 60>, Optional;
        /// Length along the conductor.
        length as "length_mm": Size<Mm, 2000>, Optional;
        /// How far the closing part can push the wedge in.
        travel as "travel_mm": SizeOrZero<Mm, 500>, Optional;
        /// Which side of a grooved wire the wedge bears on.
        bears_on: BearsOnWord, Optional;
    }
}

record! {
    /// A thimble.
    ThimbleRecord ("a thimble") {
        /// Width of the groove.
        groove as "groove_mm": Size<Mm, 200>, Optional;
        /// Clear width of the eye.
        inside_width as "inside_width_mm": Size<Mm, 1000>, Optional;
        /// Clear length of the eye.
        inside_length as "inside_length_mm": Size<Mm, 1000>, Optional;
    }
}

record! {
    /// A ferrule or sleeve.
    FerruleRecord ("a ferrule or sleeve") {
        /// Bore before pressing.
        bore as "bore_mm": Size<Mm, 200>, Optional;
        /// Length before pressing.
        length as "length_mm": Size<Mm, 2000>, Optional;
        /// The die that presses it.
        die: Text, Optional;
        /// Size after pressing.
        pressed as "pressed_mm": Range<Size<Mm, 300>>, Optional;
    }
}

record! {
    /// A rope grip.
    RopeGripRecord ("a rope grip") {
        /// Thinnest and thickest rope that it holds.
        rope as "rope_mm": Range<Size<Mm, 200>>, Optional;
        /// Distance from grip to grip.
        spacing as "spacing_mm": Size<Mm, 1000>, Optional;
    }
}
