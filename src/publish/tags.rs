//! Making kit tags: first how the parts are spread, which settles how many sheets there are, then the tags.

use super::counted::Counted;
use super::made::Making;
use super::options::{RenderError, Stage};
use crate::cards::{self, TagPlan};
use crate::diagnostics::Findings;
use crate::facts::TagFacts;
use crate::sheets::{self, PrintKind};
use rayon::prelude::*;
use std::sync::atomic::{AtomicBool, Ordering};

impl Making<'_> {
    /// Makes kit tags and their sheets; gives what is found in them.
    pub(super) fn tags(&self, facts: &[&TagFacts]) -> Result<Findings, RenderError> {
        let mut findings = Findings::new();
        let counted = Counted::new(self.progress, Stage::Tags, facts.len());
        for file in sheets::files(PrintKind::Tags, facts.len()) {
            let facts = &facts[file.records.clone()];
            let (name, inputs) = (format!("sheet {}", file.name), self.prepared.tag_sheet_from(&file, facts));
            if self.memory.keep(&name, &inputs, self.staging()) {
                facts.iter().for_each(|_| counted.one_more());
                continue;
            }
            let (plans, found) = self.planned(facts);
            let sound = AtomicBool::new(found.is_empty());
            findings.extend(found);
            let make = |plan: &TagPlan| {
                let (tag, mut findings) = self.clock.drawing(|| plan.draw(self.prepared.cards()));
                let facts =
                    tag.as_ref().and_then(|tag| facts.iter().find(|facts| facts.number == tag.number));
                if let (Some(tag), Some(facts)) = (&tag, facts) {
                    let standing = self.prepared.standing(&tag.number);
                    findings.extend(cards::incomplete_tag(self.prepared.cards(), facts, &standing, tag));
                }
                self.stop_for(&findings);
                sound.fetch_and(findings.is_empty(), Ordering::Relaxed);
                if plan.turn().is_last() {
                    counted.one_more();
                }
                Ok((tag, findings))
            };
            if !plans.is_empty() {
                let found = self.with_sheets(&file, &plans, &make)?;
                if sound.into_inner() && found.is_empty() {
                    self.memory.note(&name, inputs, vec![format!("sheets/{}", file.name)]);
                }
                findings.extend(found);
            }
        }
        Ok(findings)
    }

    /// How the parts of these fittings are spread over tags.
    fn planned(&self, facts: &[&TagFacts]) -> (Vec<TagPlan>, Findings) {
        let plan = |facts: &&TagFacts| {
            let standing = self.prepared.standing(&facts.number);
            self.clock.drawing(|| cards::plan_tags(self.prepared.cards(), facts, &standing))
        };
        let planned: Vec<_> = facts.par_iter().map(plan).collect();
        let (mut plans, mut findings) = (Vec::new(), Findings::new());
        for planned in planned {
            match planned {
                Ok(tags) => plans.extend(tags),
                Err(found) => {
                    findings.extend(found.into_iter().filter(|finding| self.prepared.is_news(finding)))
                }
            }
        }
        self.stop_for(&findings);
        (plans, findings)
    }
}
