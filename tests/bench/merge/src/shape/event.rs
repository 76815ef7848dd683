//! One event, as written to a document.

use lastpull_core::job::Size;
use lastpull_core::facts::{Entry, Fact, JobField};
use uuid::Uuid;

/// What is written for one entry.
pub enum Write<'a> {
    /// Something that happened to a run.
    Event(Event),
    /// The title of a job.
    Title { job: Uuid, title: &'a str },
}

/// Something that happened to a run.
pub struct Event {
    /// The run.
    pub run: Uuid,
    /// Wall time in milliseconds since 1970-01-01 UTC.
    pub at: i64,
    /// What happened.
    pub kind: &'static str,
    /// The size, for pulls and misprints.
    pub size: Option<&'static str>,
    cause: Option<String>,
    counted: Option<bool>,
}

/// A value of a record.
pub enum Field {
    /// Texts and ids.
    Text(String),
    /// Times and numbers of pieces.
    Number(i64),
    /// Yes or no.
    Flag(bool),
}

/// What is written for an entry.
pub fn write_of(entry: &Entry) -> Write<'_> {
    let letters = |size: &Option<Size>| Some(size.map_or("none", Size::letters));
    let at = entry.stamp.wall.unix_ms().cast_signed();
    let plain = |kind| Event { run: entry.subject, at, kind, size: None, cause: None, counted: None };
    Write::Event(match &entry.fact {
        Fact::Pulled { pieces: 1, size } => Event { size: letters(size), ..plain("pulled") },
        Fact::Misprinted { pieces: 1, size, cause, was_counted } => Event {
            size: letters(size),
            cause: Some(format!("{cause:?}")),
            counted: Some(*was_counted),
            ..plain("misprinted")
        },
        Fact::Stopped(cause) => Event { cause: Some(format!("{cause:?}")), ..plain("stopped") },
        Fact::Resumed => plain("resumed"),
        Fact::JobSet(fields) => match fields.as_slice() {
            [JobField::Title(title)] => return Write::Title { job: entry.subject, title },
            other => unreachable!("{other:?} is not among the events"),
        },
        other => unreachable!("{other:?} is not among the events"),
    })
}

impl Event {
    /// The event as a text, for a run's log.
    pub fn note(&self) -> String {
        let mut text = format!("{} {}", self.kind, self.at);
        let counted = self.counted.map(|counted| if counted { "counted" } else { "uncounted" });
        for word in [self.size, self.cause.as_deref(), counted].into_iter().flatten() {
            text.push(' ');
            text.push_str(word);
        }
        text
    }

    /// The event as a record, without empty fields.
    pub fn record(&self) -> Vec<(&'static str, Field)> {
        let mut fields = vec![
            ("kind", Field::Text(self.kind.to_owned())),
            ("at", Field::Number(self.at)),
            ("run", Field::Text(self.run.to_string())),
        ];
        if let Some(size) = self.size {
            fields.push(("size", Field::Text(size.to_owned())));
            fields.push(("pieces", Field::Number(1)));
        }
        fields.extend(self.cause.clone().map(|cause| ("cause", Field::Text(cause))));
        fields.extend(self.counted.map(|counted| ("counted", Field::Flag(counted))));
        fields
    }
}
