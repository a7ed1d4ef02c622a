//! Where in a page a browser is: what is read as text, what stands in a drawing.

use html5gum::State;

/// Which elements are open that matter.
#[derive(Debug, Default)]
pub(super) struct Where {
    /// Drawings in each other.
    pub drawings: usize,
    /// Whether a title or description of a drawing is open, where elements would be read as HTML.
    pub in_drawing_title: bool,
    /// Whether the text is that of the page's title.
    pub in_title: bool,
    /// How many elements are open whose text is none that is shown: the head, scripts, styles, titles.
    hidden: usize,
    /// The outermost open element that says that it is hidden, and how many of its name are open from there.
    concealed: Option<(String, usize)>,
}

impl Where {
    /// Takes an element that opens; answers with how its content is read, where not as elements.
    pub fn open(&mut self, name: &str, is_concealed: bool) -> Option<State> {
        match name {
            "svg" => self.drawings += 1,
            "title" | "desc" if self.drawings > 0 => self.in_drawing_title = true,
            "title" => self.in_title = true,
            _ => {}
        }
        self.hidden += usize::from(is_hidden(name));
        match &mut self.concealed {
            Some((outermost, open)) => *open += usize::from(outermost == name),
            none => *none = is_concealed.then(|| (name.to_owned(), 1)),
        }
        if self.drawings > 0 {
            return None;
        }
        match name {
            "script" => Some(State::ScriptData),
            "style" => Some(State::RawText),
            "title" | "textarea" => Some(State::RcData),
            _ => None,
        }
    }

    /// Takes an element that ends.
    pub fn close(&mut self, name: &str) {
        match name {
            "svg" => self.drawings = self.drawings.saturating_sub(1),
            "title" | "desc" => (self.in_drawing_title, self.in_title) = (false, false),
            _ => {}
        }
        self.hidden = self.hidden.saturating_sub(usize::from(is_hidden(name)));
        if let Some((outermost, open)) = &mut self.concealed {
            *open -= usize::from(outermost == name);
            self.concealed.take_if(|(_, open)| *open == 0);
        }
    }

    /// Whether text that comes next is shown.
    pub fn is_shown(&self) -> bool {
        self.hidden == 0 && self.concealed.is_none()
    }
}

fn is_hidden(name: &str) -> bool {
    matches!(name, "desc" | "head" | "script" | "style" | "title")
}
