//! What a photo reading means for a pot's colour.

use crate::colour::Lab;
use crate::colour::photo_reading::PhotoReading;
use crate::facts::{ColourReading, Fact, FactsWithUndo, InkFact, ReadBy, RecipeField, lab_of, reading_of};
use crate::ids::Subject;
use crate::ink::batch::needs::recipe_of;
use crate::ink::forms::event_note::amended_with_reading;
use crate::ink::pot_state;
use crate::shop::Shop;

/// The readings to store from a photo.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PhotoSample {
    /// The pot's reading.
    pub sample: ColourReading,
    /// The target's reading, if it had none: both are then as the photo saw them, and only their difference is
    /// reliable.
    pub target: Option<ColourReading>,
}

/// Applies a photo reading to the known target. A photo measures a difference, not a colour: the difference between its
/// target and sample is added to the `known` target. Without one, the photo's own target is stored too.
pub fn photo_sample(known: Option<ColourReading>, photo: &PhotoReading) -> PhotoSample {
    let Some(target) = known else {
        return PhotoSample {
            sample: reading_of(bounded(photo.sample), ReadBy::Photo),
            target: Some(reading_of(bounded(photo.target), ReadBy::Photo)),
        };
    };
    let (on, from, to) = (lab_of(target), photo.target, photo.sample);
    let laid = Lab::new(on.l + to.l - from.l, on.a + to.a - from.a, on.b + to.b - from.b);
    PhotoSample { sample: reading_of(bounded(laid), ReadBy::Photo), target: None }
}

/// Records a pot's reading as `event`. A target that the photo brought is recorded, and undone, with it.
pub fn reading_facts(shop: &Shop, pot: Subject, event: Subject, read: PhotoSample, by: Option<&str>) -> FactsWithUndo {
    let noted = InkFact::SwatchRead { pot, reading: read.sample, note: String::new(), by: by.map(str::to_owned) };
    with_target(shop, pot, read.target, [(event, Fact::Ink(noted)), (event, Fact::Deleted)])
}

/// Records a reading on an existing pour or reading, likewise. Empty if it has this reading already.
pub fn amend_reading_facts(shop: &Shop, pot: Subject, event: Subject, read: Option<PhotoSample>) -> FactsWithUndo {
    let (Some(noted), Some(was)) =
        (amended_with_reading(shop, event, read.map(|read| read.sample)), shop.ink.event(event))
    else {
        return FactsWithUndo::default();
    };
    let undo = (event, Fact::Ink(was.fact.clone()));
    with_target(shop, pot, read.and_then(|read| read.target), [(event, Fact::Ink(noted)), undo])
}

fn with_target(
    shop: &Shop,
    pot: Subject,
    target: Option<ColourReading>,
    [noted, undone]: [(Subject, Fact); 2],
) -> FactsWithUndo {
    let (mut facts, mut undo) = (vec![noted], vec![undone]);
    let recipe = recipe_of(shop, &pot_state(shop, pot));
    if let (Some(id), Some(target)) = (recipe, target) {
        let set = |target| (id, Fact::Ink(InkFact::RecipeSet(vec![RecipeField::Target(target)])));
        facts.insert(0, set(Some(target)));
        undo.push(set(shop.ink.recipe(id).and_then(|recipe| recipe.target)));
    }
    FactsWithUndo { facts, undo }
}

fn bounded(lab: Lab) -> Lab {
    let side = |value: f64| value.clamp(-150.0, 150.0);
    Lab::new(lab.l.clamp(0.0, 100.0), side(lab.a), side(lab.b))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn photo(target: Lab, sample: Lab) -> PhotoReading {
        PhotoReading { target, sample, stops: 0.0, unevenness: 0.0, noise: 0.1 }
    }

    #[test]
    fn a_photo_moves_the_known_target_by_the_difference_it_saw() {
        let seen = photo(Lab::new(40.0, 10.0, 5.0), Lab::new(43.0, 8.0, 5.5));
        let known = reading_of(Lab::new(52.0, 12.0, 1.0), ReadBy::Instrument);
        let kept = photo_sample(Some(known), &seen);
        assert_eq!(kept, PhotoSample { sample: reading_of(Lab::new(55.0, 10.0, 1.5), ReadBy::Photo), target: None });
        let alone = photo_sample(None, &seen);
        assert_eq!(alone.sample, reading_of(seen.sample, ReadBy::Photo));
        assert_eq!(alone.target, Some(reading_of(seen.target, ReadBy::Photo)));
    }

    #[test]
    fn a_difference_beyond_white_ends_at_white() {
        let kept = photo_sample(
            Some(reading_of(Lab::new(96.0, 0.0, 0.0), ReadBy::Screen)),
            &photo(Lab::new(80.0, 0.0, 0.0), Lab::new(95.0, 0.0, 0.0)),
        );
        assert_eq!(kept.sample.l, 100_000);
    }
}
