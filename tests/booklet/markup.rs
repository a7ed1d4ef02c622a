//! A page as a browser reads it: tags, ids, links and text, by a tokenizer of the HTML standard.

use html5gum::{DefaultEmitter, HtmlString, Token, Tokenizer};

/// What is read of a page or of a whole single file.
#[derive(Debug, Default)]
pub struct Markup {
    /// The text between the tags of the main part, scripts left out.
    pub main: String,
    /// Every id.
    pub ids: Vec<String>,
    /// Where links lead.
    pub links: Vec<String>,
    /// What pictures are taken from.
    pub pictures: Vec<String>,
    /// The ids that other elements name: labels, descriptions, tables of data.
    pub named: Vec<String>,
    /// How often the main part ends.
    pub ends: usize,
    /// What the elements hold that are scripts, and data for them.
    pub scripts: Vec<String>,
    comments: usize,
    in_main: bool,
    in_script: bool,
}

/// Reads HTML.
pub fn read(html: &str) -> Markup {
    let mut emitter = DefaultEmitter::default();
    emitter.naively_switch_states(true);
    let mut markup = Markup::default();
    for Ok(token) in Tokenizer::new_with_emitter(html, emitter) {
        markup.take(token);
    }
    assert_eq!(markup.comments, 0, "pages hold no comments");
    markup
}

impl Markup {
    fn take(&mut self, token: Token) {
        match token {
            Token::StartTag(tag) => {
                self.open(&text(&tag.name));
                for (name, value) in &tag.attributes {
                    self.attribute(&text(name), text(value));
                }
            }
            Token::EndTag(tag) => self.close(&text(&tag.name)),
            Token::String(piece) if self.in_script => {
                self.scripts.last_mut().unwrap().push_str(&text(&piece));
            }
            Token::String(piece) if self.in_main => self.main.push_str(&text(&piece)),
            Token::Comment(_) => self.comments += 1,
            _ => {}
        }
    }

    fn open(&mut self, element: &str) {
        match element {
            "main" => self.in_main = true,
            "script" => {
                self.in_script = true;
                self.scripts.push(String::new());
            }
            _ => {}
        }
    }

    fn close(&mut self, element: &str) {
        match element {
            "main" => {
                self.in_main = false;
                self.ends += 1;
            }
            "script" => self.in_script = false,
            _ => {}
        }
    }

    fn attribute(&mut self, name: &str, value: String) {
        match name {
            "id" => self.ids.push(value),
            "href" => self.links.push(value),
            "src" => self.pictures.push(value),
            "for" | "aria-labelledby" | "aria-describedby" | "data-table" => {
                self.named.extend(value.split(' ').map(str::to_owned));
            }
            _ => {}
        }
    }
}

fn text(bytes: &HtmlString) -> String {
    String::from_utf8(bytes.to_vec()).unwrap()
}
