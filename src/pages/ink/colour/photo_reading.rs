//! A colour difference from one photo: chosen, marked in three places, read.

use super::difference::in_words;
use super::photo_marks::{MarkBoard, Placed};
use super::photo_subject::{PhotoOf, Taken};
use super::reading::Reading;
use crate::components::{Choice, Icon};
use crate::i18n;
use crate::platform::pictures::{PictureProblem, Pixels};
use crate::platform::{pictures, spawn_local};
use lastpull_core::colour::photo_reading::{
    Mark, Marks, PatchRole, PhotoProblem, PhotoReading, Picture, photo_uncertainty, read_photo,
};
use lastpull_core::ink::{ColourDifference, ColourReading, photo_sample};
use leptos::html;
use leptos::prelude::*;
use std::sync::Arc;

/// L* of plain white paper, and of a grey card of 18 %: common practice, no source.
const PAPER: f64 = 95.0;
const CARD: f64 = 49.5;

/// State of the chosen picture.
#[derive(Clone, PartialEq)]
enum Chosen {
    Nothing,
    Reading,
    Problem(PictureProblem),
    Here(Arc<Pixels>),
}

/// Chooses and marks a photo; writes its result to `reading` as soon as there is one.
#[component]
pub fn PhotoReadingInput(
    /// The known colour of the two, if any.
    known: Signal<Option<ColourReading>>,
    /// The name of the known patch, to be recorded with the reading.
    #[prop(optional)]
    beside: Option<Signal<String>>,
    /// What the photo is of.
    of: PhotoOf,
    /// The result.
    reading: RwSignal<Reading>,
) -> impl IntoView {
    let chosen = RwSignal::new(Chosen::Nothing);
    let taken = RwSignal::new(None::<Taken>);
    let patch = beside;
    let [beside, sample] = [PatchRole::Target, PatchRole::Sample].map(|which| of.mark(which).1);
    let revoke_url = move || {
        if let Chosen::Here(pixels) = chosen.get_untracked() {
            pictures::revoke_url(&pixels.address);
        }
    };
    on_cleanup(revoke_url);
    let take = Callback::new(move |file: send_wrapper::SendWrapper<web_sys::File>| {
        revoke_url();
        reading.set(Reading::default());
        chosen.set(Chosen::Reading);
        taken.set(Some(Taken::of(file.clone())));
        spawn_local(async move {
            chosen.set(match pictures::pixels_of(&file).await {
                Ok(pixels) => Chosen::Here(Arc::new(pixels)),
                Err(problem) => Chosen::Problem(problem),
            });
        });
    });
    view! {
        {move || match chosen.get() {
                Chosen::Nothing => view! {
                    <p>{i18n::colour_photo_how(beside, sample)}</p>
                    <p class="quiet-line">{i18n::colour_photo_trust()}</p>
                    <div class="button-row"><TakePhotoButton take camera=true/><TakePhotoButton take camera=false/></div>
                }.into_any(),
                Chosen::Reading => view! { <p role="status">{i18n::colour_photo_wait()}</p> }.into_any(),
                Chosen::Problem(problem) => view! {
                    <p class="problem" role="alert"><Icon name="alert"/>" "{problem_text(problem)}</p>
                    <div class="button-row"><TakePhotoButton take camera=true/><TakePhotoButton take camera=false/></div>
                }.into_any(),
                Chosen::Here(pixels) => view! { <PhotoMarks pixels known beside=patch of taken reading again=take/> }.into_any(),
            }}
    }
}

fn problem_text(problem: PictureProblem) -> &'static str {
    match problem {
        PictureProblem::TooLarge | PictureProblem::NoPicture | PictureProblem::NotMade => i18n::colour_photo_none(),
    }
}

/// A button that takes one picture from the camera or from the device's files.
#[component]
fn TakePhotoButton(
    take: Callback<send_wrapper::SendWrapper<web_sys::File>>,
    camera: bool,
    /// Whether a photo was read before, so that another one is less likely needed.
    #[prop(optional)]
    again: bool,
) -> impl IntoView {
    let input = NodeRef::<html::Input>::new();
    let picked = move |_| {
        if let Some(file) = input.get_untracked().and_then(|input| pictures::picked(&input).into_iter().next()) {
            take.run(send_wrapper::SendWrapper::new(file));
        }
    };
    let (icon, words) = if camera { ("camera", i18n::photo_take()) } else { ("picture", i18n::photo_choose()) };
    view! {
        <label class="button with-icon file-button" class:primary=camera && !again>
            <input type="file" accept="image/*" capture=camera.then_some("environment") data-colour=icon node_ref=input on:change=picked/>
            <Icon name=icon/>
            <span>{words}</span>
        </label>
    }
}

/// The picture with its three marks, and the result.
#[component]
fn PhotoMarks(
    pixels: Arc<Pixels>,
    known: Signal<Option<ColourReading>>,
    beside: Option<Signal<String>>,
    of: PhotoOf,
    taken: RwSignal<Option<Taken>>,
    reading: RwSignal<Reading>,
    again: Callback<send_wrapper::SendWrapper<web_sys::File>>,
) -> impl IntoView {
    let placed = RwSignal::new(Placed::default());
    let neutral = RwSignal::new(PAPER);
    let (width, height) = (pixels.width, pixels.height);
    let address = pixels.address.clone();
    let read = Memo::new(move |_| {
        let placed = placed.get();
        let (across, down) = (pixels.width as f64, pixels.height as f64);
        let radius = placed.radius * across.min(down);
        let mark = |place: usize| {
            let [x, y] = placed.at.get(place).copied().unwrap_or_default();
            Mark { x: x * across, y: y * down, radius }
        };
        let marks = Marks { target: mark(0), sample: mark(1), neutral: mark(2), neutral_lightness: neutral.get() };
        let picture = Picture { width: pixels.width, height: pixels.height, rgba: &pixels.rgba };
        // No result until every mark was set by the user.
        placed.is_set().then(|| read_photo(picture, marks))
    });
    Effect::new(move || {
        let known = known.get();
        let kept = match read.get() {
            // A pot's photo may bring its target; a drawdown's photo is useless without a known patch beside it.
            Some(Ok(found)) if known.is_some() || of == PhotoOf::Swatch => Some(photo_sample(known, &found)),
            _ => None,
        };
        let (value, target) = kept.map_or((None, None), |kept| (Some(kept.sample), kept.target));
        let beside = beside.map(|beside| beside.get());
        reading.set(Reading { value, target, photo: taken.get_untracked(), beside, ..Reading::default() });
    });
    let neutrals =
        vec![(PAPER, i18n::colour_neutral_paper().to_owned()), (CARD, i18n::colour_neutral_card().to_owned())];
    view! {
        <p>{i18n::colour_photo_mark()}</p>
        <MarkBoard address width height of placed/>
        <div role="status" id="photo-says">{move || match read.get() {
            None => ().into_any(),
            Some(Err(problem)) => refused(problem, of),
            Some(Ok(reading)) => reading_view(&reading, known.get(), of),
        }}</div>
        <Choice label=i18n::colour_neutral_is() name="neutral" options=neutrals value=Signal::from(neutral) on_pick=Callback::new(move |to| neutral.set(to))/>
        <div class="button-row"><TakePhotoButton take=again camera=true again=true/><TakePhotoButton take=again camera=false again=true/></div>
    }
}

fn refused(problem: PhotoProblem, of: PhotoOf) -> AnyView {
    view! { <p class="caution"><Icon name="alert"/><span>{i18n::colour_photo_problem(problem, |which| of.mark(which).0)}</span></p> }.into_any()
}

fn reading_view(reading: &PhotoReading, known: Option<ColourReading>, of: PhotoOf) -> AnyView {
    let difference = ColourDifference::of(reading.target, reading.sample);
    let stops = i18n::number(reading.stops, 1);
    let [beside, sample] = [PatchRole::Target, PatchRole::Sample].map(|which| of.mark(which).1);
    let laid = match (known, of) {
        (None, PhotoOf::Drawdown(_)) => i18n::colour_photo_no_patch(),
        (None, _) => i18n::colour_photo_first(),
        (Some(_), PhotoOf::Drawdown(_)) => i18n::colour_photo_laid_known(),
        (Some(_), PhotoOf::Target) => i18n::colour_photo_laid_garment(),
        (Some(_), _) => i18n::colour_photo_laid(),
    };
    let patch = known.filter(|_| matches!(of, PhotoOf::Drawdown(_)));
    let reads = patch.map(|patch| {
        let [l, a, b] = photo_sample(Some(patch), reading).sample.lab().map(|value| i18n::number(value, 1));
        i18n::colour_photo_reads(format!("L* {l}  a* {a}  b* {b}"))
    });
    // A pot's advice is built on the difference as much as a drawdown's reading.
    let is_read = known.is_some() || !matches!(of, PhotoOf::Drawdown(_));
    let doubt = photo_uncertainty(difference.de2000).filter(|_| is_read).map(|doubt| {
        let words = i18n::colour_photo_doubt(i18n::number(doubt, 0));
        view! { <p class="caution"><Icon name="alert"/><span>{words}</span></p> }
    });
    let uneven = i18n::number(reading.unevenness * 100.0, 0);
    view! {
        <div class="colour-reported">
            <p class="muted">{i18n::colour_photo_says(beside, sample)}</p>
            {in_words(&difference)}
            <p class="quiet-line">{super::difference::in_numbers(&difference)}". "{i18n::colour_photo_corrected(stops, uneven)}</p>
            <p class="quiet-line">{laid}" "{reads}</p>
            {doubt}
        </div>
    }.into_any()
}
