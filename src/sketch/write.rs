//! Writes a scene as SVG: neighbours that look alike share a group, lines share a path.

use super::appearance::INK;
use super::letters::{Anchor, Text, family};
use super::number::number;
use super::outline::Outline;
use super::plane::Point;
use super::scene::{Element, Primitive, Scene};
use std::fmt::Write;

/// The elements of a scene whose wide line is `thick` millimetres.
pub(crate) fn body(scene: &Scene, thick: f64) -> String {
    let mut out = String::new();
    let alike = |a: &Element, b: &Element| a.appearance == b.appearance && is_text(a) == is_text(b);
    for group in scene.elements.chunk_by(alike) {
        if is_text(&group[0]) { texts(&mut out, group) } else { primitives(&mut out, group, thick) }
    }
    out
}

fn is_text(element: &Element) -> bool {
    matches!(element.primitive, Primitive::Text(_))
}

fn primitives(out: &mut String, group: &[Element], thick: f64) {
    let looks = group[0].appearance.attributes(thick);
    let one = group.len() == 1;
    if !one {
        let _ = write!(out, "<g {looks}>");
    }
    let looks = if one { format!(" {looks}") } else { String::new() };
    for element in group {
        match &element.primitive {
            Primitive::Area(outline) => area(out, outline, &looks),
            Primitive::Circle(centre, radius) => {
                let (x, y, r) = (number(centre.x), number(centre.y), number(*radius));
                let _ = write!(out, "<circle{looks} cx=\"{x}\" cy=\"{y}\" r=\"{r}\"/>");
            }
            Primitive::Lines(lines) => {
                let data: String = lines.iter().map(|line| path(line)).collect();
                let _ = write!(out, "<path{looks} d=\"{data}\"/>");
            }
            Primitive::Text(_) => {}
        }
    }
    if !one {
        out.push_str("</g>");
    }
}

fn area(out: &mut String, outline: &Outline, looks: &str) {
    let data: Vec<String> = outline.rings().map(|ring| path(&ring) + "Z").collect();
    let rule = if data.len() > 1 { " fill-rule=\"evenodd\"" } else { "" };
    let _ = write!(out, "<path{looks}{rule} d=\"{}\"/>", data.concat());
}

fn path(points: &[Point]) -> String {
    let mut data = String::new();
    for (index, point) in points.iter().enumerate() {
        let letter = match index {
            0 => "M",
            1 => "L",
            _ => " ",
        };
        let _ = write!(data, "{letter}{} {}", number(point.x), number(point.y));
    }
    data
}

fn texts(out: &mut String, group: &[Element]) {
    let (class, fill) = match group[0].appearance.fill {
        Some(tone) => (tone.class(), tone.light()),
        None => ("sk-text".to_owned(), INK.to_owned()),
    };
    let _ = write!(out, "<g class=\"{class}\" fill=\"{fill}\" font-family=\"{}\">", family());
    for element in group {
        if let Primitive::Text(text) = &element.primitive {
            letters(out, text);
        }
    }
    out.push_str("</g>");
}

fn letters(out: &mut String, text: &Text) {
    let anchor = match text.anchor {
        Anchor::Start => "",
        Anchor::Middle => " text-anchor=\"middle\"",
        Anchor::End => " text-anchor=\"end\"",
    };
    let (x, y, size) = (number(text.place.x), number(text.place.y), number(text.size));
    let _ =
        write!(out, "<text x=\"{x}\" y=\"{y}\" font-size=\"{size}\"{anchor}>{}</text>", escaped(&text.text));
}

/// Text for SVG: markup characters as references, control characters left out.
pub(crate) fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            letter if letter.is_control() => {}
            letter => out.push(letter),
        }
    }
    out
}
