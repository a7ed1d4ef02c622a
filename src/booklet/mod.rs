//! The booklet: plain HTML pages and the index that finds them, from disk and without a network.

mod addresses;
mod bodies;
mod chapters;
mod check;
mod closed;
mod conductors;
mod current;
mod data_address;
mod entry;
mod figures;
mod find;
mod fittings;
mod frame;
mod glossary;
mod hand;
mod input;
mod key;
mod long;
mod look_alikes;
mod measures;
mod notices;
mod numbers;
mod offline;
mod pages;
mod parts;
mod single;
mod start;
mod taught;
mod teaching;
mod uses;
mod verdict;
mod view;
mod wear;

pub use input::{Booklet, Input};
pub use pages::{Page, Subject, UnfilledPage, make};
pub use single::single_file;
