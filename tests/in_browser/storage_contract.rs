//! The storage contract in the browser's real IndexedDB, in headless Chromium.
use js_sys::{Array, Function, Promise};
use lastpull::platform::ids::new_id;
use lastpull::platform::indexed_db::IndexedDb;
use lastpull::platform::journal_worker::JournalWorker;
use lastpull_core::facts::{Fact, MemoryStorage, Opened};
use lastpull_core::journal::Storage;
use lastpull_core::journal::contract::pull;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use wasm_bindgen_test::wasm_bindgen_test;
use web_sys::{Blob, IdbTransaction, Url, Worker};

/// A database with a name that no other test uses.
fn fresh() -> IndexedDb {
    IndexedDb::new(&format!("contract-{}", new_id()))
}

mod indexed_db {
    use super::fresh;
    lastpull_core::storage_contract!(in_browser: fresh());
    lastpull_core::photo_contract!(in_browser: fresh());
}

mod indexed_db_on_its_own_thread {
    use super::{beside, fresh};
    lastpull_core::storage_contract!(in_browser: beside(fresh()));
}

mod memory {
    use super::{MemoryStorage, new_id};
    lastpull_core::storage_contract!(in_browser: MemoryStorage::new(new_id));
    lastpull_core::photo_contract!(in_browser: MemoryStorage::new(new_id));
}

/// The same with the app's journal worker.
fn beside(storage: IndexedDb) -> IndexedDb {
    beside_changed(storage, "")
}

/// The same with the app's journal worker, after whose script this one runs.
fn beside_changed(storage: IndexedDb, change: &str) -> IndexedDb {
    let script = Array::of2(&include_str!("../../src/platform/workers/disk.js").into(), &change.into());
    let url = Url::create_object_url_with_blob(&Blob::new_with_str_sequence(&script).unwrap()).unwrap();
    storage.with_worker(Some(JournalWorker::of(Worker::new(&url).unwrap())))
}

#[wasm_bindgen_test]
async fn two_tabs_with_their_own_workers_share_one_number_sequence() {
    let one = beside(fresh());
    let other = beside(one.another_tab());
    one.open().await.unwrap();
    other.open().await.unwrap();
    let drafts = [pull(5), pull(6), pull(7)];
    let (mine, theirs) = futures_join(one.append(&drafts), other.append(&drafts)).await;
    let mut saved = [mine.unwrap(), theirs.unwrap()].concat();
    saved.sort_unstable_by_key(|entry| entry.seq);
    assert_eq!(saved.iter().map(|entry| entry.seq).collect::<Vec<_>>(), [1, 2, 3, 4, 5, 6]);
    // A third reader reads the entries that the two appends returned.
    assert_eq!(fresh_look(&one).await.tail, saved);
}

#[wasm_bindgen_test]
async fn the_worker_continues_from_what_the_page_wrote() {
    let page = fresh();
    let storage = beside(page.another_tab());
    storage.append(&[pull(1)]).await.unwrap();
    storage.append(&[pull(2)]).await.unwrap();
    page.append(&[pull(3)]).await.unwrap();
    let last = storage.append(&[pull(4)]).await.unwrap();
    assert_eq!(last[0].seq, 4);
    assert_eq!(fresh_look(&page).await.tail.len(), 4);
}

/// The next transaction that writes, as soon as it has begun.
fn next_write() -> Promise {
    let watch = "const { transaction } = IDBDatabase.prototype;
        IDBDatabase.prototype.transaction = function (...all) {
            const begun = transaction.apply(this, all);
            if (all[1] === 'readwrite') {
                IDBDatabase.prototype.transaction = transaction;
                tell(begun);
            }
            return begun;
        };";
    Promise::new(&mut |tell, _| drop(Function::new_with_args("tell", watch).call1(&JsValue::NULL, &tell).unwrap()))
}

#[wasm_bindgen_test]
async fn giving_up_a_failed_transaction_returns_what_the_worker_was_asked_for() {
    // It reads, and says nothing to what it is asked to store.
    let silent = "const hear = onmessage; onmessage = (event) => event.data.length === 2 && hear(event);";
    let storage = beside_changed(fresh(), silent);
    storage.append(&[pull(1)]).await.unwrap();
    let begun = next_write();
    let giving_up = async {
        let transaction: IdbTransaction = JsFuture::from(begun).await.unwrap().unchecked_into();
        transaction.abort().unwrap();
        storage.give_up_append()
    };
    let (appended, given_up) = futures_join(storage.append(&[pull(2)]), giving_up).await;
    assert!(appended.is_err());
    assert_eq!(given_up.iter().map(|entry| (entry.seq, entry.at)).collect::<Vec<_>>(), [(2, pull::<Fact>(2).at)]);
    // Saved after all, it is that entry.
    assert_eq!(storage.append(&[pull(2)]).await.unwrap(), given_up);
    assert_eq!(fresh_look(&storage).await.tail.len(), 2);
}

async fn fresh_look(storage: &IndexedDb) -> Opened {
    storage.another_tab().with_worker(None).open().await.unwrap()
}

#[wasm_bindgen_test]
async fn what_was_appended_is_there_for_a_new_connection() {
    let storage = fresh();
    let saved = storage.append(&[pull(1), pull(2)]).await.unwrap();
    let opened = storage.another_tab().open().await.unwrap();
    assert_eq!(opened.tail, saved);
}

#[wasm_bindgen_test]
async fn two_connections_writing_at_once_share_one_number_sequence() {
    let one = fresh();
    let other = one.another_tab();
    one.open().await.unwrap();
    let drafts = [pull(5), pull(6), pull(7)];
    let (mine, theirs) = futures_join(one.append(&drafts), other.append(&drafts)).await;
    let mut seqs: Vec<u64> = mine.unwrap().iter().chain(&theirs.unwrap()).map(|entry| entry.seq).collect();
    seqs.sort_unstable();
    assert_eq!(seqs, [1, 2, 3, 4, 5, 6]);
}

#[wasm_bindgen_test]
async fn a_deleted_database_is_gone_and_a_new_one_is_empty() {
    let storage = fresh();
    storage.append(&[pull(1)]).await.unwrap();
    storage.delete().await.unwrap();
    assert!(storage.open().await.unwrap().tail.is_empty());
}

/// Awaits two futures at the same time.
async fn futures_join<A, B>(a: impl Future<Output = A>, b: impl Future<Output = B>) -> (A, B) {
    let (mut a, mut b) = (Box::pin(a), Box::pin(b));
    let (mut done_a, mut done_b) = (None, None);
    std::future::poll_fn(move |context| {
        if done_a.is_none() {
            if let std::task::Poll::Ready(value) = a.as_mut().poll(context) {
                done_a = Some(value);
            }
        }
        if done_b.is_none() {
            if let std::task::Poll::Ready(value) = b.as_mut().poll(context) {
                done_b = Some(value);
            }
        }
        match (done_a.take(), done_b.take()) {
            (Some(a), Some(b)) => std::task::Poll::Ready((a, b)),
            (left, right) => {
                (done_a, done_b) = (left, right);
                std::task::Poll::Pending
            }
        }
    })
    .await
}
