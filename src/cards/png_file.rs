//! A picture as a PNG file: with a palette where few colours are in it, which most faces have.
//!
//! Nothing is lost. A palette quarters what the encoder has to read, and the file with it.

use resvg::tiny_skia::Pixmap;

/// The most colours that a palette holds (PNG, third edition, 11.2.2).
const MOST_COLOURS: usize = 256;
/// Places in the table that colours are looked up in: a power of two, far more than there are colours.
const PLACES: usize = 1024;

/// Everything is drawn on white, so nothing shows through and three channels are enough.
pub(super) fn encoded(pixmap: &Pixmap, dpi: f64) -> Result<Vec<u8>, png::EncodingError> {
    let (pixels, _) = pixmap.data().as_chunks::<4>();
    let mut bytes = Vec::new();
    let mut encoder = png::Encoder::new(&mut bytes, pixmap.width(), pixmap.height());
    encoder.set_depth(png::BitDepth::Eight);
    // Flat paint and letters that come again are found by the compression itself; filters hide them from it.
    encoder.set_filter(png::Filter::NoFilter);
    encoder.set_deflate_compression(png::DeflateCompression::Level(LEVEL));
    encoder.set_pixel_dims(Some(resolution(dpi)));
    let samples = if let Some(Indexed { palette, samples }) = Indexed::of(pixels) {
        encoder.set_color(png::ColorType::Indexed);
        encoder.set_palette(palette);
        samples
    } else {
        encoder.set_color(png::ColorType::Rgb);
        without_alpha(pixels)
    };
    let mut writer = encoder.write_header()?;
    writer.write_image_data(&samples)?;
    writer.finish()?;
    Ok(bytes)
}

fn without_alpha(pixels: &[[u8; 4]]) -> Vec<u8> {
    let mut samples = vec![0; 3 * pixels.len()];
    for (sample, &[red, green, blue, _]) in samples.as_chunks_mut().0.iter_mut().zip(pixels) {
        *sample = [red, green, blue];
    }
    samples
}

/// Levels above it take more time than they save bytes (`cargo bench --bench faces`).
const LEVEL: u8 = 2;

fn resolution(dpi: f64) -> png::PixelDimensions {
    let per_metre = (dpi / 0.0254).round() as u32;
    png::PixelDimensions { xppu: per_metre, yppu: per_metre, unit: png::Unit::Meter }
}

/// Pixels by the number of their colour.
struct Indexed {
    /// Red, green and blue of each colour, in the order in which they come.
    palette: Vec<u8>,
    samples: Vec<u8>,
}

impl Indexed {
    /// None where there are more colours than a palette holds.
    fn of(pixels: &[[u8; 4]]) -> Option<Self> {
        let mut table = Table { places: vec![None; PLACES], palette: Vec::new() };
        let mut samples = vec![0; pixels.len()];
        let mut last = None;
        for (sample, &pixel) in samples.iter_mut().zip(pixels) {
            *sample = match last {
                Some((colour, index)) if colour == pixel => index,
                _ => table.index(pixel)?,
            };
            last = Some((pixel, *sample));
        }
        Some(Self { palette: table.palette, samples })
    }
}

/// Which colour has which number.
struct Table {
    places: Vec<Option<([u8; 4], u8)>>,
    palette: Vec<u8>,
}

impl Table {
    fn index(&mut self, pixel: [u8; 4]) -> Option<u8> {
        // Multiplying by 2³² over the golden ratio spreads neighbouring colours over the table (Knuth, vol. 3, 6.4).
        let mut place = (u32::from_le_bytes(pixel).wrapping_mul(0x9E37_79B1) >> 22) as usize;
        loop {
            match self.places[place] {
                Some((colour, index)) if colour == pixel => return Some(index),
                Some(_) => place = (place + 1) % PLACES,
                None => return self.add(place, pixel),
            }
        }
    }

    fn add(&mut self, place: usize, pixel: [u8; 4]) -> Option<u8> {
        let number = self.palette.len() / 3;
        let index = u8::try_from(number).ok().filter(|_| number < MOST_COLOURS)?;
        self.places[place] = Some((pixel, index));
        self.palette.extend(&pixel[..3]);
        Some(index)
    }
}

#[cfg(test)]
mod tests {
    use super::encoded;
    use resvg::tiny_skia::{ColorU8, Pixmap};

    /// A picture of so many colours, and what is read from the file that is made of it; red, green and blue by turns.
    fn made_and_read(colours: u32) -> [Vec<u8>; 2] {
        let mut pixmap = Pixmap::new(40, 40).unwrap();
        for (index, pixel) in (0..).zip(pixmap.pixels_mut()) {
            let colour = index % colours;
            *pixel = ColorU8::from_rgba((colour % 256) as u8, (colour / 256) as u8, 7, 255).premultiply();
        }
        let made = pixmap.pixels().iter().flat_map(|pixel| [pixel.red(), pixel.green(), pixel.blue()]);
        [made.collect(), read(&encoded(&pixmap, 150.0).unwrap())]
    }

    fn read(file: &[u8]) -> Vec<u8> {
        let mut decoder = png::Decoder::new(std::io::Cursor::new(file));
        decoder.set_transformations(png::Transformations::EXPAND);
        let mut reader = decoder.read_info().unwrap();
        let mut samples = vec![0; reader.output_buffer_size().unwrap()];
        let size = reader.next_frame(&mut samples).unwrap().buffer_size();
        samples.truncate(size);
        samples
    }

    #[test]
    fn no_colour_is_lost_whether_a_palette_holds_them_or_not() {
        for colours in [1, 2, 255, 256, 257, 1600] {
            let [made, read] = made_and_read(colours);
            assert_eq!(made, read, "{colours} colours");
        }
    }

    #[test]
    fn the_resolution_is_told() {
        // 150 dpi are 5906 pixels a metre (PNG 11.3.4.3: pHYs counts a metre).
        let file = encoded(&Pixmap::new(3, 2).unwrap(), 150.0).unwrap();
        let decoder = png::Decoder::new(std::io::Cursor::new(file)).read_info().unwrap();
        let dims = decoder.info().pixel_dims.unwrap();
        assert_eq!((dims.xppu, dims.yppu), (5906, 5906));
    }
}
