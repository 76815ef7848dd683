//! A web worker that runs the app's own code (`work.js`), for work that takes long and much memory. The page starts one
//! for a piece of work and ends it afterwards, which gives its memory back. If the browser cannot start it, or it fails
//! or falls silent, the page does the work itself.

use super::clock;
use super::worker::{bytes, get};
use js_sys::{Array, Function, Object, Promise, Reflect, Uint8Array};
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use std::time::Duration;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{MessageEvent, Worker};

/// Time in which it must have started.
const START_TIMEOUT: Duration = Duration::from_secs(20);

/// Time after which a worker that says nothing is given up: longer than the longest single step of its work, which is a
/// transaction that stores a whole journal.
const SILENCE: Duration = Duration::from_secs(60);

/// The worker. Clones are handles of the same worker.
#[derive(Clone)]
pub struct AppWorker(Rc<Shared>);

struct Shared {
    worker: Worker,
    /// Messages so far.
    heard: Cell<u32>,
    /// Resolves the question that is open.
    waiting: RefCell<Option<Function>>,
    on_progress: RefCell<Box<dyn Fn(JobProgress)>>,
    ended: Cell<Option<Ended>>,
}

/// Why there is no answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ended {
    /// The user ended it.
    Cancelled,
    /// It failed, or fell silent.
    Failed,
}

/// How far the work is: which step, how much of it is done, and how much it is in all.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct JobProgress {
    /// Number of the step.
    pub step: u32,
    /// What is done.
    pub done: f64,
    /// All of it.
    pub of: f64,
}

/// An answer: bytes, and a file if one was made.
pub struct Answer {
    /// The bytes.
    pub bytes: Vec<u8>,
    /// The file.
    pub file: JsValue,
}

impl AppWorker {
    /// Starts one; `None` if the browser cannot.
    pub fn start(on_progress: impl Fn(JobProgress) + 'static) -> Option<Self> {
        let script = format!("{}work.js", get(&js_sys::global(), "lastpullFolder").as_string()?);
        let options = Object::new();
        Reflect::set(&options, &"type".into(), &"module".into()).ok()?;
        // Through reflection: its options would be more of the bindings to compile.
        let class: Function = get(&js_sys::global(), "Worker").dyn_into().ok()?;
        let worker = Reflect::construct(&class, &Array::of2(&script.into(), &options)).ok()?;
        let shared = Rc::new(Shared {
            worker: worker.dyn_into().ok()?,
            heard: Cell::new(0),
            waiting: RefCell::default(),
            on_progress: RefCell::new(Box::new(on_progress)),
            ended: Cell::new(None),
        });
        let heard = Rc::clone(&shared);
        let on_message = Closure::<dyn Fn(MessageEvent)>::new(move |event: MessageEvent| heard.hear(&event.data()));
        shared.worker.set_onmessage(Some(on_message.into_js_value().unchecked_ref()));
        let failed = Rc::clone(&shared);
        let on_error = Closure::<dyn Fn(JsValue)>::new(move |event: JsValue| {
            // The page goes on: it is no error of the page.
            if let Ok(prevent) = get(&event, "preventDefault").dyn_into::<Function>() {
                let _ = prevent.call0(&event);
            }
            failed.end(Ended::Failed);
        });
        shared.worker.set_onerror(Some(on_error.into_js_value().unchecked_ref()));
        shared.watch(0, START_TIMEOUT);
        Some(Self(shared))
    }

    /// Gives it a task, with a file if it needs one, and waits for the answer.
    ///
    /// # Errors
    /// [`Ended`], if there is none.
    pub async fn ask(&self, task: &[u8], file: &JsValue) -> Result<Answer, Ended> {
        let shared = &self.0;
        if let Some(ended) = shared.ended.get() {
            return Err(ended);
        }
        let answer = Promise::new(&mut |resolve, _| drop(shared.waiting.replace(Some(resolve))));
        if shared.worker.post_message(&Array::of2(&Uint8Array::from(task), file)).is_err() {
            shared.end(Ended::Failed);
        }
        if shared.heard.get() > 0 {
            shared.watch(shared.heard.get(), SILENCE);
        }
        let answer = JsFuture::from(answer).await.unwrap_or_default();
        match bytes(&get(&answer, "answer")) {
            Some(bytes) => Ok(Answer { bytes, file: get(&answer, "file") }),
            None => Err(shared.ended.get().unwrap_or(Ended::Failed)),
        }
    }

    /// Ends it, whatever it is doing. What it stores it stores whole or not at all.
    pub fn end(&self, why: Ended) {
        self.0.end(why);
    }
}

impl Shared {
    fn hear(self: &Rc<Self>, message: &JsValue) {
        self.heard.set(self.heard.get() + 1);
        if let Ok(progress) = get(message, "progress").dyn_into::<Array>() {
            let number = |at| progress.get(at).as_f64().unwrap_or_default();
            if self.ended.get().is_none() {
                self.on_progress.borrow()(JobProgress { step: number(0) as u32, done: number(1), of: number(2) });
            }
        } else if get(message, "ready").is_undefined() {
            self.resolve(message);
        }
        if self.waiting.borrow().is_some() {
            self.watch(self.heard.get(), SILENCE);
        }
    }

    /// Gives it up if it says nothing more for so long.
    fn watch(self: &Rc<Self>, heard: u32, time: Duration) {
        let shared = Rc::clone(self);
        clock::after(time, move || {
            if shared.heard.get() == heard && (heard == 0 || shared.waiting.borrow().is_some()) {
                shared.end(Ended::Failed);
            }
        });
    }

    fn resolve(&self, answer: &JsValue) {
        if let Some(resolve) = self.waiting.take() {
            let _ = resolve.call1(&JsValue::UNDEFINED, answer);
        }
    }

    fn end(&self, why: Ended) {
        if self.ended.get().is_none() {
            self.ended.set(Some(why));
            self.worker.terminate();
        }
        self.resolve(&JsValue::UNDEFINED);
    }
}
