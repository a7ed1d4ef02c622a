//! Where everything on a face comes to lie: a description handed to a layout library.

use super::boxes::{self, Cell, Placing};
use super::description::{Content, Edges, Node};
use super::margins::SAFE;
use super::measure::{Leaf, Measurer};
use super::setting::{Clear, Setting};
use kurbo::Rect;
use std::cell::RefCell;
use taffy::prelude::length;
use taffy::{
    AvailableSpace, Baselines, LayoutInput, LayoutOutput, NodeId, Size, Style, TaffyTree, compute_leaf_layout,
};

/// An element that has come to lie somewhere.
#[derive(Debug, Clone)]
pub(super) struct Slot<'a> {
    pub node: &'a Node,
    /// The one that it stands in.
    pub parent: Option<usize>,
    /// The edges of the card that its paint runs over.
    pub edges: Edges,
    /// Its room, from the upper left corner of the trimmed card.
    pub rect: Rect,
    /// What the layout library knows it by; a row of a table has nothing there.
    id: Option<NodeId>,
}

/// A description as the layout library knows it. Of the next setting it is told only what differs, so that it measures
/// again only what that moves.
pub(super) struct Flow<'a, 'm> {
    measurer: &'m Measurer<'a>,
    /// How it is set now.
    setting: Setting,
    tree: TaffyTree<Leaf<'a>>,
    slots: Vec<Slot<'a>>,
    /// How each slot stands in the one around it.
    standings: Vec<Standing>,
}

/// A description in all settings that are tried.
pub(super) struct Flows<'a, 'm> {
    pub face: &'a Node,
    pub measurer: &'m Measurer<'a>,
    /// One for all settings that are alike, in the last of them.
    told: RefCell<Vec<Flow<'a, 'm>>>,
}

impl<'a, 'm> Flows<'a, 'm> {
    pub fn of(face: &'a Node, measurer: &'m Measurer<'a>) -> Self {
        Self { face, measurer, told: RefCell::default() }
    }

    /// The elements in their order, each where it lies, and how high they are together.
    pub fn laid(&self, setting: &Setting) -> (Vec<Slot<'a>>, f64) {
        let mut told = self.told.borrow_mut();
        if let Some(flow) = told.iter_mut().find(|flow| flow.is_alike(setting)) {
            return flow.again(setting);
        }
        let mut flow = Flow::new(self.face, setting, self.measurer);
        let laid = flow.laid();
        told.push(flow);
        laid
    }
}

/// How an element stands in another.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Standing {
    /// Which child it is; a cell of a table is none.
    number: Option<usize>,
    /// Whether it is the first, and the last.
    ends: (bool, bool),
    placing: Placing,
}

impl<'a, 'm> Flow<'a, 'm> {
    pub fn new(face: &'a Node, setting: &Setting, measurer: &'m Measurer<'a>) -> Self {
        let mut tree = TaffyTree::new();
        tree.disable_rounding();
        let (slots, standings) = (Vec::new(), Vec::new());
        let mut flow = Self { measurer, setting: setting.clone(), tree, slots, standings };
        flow.element(face, None, Standing::of(Placing::default()));
        flow
    }

    /// Whether a setting has the same elements in the same types: all that may differ is told with `again`.
    fn is_alike(&self, setting: &Setting) -> bool {
        let key = |one: &Setting| (one.form, one.tightness, one.drawing.is_some());
        key(&self.setting) == key(setting)
    }

    /// Where everything lies in a setting that is alike.
    pub fn again(&mut self, setting: &Setting) -> (Vec<Slot<'a>>, f64) {
        self.tell(setting);
        self.laid()
    }

    /// Where everything lies as it is set now, and how high it is together.
    pub fn laid(&mut self) -> (Vec<Slot<'a>>, f64) {
        let Some(root) = self.slots.first().and_then(|slot| slot.id) else { return (Vec::new(), 0.0) };
        self.compute(root);
        if self.learns_widths() {
            self.compute(root);
        }
        let height = self.tree.layout(root).map_or(0.0, |layout| f64::from(layout.size.height));
        for index in 0..self.slots.len() {
            self.place(index);
        }
        self.place_rows();
        (self.slots.clone(), height)
    }

    /// Tells the library what is different in a setting of the same form and types.
    fn tell(&mut self, setting: &Setting) {
        let before = std::mem::replace(&mut self.setting, setting.clone());
        for index in 0..self.slots.len() {
            let Slot { node, id: Some(id), parent, .. } = self.slots[index] else { continue };
            let standing = self.standing(index, parent);
            let is_higher = parent.is_none() && before.height != setting.height;
            if standing != self.standings[index] || is_higher {
                // The only fault that the library knows is a node of another tree.
                let _ = self.tree.set_style(id, self.style(node, parent, standing.placing));
                (self.standings[index], self.slots[index].edges) = (standing, standing.placing.edges);
            }
            if matches!(Leaf::of(node), Some(Leaf::Flexible)) && before.drawing != setting.drawing {
                let _ = self.tree.mark_dirty(id);
            }
        }
    }

    /// How an element stands now.
    fn standing(&self, index: usize, parent: Option<usize>) -> Standing {
        let before = self.standings[index];
        let (Some(parent), Some(number)) = (parent, before.number) else { return before };
        let (node, child) = (self.slots[parent].node, self.slots[index].node);
        Standing { placing: self.placing((node, child), parent, number, before.ends), ..before }
    }

    fn style(&self, node: &Node, parent: Option<usize>, placing: Placing) -> Style {
        let mut style = boxes::style(node, placing, self.measurer.style, self.setting.tightness);
        if parent.is_none() {
            style.size.width = length(self.measurer.inside.0 as f32);
            if let Some(height) = self.setting.height {
                style.size.height = length(height as f32);
            }
        }
        style
    }

    fn element(&mut self, node: &'a Node, parent: Option<usize>, standing: Standing) -> Option<NodeId> {
        let left_out = node.block.is_some() && node.flexible_drawing().is_some();
        if left_out && self.setting.drawing.is_none() {
            return None;
        }
        let index = self.slot(node, parent, standing);
        let style = self.style(node, parent, standing.placing);
        let id = match Leaf::of(node) {
            Some(leaf) => self.tree.new_leaf_with_context(style, leaf),
            None => {
                let children = self.children(node, index);
                self.tree.new_with_children(style, &children)
            }
        };
        self.slots[index].id = id.ok();
        self.slots[index].id
    }

    fn slot(&mut self, node: &'a Node, parent: Option<usize>, standing: Standing) -> usize {
        self.slots.push(Slot { node, parent, edges: standing.placing.edges, rect: Rect::ZERO, id: None });
        self.standings.push(standing);
        self.slots.len() - 1
    }

    fn children(&mut self, node: &'a Node, index: usize) -> Vec<NodeId> {
        let mut ids = Vec::new();
        if let Content::Table { .. } = node.content {
            self.rows(node, index, &mut ids);
            return ids;
        }
        let children = node.children_in(self.setting.form);
        for (number, child) in children.iter().copied().enumerate() {
            let ends = (ids.is_empty(), number + 1 == children.len());
            let placing = self.placing((node, child), index, number, ends);
            let gap = child.room.above > 0.0 && !ids.is_empty();
            let standing = Standing { number: Some(number), ends, placing };
            let Some(id) = self.element(child, Some(index), standing) else { continue };
            if gap {
                let space = boxes::spacer(child.room.above, self.measurer.style, self.setting.tightness);
                ids.extend(self.tree.new_leaf(space));
            }
            ids.push(id);
        }
        ids
    }

    fn placing(
        &self,
        (node, child): (&Node, &Node),
        index: usize,
        number: usize,
        ends: (bool, bool),
    ) -> Placing {
        let on_face = index == 0;
        let clear = self.setting.clear.get(number).copied().filter(|_| on_face).unwrap_or(Clear::Already);
        let corner_left = self.measurer.corner_left;
        let mut edges = child.room.edges;
        if on_face {
            edges.top &= ends.0;
            edges.bottom &= ends.1;
            edges.right &= clear != Clear::Beside || corner_left;
            edges.left &= clear != Clear::Beside || !corner_left;
        }
        let columns = matches!(node.content, Content::Columns { .. });
        let share = if number == 0 { self.setting.share } else { 1.0 - self.setting.share };
        let share = columns.then_some(share);
        let beside = matches!(node.content, Content::Row { .. } | Content::Columns { .. });
        Placing { edges, clear, corner_left, share, beside, cell: None }
    }

    /// The cells of a table's rows.
    fn rows(&mut self, node: &'a Node, index: usize, ids: &mut Vec<NodeId>) {
        for (row, child) in node.children.iter().enumerate() {
            if !matches!(child.content, Content::TableRow { .. }) {
                let placing = Placing { edges: child.room.edges, ..Placing::default() };
                ids.extend(self.element(child, Some(index), Standing::of(placing)));
                continue;
            }
            let slot = self.slot(child, Some(index), Standing::of(Placing::default()));
            let frame = self.measurer.style.frame(&child.frame).map_or([0.0; 4], |frame| frame.pad);
            let above = if row == 0 { 0.0 } else { child.room.above };
            let last = child.children.len().saturating_sub(1);
            for (number, cell) in child.children.iter().enumerate() {
                let right = if number == last { frame[1] } else { 0.0 };
                let left = if number == 0 { frame[3] } else { 0.0 };
                let cell_of = Cell { row, above, pad: [frame[0], right, frame[2], left], level: child.level };
                let edges = cell.room.edges;
                let placing = Placing { edges, cell: Some(cell_of), ..Placing::default() };
                ids.extend(self.element(cell, Some(slot), Standing::of(placing)));
            }
        }
    }

    fn compute(&mut self, root: NodeId) {
        let (measurer, setting) = (self.measurer, &self.setting);
        let space = Size { width: AvailableSpace::MaxContent, height: AvailableSpace::MaxContent };
        let measure =
            |input: LayoutInput, _: NodeId, leaf: Option<&mut Leaf<'a>>, style: &Style| -> LayoutOutput {
                let mut base = None;
                let mut output = compute_leaf_layout(
                    input,
                    style,
                    |_, _| 0.0,
                    |known, available| {
                        let Some(leaf) = leaf else { return Size::ZERO };
                        let measured = measurer.leaf(*leaf, setting, known, available);
                        base = measured.base;
                        measured.size
                    },
                );
                output.baselines = Baselines::from_first(base);
                output
            };
        // The only fault that the library knows is a node of another tree.
        let _ = self.tree.compute_layout_with_measure(root, space, measure);
    }

    /// Whether texts that shrink in rows of tables have other widths than before. The base line of such a text depends on its
    /// width, but no width depends on a base line: to compute once more is enough.
    fn learns_widths(&mut self) -> bool {
        let mut any = false;
        for index in 0..self.slots.len() {
            let Slot { node, id: Some(id), .. } = &self.slots[index] else { continue };
            let (id, Content::Text(text)) = (*id, &node.content) else { continue };
            if !text.shrinks || !self.stands_in_a_table(index) {
                continue;
            }
            let width = self.tree.layout(id).map_or(0.0, |layout| layout.size.width);
            let is_known =
                |leaf: &Leaf<'_>| matches!(leaf, Leaf::Shrunk(_, known) if known.total_cmp(&width).is_eq());
            if !self.tree.get_node_context(id).is_some_and(is_known) {
                any |= self.tree.set_node_context(id, Some(Leaf::Shrunk(text, width))).is_ok();
            }
        }
        any
    }

    fn stands_in_a_table(&self, mut index: usize) -> bool {
        while let Some(above) = self.slots[index].parent {
            if let Content::TableRow { .. } = self.slots[above].node.content {
                return true;
            }
            index = above;
        }
        false
    }

    fn place(&mut self, index: usize) {
        let Some(layout) = self.slots[index].id.and_then(|id| self.tree.layout(id).ok()) else { return };
        let origin = self.origin(index);
        let (x, y) = (origin.x + f64::from(layout.location.x), origin.y + f64::from(layout.location.y));
        let (width, height) = (f64::from(layout.size.width), f64::from(layout.size.height));
        self.slots[index].rect = Rect::new(x, y, x + width, y + height);
    }

    /// The corner that a slot's place is counted from: a row of a table has none of its own.
    fn origin(&self, index: usize) -> kurbo::Point {
        let parent = |index: usize| self.slots[index].parent;
        let Some(mut above) = parent(index) else { return (SAFE, SAFE).into() };
        if let Content::TableRow { .. } = self.slots[above].node.content {
            above = parent(above).unwrap_or(above);
        }
        self.slots[above].rect.origin()
    }

    /// A row of a table is as wide as the table, and as high as its cells with what its frame keeps free.
    fn place_rows(&mut self) {
        for index in 0..self.slots.len() {
            let Slot { node, parent, .. } = self.slots[index];
            let (Content::TableRow { .. }, Some(table)) = (&node.content, parent) else { continue };
            let cells = self.slots.iter().filter(|slot| slot.parent == Some(index)).map(|slot| slot.rect);
            let Some(around) = cells.reduce(|all, cell| all.union(cell)) else { continue };
            let pad = self.measurer.style.frame(&node.frame).map_or([0.0; 4], |frame| frame.pad);
            let table = self.slots[table].rect;
            self.slots[index].rect = Rect::new(table.x0, around.y0 - pad[0], table.x1, around.y1 + pad[2]);
        }
    }
}

impl Standing {
    /// What stands so whatever the setting.
    fn of(placing: Placing) -> Self {
        Self { number: None, ends: (true, true), placing }
    }
}
