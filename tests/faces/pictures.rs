//! Some faces as pictures, held against those in `tests/cases/<name>/out`. Both are cut into cells of 8 × 8 pixels, about
//! 2 mm at this resolution, and the mean colours of the cells are compared. What moves by half a pixel, about 0.1 mm, or is
//! drawn with other smoothing passes; what is missing, recoloured or moves by 3 mm does not.

use super::made;
use fittingcards::cards::{Block, Face};
use fittingcards::source::{FilePath, MemoryWorld};
use std::io::Cursor;
use std::path::{Path, PathBuf};

const DPI: f64 = 100.0;

/// Pixels along a cell's side.
const CELL: usize = 8;

/// How far colours of cells may lie apart, of 255: of all cells in the mean, and of the one that differs most.
const MEAN: f64 = 3.0;
const LARGEST: f64 = 36.0;

#[test]
fn pictures_of_faces_are_what_they_were() {
    let update = made::environment("UPDATE").is_some();
    let mut changed = Vec::new();
    for (path, face) in faces() {
        let bytes = face.png(DPI).unwrap();
        if update {
            std::fs::write(&path, bytes).unwrap();
            continue;
        }
        let kept = std::fs::read(&path).unwrap_or_else(|_| panic!("{} is not there", path.display()));
        let difference = Difference::between(&Picture::of(&kept), &Picture::of(&bytes));
        if !difference.is_small() {
            changed.push(format!("{}: {difference:?}", path.display()));
        }
    }
    assert!(!update, "the pictures were made anew: look at them, and run without UPDATE");
    assert!(changed.is_empty(), "pictures have changed (UPDATE=1 makes them anew):\n{}", changed.join("\n"));
}

/// The faces that have a picture, each with its path.
fn faces() -> Vec<(PathBuf, Face)> {
    let mut all = Vec::new();
    for (case, numbers) in CASES {
        let folder = made::folder("tests/cases").join(case);
        let world = made::world(&folder.join("in"));
        for card in made::cards(&world).0.into_iter().filter(|card| numbers.contains(&card.number.as_str())) {
            for face in [card.front, card.back] {
                all.push((picture(&folder, &format!("{}-{}", card.number, face.side.word())), face));
            }
        }
        for tag in made::tags(&world).into_iter().filter(|tag| numbers.contains(&tag.number.as_str())) {
            all.push((picture(&folder, &format!("{}-tag-{}", tag.number, tag.turn.number)), tag.face));
        }
    }
    assert!(all.len() >= 9, "{} faces", all.len());
    all
}

/// The cards and tags of each case that have a picture.
const CASES: [(&str, &[&str]); 2] = [("plain", &["F-1"]), ("statuses", &["F-1", "F-2", "F-3"])];

fn picture(folder: &Path, name: &str) -> PathBuf {
    folder.join("out").join(format!("{name}.png"))
}

#[test]
fn a_mark_of_another_colour_is_seen() {
    let layout = fittingcards::layouts::Layouts::built_in("cards/mark.xml").unwrap();
    let other = layout.replace("fill=\"{{ mark.fill }}\"", "fill=\"#8a4fa8\"");
    let world = world();
    let was = front(&world);
    let is = front(&world.with(FilePath::layouts("cards/mark.xml"), other));
    let difference = Difference::between(&Picture::of_face(&was), &Picture::of_face(&is));
    assert!(!difference.is_small(), "{difference:?}");
}

#[test]
fn a_block_that_moves_by_three_millimetres_is_seen() {
    let face = front(&world());
    let whole = Picture::of_face(&face);
    let pixels = (3.0 / 25.4 * DPI).round() as usize;
    for moved in face.blocks.iter().map(|block| block.name.as_str()) {
        let (rest, block) =
            (only(&face, |block| block.name != moved), only(&face, |block| block.name == moved));
        let mut shifted = Picture::of_face(&block);
        shifted.shift_down(pixels);
        let difference = Difference::between(&whole, &Picture::of_face(&rest).under(&shifted));
        assert!(!difference.is_small(), "{moved}: {difference:?}");
    }
}

#[test]
fn a_face_that_moves_by_half_a_pixel_passes() {
    // A face with few texts and lines: moved by as much, many letters differ more than the bound on a change allows.
    let face = made::cards(&made::world(&made::folder("tests/cases/plain/in"))).0.remove(0).back;
    let (fine, coarse) = (Picture::of(&face.png(2.0 * DPI).unwrap()), Picture::of_face(&face));
    let difference = Difference::between(&coarse, &fine.halved(1));
    assert!(difference.is_small(), "{difference:?}");
}

fn world() -> MemoryWorld {
    made::world(&made::folder("tests/cases/gaps/in"))
}

fn front(world: &MemoryWorld) -> Face {
    let cards = made::cards(world).0;
    cards
        .into_iter()
        .map(|card| card.front)
        .find(|face| face.blocks.iter().any(|block| block.name == "mark"))
        .unwrap()
}

fn only(face: &Face, keep: impl Fn(&Block) -> bool) -> Face {
    let mut face = face.clone();
    face.blocks.retain(keep);
    face
}

/// Pixels of three colours.
#[derive(Clone)]
struct Picture {
    width: usize,
    height: usize,
    pixels: Vec<[u8; 3]>,
}

impl Picture {
    fn of_face(face: &Face) -> Self {
        Self::of(&face.png(DPI).unwrap())
    }

    fn of(png: &[u8]) -> Self {
        let mut decoder = png::Decoder::new(Cursor::new(png));
        decoder.set_transformations(png::Transformations::EXPAND);
        let mut reader = decoder.read_info().unwrap();
        let mut bytes = vec![0; reader.output_buffer_size().unwrap()];
        let info = reader.next_frame(&mut bytes).unwrap();
        let pixels = bytes[..info.buffer_size()].as_chunks::<3>().0.to_vec();
        Self { width: info.width as usize, height: info.height as usize, pixels }
    }

    fn at(&self, x: usize, y: usize) -> [u8; 3] {
        self.pixels[y * self.width + x]
    }

    fn shift_down(&mut self, rows: usize) {
        let added = vec![[255; 3]; rows * self.width];
        self.pixels.truncate((self.height - rows) * self.width);
        self.pixels.splice(0..0, added);
    }

    /// The darker of both in each pixel.
    fn under(mut self, other: &Self) -> Self {
        for (one, other) in self.pixels.iter_mut().zip(&other.pixels) {
            *one = [0, 1, 2].map(|colour| one[colour].min(other[colour]));
        }
        self
    }

    /// Half as large, from a pixel so far right and down of the corner.
    fn halved(&self, from: usize) -> Self {
        let (width, height) = (self.width.div_ceil(2), self.height.div_ceil(2));
        let pixel = |x: usize, y: usize| {
            let four = [(0, 0), (1, 0), (0, 1), (1, 1)].map(|(right, down)| {
                self.at(
                    (2 * x + from + right).min(self.width - 1),
                    (2 * y + from + down).min(self.height - 1),
                )
            });
            [0, 1, 2].map(|colour| {
                u8::try_from(four.iter().map(|pixel| u32::from(pixel[colour])).sum::<u32>() / 4).unwrap()
            })
        };
        let pixels =
            (0..height).flat_map(|y| (0..width).map(move |x| (x, y))).map(|(x, y)| pixel(x, y)).collect();
        Self { width, height, pixels }
    }

    /// The mean colour of a cell.
    fn cell(&self, across: usize, down: usize) -> [f64; 3] {
        let columns = across * CELL..((across + 1) * CELL).min(self.width);
        let rows = down * CELL..((down + 1) * CELL).min(self.height);
        let count = (columns.len() * rows.len()) as f64;
        let all = rows.flat_map(|y| columns.clone().map(move |x| (x, y)));
        let mut sum = [0.0; 3];
        for pixel in all.map(|(x, y)| self.at(x, y)) {
            sum = [0, 1, 2].map(|colour| sum[colour] + f64::from(pixel[colour]));
        }
        sum.map(|sum| sum / count)
    }
}

/// How far the cells of two pictures lie apart.
#[derive(Debug)]
struct Difference {
    mean: f64,
    largest: f64,
}

impl Difference {
    fn between(one: &Picture, other: &Picture) -> Self {
        assert_eq!((one.width, one.height), (other.width, other.height), "pictures of one size");
        let (across, down) = (one.width.div_ceil(CELL), one.height.div_ceil(CELL));
        let cells = (0..down).flat_map(|y| (0..across).map(move |x| (x, y)));
        let apart = cells.map(|(x, y)| {
            let (one, other) = (one.cell(x, y), other.cell(x, y));
            [0, 1, 2].map(|colour: usize| (one[colour] - other[colour]).abs()).into_iter().fold(0.0, f64::max)
        });
        let apart: Vec<f64> = apart.collect();
        let mean = apart.iter().sum::<f64>() / apart.len() as f64;
        Self { mean, largest: apart.into_iter().fold(0.0, f64::max) }
    }

    fn is_small(&self) -> bool {
        self.mean <= MEAN && self.largest <= LARGEST
    }
}
