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
                /// Example: `{ bore_mm: 14.3, slits: 3, slit_width_mm: 1.0, half_angle_deg: 5 }`
                Collet(Collet, ColletRecord) = "collet";
                /// A cone driven between the wires.
                /// Example: `{ large_diameter_mm: 17.0, half_angle_deg: 8, hole_diameter_mm: 8.6 }`
                SpreadingCone(SpreadingCone, SpreadingConeRecord) = "spreading_cone";
                /// The tapered seat round a spreading cone.
                /// Example: `{ large_diameter_mm: 24.6, half_angle_deg: 8, throat_diameter_mm: 14.5 }`
                Socket(Socket, SocketRecord) = "socket";
                /// A body with a conical seat.
                /// Example: `{ half_angle_deg: 5, large_diameter_mm: 40, eye: clevis }`
                Body(Body, BodyRecord) = "body";
                /// A wedge that lies beside the conductor.
                /// Example: `{ thickness_mm: 14.0, taper_deg: 6, length_mm: 80 }`
                Wedge(Wedge, WedgeRecord) = "wedge";
                /// The body that a wedge goes into.
                /// Example: `{ mouth_mm: 27.0, taper_deg: 6, travel_mm: 12, bears_on: width }`
                WedgeBody(WedgeBody, WedgeBodyRecord) = "wedge_body";
                /// A grooved eye that a rope lies round.
                /// Example: `{ groove_mm: 9.0, inside_width_mm: 25, inside_length_mm: 45 }`
                Thimble(Thimble, ThimbleRecord) = "thimble";
                /// A pressed tube on a rope.
                /// Example: `{ bore_mm: 18.4, outside_mm: 26, pressed_mm: { min: 15.8, max: 16.2 } }`
                Ferrule(Ferrule, FerruleRecord) = "ferrule";
                /// A pressed tube on a conductor.
                /// Example: `{ bore_mm: 18.4, outside_mm: 26, pressed_mm: { min: 15.8, max: 16.2 } }`
                Sleeve(Ferrule, FerruleRecord) = "sleeve";
                /// A screwed grip on a rope.
                /// Example: `{ rope_mm: { min: 7.5, max: 8.5 }, spacing_mm: 50 }`
                RopeGrip(RopeGrip, RopeGripRecord) = "rope_grip";
            }

            /// A cone split lengthwise that closes round the conductor.
            Collet, ColletRecord, "a collet" {
                /// Bore as made, before it closes.
                /// Example: `14.3`
                bore as "bore_mm": Size<Mm, 200> => Length [
                    As("Bore"), wanted "the bore", adjusted "bore" by 0.05 x 60
                ];
                /// Half-width of the bore's tolerance.
                /// Default: `0`
                /// Example: `0.05`
                bore_tolerance as "bore_tolerance_mm": SizeOrZero<Mm, 10> => Length [Tolerance];
                /// Pieces that the cone is made of.
                /// Default: `1`
                /// Example: `2`
                pieces as "pieces": Count<1, 12> => u32 [As("Pieces")];
                /// Slits that let it close.
                /// Example: `3`
                slits as "slits": Count<0, 24> => u32 [
                    As("Slits"), wanted "the number of slits", adjusted "slits" by 1.0 x 6
                ];
                /// Width of one slit.
                /// Example: `1.0`
                slit_width as "slit_width_mm": Size<Mm, 50> => Length [
                    Each, wanted "the width of the slits", adjusted "slit width" by 0.1 x 20
                ];
                /// Half-width of the slit width's tolerance.
                /// Default: `0`
                /// Example: `0.05`
                slit_width_tolerance as "slit_width_tolerance_mm": SizeOrZero<Mm, 10> => Length [Tolerance];
                /// Between the axis and the outside taper.
                /// Example: `5`
                half_angle as "half_angle_deg": Size<Deg, 60> => Angle [
                    As("Half-angle"), wanted "the cone's half-angle", adjusted "half-angle" by 0.5 x 10
                ];
                /// Length along the axis.
                /// Example: `60`
                length as "length_mm": Size<Mm, 1000> => Length [As("Length")];
                /// Half-width of the length's tolerance.
                /// Default: `0`
                /// Example: `0.05`
                length_tolerance as "length_tolerance_mm": SizeOrZero<Mm, 10> => Length [Tolerance];
                /// Stand-out where the conductor just fills the bore; negative below the face.
                /// Example: `6.0`
                stand_out_at_bore as "stand_out_at_bore_mm": Position<Mm, 500> => Length [
                    As("Stand-out where the conductor just fills the bore"),
                    adjusted "stand-out at bore (a longer or shorter large end)" by 0.5 x 30 above -500.0
                ];
                /// Half-width of the stand-out at bore's tolerance.
                /// Default: `0`
                /// Example: `0.05`
                stand_out_at_bore_tolerance as "stand_out_at_bore_tolerance_mm": SizeOrZero<Mm, 10> => Length [Tolerance];
            }

            /// A cone driven between the wires.
            SpreadingCone, SpreadingConeRecord, "a spreading cone" {
                /// Diameter of the large end.
                /// Example: `17.0`
                large_diameter as "large_diameter_mm": Size<Mm, 200> => Length [
                    As("Large diameter"), wanted "the cone's large end", adjusted "large end" by 0.1 x 60
                ];
                /// Half-width of the large diameter's tolerance.
                /// Default: `0`
                /// Example: `0.05`
                large_diameter_tolerance as "large_diameter_tolerance_mm": SizeOrZero<Mm, 10> => Length [Tolerance];
                /// Between the axis and the flank.
                /// Example: `8`
                half_angle as "half_angle_deg": Size<Deg, 60> => Angle [
                    As("Half-angle"), wanted "the cone's half-angle"
                ];
                /// Length along the axis.
                /// Example: `24`
                length as "length_mm": Size<Mm, 1000> => Length [As("Length")];
                /// Half-width of the length's tolerance.
                /// Default: `0`
                /// Example: `0.05`
                length_tolerance as "length_tolerance_mm": SizeOrZero<Mm, 10> => Length [Tolerance];
                /// Hole through which the inner wires go.
                /// Example: `8.6`
                hole_diameter as "hole_diameter_mm": Size<Mm, 200> => Length [
                    As("Hole"), wanted "the hole", adjusted "hole" by 0.1 x 60
                ];
                /// Half-width of the hole's tolerance.
                /// Default: `0`
                /// Example: `0.05`
                hole_diameter_tolerance as "hole_diameter_tolerance_mm": SizeOrZero<Mm, 10> => Length [Tolerance];
                /// Wires that go through the hole on the conductor it is made for.
                /// Example: `7`
                wires_through_hole as "wires_through_hole": Count<1, 1000> => u32 [
                    As("Wires through the hole")
                ];
                /// Slits that let the hole close.
                /// Example: `2`
                slits as "slits": Count<0, 24> => u32 [As("Slits"), wanted "the number of slits"];
                /// Width of one slit.
                /// Example: `1.0`
                slit_width as "slit_width_mm": Size<Mm, 50> => Length [Each, wanted "the width of the slits"];
                /// Half-width of the slit width's tolerance.
                /// Default: `0`
                /// Example: `0.05`
                slit_width_tolerance as "slit_width_tolerance_mm": SizeOrZero<Mm, 10> => Length [Tolerance];
            }

            /// The tapered seat round a spreading cone.
            Socket, SocketRecord, "a socket" {
                /// Diameter of the large end.
                /// Example: `24.6`
                large_diameter as "large_diameter_mm": Size<Mm, 300> => Length [
                    As("Large diameter"), wanted "the socket's large end"
                ];
                /// Half-width of the large diameter's tolerance.
                /// Default: `0`
                /// Example: `0.05`
                large_diameter_tolerance as "large_diameter_tolerance_mm": SizeOrZero<Mm, 10> => Length [Tolerance];
                /// Between the axis and the flank.
                /// Example: `8`
                half_angle as "half_angle_deg": Size<Deg, 60> => Angle [
                    As("Half-angle"), wanted "the socket's half-angle"
                ];
                /// Length of the taper along the axis.
                /// Example: `36`
                length as "length_mm": Size<Mm, 1000> => Length [As("Length of the taper")];
                /// Half-width of the length's tolerance.
                /// Default: `0`
                /// Example: `0.05`
                length_tolerance as "length_tolerance_mm": SizeOrZero<Mm, 10> => Length [Tolerance];
                /// Hole that the conductor comes through.
                /// Example: `14.5`
                throat_diameter as "throat_diameter_mm": Size<Mm, 300> => Length [
                    As("Throat"), wanted "the throat", adjusted "throat" by 0.1 x 30
                ];
                /// Half-width of the throat's tolerance.
                /// Default: `0`
                /// Example: `0.05`
                throat_diameter_tolerance as "throat_diameter_tolerance_mm": SizeOrZero<Mm, 10> => Length [Tolerance];
                /// How far the closing part can push the cone in.
                /// Example: `8`
                travel as "travel_mm": SizeOrZero<Mm, 500> => Length [
                    As("Travel"), wanted "the travel", adjusted "travel" by 0.5 x 30
                ];
                /// Half-width of the travel's tolerance.
                /// Default: `0`
                /// Example: `0.05`
                travel_tolerance as "travel_tolerance_mm": SizeOrZero<Mm, 10> => Length [Tolerance];
            }

            /// A body with a conical seat for a collet.
            Body, BodyRecord, "a body" {
                /// Between the axis and the seat.
                /// Example: `5`
                half_angle as "half_angle_deg": Size<Deg, 60> => Angle [As("Half-angle of the seat")];
                /// Diameter of the seat's large end.
                /// Example: `40`
                large_diameter as "large_diameter_mm": Size<Mm, 300> => Length [
                    As("Large diameter of the seat")
                ];
                /// Half-width of the large diameter's tolerance.
                /// Default: `0`
                /// Example: `0.05`
                large_diameter_tolerance as "large_diameter_tolerance_mm": SizeOrZero<Mm, 10> => Length [Tolerance];
                /// Length along the axis.
                /// Example: `70`
                length as "length_mm": Size<Mm, 2000> => Length [As("Length")];
                /// Half-width of the length's tolerance.
                /// Default: `0`
                /// Example: `0.05`
                length_tolerance as "length_tolerance_mm": SizeOrZero<Mm, 10> => Length [Tolerance];
                /// What it is anchored by, such as "clevis".
                /// Example: `clevis`
                eye as "eye": Text => String [As("Anchored by")];
            }

            /// A wedge that lies beside the conductor.
            Wedge, WedgeRecord, "a wedge" {
                /// Thickness at the large end.
                /// Example: `14.0`
                thickness as "thickness_mm": Size<Mm, 300> => Length [
                    As("Thickness at the large end"), wanted "the wedge's thickness",
                    adjusted "thickness" by 0.1 x 60
                ];
                /// Half-width of the thickness's tolerance.
                /// Default: `0`
                /// Example: `0.05`
                thickness_tolerance as "thickness_tolerance_mm": SizeOrZero<Mm, 10> => Length [Tolerance];
                /// Taper of its one sloping flank.
                /// Example: `6`
                taper as "taper_deg": Size<Deg, 60> => Angle [As("Taper"), wanted "the wedge's taper"];
                /// Length along the conductor.
                /// Example: `80`
                length as "length_mm": Size<Mm, 1000> => Length [
                    As("Length"), wanted "the wedge's length", adjusted "length" by 1.0 x 60
                ];
                /// Half-width of the length's tolerance.
                /// Default: `0`
                /// Example: `0.05`
                length_tolerance as "length_tolerance_mm": SizeOrZero<Mm, 10> => Length [Tolerance];
            }

            /// The body that a wedge goes into.
            WedgeBody, WedgeBodyRecord, "a wedge body" {
                /// Width of the mouth.
                /// Example: `27.0`
                mouth as "mouth_mm": Size<Mm, 500> => Length [As("Mouth"), wanted "the body's mouth"];
                /// Half-width of the mouth's tolerance.
                /// Default: `0`
                /// Example: `0.05`
                mouth_tolerance as "mouth_tolerance_mm": SizeOrZero<Mm, 10> => Length [Tolerance];
                /// Taper of the sloping wall.
                /// Example: `6`
                taper as "taper_deg": Size<Deg, 60> => Angle [As("Taper"), wanted "the body's taper"];
                /// Length along the conductor.
                /// Example: `95`
                length as "length_mm": Size<Mm, 2000> => Length [As("Length")];
                /// Half-width of the length's tolerance.
                /// Default: `0`
                /// Example: `0.05`
                length_tolerance as "length_tolerance_mm": SizeOrZero<Mm, 10> => Length [Tolerance];
                /// How far the closing part can push the wedge in.
                /// Example: `12`
                travel as "travel_mm": SizeOrZero<Mm, 500> => Length [
                    As("Travel"), wanted "the travel", adjusted "travel" by 0.5 x 30
                ];
                /// Half-width of the travel's tolerance.
                /// Default: `0`
                /// Example: `0.05`
                travel_tolerance as "travel_tolerance_mm": SizeOrZero<Mm, 10> => Length [Tolerance];
                /// Which side of a grooved wire the wedge bears on.
                /// Example: `width`
                bears_on as "bears_on": BearsOnWord => BearsOn [
                    As("The wedge bears on the wire's"), wanted "the side it bears on"
                ];
            }

            /// A grooved eye that a rope lies round.
            Thimble, ThimbleRecord, "a thimble" {
                /// Width of the groove.
                /// Example: `9.0`
                groove as "groove_mm": Size<Mm, 200> => Length [As("Groove"), wanted "the groove"];
                /// Half-width of the groove's tolerance.
                /// Default: `0`
                /// Example: `0.05`
                groove_tolerance as "groove_tolerance_mm": SizeOrZero<Mm, 10> => Length [Tolerance];
                /// Clear width of the eye.
                /// Example: `25`
                inside_width as "inside_width_mm": Size<Mm, 1000> => Length [As("Inside width")];
                /// Half-width of the inside width's tolerance.
                /// Default: `0`
                /// Example: `0.05`
                inside_width_tolerance as "inside_width_tolerance_mm": SizeOrZero<Mm, 10> => Length [Tolerance];
                /// Clear length of the eye.
                /// Example: `45`
                inside_length as "inside_length_mm": Size<Mm, 1000> => Length [As("Inside length")];
                /// Half-width of the inside length's tolerance.
                /// Default: `0`
                /// Example: `0.05`
                inside_length_tolerance as "inside_length_tolerance_mm": SizeOrZero<Mm, 10> => Length [Tolerance];
            }

            /// A pressed tube: a ferrule on a rope, or a sleeve on a conductor.
            Ferrule, FerruleRecord, "a ferrule or sleeve" {
                /// Bore before pressing: across, or the width and height of an oval for two legs.
                /// Example: `{ width: 8.4, height: 17.0 }`
                bore as "bore_mm": BoreRecord => Bore [
                    As("Bore before pressing"), wanted "the bore", adjusted "bore" by 0.05 x 40
                ];
                /// Half-width of the bore's tolerance.
                /// Default: `0`
                /// Example: `0.05`
                bore_tolerance as "bore_tolerance_mm": SizeOrZero<Mm, 10> => Length [Tolerance];
                /// Legs of the rope that go through it.
                /// Default: `1`
                /// Example: `2`
                legs as "legs": Count<1, 2> => u32 [As("Legs of the rope")];
                /// Length before pressing.
                /// Example: `35`
                length as "length_mm": Size<Mm, 2000> => Length [As("Length before pressing")];
                /// Half-width of the length's tolerance.
                /// Default: `0`
                /// Example: `0.05`
                length_tolerance as "length_tolerance_mm": SizeOrZero<Mm, 10> => Length [Tolerance];
                /// The die that presses it.
                /// Example: `"8"`
                die as "die": Text => String [As("Die"), wanted "the die"];
                /// Size outside before pressing.
                /// Example: `26`
                outside as "outside_mm": Size<Mm, 300> => Length [As("Outside before pressing")];
                /// Half-width of the tolerance of the size outside.
                /// Default: `0`
                /// Example: `0.05`
                outside_tolerance as "outside_tolerance_mm": SizeOrZero<Mm, 10> => Length [Tolerance];
                /// Size after pressing.
                /// Example: `{ min: 15.8, max: 16.2 }`
                pressed as "pressed_mm": Range<Size<Mm, 300>> => Range<Length> [
                    As("Size after pressing"), wanted "the pressed size"
                ];
            }

            /// A screwed grip on a rope.
            RopeGrip, RopeGripRecord, "a rope grip" {
                /// Thinnest and thickest rope that it holds.
                /// Example: `{ min: 7.5, max: 8.5 }`
                rope as "rope_mm": Range<Size<Mm, 200>> => Range<Length> [
                    As("Rope diameter"), wanted "the rope sizes"
                ];
                /// Distance from grip to grip.
                /// Example: `50`
                spacing as "spacing_mm": Size<Mm, 1000> => Length [As("Distance from grip to grip")];
                /// Half-width of the spacing's tolerance.
                /// Default: `0`
                /// Example: `0.05`
                spacing_tolerance as "spacing_tolerance_mm": SizeOrZero<Mm, 10> => Length [Tolerance];
            }
        }
    };
}

pub(crate) use table;
