//! A card's facts as an ordered list of names and texts: what the check code and comparisons see.

use super::{BodyFacts, CardFacts, ConductorFacts, Content, FittingFacts, MarkFacts};

/// One thing that a card prints: what it is, and the text.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct PrintedText {
    /// What it is, such as "tightening torque".
    pub name: String,
    /// What is printed.
    pub text: String,
    /// Numbers of the parts and fittings that it speaks of, beside those that the card is about.
    pub about: Vec<String>,
}

impl PrintedText {
    /// A text with its name.
    #[must_use]
    pub fn new(name: impl Into<String>, text: impl Into<String>) -> Self {
        Self { name: name.into(), text: text.into(), about: Vec::new() }
    }

    /// The same text, which speaks of this part or fitting.
    #[must_use]
    pub fn about(mut self, number: &str) -> Self {
        if !number.is_empty() {
            self.about.push(number.to_owned());
        }
        self
    }
}

impl CardFacts {
    /// Everything that the card prints, the number first; issue, edition, date and check code are left out.
    #[must_use]
    pub fn printed(&self) -> Vec<PrintedText> {
        let mut list = List::default();
        list.add("card number", &self.number);
        list.add("name", &self.title);
        list.add("status", &self.status_words);
        list.numbered("before work", &self.before_work);
        match &self.content {
            Content::Fitting(facts) => list.fitting(facts),
            Content::Body(facts) => list.body(facts),
        }
        list.add("caution", &self.caution);
        list.texts
    }
}

#[derive(Default)]
struct List {
    texts: Vec<PrintedText>,
}

impl List {
    /// Adds a text; what is empty is not printed.
    fn add(&mut self, name: &str, text: &str) {
        self.add_about(name, text, &[]);
    }

    /// Adds a text that speaks of these parts and fittings.
    fn add_about(&mut self, name: &str, text: &str, numbers: &[&str]) {
        if !text.is_empty() {
            let printed = PrintedText::new(name, text);
            self.texts.push(numbers.iter().fold(printed, |printed, number| printed.about(number)));
        }
    }

    fn fitting(&mut self, facts: &FittingFacts) {
        let gripping = [facts.gripping_number.as_str()];
        self.mark("mark", facts.mark.as_ref(), &gripping);
        for conductor in &facts.conductors {
            self.conductor(conductor);
        }
        let named = joined(&[&facts.gripping_name, &facts.gripping_number]);
        self.add_about("gripping part", &named, &gripping);
        self.add_about("gripping part's stamp", &facts.gripping_stamp, &gripping);
        self.add("stamp on the fitting", &facts.stamp);
        for part in &facts.parts {
            let quantity = format!("{} ×", part.quantity);
            let texts = [&quantity, &part.role, &part.number, &part.stamp];
            let name = format!("item {}", part.item);
            self.add_about(&name, &joined(&texts.map(String::as_str)), &[&part.number]);
        }
        for wrong in &facts.not_these {
            // A whole kit is named by its fitting.
            let about = [wrong.number.strip_prefix("kit of ").unwrap_or(&wrong.number)];
            self.mark(&format!("not {}: mark", wrong.number), wrong.mark.as_ref(), &about);
            let texts = [&wrong.stamp, &wrong.with, &wrong.happens, &wrong.noticed].map(String::as_str);
            self.add_about(&format!("not {}", wrong.number), &joined(&texts), &about);
            for (name, text) in &wrong.drawn {
                self.add_about(&format!("not {}, drawing: {name}", wrong.number), text, &about);
            }
        }
        if facts.not_these_more > 0 {
            self.add("more wrong parts", &facts.not_these_more.to_string());
        }
        if facts.more_kits {
            self.add("more wrong kits", "booklet");
        }
        self.add("body card", facts.body_card.as_deref().unwrap_or_default());
        self.numbered("step", &facts.steps);
        self.making(facts);
        self.numbered("reject if", &facts.reject_if);
        for notice in &facts.notices {
            self.add("notice", &notice.number);
        }
        self.add("in force from", facts.in_force_from());
        self.add("supersedes", &facts.supersedes.join(", "));
        self.add("fittings in the line", facts.in_service.as_deref().unwrap_or_default());
    }

    fn making(&mut self, facts: &FittingFacts) {
        for tightening in &facts.tightening {
            self.add(&format!("tightening torque, {}", tightening.item), &tightening.torque);
            let texts = [&tightening.spanner, &tightening.grease, &tightening.passes];
            self.add(&format!("tightening, {}", tightening.item), &joined(&texts.map(String::as_str)));
        }
        for check in &facts.checks {
            let name = joined(&[&check.when, &check.what]);
            self.add(&format!("check {name}: go"), &check.go);
            self.add(&format!("check {name}: no-go"), &check.no_go);
        }
        self.add("a check fails before load", &facts.if_wrong.before_load);
        self.add("a check fails under load", &facts.if_wrong.under_load);
        self.add("witness", &facts.witness);
        self.add("line tension max", facts.line_tension_max.as_deref().unwrap_or_default());
        for (name, text) in &facts.dimensions {
            self.add(&format!("drawing: {name}"), text);
        }
        for (name, text) in &facts.pointed_at {
            self.add(&format!("drawing: {name}"), text);
        }
    }

    fn conductor(&mut self, facts: &ConductorFacts) {
        self.add("conductor", &facts.name);
        self.add("conductor's material", &facts.material);
        self.add("conductor's build", &facts.build);
        self.add("overall diameter", &facts.diameter);
        self.add("metal section", &facts.section);
        self.add("nominal size", facts.nominal.as_deref().unwrap_or_default());
        self.add("neck", facts.neck.as_deref().unwrap_or_default());
        self.add("conductor's caution", &facts.caution);
        self.add("looks like", &facts.alike);
        let Some(wear) = &facts.wear else { return };
        self.add("wear is of", &wear.basis);
        for (name, text) in &wear.limits {
            self.add(&format!("wear: {name}"), text);
        }
        for row in &wear.rows {
            let texts = [&row.flat, &row.section, &row.worn, &row.action];
            self.add(&format!("worn to {}", row.height), &joined(&texts.map(String::as_str)));
        }
    }

    fn body(&mut self, facts: &BodyFacts) {
        self.add("stamp", &facts.stamp);
        for part in &facts.parts {
            let about = [part.number.as_str()];
            self.mark(&format!("{}: mark", part.number), part.mark.as_ref(), &about);
            self.add_about(&format!("{}: name", part.number), &part.name, &about);
            self.add_about(&format!("{}: stamp", part.number), &part.stamp, &about);
            self.add_about(&format!("{}: for", part.number), &part.conductors.join(", "), &about);
            self.add_about(&format!("{}: status", part.number), &part.status_words, &about);
        }
        for (nth, column) in facts.fittings.iter().enumerate() {
            // One that stands in several columns has one status.
            if facts.fittings[..nth].iter().all(|before| before.number != column.number) {
                self.add_about(
                    &format!("{}: status", column.number),
                    &column.status_words,
                    &[&column.number],
                );
            }
        }
        for row in &facts.rows {
            for (cell, column) in row.cells.iter().zip(&facts.fittings) {
                let texts = [cell.text.as_str(), cell.noticed];
                let name = format!("{} in {}, {}", row.part, column.number, column.conductor);
                self.add_about(&name, &joined(&texts), &[&row.part, &column.number]);
            }
        }
    }

    fn mark(&mut self, name: &str, mark: Option<&MarkFacts>, about: &[&str]) {
        if let Some(mark) = mark {
            self.add_about(name, &mark.words(), about);
        }
    }

    fn numbered(&mut self, name: &str, texts: &[String]) {
        for (index, text) in texts.iter().enumerate() {
            self.add(&format!("{name} {}", index + 1), text);
        }
    }
}

impl MarkFacts {
    /// All of it.
    pub(super) fn words(&self) -> String {
        joined(&[&self.colour, &self.text, &self.notches_words])
    }
}

fn joined(texts: &[&str]) -> String {
    texts.iter().filter(|text| !text.is_empty()).copied().collect::<Vec<_>>().join("; ")
}
