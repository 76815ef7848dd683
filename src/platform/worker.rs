//! A web worker that answers questions. If the browser cannot start it, or it fails or does not answer in time,
//! there is no answer, and the caller does the work itself.

use super::clock;
use js_sys::{Array, Function, Promise, Reflect, Uint8Array};
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use std::time::Duration;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{MessageEvent, Worker};

/// The worker. Clones are handles of the same worker.
#[derive(Clone)]
pub struct WorkerClient(Rc<Shared>);

struct Shared {
    worker: Worker,
    /// The number of each open question, and the function that resolves its promise.
    waiting: RefCell<Vec<(u32, Function)>>,
    last: Cell<u32>,
    /// Time after which an answer is given up.
    timeout: Duration,
    /// The worker failed or did not answer; it is not asked again.
    given_up: Cell<bool>,
}

impl WorkerClient {
    /// Starts one of the app's own scripts; `None` if that fails.
    pub fn start(script: &str, timeout: Duration) -> Option<Self> {
        let folder = get(&js_sys::global(), "lastpullFolder").as_string()?;
        let worker = Worker::new(&format!("{folder}{script}")).ok()?;
        Some(Self::of(worker, timeout))
    }

    /// A worker that runs already.
    pub fn of(worker: Worker, timeout: Duration) -> Self {
        let asked = Rc::new(Shared {
            worker,
            waiting: RefCell::default(),
            last: Cell::new(0),
            timeout,
            given_up: Cell::new(false),
        });
        let heard = Rc::clone(&asked);
        let on_message = Closure::<dyn Fn(MessageEvent)>::new(move |event: MessageEvent| {
            let answer = event.data();
            if let Some(id) = get(&answer, "id").as_f64() {
                heard.resolve(id as u32, &answer);
            }
        });
        let _ = asked.worker.add_event_listener_with_callback("message", on_message.as_ref().unchecked_ref());
        on_message.forget();
        let failed = Rc::clone(&asked);
        let on_error = Closure::<dyn Fn()>::new(move || failed.give_up());
        let _ = asked.worker.add_event_listener_with_callback("error", on_error.as_ref().unchecked_ref());
        on_error.forget();
        Self(asked)
    }

    /// Whether it failed or did not answer in time: it is not asked again.
    pub fn is_given_up(&self) -> bool {
        self.0.given_up.get()
    }

    /// Sends a question and returns the answer, or `undefined` if none comes. The message is a number, then `question`.
    pub async fn ask(&self, question: &[JsValue]) -> JsValue {
        let asked = &self.0;
        if asked.given_up.get() {
            return JsValue::UNDEFINED;
        }
        let id = asked.last.get() + 1;
        asked.last.set(id);
        // An array, not an object with names: the page serialises it sooner, and it has an input event to handle.
        let message: Array = [id.into()].iter().chain(question).collect();
        let answer = Promise::new(&mut |resolve, _| asked.waiting.borrow_mut().push((id, resolve)));
        if asked.worker.post_message(&message).is_err() {
            asked.give_up();
        }
        self.answer(answer).await
    }

    /// Waits for an answer. If it does not come in time, `undefined`, and the worker is not asked again.
    pub async fn answer(&self, answer: Promise) -> JsValue {
        let came = Rc::new(Cell::new(false));
        let silence = Promise::new(&mut |resolve, _| {
            let (asked, came) = (Rc::clone(&self.0), Rc::clone(&came));
            clock::after(self.0.timeout, move || {
                if !came.get() {
                    asked.give_up();
                    let _ = resolve.call0(&JsValue::UNDEFINED);
                }
            });
        });
        let first = JsFuture::from(Promise::race(&Array::of2(&answer, &silence))).await;
        came.set(true);
        first.unwrap_or_default()
    }
}

impl Shared {
    fn resolve(&self, id: u32, answer: &JsValue) {
        let waiting = {
            let mut waiting = self.waiting.borrow_mut();
            waiting.iter().position(|(asked, _)| *asked == id).map(|at| waiting.swap_remove(at))
        };
        if let Some((_, resolve)) = waiting {
            let _ = resolve.call1(&JsValue::UNDEFINED, answer);
        }
    }

    fn give_up(&self) {
        self.given_up.set(true);
        for (_, resolve) in self.waiting.take() {
            let _ = resolve.call0(&JsValue::UNDEFINED);
        }
    }
}

/// A property of an answer; `undefined` if it has none.
pub fn get(of: &JsValue, name: &str) -> JsValue {
    Reflect::get(of, &name.into()).unwrap_or_default()
}

/// The bytes of a `Uint8Array`; `None` for any other value.
pub fn bytes(value: &JsValue) -> Option<Vec<u8>> {
    value.dyn_ref::<Uint8Array>().map(Uint8Array::to_vec)
}
