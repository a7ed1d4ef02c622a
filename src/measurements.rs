//! The one table of what is measured on a part: a line a measurement.
//!
//! Everything that handles measurements is made from it: the record and its JSON Schema (`records`), the
//! geometry (`grip`), the way from one to the other (`catalogue`), and with them the data, the list of a
//! part's page, what a drawing office can adjust, and the words for what is missing.

/// Hands the table to a macro, which takes of each line what it needs:
///
/// - what it is, for documents and schema;
/// - its name in the code `as` its key in records, which carries the unit;
/// - what a record may state `=>` the quantity that it is;
/// - how a part's page lists it: `As` words of its own, or with the measurement above it, as its
///   `Tolerance` or as the size of `Each`;
/// - `wanted`: what it is called where a verdict waits for it;
/// - `adjusted`: what it is called where a drawing office could change it, `by` which step, how many
///   times; the result stays `above` zero, or above what is said.
macro_rules! table {
    ($take:ident) => {
        $take! {
            kinds {
                /// A cone split lengthwise that closes round the conductor.
                Collet(Collet, ColletRecord) = "collet";
                /// A cone driven between the wires.
                SpreadingCone(SpreadingCone, SpreadingConeRecord) = "spreading_cone";
                /// The tapered seat round a spreading cone.
                Socket(Socket, SocketRecord) = "socket";
                /// A body with a conical seat.
                Body(Body, BodyRecord) = "body";
                /// A wedge that lies beside the conductor.
                Wedge(Wedge, WedgeRecord) = "wedge";
                /// The body that a wedge goes into.
                WedgeBody(WedgeBody, WedgeBodyRecord) = "wedge_body";
                /// A grooved eye that a rope lies round.
                Thimble(Thimble, ThimbleRecord) = "thimble";
                /// A pressed tube on a rope.
                Ferrule(Ferrule, FerruleRecord) = "ferrule";
                /// A pressed tube on a conductor.
                Sleeve(Ferrule, FerruleRecord) = "sleeve";
                /// A screwed grip on a rope.
                RopeGrip(RopeGrip, RopeGripRecord) = "rope_grip";
            }

            /// A cone split lengthwise that closes round the conductor.
            Collet, ColletRecord, "a collet" {
                /// Bore as made, before it closes.
                bore as "bore_mm": Size<Mm, 200> => Length [
                    As("Bore"), wanted "the bore", adjusted "bore" by 0.05 x 60
                ];
                /// Half-width of the bore's tolerance.
                bore_tolerance as "bore_tolerance_mm": SizeOrZero<Mm, 10> => Length [Tolerance];
                /// Pieces that the cone is made of; one where absent.
                pieces as "pieces": Count<1, 12> => u32 [As("Pieces")];
                /// Slits that let it close.
                slits as "slits": Count<0, 24> => u32 [
                    As("Slits"), wanted "the number of slits", adjusted "slits" by 1.0 x 6
                ];
                /// Width of one slit.
                slit_width as "slit_width_mm": Size<Mm, 50> => Length [
                    Each, wanted "the width of the slits", adjusted "slit width" by 0.1 x 20
                ];
                /// Between the axis and the outside taper.
                half_angle as "half_angle_deg": Size<Deg, 60> => Angle [
                    As("Half-angle"), wanted "the cone's half-angle", adjusted "half-angle" by 0.5 x 10
                ];
                /// Length along the axis.
                length as "length_mm": Size<Mm, 1000> => Length [As("Length")];
                /// Stand-out where the conductor just fills the bore; negative below the face.
                stand_out_at_bore as "stand_out_at_bore_mm": Position<Mm, 500> => Length [
                    As("Stand-out where the conductor just fills the bore"),
                    adjusted "stand-out at bore (a longer or shorter large end)" by 0.5 x 30 above -500.0
                ];
            }

            /// A cone driven between the wires.
            SpreadingCone, SpreadingConeRecord, "a spreading cone" {
                /// Diameter of the large end.
                large_diameter as "large_diameter_mm": Size<Mm, 200> => Length [
                    As("Large diameter"), wanted "the cone's large end", adjusted "large end" by 0.1 x 60
                ];
                /// Between the axis and the flank.
                half_angle as "half_angle_deg": Size<Deg, 60> => Angle [
                    As("Half-angle"), wanted "the cone's half-angle"
                ];
                /// Length along the axis.
                length as "length_mm": Size<Mm, 1000> => Length [As("Length")];
                /// Hole through which the inner wires go.
                hole_diameter as "hole_diameter_mm": Size<Mm, 200> => Length [
                    As("Hole"), wanted "the hole", adjusted "hole" by 0.1 x 60
                ];
                /// Wires that go through the hole on the conductor it is made for.
                wires_through_hole as "wires_through_hole": Count<1, 1000> => u32 [
                    As("Wires through the hole")
                ];
                /// Slits that let the hole close.
                slits as "slits": Count<0, 24> => u32 [As("Slits"), wanted "the number of slits"];
                /// Width of one slit.
                slit_width as "slit_width_mm": Size<Mm, 50> => Length [Each, wanted "the width of the slits"];
            }

            /// The tapered seat round a spreading cone.
            Socket, SocketRecord, "a socket" {
                /// Diameter of the large end.
                large_diameter as "large_diameter_mm": Size<Mm, 300> => Length [
                    As("Large diameter"), wanted "the socket's large end"
                ];
                /// Between the axis and the flank.
                half_angle as "half_angle_deg": Size<Deg, 60> => Angle [
                    As("Half-angle"), wanted "the socket's half-angle"
                ];
                /// Length of the taper along the axis.
                length as "length_mm": Size<Mm, 1000> => Length [As("Length of the taper")];
                /// Hole that the conductor comes through.
                throat_diameter as "throat_diameter_mm": Size<Mm, 300> => Length [
                    As("Throat"), wanted "the throat", adjusted "throat" by 0.1 x 30
                ];
                /// How far the closing part can push the cone in.
                travel as "travel_mm": SizeOrZero<Mm, 500> => Length [
                    As("Travel"), wanted "the travel", adjusted "travel" by 0.5 x 30
                ];
            }

            /// A body with a conical seat for a collet.
            Body, BodyRecord, "a body" {
                /// Between the axis and the seat.
                half_angle as "half_angle_deg": Size<Deg, 60> => Angle [As("Half-angle of the seat")];
                /// Diameter of the seat's large end.
                large_diameter as "large_diameter_mm": Size<Mm, 300> => Length [
                    As("Large diameter of the seat")
                ];
                /// Length along the axis.
                length as "length_mm": Size<Mm, 2000> => Length [As("Length")];
                /// What it is anchored by, such as "clevis".
                eye as "eye": Text => String [As("Anchored by")];
            }

            /// A wedge that lies beside the conductor.
            Wedge, WedgeRecord, "a wedge" {
                /// Thickness at the large end.
                thickness as "thickness_mm": Size<Mm, 300> => Length [
                    As("Thickness at the large end"), wanted "the wedge's thickness",
                    adjusted "thickness" by 0.1 x 60
                ];
                /// Taper of its one sloping flank.
                taper as "taper_deg": Size<Deg, 60> => Angle [As("Taper"), wanted "the wedge's taper"];
                /// Length along the conductor.
                length as "length_mm": Size<Mm, 1000> => Length [
                    As("Length"), wanted "the wedge's length", adjusted "length" by 1.0 x 60
                ];
            }

            /// The body that a wedge goes into.
            WedgeBody, WedgeBodyRecord, "a wedge body" {
                /// Width of the mouth.
                mouth as "mouth_mm": Size<Mm, 500> => Length [As("Mouth"), wanted "the body's mouth"];
                /// Taper of the sloping wall.
                taper as "taper_deg": Size<Deg, 60> => Angle [As("Taper"), wanted "the body's taper"];
                /// Length along the conductor.
                length as "length_mm": Size<Mm, 2000> => Length [As("Length")];
                /// How far the closing part can push the wedge in.
                travel as "travel_mm": SizeOrZero<Mm, 500> => Length [
                    As("Travel"), wanted "the travel", adjusted "travel" by 0.5 x 30
                ];
                /// Which side of a grooved wire the wedge bears on.
                bears_on as "bears_on": BearsOnWord => BearsOn [
                    As("The wedge bears on the wire's"), wanted "the side it bears on"
                ];
            }

            /// A grooved eye that a rope lies round.
            Thimble, ThimbleRecord, "a thimble" {
                /// Width of the groove.
                groove as "groove_mm": Size<Mm, 200> => Length [As("Groove"), wanted "the groove"];
                /// Clear width of the eye.
                inside_width as "inside_width_mm": Size<Mm, 1000> => Length [As("Inside width")];
                /// Clear length of the eye.
                inside_length as "inside_length_mm": Size<Mm, 1000> => Length [As("Inside length")];
            }

            /// A pressed tube: a ferrule on a rope, or a sleeve on a conductor.
            Ferrule, FerruleRecord, "a ferrule or sleeve" {
                /// Bore before pressing.
                bore as "bore_mm": Size<Mm, 200> => Length [
                    As("Bore before pressing"), wanted "the bore", adjusted "bore" by 0.05 x 40
                ];
                /// Length before pressing.
                length as "length_mm": Size<Mm, 2000> => Length [As("Length before pressing")];
                /// The die that presses it.
                die as "die": Text => String [As("Die"), wanted "the die"];
                /// Size after pressing.
                pressed as "pressed_mm": Range<Size<Mm, 300>> => Range<Length> [
                    As("Size after pressing"), wanted "the pressed size"
                ];
            }

            /// A screwed grip on a rope.
            RopeGrip, RopeGripRecord, "a rope grip" {
                /// Thinnest and thickest rope that it holds.
                rope as "rope_mm": Range<Size<Mm, 200>> => Range<Length> [
                    As("Rope diameter"), wanted "the rope sizes"
                ];
                /// Distance from grip to grip.
                spacing as "spacing_mm": Size<Mm, 1000> => Length [As("Distance from grip to grip")];
            }
        }
    };
}

pub(crate) use table;
