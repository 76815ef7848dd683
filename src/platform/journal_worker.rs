//! The journal's worker (`disk.js`): it reads while the app is still being compiled, and its commits do not
//! wait for a frame of the page. If the browser has no workers, or this one fails or does not answer, the page does
//! the work itself; asking twice never stores twice, since every append names the head it builds on.
//!
//! # Decisions
//!
//! - On the page's thread each answer of the database waits behind the frame that a touch requested: a commit took
//!   20 ms, of which the disk needed 2.
//! - The worker knows no format: the page sends the records, the new head, and the head they build on. The worker reads
//!   the stored head and writes in one transaction, and only if it is that head. So sequence numbers are still assigned
//!   inside the transaction.
//! - Photos are encoded in a worker too: on a slowed page that took four times as long.

use super::worker::{WorkerClient, bytes, get};
use js_sys::{Array, Promise, Uint8Array};
use std::cell::RefCell;
use std::rc::Rc;
use std::time::Duration;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::Worker;

/// Time after which an answer is given up and the page does the work itself.
const ANSWER_TIMEOUT: Duration = Duration::from_secs(3);

/// The worker. Clones are handles of the same worker.
#[derive(Clone)]
pub struct JournalWorker {
    worker: WorkerClient,
    /// The name of the journal that it read before the app started, and the promise of the result.
    early: Rc<RefCell<Option<(String, Promise)>>>,
}

/// The stored journal, as bytes.
pub struct Stored {
    /// The database's version.
    pub version: u32,
    /// The values of the store `meta`, in the order of their keys.
    pub meta: Vec<Vec<u8>>,
    /// The checkpoint.
    pub checkpoint: Option<Vec<u8>>,
    /// The values of the store `tail`.
    pub tail: Vec<Vec<u8>>,
}

/// Result of an append.
pub enum Appended {
    /// Committed.
    Saved,
    /// Nothing was stored: `meta` holds these values, not those that the append was built on.
    Changed(Vec<Vec<u8>>),
    /// No answer. It may be stored or not.
    Unknown,
}

/// An append: the `meta` it builds on, the new head, and the new records with their keys.
pub struct Append<'a> {
    /// The database's name.
    pub name: &'a str,
    /// Its version.
    pub version: u32,
    /// The values of the store `meta` that it builds on.
    pub meta: &'a [Vec<u8>],
    /// The head afterwards.
    pub head: &'a [u8],
    /// Keys of the new records.
    pub keys: Array,
    /// The new records.
    pub records: Vec<Vec<u8>>,
}

thread_local! {
    static OF_PAGE: Option<JournalWorker> = JournalWorker::started_with_page();
}

impl JournalWorker {
    /// The worker that was started with the page; `None` if that failed.
    pub fn of_page() -> Option<Self> {
        OF_PAGE.with(Clone::clone)
    }

    fn started_with_page() -> Option<Self> {
        let worker: Worker = get(&js_sys::global(), "lastpullJournalWorker").dyn_into().ok()?;
        let early = (get(&worker, "earlyName").as_string()).zip(get(&worker, "early").dyn_into::<Promise>().ok());
        let disk = Self::of(worker);
        disk.early.replace(early);
        Some(disk)
    }

    /// A worker that runs `disk.js`.
    pub fn of(worker: Worker) -> Self {
        Self { worker: WorkerClient::of(worker, ANSWER_TIMEOUT), early: Rc::default() }
    }

    /// Whether it failed or did not answer: it is not asked again.
    pub fn is_given_up(&self) -> bool {
        self.worker.is_given_up()
    }

    /// The stored journal of this name; `None` if the page must read it itself.
    pub async fn read(&self, name: &str) -> Option<Stored> {
        let early = self.early.take().filter(|(of, _)| of == name);
        let answer = match early {
            Some((_, early)) => self.worker.answer(early).await,
            None => self.worker.ask(&[name.into()]).await,
        };
        let meta = bytes_of(&get(&answer, "meta"))?;
        Some(Stored {
            version: get(&answer, "version").as_f64()? as u32,
            meta,
            checkpoint: bytes(&get(&answer, "checkpoint")),
            tail: bytes_of(&get(&answer, "tail"))?,
        })
    }

    /// Appends, if the stored head is still the one it builds on.
    pub async fn append(&self, append: Append<'_>) -> Appended {
        // One array instead of six arguments: the page serialises it sooner, and it has an input event to handle.
        let all = || {
            append.meta.iter().map(Vec::as_slice).chain([append.head]).chain(append.records.iter().map(Vec::as_slice))
        };
        let row: Vec<u8> = all().flatten().copied().collect();
        let lengths: Array = all().map(|bytes| JsValue::from(bytes.len())).collect();
        let answer = self
            .worker
            .ask(&[
                append.name.into(),
                append.version.into(),
                Uint8Array::from(row.as_slice()).into(),
                lengths.into(),
                append.meta.len().into(),
                append.keys.into(),
            ])
            .await;
        if get(&answer, "saved").is_truthy() {
            return Appended::Saved;
        }
        bytes_of(&get(&answer, "meta")).map_or(Appended::Unknown, Appended::Changed)
    }
}

fn bytes_of(list: &JsValue) -> Option<Vec<Vec<u8>>> {
    let list = list.dyn_ref::<Array>()?;
    list.iter().map(|value| bytes(&value)).collect()
}
