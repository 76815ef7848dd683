//! The worker's side: it does what it is asked to, one task after the other.

use super::import::{ImportError, PickedFile, bring_in, describe, take_back};
use super::refold::read_here;
use super::task::{Task, to_answer};
use super::{Progress, Watch, backup, refold};
use crate::lazy::{ChunkLoadError, Work, chunk};
use crate::platform::files::Incoming;
use crate::platform::indexed_db::IndexedDb;
use js_sys::{Function, Object, Reflect, Uint8Array};
use lastpull_core::codec::from_bytes;
use std::cell::RefCell;
use wasm_bindgen::JsValue;

/// A file that waits for the user's decision, and the database that it was read for.
struct Waiting {
    database: String,
    picked: PickedFile,
}

thread_local! {
    static WAITING: RefCell<Option<Waiting>> = const { RefCell::new(None) };
}

/// Does a task in a worker. Returns an object with the bytes of the answer, and a file if one was made; an empty one if it
/// could not be done, which the page then does itself. `tell` is called with numbers: the step, how much of it is done,
/// and how much it is in all.
pub async fn work(task: Vec<u8>, file: JsValue, tell: Function) -> JsValue {
    let answer = match split_work(task, file, tell).await {
        Ok(working) => working.await,
        Err(ChunkLoadError) => None,
    };
    let object = Object::new();
    if let Some((bytes, file)) = answer {
        let _ = Reflect::set(&object, &"answer".into(), &Uint8Array::from(bytes.as_slice()));
        let _ = Reflect::set(&object, &"file".into(), &file);
    }
    object.into()
}

/// The bytes of an answer, and a file.
type Answered = Option<(Vec<u8>, JsValue)>;

chunk! {
    archive: fn split_work(task: Vec<u8>, file: JsValue, tell: Function) -> Result<Work<Answered>, ChunkLoadError> {
        Ok(Box::pin(do_task(task, file, tell)))
    }
}

async fn do_task(task: Vec<u8>, file: JsValue, tell: Function) -> Answered {
    let watch = Watch::new(move |Progress { step, share }| {
        let (done, of) = (share.done as f64, share.of as f64);
        let _ = tell.call3(&JsValue::UNDEFINED, &step.number().into(), &done.into(), &of.into());
    });
    let bytes = match from_bytes(&task)? {
        Task::Describe { database, demo } => {
            let (storage, file) = (IndexedDb::new(&database), Incoming::of_value(&file)?);
            let described = match read_here(&storage, &watch).await {
                Ok(here) => describe(&storage, file, &here.shop, demo, &watch).await,
                Err(fault) => Err(ImportError::Storage(fault)),
            };
            to_answer(&described.map(|(picked, preview)| {
                WAITING.set(Some(Waiting { database, picked }));
                preview
            }))
        }
        Task::BringIn { now } => {
            let Waiting { database, picked } = WAITING.take()?;
            to_answer(&bring_in(&IndexedDb::new(&database), picked, now, &watch).await)
        }
        Task::TakeBack { database, facts } => to_answer(&take_back(&IndexedDb::new(&database), &facts, &watch).await),
        Task::Backup { database, order } => {
            return match backup::make(&IndexedDb::new(&database), &order, &watch).await {
                Ok((file, contents)) => Some((to_answer::<_, backup::BackupFailure>(&Ok(contents)), file.value())),
                Err(failure) => Some((to_answer::<backup::Contents, _>(&Err(failure)), JsValue::UNDEFINED)),
            };
        }
        Task::Refold { database } => to_answer(&refold::refold(&IndexedDb::new(&database), &watch).await),
        Task::Compact { database } => to_answer(&refold::compact(&IndexedDb::new(&database), &watch).await),
    };
    Some((bytes, JsValue::UNDEFINED))
}
