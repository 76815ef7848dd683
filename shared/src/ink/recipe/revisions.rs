//! The revisions of a recipe, and which of them the client approved.

use super::percentages::parts_of;
use crate::collections::sort_by_key;
use crate::facts::{Fact, InkFact, Part};
use crate::form::TYPED_NAME;
use crate::ids::Subject;
use crate::ink::{Contents, InkEvent, PotState, Revision, pot_state, recipe_named, weigh_in};
use crate::shop::Shop;
use crate::time::WallTime;
use uuid::Uuid;

/// How a revision is shown.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RevisionName {
    /// The revision.
    pub id: Subject,
    /// Its number when it was saved; pots are labelled with it.
    pub number: u16,
    /// Four characters that distinguish it from others with its number.
    pub mark: String,
    /// Whether another revision has the same number, so that the mark must be read as well. Two phones that have not
    /// exchanged data can cause that.
    pub shares_number: bool,
}

/// The revisions of a recipe that were not undone, oldest first.
pub fn revisions_of(shop: &Shop, recipe: Subject) -> Vec<Revision<'_>> {
    let events = shop.ink.events_of(recipe);
    let live = events.into_iter().filter(|(_, event)| !event.deleted);
    live.filter_map(|(id, _)| shop.ink.revision(id)).filter(|revision| revision.recipe == recipe).collect()
}

/// How a revision is shown; `None` if it is unknown.
pub fn revision_name(shop: &Shop, id: Subject) -> Option<RevisionName> {
    let revision = shop.ink.revision(id)?;
    let shares_number =
        revisions_of(shop, revision.recipe).iter().any(|other| other.id != id && other.number == revision.number);
    let [.., high, low] = id.into_bytes();
    Some(RevisionName { id, number: revision.number, mark: format!("{high:02x}{low:02x}"), shares_number })
}

/// The fact of a new revision of a recipe.
pub fn revision_fact(
    shop: &Shop,
    recipe: Subject,
    parts: Vec<Part>,
    parent: Option<Subject>,
    pot: Option<Subject>,
    note: &str,
    by: Option<&str>,
) -> InkFact {
    let number = next_number(shop, recipe);
    InkFact::RevisionSaved { recipe, number, parts, parent, pot, note: note.to_owned(), by: by.map(str::to_owned) }
}

/// The number for the next revision of a recipe. Numbers of undone revisions are not used again: a label may show them.
fn next_number(shop: &Shop, recipe: Subject) -> u16 {
    let given = shop.ink.events_of(recipe).into_iter().filter_map(|(id, _)| shop.ink.revision(id));
    given.map(|revision| revision.number).max().unwrap_or(0).saturating_add(1)
}

/// The actual contents of a pot as the parts of a revision: those of the revision it started as in their order, then
/// the others, largest first.
pub fn parts_in_pot(shop: &Shop, state: &PotState) -> Vec<Part> {
    parts_of(&in_order(shop, &state.contents, state.base))
}

/// The contents of a pot: those of a revision in its order first, then the others, largest first.
pub(crate) fn in_order(shop: &Shop, contents: &Contents, base: Option<Subject>) -> Vec<(Subject, i64)> {
    let order: Vec<Subject> = base
        .and_then(|id| shop.ink.revision(id))
        .map(|revision| revision.parts.iter().map(|part| part.component).collect())
        .unwrap_or_default();
    let mut weights = contents.weights();
    let index = |component: &Subject| order.iter().position(|other| other == component).unwrap_or(order.len());
    sort_by_key(&mut weights, |(component, weight)| (index(component), std::cmp::Reverse(*weight), *component));
    weights
}

/// The fact that saves the contents of a pot as a revision of a recipe, with the revision it started as for its parent.
/// `None` for an empty pot.
pub fn save_pot(shop: &Shop, pot: Subject, recipe: Subject, note: &str, by: Option<&str>) -> Option<InkFact> {
    let state = pot_state(shop, pot);
    let parts = parts_in_pot(shop, &state);
    (!parts.is_empty()).then(|| revision_fact(shop, recipe, parts, state.base, Some(pot), note, by))
}

/// A client's approval.
#[derive(Clone, Debug, PartialEq)]
pub struct Approval {
    /// Its event.
    pub event: Subject,
    /// The revision approved.
    pub revision: RevisionName,
    /// The pot it was printed from.
    pub pot: Option<Subject>,
    /// The client's name.
    pub client: String,
    /// Who recorded it, if known.
    pub by: Option<String>,
    /// Wall time.
    pub at: WallTime,
}

/// Every approval of a recipe's revisions, latest first. Undone approvals, and approvals of undone revisions, are left
/// out.
pub fn approvals_of(shop: &Shop, recipe: Subject) -> Vec<Approval> {
    let mut found: Vec<(Subject, &InkEvent)> = Vec::new();
    for revision in revisions_of(shop, recipe) {
        found.extend(shop.ink.events_of(revision.id).into_iter().filter(|(_, event)| !event.deleted));
    }
    sort_by_key(&mut found, |(id, event)| (std::cmp::Reverse(event.rank), *id));
    found.into_iter().filter_map(|(id, _)| approval(shop, id)).collect()
}

/// The approval of an event; `None` if it is another event.
pub fn approval(shop: &Shop, event: Subject) -> Option<Approval> {
    let row = shop.ink.event(event)?;
    let InkFact::Approved { revision, pot, client, by, .. } = &row.fact else { return None };
    let revision = revision_name(shop, *revision)?;
    Some(Approval { event, revision, pot: *pot, client: client.clone(), by: by.clone(), at: row.at })
}

/// The revision that a pot holds as written; `None` once anything else was added, or while its weigh-in is incomplete.
pub(crate) fn holds_as_written(shop: &Shop, pot: Subject, state: &PotState) -> Option<Subject> {
    let weighed_by = shop.ink.pot(pot).and_then(|pot| pot.revision);
    let is_in = |id: &Subject| Some(*id) != weighed_by || weigh_in(shop, pot).is_none_or(|weigh_in| weigh_in.is_done());
    state.holds.filter(is_in)
}

/// The recipe under which the contents of a pot are saved as a revision.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum SaveAs {
    /// The pot's own recipe.
    Own(Subject),
    /// Another recipe, which has the name typed: it gets the revision with this number, and runs with its ink are mixed
    /// by it once it is approved.
    Named {
        /// Id of the recipe.
        recipe: Subject,
        /// Its name.
        name: String,
        /// The revision's number.
        number: u16,
    },
    /// A new recipe with this name.
    New(String),
}

/// The recipe under which the contents of a pot are saved as a revision. `name` is used if the pot has no recipe; if
/// empty, it is the pot's own name. No second recipe with the same name is created: runs could only use one of them.
pub fn save_as(shop: &Shop, pot: Subject, name: &str) -> SaveAs {
    if let Some(base) = pot_state(shop, pot).base.and_then(|id| shop.ink.revision(id)) {
        return SaveAs::Own(base.recipe);
    }
    let own = || shop.ink.pot(pot).map(|pot| pot.name.clone()).unwrap_or_default();
    let name = if name.trim().is_empty() { own() } else { name.trim().chars().take(TYPED_NAME).collect() };
    match recipe_named(shop, &name) {
        Some((recipe, found)) => SaveAs::Named { recipe, name: found.name.clone(), number: next_number(shop, recipe) },
        None => SaveAs::New(name),
    }
}

/// The facts that save the contents of a pot as a revision of the recipe from [`save_as`]. Empty for an empty pot.
pub fn save_facts(
    shop: &Shop,
    pot: Subject,
    name: &str,
    note: &str,
    by: Option<&str>,
    mut new_id: impl FnMut() -> Uuid,
) -> Vec<(Subject, Fact)> {
    let state = pot_state(shop, pot);
    let mut facts = Vec::new();
    if state.contents.total().is_positive() {
        let recipe = match save_as(shop, pot, name) {
            SaveAs::Own(recipe) | SaveAs::Named { recipe, .. } => recipe,
            SaveAs::New(name) => {
                let recipe = new_id();
                facts.push((recipe, Fact::Ink(InkFact::RecipeSet(vec![crate::facts::RecipeField::Name(name)]))));
                recipe
            }
        };
        let saved = save_pot(shop, pot, recipe, note, by);
        facts.extend(saved.map(|fact| (new_id(), Fact::Ink(fact))));
    }
    facts
}

/// The facts of a client's approval of a pot. Unless the pot holds a revision as written, its contents are first saved
/// as one, of the recipe from [`save_as`], so that an approval always refers to one revision. Empty for an empty pot.
pub fn approve_facts(
    shop: &Shop,
    pot: Subject,
    name: &str,
    client: &str,
    by: Option<&str>,
    mut new_id: impl FnMut() -> Uuid,
) -> Vec<(Subject, Fact)> {
    let state = pot_state(shop, pot);
    if !state.contents.total().is_positive() {
        return Vec::new();
    }
    let mut facts = Vec::new();
    let revision = holds_as_written(shop, pot, &state).or_else(|| {
        facts = save_facts(shop, pot, name, "", by, &mut new_id);
        facts.last().map(|(id, _)| *id)
    });
    let Some(revision) = revision else { return Vec::new() };
    let (client, by) = (client.trim().to_owned(), by.map(str::to_owned));
    let yes = InkFact::Approved { revision, pot: Some(pot), client, reading: None, by };
    facts.push((new_id(), Fact::Ink(yes)));
    facts
}
