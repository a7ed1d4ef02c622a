//! One face: its layout filled once, read, arranged, given its drawing, drawn.

use super::arrange::{Fitted, Flexible, arrange, finished};
use super::description::Node;
use super::draw::{Card, draw};
use super::drawings::Drawings;
use super::face::{Face, Side};
use super::flow::Flows;
use super::input::Input;
use super::margins::SAFE;
use super::measure::{BrokenTexts, Measurer};
use super::read::read;
use super::shape::Shape;
use super::style::CardStyle;
use super::too_full::FaceError;
use super::values;
use crate::layouts::Layouts;
use crate::sketch::Drawing;
use crate::typeset::Fonts;
use crate::units::Length;
use serde_json::{Map, Value, json};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// What every face of a format has in common.
#[derive(Debug, Clone)]
pub(super) struct Format<'a> {
    layouts: &'a Layouts,
    fonts: &'a Fonts,
    style: CardStyle,
    shape: Shape,
    bleed: Length,
}

impl<'a> Format<'a> {
    /// A format of cards, or of what the style calls by a name of its own.
    pub fn of(input: Input<'a>, shape: impl Into<Shape>, special: Option<&str>) -> Self {
        let (settings, shape) = (&input.catalogue.settings, shape.into());
        Self {
            layouts: &input.design.layouts,
            fonts: input.fonts,
            style: input.design.styles.of(shape, special, settings.limits.smallest_type),
            shape,
            bleed: settings.sheet.bleed,
        }
    }

    /// The path of a layout: that of the size and orientation where there is one, else that of all.
    pub fn layout(&self, face: &str) -> String {
        let (size, lies) = (self.shape.size.to_lowercase(), self.shape.orientation.word());
        let own = format!("cards/{size}-{lies}-{face}.xml");
        if self.layouts.has(&own) { own } else { format!("cards/{face}.xml") }
    }

    /// What layouts know of it.
    pub fn values(&self) -> Map<String, Value> {
        let (width, height) = self.shape.trim;
        values::object(json!({
            "size": self.shape.size, "landscape": self.shape.lies(),
            "trim": { "width": width.mm(), "height": height.mm() },
        }))
    }

    fn inside(&self) -> (f64, f64) {
        let (width, height) = self.shape.trim;
        (width.mm() - 2.0 * SAFE, height.mm() - 2.0 * SAFE)
    }
}

/// One face that is to be made, step by step: its layout is filled, read and fitted, then drawn, then checked.
#[derive(Clone)]
pub struct FaceJob<'a> {
    pub(super) format: Format<'a>,
    pub(super) side: Side,
    /// The layout's path.
    pub(super) layout: String,
    /// What the layout is filled with.
    pub(super) values: Arc<Value>,
    pub(super) drawings: Drawings<'a>,
    /// Names of printed texts that have changed since the card's last issue.
    pub(super) changed: Arc<BTreeSet<String>>,
}

/// A layout that has been filled and read.
#[derive(Debug, Clone)]
pub(super) struct Described {
    pub description: Node,
    /// Drawings whose size is known.
    drawn: BTreeMap<String, Drawing>,
    /// The lines that its texts were broken into on the way.
    broken: BrokenTexts,
}

/// The same, with how it is set.
#[derive(Debug, Clone)]
pub struct FittedFace {
    pub(super) described: Described,
    pub(super) fitted: Fitted,
}

impl FaceJob<'_> {
    /// Fills the layout: the only time that this is done for the face.
    ///
    /// # Errors
    /// Where the layout asks for what is not there.
    pub fn fill(&self) -> Result<String, FaceError> {
        let filled = self.format.layouts.fill(&self.layout, &self.values);
        filled.map_err(|finding| FaceError::Layout(finding.into()))
    }

    /// Reads the filled layout, and finds the loosest way to set it in which everything has room.
    ///
    /// # Errors
    /// Where the layout is not sound, or where the texts don't fit at the least type of their classes.
    pub fn fit(&self, filled: &str) -> Result<FittedFace, FaceError> {
        let described = self.read(filled)?;
        let measurer = self.measurer(&described);
        let fitted = arrange(&Flows::of(&described.description, &measurer)).map_err(FaceError::TooFull)?;
        Ok(FittedFace { described, fitted })
    }

    /// Draws the drawing whose height was settled, which is often lower than its room, and the face with it.
    ///
    /// # Errors
    /// Where SVG of the layout's own can't be drawn.
    pub fn draw(&self, FittedFace { described, fitted }: &FittedFace) -> Result<Face, FaceError> {
        let measurer = self.measurer(described);
        self.drawn(&Flows::of(&described.description, &measurer), fitted)
    }

    /// All of it, sooner than step by step: for the drawing as it comes out the face is not laid out anew.
    ///
    /// # Errors
    /// Those of the steps.
    pub fn face(&self) -> Result<Face, FaceError> {
        let described = self.read(&self.fill()?)?;
        let measurer = self.measurer(&described);
        let flows = Flows::of(&described.description, &measurer);
        let fitted = arrange(&flows).map_err(FaceError::TooFull)?;
        self.drawn(&flows, &fitted)
    }

    fn read(&self, filled: &str) -> Result<Described, FaceError> {
        let height = self.format.shape.trim.1.mm();
        let description =
            read(&self.layout, filled, &self.format.style, height).map_err(FaceError::Layout)?;
        let drawn = self.drawings.natural(&description.drawn());
        Ok(Described { description, drawn, broken: BrokenTexts::default() })
    }

    fn drawn(&self, flows: &Flows<'_, '_>, fitted: &Fitted) -> Result<Face, FaceError> {
        let drawing = fitted.flexible.as_ref().and_then(|Flexible { of, width, height }| {
            self.drawings.draw(of, Length::from_mm(*width), Length::from_mm(*height))
        });
        let flexible = drawing.filter(|drawing| !drawing.body.is_empty());
        let height = flexible.as_ref().map(|drawing| drawing.height.mm());
        let arrangement = finished(flows, &fitted.setting, height);
        let card = Card { side: self.side, trim: self.format.shape.trim, bleed: self.format.bleed };
        draw(&arrangement, flows.measurer, card, flexible.as_ref(), &self.changed)
    }

    pub(super) fn measurer<'b>(&'b self, described: &'b Described) -> Measurer<'b> {
        let (format, Described { drawn, broken, .. }) = (&self.format, described);
        let is_back = self.side == Side::Back;
        Measurer::new(format.fonts, &format.style, format.inside(), is_back, drawn, broken.clone())
    }
}
