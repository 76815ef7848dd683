//! What a backup file would bring, said before it is merged.
//!
//! # Decisions
//!
//! - **No shop id in the backup** (2026-11-29). An id that survives merging two histories can only be derived from
//!   the facts, such as the first device; a file of a shop has all of its facts, so two files with one such id have a
//!   device in common, which is what the preview looks for.

use crate::codec::Encode;
use crate::facts::{Entry, Fact, LotField};
use crate::ids::{DeviceId, JobId, Subject};
use crate::journal::{Journal, Packed, Stamp, TooMany, is_plain, is_same_family};
use crate::shop::{Shop, ShopSetting};
use crate::time::WallTime;
use std::collections::{BTreeMap, BTreeSet};

/// Whose file it is, seen from this device.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Encode)]
pub enum FileOrigin {
    /// Nothing is here yet.
    FirstData,
    /// Some of its facts, or facts of one of its devices, are here already.
    SameShop,
    /// It has no device in common with this shop.
    OtherShop,
    /// It is of the demo shop, and this is not the demo.
    Demo,
}

/// Facts of one device in a file.
#[derive(Clone, Debug, PartialEq, Eq, Encode)]
pub struct FileDevice {
    /// The device.
    pub id: DeviceId,
    /// Its name, from the file or from this shop.
    pub name: Option<String>,
    /// Number of its facts in the file.
    pub facts: u64,
    /// Number of those that are new here.
    pub new: u64,
}

/// What a file holds, and what merging it would change.
#[derive(Clone, Debug, PartialEq, Encode)]
pub struct ImportPreview {
    /// Whose file it is.
    pub origin: FileOrigin,
    /// The shop's name in the file.
    pub shop_name: Option<String>,
    /// Number of facts in the file.
    pub facts: u64,
    /// Number of facts that are new here.
    pub new: u64,
    /// The devices, by number of new facts.
    pub devices: Vec<FileDevice>,
    /// When its latest fact was recorded.
    pub latest: Option<WallTime>,
    /// Whether it gives this shop another name.
    pub renames: bool,
    /// Settings of the shop that it sets, and that are not the same here.
    pub settings: BTreeSet<ShopSetting>,
    /// Number of jobs that are not here.
    pub new_jobs: u32,
    /// Number of jobs here to which it adds something: fields, garments, runs or counts.
    pub changed_jobs: u32,
    /// Number of things here that it deletes.
    pub deletes: u32,
    /// Pieces that it adds to the counts; negative if it takes more back.
    pub pieces: i64,
}

impl ImportPreview {
    /// Describes the entries of a file to a device with this shop, of which `stored` are the entries. `file_is_demo` and
    /// `here_is_demo` say whose demo is meant: the file's, and this shop. Facts whose numbers other facts have here, since
    /// two devices counted on as one, are new like any other.
    ///
    /// # Errors
    /// [`TooMany`] if a merge would refuse the file.
    pub fn of(
        file: &Packed<Fact>,
        file_is_demo: bool,
        shop: &Shop,
        stored: &Packed<Fact>,
        here_is_demo: bool,
    ) -> Result<Self, TooMany> {
        let held = stored.coverage();
        let mut preview = if is_plain(file, stored) {
            let mut all = held.clone();
            all.add_coverage(&file.coverage());
            all.check_bounds()?;
            let new = file.entries().filter(|entry| !held.holds(entry.device, entry.seq));
            Self::described(file.entries().map(Entry::recognized), new.map(Entry::recognized), shop)
        } else {
            let (entries, stored): (Vec<Entry>, Vec<Entry>) = (file.entries().collect(), stored.entries().collect());
            let mut all = Journal::stored(stored.clone());
            all.absorb(entries.clone())?;
            let new = if all.has_forks() { all.beyond_stored(&stored) } else { all.beyond(&held) };
            drop((all, stored));
            let mut seen = BTreeSet::new();
            let once = entries.into_iter().filter(|entry| seen.insert((entry.device, entry.seq)));
            Self::described(once.map(Entry::recognized), new.into_iter(), shop)
        };
        let known_device = |device: &FileDevice| held.next_seq(device.id) > 1;
        preview.origin = match (file_is_demo, here_is_demo) {
            (true, false) => FileOrigin::Demo,
            _ if held.is_empty() => FileOrigin::FirstData,
            _ if preview.devices.iter().any(known_device) => FileOrigin::SameShop,
            _ => FileOrigin::OtherShop,
        };
        Ok(preview)
    }

    /// Describes entries, each of which comes once, and those of them that are new; but for their origin.
    fn described(entries: impl Iterator<Item = Entry>, new: impl Iterator<Item = Entry>, shop: &Shop) -> Self {
        let mut devices = BTreeMap::<DeviceId, DeviceFacts>::new();
        let mut names = BTreeMap::<Subject, (Stamp, String)>::new();
        let mut shop_name = None::<(Stamp, String)>;
        let (mut facts, mut latest) = (0, None::<WallTime>);
        for entry in entries {
            facts += 1;
            latest = latest.max(Some(entry.at));
            devices.entry(entry.device).or_default().all += 1;
            let later = |before: Option<&(Stamp, String)>| before.is_none_or(|(at, _)| *at <= entry.stamp);
            if let Fact::ShopNamed(name) = &entry.fact
                && later(shop_name.as_ref())
            {
                shop_name = Some((entry.stamp, name.clone()));
            } else if let Fact::DeviceNamed(name) = &entry.fact
                && later(names.get(&entry.subject))
            {
                names.insert(entry.subject, (entry.stamp, name.clone()));
            }
        }
        let mut changes = Changes::default();
        for entry in new {
            changes.add(&entry, shop);
            // A forked device's facts are filed under an id derived from it.
            if let Some(row) = devices.get_mut(&entry.device) {
                row.new += 1;
            } else if let Some((_, row)) = devices.iter_mut().rfind(|(id, _)| is_same_family(**id, entry.device)) {
                row.new += 1;
            }
        }
        let name_of = |id: DeviceId| names.get(&id).map(|(_, name)| name).or_else(|| shop.devices.get(&id)).cloned();
        let mut devices: Vec<FileDevice> = devices
            .into_iter()
            .map(|(id, facts)| FileDevice { id, name: name_of(id), facts: facts.all, new: facts.new })
            .collect();
        crate::collections::sort_by_key(&mut devices, |device| (u64::MAX - device.new, device.id));
        let shop_name = shop_name.map(|(_, name)| name);
        Self {
            origin: FileOrigin::FirstData,
            facts: u64::max(facts, changes.new),
            new: changes.new,
            devices,
            latest,
            renames: changes.names_shop
                && shop_name.as_ref().is_some_and(|name| !shop.name.is_empty() && *name != shop.name),
            shop_name,
            new_jobs: changes.new_jobs.len() as u32,
            changed_jobs: changes.changed_jobs.len() as u32,
            settings: changes.settings,
            deletes: changes.deleted.len() as u32,
            pieces: changes.pieces,
        }
    }

    /// Whether a person should be asked twice: it does not belong to this shop.
    pub fn is_foreign(&self) -> bool {
        matches!(self.origin, FileOrigin::OtherShop | FileOrigin::Demo)
    }
}

/// Numbers of facts of one device.
#[derive(Default)]
struct DeviceFacts {
    all: u64,
    new: u64,
}

#[derive(Default)]
struct Changes {
    new: u64,
    names_shop: bool,
    settings: BTreeSet<ShopSetting>,
    new_jobs: BTreeSet<JobId>,
    changed_jobs: BTreeSet<JobId>,
    deleted: BTreeSet<Subject>,
    pieces: i64,
}

impl Changes {
    fn add(&mut self, entry: &Entry, shop: &Shop) {
        let (id, fact) = (entry.subject, &entry.fact);
        self.new += 1;
        self.names_shop |= matches!(fact, Fact::ShopNamed(_));
        self.settings.extend(shop.setting_changed_by(fact));
        if matches!(fact, Fact::JobSet(_)) && shop.job(id).is_none() {
            self.new_jobs.insert(id);
        }
        if let Fact::LotSet(fields) = fact {
            let of = fields.iter().filter_map(|field| if let LotField::Job(job) = field { Some(*job) } else { None });
            self.changed_jobs.extend(of.filter(|job| shop.job(*job).is_some()));
        }
        if let Fact::Pulled { pieces, .. } = fact {
            self.pieces += i64::from(*pieces);
        }
        if let Fact::Misprinted { pieces, was_counted: true, .. } = fact {
            self.pieces -= i64::from(*pieces);
        }
        if matches!(fact, Fact::Deleted) && shop.is_here(id) {
            self.deleted.insert(id);
        }
        if matches!(fact, Fact::Restored) {
            self.deleted.remove(&id);
        }
        self.changed_jobs.extend(shop.job_with(id));
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::facts::{JobField, RunField};
    use crate::ids::SHOP;
    use crate::time::wall;
    use uuid::Uuid;

    const PHONE: Uuid = Uuid::from_u128(1);
    const TABLET: Uuid = Uuid::from_u128(2);
    const JOB: Uuid = Uuid::from_u128(10);
    const LOT: Uuid = Uuid::from_u128(11);
    const RUN: Uuid = Uuid::from_u128(12);
    const OTHER_JOB: Uuid = Uuid::from_u128(20);

    fn entry(device: Uuid, seq: u64, subject: Uuid, fact: Fact) -> Entry {
        let stamp = Stamp { wall: wall(1_000 * seq + device.as_u128() as u64), counter: 0 };
        Entry { device, seq, stamp, at: stamp.wall, subject, fact }
    }

    /// A shop of the phone with a job, a lot and a run.
    fn here() -> Vec<Entry> {
        vec![
            entry(PHONE, 1, SHOP, Fact::ShopNamed("Reunion Tees".into())),
            entry(PHONE, 2, JOB, Fact::JobSet(vec![JobField::Client("Choir".into())])),
            entry(PHONE, 3, LOT, Fact::LotSet(vec![LotField::Job(JOB)])),
            entry(PHONE, 4, RUN, Fact::RunSet(vec![RunField::Lot(LOT)])),
        ]
    }

    fn packed(entries: &[Entry]) -> Packed<Fact> {
        Packed::arriving(entries.to_vec())
    }

    fn preview(file: &[Entry], file_is_demo: bool, here: &[Entry], here_is_demo: bool) -> ImportPreview {
        let shop = Shop::fold(&Journal::stored(here.to_vec()));
        ImportPreview::of(&packed(file), file_is_demo, &shop, &packed(here), here_is_demo).unwrap()
    }

    #[test]
    fn a_file_of_another_device_of_the_shop_says_what_it_adds() {
        let file = [
            here(),
            vec![
                entry(TABLET, 1, TABLET, Fact::DeviceNamed("Tablet".into())),
                entry(TABLET, 2, RUN, Fact::Pulled { pieces: 3, size: None }),
                entry(TABLET, 3, RUN, Fact::Pulled { pieces: -1, size: None }),
                entry(TABLET, 4, OTHER_JOB, Fact::JobSet(vec![JobField::Client("Club".into())])),
                entry(TABLET, 5, LOT, Fact::Deleted),
                entry(TABLET, 5, LOT, Fact::Deleted),
            ],
        ]
        .concat();
        let preview = preview(&file, false, &here(), false);
        assert_eq!(preview.origin, FileOrigin::SameShop);
        assert!(!preview.is_foreign() && !preview.renames);
        assert_eq!((preview.facts, preview.new, preview.pieces), (9, 5, 2));
        assert_eq!((preview.new_jobs, preview.changed_jobs, preview.deletes), (1, 1, 1));
        let devices: Vec<_> =
            preview.devices.iter().map(|device| (device.name.as_deref(), device.facts, device.new)).collect();
        assert_eq!(devices, [(Some("Tablet"), 5, 5), (None, 4, 0)]);
        assert_eq!(preview.latest, Some(wall(5_002)));
    }

    #[test]
    fn what_a_copy_of_this_phone_counted_under_the_same_numbers_is_new() {
        let pulled = |seq: u64, pieces: i32| entry(PHONE, seq, RUN, Fact::Pulled { pieces, size: None });
        let own = [here(), vec![pulled(5, 1)]].concat();
        let file = [here(), vec![pulled(5, 2), pulled(6, 4)]].concat();
        let copy = preview(&file, false, &own, false);
        assert_eq!(copy.origin, FileOrigin::SameShop);
        assert_eq!((copy.facts, copy.new, copy.pieces, copy.changed_jobs), (6, 2, 6, 1));
        assert_eq!(copy.devices.iter().map(|device| (device.id, device.new)).collect::<Vec<_>>(), [(PHONE, 2)]);
        assert_eq!(preview(&file, false, &[own, file.clone()].concat(), false).new, 0);
    }

    #[test]
    fn a_file_that_no_shop_wrote_is_refused_before_it_is_described() {
        let far = entry(PHONE, 1 << 42, RUN, Fact::RunStarted);
        let described = ImportPreview::of(&packed(&[far]), false, &Shop::default(), &packed(&here()), false);
        assert!(matches!(described, Err(TooMany::Missing(_))), "{described:?}");
    }

    #[test]
    fn a_file_without_a_device_in_common_is_of_another_shop() {
        let file = [entry(TABLET, 1, SHOP, Fact::ShopNamed("Harbour Prints".into()))];
        let other = preview(&file, false, &here(), false);
        assert_eq!((other.origin, other.renames, other.is_foreign()), (FileOrigin::OtherShop, true, true));
        assert_eq!(other.shop_name.as_deref(), Some("Harbour Prints"));
        assert_eq!(preview(&file, false, &[], false).origin, FileOrigin::FirstData);
        assert!(!preview(&file, false, &[], false).renames, "a shop without a name gets its first one");
    }

    #[test]
    fn settings_that_a_file_would_change_are_named() {
        let file = [
            entry(TABLET, 1, SHOP, Fact::CrewNamed(vec!["Ines".into()])),
            entry(TABLET, 2, SHOP, Fact::WeekClosing([None; 7])),
            entry(TABLET, 3, SHOP, Fact::SetUpAllowance(crate::units::Seconds::new(300.0))),
            entry(TABLET, 4, SHOP, Fact::RunsOrdered(vec![RUN])),
        ];
        let all = BTreeSet::from([ShopSetting::Crew, ShopSetting::Closing, ShopSetting::SetUp, ShopSetting::Order]);
        assert_eq!(preview(&file, false, &here(), false).settings, all);
        let same = [here(), file.to_vec()].concat();
        let again = [entry(TABLET, 5, SHOP, Fact::CrewNamed(vec!["Ines".into()]))];
        assert!(preview(&again, false, &same, false).settings.is_empty(), "the same names change nothing");
        assert!(preview(&file, false, &[], false).settings.is_empty(), "nothing is here that could change");
    }

    #[test]
    fn a_demo_is_foreign_to_a_shop_and_not_to_the_demo() {
        assert_eq!(preview(&here(), true, &here(), false).origin, FileOrigin::Demo);
        assert_eq!(preview(&here(), true, &[], false).origin, FileOrigin::Demo);
        assert_eq!(preview(&here(), true, &here(), true).origin, FileOrigin::SameShop);
        let file = [entry(TABLET, 1, SHOP, Fact::ShopNamed("Harbour Prints".into()))];
        assert_eq!(preview(&file, false, &here(), true).origin, FileOrigin::OtherShop);
    }
}
