//! Lays out the text of a pot's label so that nothing is cut off.

/// The texts of a label.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct LabelWords {
    /// Name of the ink.
    pub name: String,
    /// The revision.
    pub mark: String,
    /// What else must be known of its contents: changes since, the client's approval.
    pub notes: Vec<String>,
    /// Each component and its share.
    pub parts: Vec<[String; 2]>,
    /// Text at index n: what is shown if n more components do not fit.
    pub more: Vec<String>,
    /// Lines at the bottom: grams, date, job, who made it.
    pub foot: Vec<String>,
}

/// A text at a position on the label.
#[derive(Clone, Debug, PartialEq)]
pub struct PlacedText {
    /// The text.
    pub text: String,
    /// Its left edge.
    pub x: f64,
    /// Its baseline.
    pub y: f64,
    /// Its font size.
    pub size: f64,
    /// Whether it is bold.
    pub bold: bool,
}

/// Width of a text of this font size, bold or not.
pub type Measure<'a> = &'a dyn Fn(&str, f64, bool) -> f64;

/// Width and height of the label, three to two. Without unit: it can be drawn at any size.
pub const LABEL_SIZE: [f64; 2] = [1200.0, 800.0];
/// Width of the band in the ink's colour at the left edge.
pub const BAND_WIDTH: f64 = 72.0;
const MARGIN: f64 = 44.0;
const GAP: f64 = 48.0;
/// Line height, in font sizes.
const LEADING: f64 = 1.25;
/// Smallest font size that can be read at arm's length on a label as wide as a hand. Our own.
const MIN_FONT_SIZE: f64 = 26.0;

/// Lays out a label: the name as large as possible, in two lines at most; the foot at the bottom; the components
/// between, in as many columns as they need. Text that does not fit at the smallest size ends in an ellipsis, and
/// components that do not fit are counted.
pub fn label_layout(words: &LabelWords, measure: Measure<'_>) -> Vec<PlacedText> {
    let left = BAND_WIDTH + MARGIN;
    let width = LABEL_SIZE[0] - left - MARGIN;
    let mut placed = Vec::new();
    let mut y = MARGIN;
    let mut put = |y: &mut f64, text: &str, [largest, least]: [f64; 2], lines: usize, bold: bool| {
        let (size, lines) = fitted(text, width, [largest, least], lines, bold, measure);
        for text in lines {
            *y += size;
            placed.push(PlacedText { text, x: left, y: *y, size, bold });
            *y += size * (LEADING - 1.0);
        }
    };
    put(&mut y, &words.name, [124.0, 52.0], 2, true);
    put(&mut y, &words.mark, [64.0, MIN_FONT_SIZE], 1, true);
    for note in &words.notes {
        put(&mut y, note, [40.0, MIN_FONT_SIZE], 2, false);
    }
    let foot = 40.0 * LEADING * words.foot.len() as f64;
    let mut at = LABEL_SIZE[1] - MARGIN - foot;
    let room = at - y - 24.0;
    for line in &words.foot {
        put(&mut at, line, [40.0, MIN_FONT_SIZE], 1, false);
    }
    placed.extend(parts(words, [left, y + 16.0], [width, room], measure));
    placed
}

/// The components, in one column or two.
fn parts(words: &LabelWords, [left, top]: [f64; 2], [width, room]: [f64; 2], measure: Measure<'_>) -> Vec<PlacedText> {
    let mut placed = Vec::new();
    let count = words.parts.len();
    let rows_at = |size: f64| (room / (size * LEADING)).max(0.0).floor() as usize;
    let columns = if count > rows_at(44.0) { 2 } else { 1 };
    let column = (width - GAP * (columns as f64 - 1.0)) / columns as f64;
    let wanted = count.div_ceil(columns).max(1);
    let size = (room / wanted as f64 / LEADING).clamp(MIN_FONT_SIZE, 44.0);
    let rows = rows_at(size).min(wanted);
    if rows == 0 {
        return placed;
    }
    // The last row says how many more there are.
    let shown = if count > rows * columns { rows * columns - 1 } else { count };
    let figures = words.parts.iter().take(shown).map(|[_, percent]| measure(percent, size, true)).fold(0.0, f64::max);
    let after = figures + size * 0.6;
    for (index, [name, percent]) in words.parts.iter().take(shown).enumerate() {
        let x = left + (column + GAP) * (index / rows) as f64;
        let y = top + size + size * LEADING * (index % rows) as f64;
        let figure = measure(percent, size, true);
        let name = cut(name, column - after, size, false, measure);
        placed.push(PlacedText { text: percent.clone(), x: x + figures - figure, y, size, bold: true });
        placed.push(PlacedText { text: name, x: x + after, y, size, bold: false });
    }
    if let Some(more) = words.more.get(count - shown).filter(|_| shown < count) {
        let x = left + (column + GAP) * (shown / rows) as f64;
        let y = top + size + size * LEADING * (shown % rows) as f64;
        placed.push(PlacedText { text: cut(more, column, size, false, measure), x, y, size, bold: false });
    }
    placed
}

/// The largest font size at which a text takes at most `most` lines, and the lines.
fn fitted(
    text: &str,
    width: f64,
    [largest, least]: [f64; 2],
    most: usize,
    bold: bool,
    measure: Measure<'_>,
) -> (f64, Vec<String>) {
    let mut size = largest;
    loop {
        let lines = wrapped(text, width, size, bold, measure);
        let fits = lines.len() <= most && lines.iter().all(|line| measure(line, size, bold) <= width);
        if fits {
            return (size, lines);
        }
        if size <= least {
            let mut kept: Vec<String> = lines.iter().take(most.saturating_sub(1)).cloned().collect();
            kept.push(lines.iter().skip(kept.len()).map(String::as_str).collect::<Vec<_>>().join(" "));
            return (size, kept.iter().map(|line| cut(line, width, size, bold, measure)).collect());
        }
        size = (size - 4.0).max(least);
    }
}

/// Breaks a text into lines, between words only.
fn wrapped(text: &str, width: f64, size: f64, bold: bool, measure: Measure<'_>) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in text.split_whitespace() {
        match lines.last_mut() {
            Some(line) if measure(&format!("{line} {word}"), size, bold) <= width => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    lines
}

/// As much of a text as fits, with an ellipsis if it is cut.
fn cut(text: &str, width: f64, size: f64, bold: bool, measure: Measure<'_>) -> String {
    if measure(text, size, bold) <= width {
        return text.to_owned();
    }
    let letters: Vec<char> = text.chars().collect();
    let fits = |count: &usize| {
        let short: String = letters.iter().take(*count).chain(&['…']).collect();
        (measure(&short, size, bold) <= width).then_some(short)
    };
    (0..letters.len()).rev().find_map(|count| fits(&count)).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// Characters of very different widths, as fonts have them; bold ones are wider.
    fn width_of(text: &str, size: f64, bold: bool) -> f64 {
        let wide = |letter: char| match letter {
            'W' | 'M' | '…' => 0.95,
            'i' | 'l' | '.' | ' ' => 0.28,
            _ => 0.56,
        };
        text.chars().map(wide).sum::<f64>() * size * if bold { 1.08 } else { 1.0 }
    }

    fn label(name: &str, parts: usize) -> LabelWords {
        LabelWords {
            name: name.into(),
            mark: "Revision 3".into(),
            notes: vec!["Changed 2 times since".into()],
            parts: (0..parts).map(|part| [format!("Component {part}"), "8.3 %".into()]).collect(),
            more: (0..=parts).map(|left| format!("and {left} more")).collect(),
            foot: vec!["745.2 g · Nov 25 · Ines".into(), "Tour tees, Harbour Night Choir".into()],
        }
    }

    #[test]
    fn a_short_name_is_large_and_every_part_is_named() {
        let placed = label_layout(&label("Brick", 4), &width_of);
        let name = placed.iter().find(|words| words.text == "Brick").unwrap();
        assert!((name.size - 124.0).abs() < 1e-9 && name.bold);
        assert_eq!(placed.iter().filter(|words| words.text.starts_with("Component")).count(), 4);
    }

    #[test]
    fn parts_that_do_not_fit_are_counted() {
        let placed = label_layout(&label("Brick", 60), &width_of);
        let named = placed.iter().filter(|words| words.text.starts_with("Component")).count();
        assert!((8..60).contains(&named));
        assert!(placed.iter().any(|words| words.text == format!("and {} more", 60 - named)));
    }

    proptest! {
        #[test]
        fn nothing_on_a_label_is_cut_off_or_overlaps(
            name in "[Wila ]{1,120}", mark in "[A-z0-9 ]{0,80}", note in "[WMi ]{0,160}",
            parts in prop::collection::vec("[WMia ]{1,80}", 0..30), foot in prop::collection::vec("[WMil ]{0,160}", 0..3),
        ) {
            let words = LabelWords {
                name,
                mark,
                notes: vec![note],
                more: (0..=parts.len()).map(|left| format!("+ {left}")).collect(),
                parts: parts.into_iter().map(|part| [part, "12.5 %".to_owned()]).collect(),
                foot,
            };
            let placed = label_layout(&words, &width_of);
            for (at, one) in placed.iter().enumerate() {
                let right = one.x + width_of(&one.text, one.size, one.bold);
                prop_assert!(one.x >= BAND_WIDTH && right <= LABEL_SIZE[0] - MARGIN + 1e-6, "{one:?}");
                prop_assert!(one.y - one.size >= 0.0 && one.y + one.size * 0.25 <= LABEL_SIZE[1], "{one:?}");
                for other in placed.iter().skip(at + 1) {
                    let apart = (one.y - other.y).abs() >= one.size.min(other.size) * 0.99;
                    let beside = right <= other.x + 1e-6 || other.x + width_of(&other.text, other.size, other.bold) <= one.x + 1e-6;
                    prop_assert!(apart || beside, "{one:?} {other:?}");
                }
            }
        }
    }
}
