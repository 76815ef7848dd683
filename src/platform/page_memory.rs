//! What a page shows again when the user comes back to it, such as how far it was scrolled. Kept in memory: a page that
//! is loaded again starts at its top.

use std::cell::RefCell;

/// Most pages whose value is kept.
const MOST: usize = 50;

/// One value for each of the pages left last, by a key that begins with the page's hash.
pub struct PageMemory<T>(RefCell<Vec<(String, T)>>);

impl<T: Clone> PageMemory<T> {
    /// With no value yet.
    pub const fn new() -> Self {
        Self(RefCell::new(Vec::new()))
    }

    /// Keeps a value.
    pub fn put(&self, key: &str, value: T) {
        let mut kept = self.0.borrow_mut();
        kept.retain(|(other, _)| other != key);
        if kept.len() == MOST {
            kept.remove(0);
        }
        kept.push((key.to_owned(), value));
    }

    /// The value kept for a key.
    pub fn get(&self, key: &str) -> Option<T> {
        self.0.borrow().iter().find(|(other, _)| other == key).map(|(_, value)| value.clone())
    }
}

impl<T: Clone> Default for PageMemory<T> {
    fn default() -> Self {
        Self::new()
    }
}
