//! Test helpers of this folder: rows of a CSV table by column name, and comparison within a tolerance.

pub struct Row {
    header: Vec<&'static str>,
    cells: Vec<&'static str>,
}

impl Row {
    pub fn text(&self, name: &str) -> &'static str {
        let at = self.header.iter().position(|cell| *cell == name).unwrap_or_else(|| panic!("no column {name}"));
        self.cells[at]
    }

    pub fn number(&self, name: &str) -> f64 {
        self.text(name).parse().unwrap_or_else(|_| panic!("{name}: {}", self.text(name)))
    }

    pub fn numbers<const N: usize>(&self, names: [&str; N]) -> [f64; N] {
        names.map(|name| self.number(name))
    }

    /// All cells from the named column on, as numbers.
    pub fn from(&self, name: &str) -> Vec<f64> {
        let at = self.header.iter().position(|cell| *cell == name).unwrap();
        self.cells[at..].iter().map(|cell| cell.parse().unwrap()).collect()
    }
}

/// The rows of a CSV table with a header line. Panics unless there are `count` of them.
pub fn rows(text: &'static str, count: usize) -> Vec<Row> {
    let mut lines = text.lines().filter(|line| !line.is_empty());
    let header: Vec<&str> = lines.next().unwrap().split(',').collect();
    let rows: Vec<Row> = lines.map(|line| Row { header: header.clone(), cells: line.split(',').collect() }).collect();
    assert_eq!(rows.len(), count);
    rows
}

#[track_caller]
pub fn near(value: f64, expected: f64, by: f64) {
    assert!((value - expected).abs() <= by, "{value} is not {expected} (within {by})");
}
