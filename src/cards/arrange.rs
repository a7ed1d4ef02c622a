//! The loosest way to set a face in which everything has room.

use super::columns;
use super::corner::{NEARLY_BELOW, Punched, punched};
use super::description::{Content, Heights};
use super::flow::{Flows, Slot};
use super::setting::{Clear, Setting};
use super::tightness::Tightness;
use super::too_full::{SLACK, TooFull, too_full, too_long};

/// Where everything on a face comes to lie.
#[derive(Debug, Clone)]
pub(super) struct Arrangement<'a> {
    pub setting: Setting,
    pub slots: Vec<Slot<'a>>,
}

/// How a face is set, and the room of the drawing whose height was settled.
#[derive(Debug, Clone)]
pub(super) struct Fitted {
    pub setting: Setting,
    pub flexible: Option<Flexible>,
}

/// The room of a drawing.
#[derive(Debug, Clone)]
pub(super) struct Flexible {
    /// Which drawing.
    pub of: String,
    pub width: f64,
    pub height: f64,
}

/// How much of the way from the least to the wanted height a drawing is given, in the order tried.
const DRAWING_STEPS: [f64; 5] = [1.0, 0.75, 0.5, 0.25, 0.0];
/// A face that is too high by more than this part of its height does not get room by other widths of its columns (own rule).
const FAR_TOO_HIGH: f64 = 0.3;

/// How a face is set in the first of its forms that has room for everything, as loosely as it goes: for the drawing as
/// large as wanted; where none has, texts close up and shrink before the drawing does.
///
/// # Errors
/// What the last form lacks room for.
pub(super) fn arrange(flows: &Flows<'_, '_>) -> Result<Fitted, TooFull> {
    let forms = flows.face.forms();
    let fitting = |form| Fitting { flows, form };
    (0..forms).find_map(|form| fitting(form).loosest()).ok_or_else(|| {
        let last = fitting(forms - 1);
        let set = last.tried(&last.setting(Tightness::TIGHTEST, last.drawing(0.0), &[]), None);
        too_full(&set.slots, &set.setting, set.height, flows.measurer)
    })
}

/// Where everything lies with the drawing as high as it has come out, and with the room that is left over spread
/// between the blocks.
pub(super) fn finished<'a>(
    flows: &Flows<'a, '_>,
    setting: &Setting,
    drawing: Option<f64>,
) -> Arrangement<'a> {
    let setting = Setting { drawing, height: Some(flows.measurer.inside.1), ..setting.clone() };
    let (slots, _) = flows.laid(&setting);
    Arrangement { setting, slots }
}

/// A face in one of its forms, which is being fitted.
struct Fitting<'a, 'm, 'f> {
    flows: &'f Flows<'a, 'm>,
    form: usize,
}

/// A face that is set, as high as it comes.
struct Set<'a> {
    setting: Setting,
    slots: Vec<Slot<'a>>,
    height: f64,
    /// How much longer texts are than their room, in all.
    over: f64,
}

impl<'a> Fitting<'a, '_, '_> {
    fn heights(&self) -> Option<Heights> {
        self.flows.face.flexible_drawing().and_then(|room| room.heights)
    }

    fn loosest(&self) -> Option<Fitted> {
        let loose = self.setting(Tightness::STEPS[0], self.drawing(DRAWING_STEPS[0]), &[]);
        let mut roomy = self.in_width(&loose, self.shares().map_or(loose.share, |(least, _)| least));
        let beside = roomy.headings_beside();
        let tightest = |step: f64, share| {
            self.tried(&self.setting(Tightness::TIGHTEST, self.drawing(step), &beside), share)
        };
        if self.fits(&roomy) {
            return Some(self.enlarged(self.roomiest(roomy, &[])));
        }
        let mut tight = tightest(DRAWING_STEPS[0], None);
        let lower = DRAWING_STEPS.iter().skip(1).filter(|_| self.heights().is_some());
        for step in lower {
            if !self.fits(&tight) && self.may_fit(&tight, *step) {
                tight = tightest(*step, Some(tight.setting.share));
            }
        }
        if !self.fits(&tight) {
            return None;
        }
        let tight = self.roomiest(tight, &beside);
        if self.shares().is_some() {
            roomy = self.tried(&loose, Some(tight.setting.share));
            if self.fits(&roomy) {
                return Some(self.enlarged(self.roomiest(roomy, &[])));
            }
        }
        let loosest = self.loosened(tight, &roomy, &beside);
        Some(self.enlarged(self.roomiest(loosest, &beside)))
    }

    /// Whether a face that is too high may have room with a lower drawing, which makes it no lower than the drawing is.
    fn may_fit(&self, set: &Set<'_>, step: f64) -> bool {
        let lower = set.setting.drawing.unwrap_or_default() - self.drawing(step).unwrap_or_default();
        set.height - lower <= self.flows.measurer.inside.1 + SLACK
    }

    /// The loosest of the steps that has room, where the tightest has: each takes less than the one before.
    fn loosened(&self, tight: Set<'a>, roomy: &Set<'_>, beside: &[usize]) -> Set<'a> {
        let (drawing, mut fitting, mut loosest) = (tight.setting.drawing, Tightness::STEPS.len() - 1, tight);
        let mut from = usize::from(drawing == roomy.setting.drawing);
        let lower = roomy.setting.drawing.unwrap_or_default() - drawing.unwrap_or_default();
        let mut too_high = roomy.height - lower;
        while from < fitting {
            let step = self.guessed((from, too_high), (fitting, loosest.height));
            let setting = self.setting(Tightness::STEPS[step], drawing, beside);
            let set = self.tried(&setting, Some(loosest.setting.share));
            if self.fits(&set) {
                (fitting, loosest) = (step, set);
            } else {
                (from, too_high) = (step + 1, set.height);
            }
        }
        loosest
    }

    /// The step to try next, from `from` to the one before `fitting`. The one before `from` is too high, `fitting` has room:
    /// if each step between made the face lower by the same, this is the first with room. In the middle where the face is
    /// not too high, but a text too long.
    #[expect(
        clippy::cast_precision_loss,
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "few steps"
    )]
    fn guessed(&self, (from, too_high): (usize, f64), (fitting, low): (usize, f64)) -> usize {
        let part = (too_high - self.flows.measurer.inside.1) / (too_high - low);
        if !(0.0..=1.0).contains(&part) {
            return usize::midpoint(from, fitting);
        }
        let steps = (part * (fitting + 1 - from) as f64).ceil() as usize;
        (from + steps).saturating_sub(1).clamp(from, fitting - 1)
    }

    /// The height of the drawing on the way from its least to what is wanted.
    fn drawing(&self, step: f64) -> Option<f64> {
        self.heights().map(|heights| heights.least + step * (heights.wanted - heights.least))
    }

    fn fits(&self, set: &Set<'_>) -> bool {
        set.over <= 0.0 && set.height <= self.flows.measurer.inside.1 + SLACK
    }

    /// The same, with the drawing as high as there is room for. Where something higher stands beside it, it grows without
    /// making the face higher.
    fn enlarged(&self, set: Set<'a>) -> Fitted {
        let (Some(heights), Some(drawing)) = (self.heights(), set.setting.drawing) else {
            return set.fitted();
        };
        let mut most = self.cleared(Setting { drawing: Some(heights.most), ..set.setting.clone() });
        let height = heights.most - (most.height - self.flows.measurer.inside.1).max(0.0);
        if height <= drawing {
            return set.fitted();
        }
        most.setting.drawing = Some(height);
        most.fitted()
    }

    /// Where the face has two columns: in the first widths in which it has room, those of `share` before others; else in the
    /// roomiest.
    fn tried(&self, setting: &Setting, share: Option<f64>) -> Set<'a> {
        if let Some(share) = share {
            let set = self.in_width(setting, share);
            if self.fits(&set) || self.shares().is_none() || set.height > self.hopeless() {
                return set;
            }
        }
        self.among_shares(setting, |set| self.fits(set))
    }

    fn in_width(&self, setting: &Setting, share: f64) -> Set<'a> {
        self.cleared(Setting { share, ..setting.clone() })
    }

    /// From this height on other widths of columns are not looked at.
    fn hopeless(&self) -> f64 {
        (1.0 + FAR_TOO_HIGH) * self.flows.measurer.inside.1
    }

    /// A face that has room, in the widths of its columns that leave most.
    fn roomiest(&self, set: Set<'a>, beside: &[usize]) -> Set<'a> {
        if self.shares().is_none() {
            return set;
        }
        let Setting { tightness, drawing, .. } = set.setting;
        better(set, self.among_shares(&self.setting(tightness, drawing, beside), |_| false))
    }

    fn shares(&self) -> Option<(f64, f64)> {
        columns::shares(&self.flows.face.children_in(self.form))
    }

    /// The face so tight, with such a drawing, and with children that are known to stand beside the punched corner.
    fn setting(&self, tightness: Tightness, drawing: Option<f64>, beside: &[usize]) -> Setting {
        let clear = |child| if beside.contains(&child) { Clear::Beside } else { Clear::Already };
        let clear = (0..self.flows.face.children_in(self.form).len()).map(clear).collect();
        Setting { tightness, form: self.form, drawing, share: 0.5, clear, height: None }
    }

    /// In the roomiest widths of two columns, or in the first that are good enough.
    fn among_shares(&self, setting: &Setting, is_enough: impl Fn(&Set<'a>) -> bool) -> Set<'a> {
        let at = |share: f64| self.in_width(setting, share);
        let Some((least, most)) = self.shares() else { return at(setting.share) };
        let mut best = at(least);
        let mut lowest = best.height;
        for share in columns::far_apart(least, most) {
            if is_enough(&best) {
                return best;
            }
            let set = at(share);
            lowest = lowest.min(set.height);
            best = better(best, set);
        }
        if lowest > self.hopeless() {
            return best;
        }
        for share in columns::near(best.setting.share, least, most) {
            if is_enough(&best) {
                return best;
            }
            best = better(best, at(share));
        }
        best
    }

    /// The face with its blocks kept out of the punched corner.
    fn cleared(&self, setting: Setting) -> Set<'a> {
        let (slots, height) = self.flows.laid(&setting);
        self.kept_clear(Set { setting, slots, height, over: 0.0 })
    }

    /// One block after the other from above: what names stands beside the corner, all else below, or beside it where the
    /// face is lower so.
    fn kept_clear(&self, mut set: Set<'a>) -> Set<'a> {
        let open = |set: &Set<'a>| {
            punched(&set.slots, &set.setting, self.flows.measurer, |child| {
                set.setting.clear[child] == Clear::Already
            })
        };
        while let Some(punched_by) = open(&set) {
            if punched_by.lower <= NEARLY_BELOW {
                set.lower(punched_by);
                continue;
            }
            let mut setting = set.setting.clone();
            setting.clear[punched_by.child] = Clear::Beside;
            let beside = self.cleared(setting);
            if punched_by.is_heading {
                return beside;
            }
            set.lower(punched_by);
            let below = self.kept_clear(set);
            let clear = punched(&beside.slots, &beside.setting, self.flows.measurer, |child| {
                child == punched_by.child
            })
            .is_none();
            return if clear && beside.crowding() < below.crowding() { beside } else { below };
        }
        set.over = too_long(&set.slots, &set.setting, self.flows.measurer).map(|(_, over)| over).sum();
        set
    }
}

impl Set<'_> {
    /// The children of the face that stand beside the punched corner because they name what follows, as they do however
    /// tight it is.
    fn headings_beside(&self) -> Vec<usize> {
        let Some(face) = self.slots.first() else { return Vec::new() };
        let children =
            face.node.children_in(self.setting.form).into_iter().zip(&self.setting.clear).enumerate();
        let beside = children.filter(|(_, (child, clear))| child.is_heading() && **clear == Clear::Beside);
        beside.map(|(index, _)| index).collect()
    }

    /// How it is set, with its drawing as high as that was settled.
    fn fitted(self) -> Fitted {
        let flexible = self.slots.iter().find_map(|slot| {
            let height = self.setting.drawing?;
            let Content::Drawing(drawing) = &slot.node.content else { return None };
            drawing.heights?;
            Some(Flexible { of: drawing.of.clone(), width: slot.rect.width(), height })
        });
        Fitted { flexible, setting: self.setting }
    }

    /// Moves a child of the face below the punched corner, and with it what stands below it.
    fn lower(&mut self, Punched { slot, child, lower, .. }: Punched) {
        self.setting.clear[child] = Clear::Below(lower);
        self.height += lower;
        for slot in &mut self.slots[slot..] {
            slot.rect = slot.rect + kurbo::Vec2::new(0.0, lower);
        }
    }

    /// Sorts settings by what is too much: texts that are longer than their lines, then height, then the lines that
    /// texts break into in a column which is not the highest.
    fn crowding(&self) -> (f64, f64, f64) {
        let texts = self.slots.iter().filter(|slot| matches!(slot.node.content, Content::Text(_)));
        let rounded = |mm: f64| (mm / SLACK).round();
        (rounded(self.over), rounded(self.height), rounded(texts.map(|slot| slot.rect.height()).sum()))
    }
}

/// That of two which leaves more room.
fn better<'a>(best: Set<'a>, set: Set<'a>) -> Set<'a> {
    if set.crowding() <= best.crowding() { set } else { best }
}
