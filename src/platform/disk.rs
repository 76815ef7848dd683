//! The journal's own thread (`disk.js`): it reads while the app is still being compiled, and a count's commit
//! waits for no frame there. Where the browser has no such thread, or it fails or falls silent, the page does
//! the same itself; asking twice never stores twice, since every append names the head it builds on.

use super::clock;
use js_sys::{Array, Function, Object, Promise, Reflect, Uint8Array};
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use std::time::Duration;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{MessageEvent, Worker};

/// How long an answer may take before the page does the work itself.
const PATIENCE: Duration = Duration::from_secs(3);

/// The thread. Clones are the same one.
#[derive(Clone)]
pub struct Disk(Rc<Thread>);

struct Thread {
    worker: Worker,
    /// Who waits for which answer.
    asked: RefCell<Vec<(u32, Function)>>,
    last: Cell<u32>,
    /// What it read before the app was there: of which journal.
    early: RefCell<Option<(String, Promise)>>,
    /// It failed or fell silent; it is not asked again.
    given_up: Cell<bool>,
}

/// What is stored, as bytes.
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

/// What became of an append.
pub enum Appended {
    /// It is on the disk.
    Saved,
    /// Nothing was stored: the store `meta` holds these values, not those the append was built on.
    Changed(Vec<Vec<u8>>),
    /// There is no answer. It may be stored or not.
    Unknown,
}

/// An append: on top of which `meta`, to which head, which records under which keys.
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
    static OF_PAGE: Option<Disk> = Disk::started_with_page();
}

impl Disk {
    /// The thread that was started with the page; none where that was not possible.
    pub fn of_page() -> Option<Self> {
        OF_PAGE.with(Clone::clone)
    }

    fn started_with_page() -> Option<Self> {
        let worker: Worker = Reflect::get(&js_sys::global(), &"lastpullDisk".into()).ok()?.dyn_into().ok()?;
        let early = (get(&worker, "earlyName").as_string()).zip(get(&worker, "early").dyn_into::<Promise>().ok());
        let disk = Self::of(worker);
        disk.0.early.replace(early);
        Some(disk)
    }

    /// A thread running `disk.js`.
    pub fn of(worker: Worker) -> Self {
        let thread = Rc::new(Thread {
            worker,
            asked: RefCell::default(),
            last: Cell::new(0),
            early: RefCell::default(),
            given_up: Cell::new(false),
        });
        let heard = Rc::clone(&thread);
        let on_message = Closure::<dyn Fn(MessageEvent)>::new(move |event: MessageEvent| {
            let answer = event.data();
            if let Some(id) = get(&answer, "id").as_f64() {
                heard.resolve(id as u32, &answer);
            }
        });
        // Beside the listener that waits for the early answer.
        let _ = thread.worker.add_event_listener_with_callback("message", on_message.as_ref().unchecked_ref());
        on_message.forget();
        let failed = Rc::clone(&thread);
        let on_error = Closure::<dyn Fn()>::new(move || failed.give_up());
        let _ = thread.worker.add_event_listener_with_callback("error", on_error.as_ref().unchecked_ref());
        on_error.forget();
        Self(thread)
    }

    /// What is stored in the journal of this name; none where the page must look for itself.
    pub async fn read(&self, name: &str) -> Option<Stored> {
        let early = self.0.early.take().filter(|(of, _)| of == name);
        let answer = match early {
            Some((_, early)) => self.0.within_patience(early).await,
            None => self.ask(&[("name", name.into())]).await,
        };
        let meta = bytes_of(&get(&answer, "meta"))?;
        let checkpoint = get(&answer, "checkpoint");
        Some(Stored {
            version: get(&answer, "version").as_f64()? as u32,
            meta,
            checkpoint: checkpoint.dyn_ref::<Uint8Array>().map(Uint8Array::to_vec),
            tail: bytes_of(&get(&answer, "tail"))?,
        })
    }

    /// Appends, if the head is still the one it builds on.
    pub async fn append(&self, append: Append<'_>) -> Appended {
        let answer = self
            .ask(&[
                ("name", append.name.into()),
                ("version", append.version.into()),
                ("meta", arrays(append.meta).into()),
                ("head", Uint8Array::from(append.head).into()),
                ("keys", append.keys.into()),
                ("records", arrays(&append.records).into()),
            ])
            .await;
        if get(&answer, "saved").is_truthy() {
            return Appended::Saved;
        }
        bytes_of(&get(&answer, "meta")).map_or(Appended::Unknown, Appended::Changed)
    }

    async fn ask(&self, question: &[(&str, JsValue)]) -> JsValue {
        let thread = &self.0;
        if thread.given_up.get() {
            return JsValue::UNDEFINED;
        }
        let id = thread.last.get() + 1;
        thread.last.set(id);
        let message = Object::new();
        let _ = Reflect::set(&message, &"id".into(), &id.into());
        for (name, value) in question {
            let _ = Reflect::set(&message, &(*name).into(), value);
        }
        let answer = Promise::new(&mut |resolve, _| thread.asked.borrow_mut().push((id, resolve)));
        if thread.worker.post_message(&message).is_err() {
            thread.give_up();
        }
        thread.within_patience(answer).await
    }
}

impl Thread {
    fn resolve(&self, id: u32, answer: &JsValue) {
        let waiting = {
            let mut asked = self.asked.borrow_mut();
            asked.iter().position(|(asked, _)| *asked == id).map(|at| asked.swap_remove(at))
        };
        if let Some((_, resolve)) = waiting {
            let _ = resolve.call1(&JsValue::UNDEFINED, answer);
        }
    }

    fn give_up(&self) {
        self.given_up.set(true);
        for (_, resolve) in self.asked.take() {
            let _ = resolve.call0(&JsValue::UNDEFINED);
        }
    }

    /// The answer, or nothing and no more questions when it does not come.
    async fn within_patience(self: &Rc<Self>, answer: Promise) -> JsValue {
        let over = Rc::new(Cell::new(false));
        let (thread, came) = (Rc::clone(self), Rc::clone(&over));
        let silence = Promise::new(&mut |resolve, _| {
            let (thread, came) = (Rc::clone(&thread), Rc::clone(&came));
            clock::after(PATIENCE, move || {
                if !came.get() {
                    thread.give_up();
                    let _ = resolve.call0(&JsValue::UNDEFINED);
                }
            });
        });
        let first = JsFuture::from(Promise::race(&Array::of2(&answer, &silence))).await;
        over.set(true);
        first.unwrap_or_default()
    }
}

fn get(of: &JsValue, name: &str) -> JsValue {
    Reflect::get(of, &name.into()).unwrap_or_default()
}

fn arrays(all: &[Vec<u8>]) -> Array {
    all.iter().map(|bytes| JsValue::from(Uint8Array::from(bytes.as_slice()))).collect()
}

fn bytes_of(list: &JsValue) -> Option<Vec<Vec<u8>>> {
    let list = list.dyn_ref::<Array>()?;
    list.iter().map(|bytes| bytes.dyn_ref::<Uint8Array>().map(Uint8Array::to_vec)).collect()
}
