//! A folder of layouts: the built-in ones, and the user's own in their place.

use super::budget::{self, Filled};
use super::fault::Placed;
use super::{Helper, built_in, counted, fault, marks, tags};
use crate::diagnostics::{Finding, Findings};
use crate::source::{FilePath, Folder, World, WorldError};
use serde_json::Value;
use std::collections::BTreeMap;
use std::sync::Arc;
use tera::{Context, Tera};

/// The layouts of one folder, ready to be filled.
///
/// A file of the user's layouts folder stands in for the built-in file of the same path, file by
/// file; files beside them can be included. `.xml`, `.svg` and `.html` files are filled, and what goes
/// into them is escaped; a value that they ask for and don't get is an error. The elements of `.xml`
/// files carry their file and line, see [`super::marked_place`]. Other files (`.css`, `.js`, `.yaml`)
/// are handed on as they are.
///
/// A filling that goes on and on is stopped: what a layout of the user's passes through, keeps and puts out is counted.
///
/// ```
/// use fittingcards::layouts::Layouts;
/// use fittingcards::source::{FilePath, MemoryWorld};
/// let world = MemoryWorld::new().with(FilePath::layouts("trial/name.svg"), "<text>{{ name }}</text>");
/// let (layouts, _) = Layouts::load(&world, "trial", &[])?;
/// let filled = layouts.fill("trial/name.svg", &serde_json::json!({ "name": "Cone & wedge" }));
/// assert_eq!(filled.expect("filled"), "<text>Cone &amp; wedge</text>");
/// let finding = layouts.fill("trial/name.svg", &serde_json::json!({})).expect_err("no name");
/// assert_eq!((finding.code, finding.place.line), ("layout-value", 1));
/// # Ok::<(), fittingcards::source::WorldError>(())
/// ```
#[derive(Clone)]
pub struct Layouts {
    tera: Tera,
    placed: Arc<Placed>,
    texts: BTreeMap<String, Arc<str>>,
    /// The user's own files.
    own: BTreeMap<String, Arc<str>>,
}

impl Layouts {
    /// The layouts below a folder such as `cards` or `booklet`, with the functions that they may call.
    /// Faults of all files are found at once.
    ///
    /// # Errors
    /// Where the user's layouts can't be read.
    pub fn load(world: &dyn World, folder: &str, helpers: &[Helper]) -> Result<(Self, Findings), WorldError> {
        Self::load_together(world, &[folder], helpers)
    }

    /// The layouts below several folders, which may take in each other's files.
    ///
    /// # Errors
    /// Where the user's layouts can't be read.
    pub fn load_together(
        world: &dyn World,
        folders: &[&str],
        helpers: &[Helper],
    ) -> Result<(Self, Findings), WorldError> {
        let mut findings = Findings::new();
        let files = gather(world, folders, &mut findings)?;
        let own = files.iter().filter(|(_, file)| file.own);
        let own = own.map(|(name, file)| (name.clone(), file.text.clone())).collect();
        let (filled, passed): (BTreeMap<_, _>, BTreeMap<_, _>) =
            files.into_iter().partition(|(name, _)| is_filled(name));
        let placed = placed(&filled, &mut findings);
        let tera = compile(&placed, folders.first().unwrap_or(&""), helpers, &mut findings);
        let texts = passed.into_iter().map(|(name, file)| (name, file.text)).collect();
        Ok((Self { tera, placed: Arc::new(placed), texts, own }, findings))
    }

    /// A layout filled with values.
    ///
    /// # Errors
    /// Where there is no such layout, it asks for a value that is not there, a function in it
    /// refuses, or it goes on and on; with the layout's file and line.
    #[allow(clippy::result_large_err, reason = "a finding is what stops the run")]
    pub fn fill(&self, name: &str, values: &Value) -> Result<String, Finding> {
        let mut filled = Filled::default();
        budget::begin(values, marks::is_marked(name));
        let made = Context::from_serialize(values)
            .and_then(|context| self.tera.render_to(name, &context, &mut filled));
        if budget::is_spent() {
            return Err(fault::endless(name, made.err().as_ref(), &self.placed));
        }
        made.and_then(|()| String::from_utf8(filled.0).map_err(tera::Error::message))
            .map_err(|error| fault::filling(name, &error, &self.placed))
    }

    /// A file that is handed on as it is.
    #[must_use]
    pub fn text(&self, name: &str) -> Option<&str> {
        self.texts.get(name).map(|text| &**text)
    }

    /// The files that the user brings and that are not as the built-in ones, with their texts, sorted.
    pub fn own(&self) -> impl Iterator<Item = (&str, &str)> {
        self.own.iter().map(|(name, text)| (&**name, &**text))
    }

    /// The built-in file of this path, whether or not the user has one in its place.
    #[must_use]
    pub fn built_in(name: &str) -> Option<&'static str> {
        built_in::all().find(|(path, _)| *path == name).map(|(_, text)| text)
    }

    /// The paths of all files that are handed on as they are, sorted.
    pub fn texts(&self) -> impl Iterator<Item = &str> {
        self.texts.keys().map(String::as_str)
    }

    /// Whether there is a layout of this path to be filled.
    #[must_use]
    pub fn has(&self, name: &str) -> bool {
        self.tera.get_template_names().any(|known| known == name)
    }
}

impl std::fmt::Debug for Layouts {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let mut names: Vec<&str> = self.tera.get_template_names().collect();
        names.sort_unstable();
        out.debug_struct("Layouts").field("filled", &names).field("texts", &self.texts.keys()).finish()
    }
}

/// Endings of the files that are filled.
const FILLED: [&str; 3] = [".html", ".svg", ".xml"];

fn is_filled(name: &str) -> bool {
    FILLED.iter().any(|ending| name.ends_with(ending))
}

/// A file of a folder of layouts.
struct LayoutFile {
    text: Arc<str>,
    /// Whether the user brings it.
    own: bool,
}

fn gather(
    world: &dyn World,
    folders: &[&str],
    findings: &mut Findings,
) -> Result<BTreeMap<String, LayoutFile>, WorldError> {
    let is_in =
        |path: &str, folder: &str| path.strip_prefix(folder).is_some_and(|rest| rest.starts_with('/'));
    let inside = |path: &str| folders.iter().any(|folder| is_in(path, folder));
    let built_in = built_in::all().filter(|(path, _)| inside(path));
    let mut files: BTreeMap<String, LayoutFile> = built_in
        .map(|(path, text)| (path.to_owned(), LayoutFile { text: Arc::from(text), own: false }))
        .collect();
    for file in world.files(Folder::Layouts)?.into_iter().filter(|file| inside(&file.path)) {
        match text(&file, &world.read(&file)?) {
            Ok(text) => {
                let own = files.get(&*file.path).is_none_or(|built_in| built_in.text != text);
                files.insert(file.path.to_string(), LayoutFile { text, own });
            }
            Err(finding) => findings.push(*finding),
        }
    }
    Ok(files)
}

/// The most bytes that a file of layouts may have; pictures are written into it.
const MOST_BYTES: usize = 8 << 20;

fn text(file: &FilePath, bytes: &[u8]) -> Result<Arc<str>, Box<Finding>> {
    if bytes.len() > MOST_BYTES {
        return Err(Box::new(fault::too_large(file, bytes.len(), MOST_BYTES)));
    }
    std::str::from_utf8(bytes).map(Arc::from).map_err(|_| Box::new(fault::not_text(file)))
}

/// The texts of all files, with marks and counts put in. One that is not sound alone has the built-in one in its place, or
/// nothing, so that those who take it in are not told of as well.
fn placed(files: &BTreeMap<String, LayoutFile>, findings: &mut Findings) -> Placed {
    let mut placed = Placed::new();
    for (name, file) in files {
        let text = unsound(name, file).map_or_else(
            || place(name, file),
            |finding| {
                findings.push(finding);
                Layouts::built_in(name).unwrap_or_default().to_owned()
            },
        );
        placed.insert(name.clone(), text);
    }
    placed
}

/// Each file is first looked at alone, so that one that is broken hides no other.
fn unsound(name: &str, file: &LayoutFile) -> Option<Finding> {
    let error = Tera::new().add_raw_template(name, &file.text).err();
    let lists = || {
        let tag = tags::tags(&file.text).into_iter().find(tags::Tag::makes_a_list)?;
        Some(fault::list(name, &file.text, &tag))
    };
    error.and_then(|error| fault::syntax(&error)).or_else(lists)
}

fn place(name: &str, file: &LayoutFile) -> String {
    let text = if file.own { counted::counted(&file.text) } else { file.text.to_string() };
    if marks::is_marked(name) { marks::marked(name, &text) } else { text }
}

fn compile(placed: &Placed, folder: &str, helpers: &[Helper], findings: &mut Findings) -> Tera {
    let mut tera = empty(helpers);
    if let Err(error) = tera.add_raw_templates(placed) {
        findings.extend(fault::together(&error, folder, placed));
    }
    tera
}

fn empty(helpers: &[Helper]) -> Tera {
    let mut tera = Tera::new();
    tera.autoescape_on(FILLED);
    tera.register_filter("safe", safe);
    budget::register(&mut tera);
    for helper in helpers {
        helper.register(&mut tera);
    }
    tera
}

/// Text that is not escaped again. The library's own filter prints nothing for a value that is not there;
/// a card must not be silent.
fn safe(value: tera::Value, _: tera::Kwargs, _: &tera::State<'_>) -> tera::TeraResult<tera::Value> {
    match value.as_str() {
        Some(text) => Ok(tera::Value::safe_string(text)),
        None if value.is_undefined() || value.is_none() => {
            Err(tera::Error::message("the value is not there"))
        }
        None => Ok(value),
    }
}
