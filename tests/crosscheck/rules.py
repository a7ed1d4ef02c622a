"""What happens to a part on a conductor, written from the statement of the rules alone and in plain numbers.

Every comparison goes through `less`, which notes where the two sides all but meet: there the last binary digit decides,
and nothing is compared.
"""

import math

BORDER = 1e-6
MEETS = {"near": False}


def less(a, b):
    if abs(a - b) < BORDER:
        MEETS["near"] = True
    return a < b - 1e-9


def tan(degrees):
    return math.tan(math.radians(degrees))


def tolerance(values, key):
    return values.get(f"{key}_tolerance_mm") or 0


def lacking(*kinds):
    return [f"geometry.{kind}.{name}" for kind, values, names in kinds for name in names if values.get(name) is None]


def verdict(word, **more):
    return {"verdict": word, "missing": [], "forced": False} | more


def unknown(*kinds):
    return verdict("unknown", missing=lacking(*kinds))


def tapers_differ(one, two):
    return less(0.25, abs(one - two))


def closure(part):
    """How far slits can shut, and how unsure that is; nothing where it is not known."""
    if part.get("slits") == 0:
        return 0.0, 0.0
    if part.get("slits") is None or part.get("slit_width_mm") is None:
        return None
    each = part["slits"] / math.pi
    return each * part["slit_width_mm"], each * tolerance(part, "slit_width")


def collet(cone, body, wire, limits):
    shut = closure(cone)
    out = {} if shut is None else {"closure_mm": shut[0]}
    if cone.get("bore_mm") is None:
        return unknown(("collet", cone, ["bore_mm"])) | out
    c, diameter = cone["bore_mm"] - wire["D"], wire["D"]
    t = tolerance(cone, "bore") + wire["tolerance"]
    out["clearance_mm"] = c
    said = collet_verdict(cone, body, c, t, shut, diameter, limits["closure_reserve_mm"])
    at_bore, angle = cone.get("stand_out_at_bore_mm"), cone.get("half_angle_deg")
    placed = at_bore is not None and angle is not None and said["verdict"] != "will-not-enter"
    if placed and (shut is not None or not less(0, c + t)):
        off = tolerance(cone, "stand_out_at_bore")

        def place(clearance, give):
            most = math.inf if shut is None else shut[0] + give
            return at_bore - min(clearance, most) / (2 * tan(angle))

        give = 0 if shut is None else shut[1]
        out["stand_out_mm"] = place(c, 0)
        out["interval"] = place(c + t, give) - off, place(c - t, -give) + off
        if shut is not None:
            out["floor"] = at_bore - off - (shut[0] + give) / (2 * tan(angle))
    return said | out


def collet_verdict(cone, body, c, t, shut, diameter, reserve):
    one_piece = (cone.get("pieces") or 1) == 1
    forcing = less(c + t, -0.005 * diameter)
    if one_piece and shut is None and forcing:
        return unknown(("collet", cone, ["slits", "slit_width_mm"]))
    if one_piece and shut is not None:
        if (less(c + t, -shut[0] - shut[1]) if cone["slits"] else forcing):
            return verdict("will-not-enter")
    angles = cone.get("half_angle_deg"), body.get("half_angle_deg")
    if None not in angles and tapers_differ(*angles):
        return verdict("tip-contact")
    if less(c + t, 0):
        return verdict("stands-proud", forced=one_piece)
    if shut is None:
        return unknown(("collet", cone, ["slits", "slit_width_mm"]))
    if less(shut[0] + shut[1], c - t):
        return verdict("closes-without-gripping")
    if not less(c - t, 0) and not less(shut[0] - shut[1] - reserve, c + t):
        return verdict("grips")
    return verdict("marginal")


def spreading_cone(cone, seat, wire):
    """Every set of inner wires that can be in the hole, the one taken first."""
    if wire["kind"] not in ("stranded", "solid"):
        return [verdict("unknown")]
    d, rings, give = wire["wire"], len(wire["layers"]), wire["wire_tolerance"]
    hole = cone.get("hole_diameter_mm")
    if hole is None:
        throat = too_thick(seat, wire)
        return [throat or unknown(("spreading_cone", cone, ["hole_diameter_mm"]), ("socket", seat, ["throat_diameter_mm"]))]

    def across(inside):
        return (2 * inside - 1) * d

    taken = max([inside for inside in range(1, rings + 1) if not less(hole, across(inside))], default=0)
    shut = closure(cone)

    def off_by(inside):
        return tolerance(cone, "hole_diameter") + (2 * inside - 1) * give

    # A set that goes through the hole as stated may not where both are off: what holds only then is marginal.
    sets = [(taken, False, taken > 0 and less(hole - off_by(taken), across(taken)))]
    for inside in range(taken + 1, rings + 1):
        off = off_by(inside)
        if not less(hole + off, across(inside)):
            sets.append((inside, False, True))
        elif shut is not None and not less(hole + off + shut[0] + shut[1], across(inside)):
            sets.append((inside, True, less(hole + shut[0] - 1e-12, across(inside))))
        else:
            break
    said = []
    for inside, forced, unsure in sets:
        one = spread(cone, seat, wire, inside, shut)
        if one["verdict"] == "will-not-enter":
            forced = False
        elif unsure and one["verdict"] == "grips":
            one["verdict"] = "marginal"
        said.append(one | {"forced": forced})
    nothing = len(said) == 1 and taken == 0 and not too_thick(seat, wire)
    if nothing and shut is None and cone.get("slits"):
        return [unknown(("spreading_cone", cone, ["slit_width_mm"]))]
    return said


def too_thick(seat, wire):
    throat = seat.get("throat_diameter_mm")
    if throat is not None and less(throat + tolerance(seat, "throat_diameter"), wire["D"] - wire["tolerance"]):
        return verdict("will-not-enter")
    return None


def spread(cone, seat, wire, inside, shut):
    d, rings, give = wire["wire"], len(wire["layers"]), wire["wire_tolerance"]
    if inside == 0 or too_thick(seat, wire):
        return verdict("will-not-enter")
    if seat.get("throat_diameter_mm") is None:
        return unknown(("socket", seat, ["throat_diameter_mm"]))
    alpha, beta, travel = cone.get("half_angle_deg"), seat.get("half_angle_deg"), seat.get("travel_mm")
    ends = cone.get("large_diameter_mm"), seat.get("large_diameter_mm")
    out, z, dz = {}, None, None
    loose = tolerance(seat, "travel")
    # Where one of the tapers is not known, nobody knows how far it stands out.
    if None not in (alpha, beta) and None not in ends:
        cos, left = math.cos(math.radians(alpha)), rings - inside
        z = ((ends[1] - ends[0]) / 2 - left * d / cos) / tan(alpha)
        ends_off = (tolerance(cone, "large_diameter") + tolerance(seat, "large_diameter")) / 2
        dz = (ends_off + left * give / cos) / tan(alpha)
        out = placed(z, dz, travel, loose)
    if alpha is None or beta is None:
        return unknown(("spreading_cone", cone, ["half_angle_deg"]), ("socket", seat, ["half_angle_deg"])) | out
    if tapers_differ(alpha, beta):
        return verdict("tip-contact") | out
    if inside == rings:
        return verdict("closes-without-gripping") | out
    if z is None or travel is None:
        return unknown(("spreading_cone", cone, ["large_diameter_mm"]),
                       ("socket", seat, ["large_diameter_mm", "travel_mm"])) | out
    said = depth_verdict(z, dz, travel, loose)
    if said == "grips" and cone.get("slits") is not None:
        if shut is None:
            return unknown(("spreading_cone", cone, ["slit_width_mm"])) | out
        tau = tolerance(cone, "hole_diameter") + (2 * inside - 1) * give
        gap = cone["hole_diameter_mm"] - (2 * inside - 1) * d
        if less(shut[0] + shut[1], gap - tau):
            said = "core-not-held"
        elif less(shut[0] - shut[1], gap + tau):
            said = "marginal"
    if said == "grips" and less(seat["throat_diameter_mm"] - tolerance(seat, "throat_diameter"), wire["D"] + wire["tolerance"]):
        said = "marginal"
    return verdict(said) | out


def placed(z, dz, travel, loose):
    if travel is None:
        return {}
    return {"stand_out_mm": -min(z, travel), "floor": -travel - loose,
            "interval": (-min(z + dz, travel + loose), -min(z - dz, travel - loose))}


def depth_verdict(z, dz, travel, loose):
    if less(travel + loose, z - dz):
        return "closes-without-gripping"
    if less(z + dz, 0):
        return "stands-proud"
    if less(z - dz, 0) or less(travel - loose, z + dz):
        return "marginal"
    return "grips"


def wedge(part, body, wire):
    across = wire["D"]
    if wire["kind"] == "grooved":
        across = wire[body["bears_on"]] if body.get("bears_on") else None
    w, alpha, length = part.get("thickness_mm"), part.get("taper_deg"), part.get("length_mm")
    mouth, beta, travel = body.get("mouth_mm"), body.get("taper_deg"), body.get("travel_mm")
    loose, out, z, dz = tolerance(body, "travel"), {}, None, None
    if None not in (across, w, alpha, beta, mouth):
        z = (mouth - w - across) / tan(alpha)
        dz = (tolerance(body, "mouth") + tolerance(part, "thickness") + wire["tolerance"]) / tan(alpha)
        out = placed(z, dz, travel, loose)
    if alpha is None or beta is None:
        return unknown(("wedge", part, ["taper_deg"]), ("wedge_body", body, ["taper_deg"])) | out
    if tapers_differ(alpha, beta):
        return verdict("tip-contact") | out
    if z is None or length is None:
        said = unknown(("wedge", part, ["thickness_mm", "length_mm"]), ("wedge_body", body, ["mouth_mm"]))
        said["missing"] += ["geometry.wedge_body.bears_on"] if across is None else []
        return said | out
    if less(length + tolerance(part, "length"), -z - dz):
        return verdict("will-not-enter")
    if travel is None:
        return unknown(("wedge_body", body, ["travel_mm"])) | out
    return verdict(depth_verdict(z, dz, travel, loose)) | out


def fits(part, wire):
    """Room beside the conductor, its tolerance and the most that there may be: in one direction, or two of an oval."""
    legs, made = part.get("legs") or 1, tolerance(part, "bore")
    bore = part["bore_mm"]
    across = [(bore["width"], 1), (bore["height"], legs)] if isinstance(bore, dict) else [(bore, legs)]
    return [(size - n * wire["D"], made + n * wire["tolerance"], 0.8 * n) for size, n in across]


def pressed(kind, part, wire):
    """A pressed tube on a conductor or on two legs of it: its bore is none over to 0.8 mm a leg over."""
    if part.get("bore_mm") is None:
        return unknown((kind, part, ["bore_mm"]))
    sides = fits(part, wire)
    out = {"clearance_mm": sides[0][0]}
    if any([less(c + t, 0) for c, t, _ in sides]):
        return verdict("will-not-enter") | out
    if any([less(most, c - t) for c, t, most in sides]):
        return verdict("closes-without-gripping") | out
    missing = lacking((kind, part, ["die", "pressed_mm"]))
    if missing:
        return verdict("unknown", missing=missing) | out
    unsure = any([less(c - t, 0) or less(most, c + t) for c, t, most in sides])
    return verdict("marginal" if unsure else "grips") | out


def rope_grip(part, wire):
    """A screwed grip: made for ropes of some diameters, and for several strands (EN 13411-5)."""
    made = part.get("rope_mm")
    if made is None:
        return unknown(("rope_grip", part, ["rope_mm"]))
    low, high = wire["D"] - wire["tolerance"], wire["D"] + wire["tolerance"]
    if less(high, made["min"]):
        return verdict("closes-without-gripping")
    if less(made["max"], low):
        return verdict("stands-proud")
    inside = not less(low, made["min"]) and not less(made["max"], high)
    return verdict("grips" if inside and wire["kind"] == "rope" else "marginal")


def self_holding(angle, seat_friction, wire_friction):
    """Whether a taper draws itself in, and the angle that just would."""
    good = not less(wire_friction, math.tan(math.radians(angle) + math.atan(seat_friction)))
    return good, math.degrees(math.atan(wire_friction) - math.atan(seat_friction))
