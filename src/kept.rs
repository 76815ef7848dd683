//! Signals, memos and callbacks as Leptos has them, on one type of each.
//!
//! Leptos copies the code of a signal or a memo for every type of value that one holds, which came to
//! a sixth of the bundle. Here the value stands behind a pointer, and only reading it knows its type.

use leptos::prelude as theirs;
use leptos::prelude::{Get as _, GetUntracked as _, GetValue as _, Notify as _};
use std::any::Any;
use std::marker::PhantomData;
use std::sync::{Arc, PoisonError, RwLock};

type Anything = Arc<dyn Any + Send + Sync>;

/// The value behind a pointer; whoever put it there knows its type.
fn known<T: 'static>(value: &dyn Any) -> &T {
    value.downcast_ref().expect("a value of the type that was kept")
}

macro_rules! copied {
    ($($name:ident),*) => {$(
        impl<T: 'static> Clone for $name<T> {
            fn clone(&self) -> Self {
                *self
            }
        }

        impl<T: 'static> Copy for $name<T> {}
    )*};
}
copied!(RwSignal, Memo, Signal);

/// A value that tells those who read it of every change.
pub struct RwSignal<T: 'static> {
    kept: theirs::RwSignal<Anything>,
    of: PhantomData<fn() -> T>,
}

impl<T: Send + Sync + 'static> RwSignal<T> {
    /// A signal with this value.
    pub fn new(value: T) -> Self {
        let value: Anything = Arc::new(RwLock::new(value));
        Self { kept: theirs::RwSignal::new(value), of: PhantomData }
    }

    /// Looks at the value.
    pub fn with<U>(&self, look: impl FnOnce(&T) -> U) -> U {
        look(&known::<RwLock<T>>(&*self.kept.get()).read().unwrap_or_else(PoisonError::into_inner))
    }

    /// Looks at the value, not asking to be told of changes.
    pub fn with_untracked<U>(&self, look: impl FnOnce(&T) -> U) -> U {
        look(&known::<RwLock<T>>(&*self.kept.get_untracked()).read().unwrap_or_else(PoisonError::into_inner))
    }

    /// The value.
    pub fn get(&self) -> T
    where
        T: Clone,
    {
        self.with(T::clone)
    }

    /// The value, not asking to be told of changes.
    pub fn get_untracked(&self) -> T
    where
        T: Clone,
    {
        self.with_untracked(T::clone)
    }

    /// Asks to be told of changes.
    pub fn track(&self) {
        self.with(|_| ());
    }

    /// Changes the value. Nothing happens once the screen that kept it is gone.
    pub fn update(&self, change: impl FnOnce(&mut T)) {
        if let Some(kept) = self.kept.try_get_untracked() {
            change(&mut known::<RwLock<T>>(&*kept).write().unwrap_or_else(PoisonError::into_inner));
            self.kept.notify();
        }
    }

    /// Changes the value and tells nobody yet: [`tell`](Self::tell) does.
    pub fn update_quietly(&self, change: impl FnOnce(&mut T)) {
        if let Some(kept) = self.kept.try_get_untracked() {
            change(&mut known::<RwLock<T>>(&*kept).write().unwrap_or_else(PoisonError::into_inner));
        }
    }

    /// Tells those who read it that it has changed.
    pub fn tell(&self) {
        self.kept.notify();
    }

    /// Puts another value in.
    pub fn set(&self, value: T) {
        self.update(|kept| *kept = value);
    }
}

/// A value that can be told from another of its type.
trait Same: Any + Send + Sync {
    fn same(&self, other: &dyn Any) -> bool;
}

impl<T: PartialEq + Send + Sync + 'static> Same for T {
    fn same(&self, other: &dyn Any) -> bool {
        self == known::<T>(other)
    }
}

#[derive(Clone)]
struct Computed(Arc<dyn Same>);

impl PartialEq for Computed {
    fn eq(&self, other: &Self) -> bool {
        let other: &dyn Any = &*other.0;
        self.0.same(other)
    }
}

impl Computed {
    fn known<T: 'static>(&self) -> &T {
        let value: &dyn Any = &*self.0;
        known(value)
    }
}

type Compute = Box<dyn Fn(Option<&Computed>) -> Computed + Send + Sync>;

/// A value computed from others, that tells of a change only when it is another.
pub struct Memo<T: 'static> {
    computed: theirs::Memo<Computed>,
    of: PhantomData<fn() -> T>,
}

impl<T: PartialEq + Send + Sync + 'static> Memo<T> {
    /// Computes a value now and whenever what it read has changed.
    pub fn new(compute: impl Fn(Option<&T>) -> T + Send + Sync + 'static) -> Self {
        let compute: Compute = Box::new(move |_| Computed(Arc::new(compute(None))));
        Self { computed: theirs::Memo::new(compute), of: PhantomData }
    }

    /// Looks at the value.
    pub fn with<U>(&self, look: impl FnOnce(&T) -> U) -> U {
        look(self.computed.get().known())
    }

    /// Looks at the value, not asking to be told of changes.
    pub fn with_untracked<U>(&self, look: impl FnOnce(&T) -> U) -> U {
        look(self.computed.get_untracked().known())
    }

    /// The value.
    pub fn get(&self) -> T
    where
        T: Clone,
    {
        self.with(T::clone)
    }

    /// The value, not asking to be told of changes.
    pub fn get_untracked(&self) -> T
    where
        T: Clone,
    {
        self.with_untracked(T::clone)
    }
}

type Read<T> = Box<dyn Fn() -> T + Send + Sync>;

/// Something to read, whatever it comes from.
pub struct Signal<T: 'static> {
    read: theirs::StoredValue<Anything>,
    of: PhantomData<fn() -> T>,
}

impl<T: Send + Sync + 'static> Signal<T> {
    /// Reads as this does.
    pub fn derive(read: impl Fn() -> T + Send + Sync + 'static) -> Self {
        let read: Read<T> = Box::new(read);
        let read: Anything = Arc::new(read);
        Self { read: theirs::StoredValue::new(read), of: PhantomData }
    }

    /// The value.
    pub fn get(&self) -> T {
        known::<Read<T>>(&*self.read.get_value())()
    }

    /// Looks at the value.
    pub fn with<U>(&self, look: impl FnOnce(&T) -> U) -> U {
        look(&self.get())
    }
}

impl<T: Clone + Send + Sync + 'static> From<RwSignal<T>> for Signal<T> {
    fn from(signal: RwSignal<T>) -> Self {
        Self::derive(move || signal.get())
    }
}

impl<T: Clone + PartialEq + Send + Sync + 'static> From<Memo<T>> for Signal<T> {
    fn from(memo: Memo<T>) -> Self {
        Self::derive(move || memo.get())
    }
}

impl From<String> for Signal<String> {
    fn from(text: String) -> Self {
        Self::derive(move || text.clone())
    }
}
