//! What `view!` draws: one type for every element, text and closure.
//!
//! Leptos gives each of them a type of its own, and every type brings its own copy of the code that
//! builds, updates and removes it; that was most of the bundle. Here a screen is data that one small
//! interpreter builds and updates, over Leptos' own signals, effects and components.

use crate::kept::{Memo, RwSignal, Signal};
use leptos::prelude::*;
use leptos::reactive::effect::RenderEffect;
use leptos::tachys::html::attribute::{Attribute, any_attribute::AnyAttribute};
use leptos::tachys::html::element::ElementType;
use leptos::tachys::html::event::EventDescriptor;
use leptos::tachys::html::node_ref::NodeRefContainer;
use leptos::tachys::hydration::Cursor;
use leptos::tachys::renderer::Rndr;
use leptos::tachys::renderer::types::{Element, Node, Placeholder, Text};
use leptos::tachys::view::any_view::AnyViewState;
use leptos::tachys::view::{Mountable, Position, PositionState, Render, RenderHtml};
use send_wrapper::SendWrapper;
use std::borrow::Cow;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::Event;

type Words = Cow<'static, str>;
type Handler = Box<dyn FnMut(Event)>;
type Keep = Box<dyn FnOnce(&Element) + Send>;

/// Something drawn. What `view!` gives. One pointer, so that handing it on takes no code.
pub struct Drawn(Box<What>);

enum What {
    /// Nothing, for now.
    Nothing,
    /// Words.
    Words(Words),
    /// An element.
    Element(Parts),
    /// One after the other.
    Row(Vec<Drawn>),
    /// Drawn anew whenever a signal it read changes.
    Live(Box<dyn FnMut() -> Drawn + Send>),
    /// One for each item of a list; those whose key stays are left as they are.
    Each(Box<dyn FnMut() -> Vec<Item> + Send>),
    /// What Leptos draws: a component, or what a prop brings.
    Other(AnyView),
}

/// An item of a list: where it stood before, or how it is drawn.
enum Item {
    Stays(usize),
    New(Box<dyn FnOnce() -> Drawn>),
}

/// An element before it is built.
pub struct Building(Box<Parts>);

struct Parts {
    literal: &'static str,
    parts: Vec<(Part, &'static str, Setting)>,
    events: Vec<(&'static str, SendWrapper<Handler>)>,
    keep: Option<Keep>,
    within: Vec<Drawn>,
}

/// What of an element is set.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Part {
    /// An attribute.
    Attribute,
    /// One class, on or off.
    Class,
    /// One property of its style.
    Style,
    /// A property of the object.
    Property,
}

/// What a part is set to.
#[derive(Clone, PartialEq, Eq)]
pub enum Value {
    /// Not there.
    No,
    /// There, without a value.
    Yes,
    /// Words.
    Words(Words),
}

/// What a part is set to, once or with every change.
pub struct Setting(Box<How>);

enum How {
    /// Once.
    Fixed(Value),
    /// With every change.
    Live(Box<dyn FnMut() -> Value + Send>),
}

fn fixed(value: Value) -> Setting {
    Setting(Box::new(How::Fixed(value)))
}

fn lively_setting(value: Box<dyn FnMut() -> Value + Send>) -> Setting {
    Setting(Box::new(How::Live(value)))
}

/// Draws one for each item of a list; those whose key stays are left as they are.
pub fn each<T, K>(
    mut items: impl FnMut() -> Vec<T> + Send + 'static,
    key: impl Fn(&T) -> K + Send + 'static,
    draw: impl Fn(T) -> Drawn + Clone + Send + 'static,
) -> Drawn
where
    T: 'static,
    K: PartialEq + Send + 'static,
{
    let mut before: Vec<K> = Vec::new();
    Drawn(Box::new(What::Each(Box::new(move || {
        let items = items();
        let keys: Vec<K> = items.iter().map(&key).collect();
        let place = |key| before.iter().position(|other| other == key);
        let places: Vec<Option<usize>> = keys.iter().map(place).collect();
        before = keys;
        let item = |(item, place): (T, Option<usize>)| {
            let draw = draw.clone();
            place.map_or_else(|| Item::New(Box::new(move || draw(item))), Item::Stays)
        };
        items.into_iter().zip(places).map(item).collect()
    }))))
}

impl Drawn {
    /// It is one type already; there is nothing to erase.
    pub fn into_any(self) -> Self {
        self
    }
}

/// Starts an element: its tag and, a line each, its literal attributes.
pub fn element(literal: &'static str) -> Building {
    Building(Box::new(Parts { literal, parts: Vec::new(), events: Vec::new(), keep: None, within: Vec::new() }))
}

/// Draws nothing.
pub fn nothing() -> Drawn {
    Drawn(Box::new(What::Nothing))
}

/// Draws words.
pub fn words(words: &'static str) -> Drawn {
    Drawn(Box::new(What::Words(Cow::Borrowed(words))))
}

/// Draws one after the other.
pub fn row(row: Vec<Drawn>) -> Drawn {
    Drawn(Box::new(What::Row(row)))
}

/// Draws a component: what it reads while it is set up is not read by whoever shows it.
pub fn component(draw: impl FnOnce() -> Drawn) -> Drawn {
    let mut draw = Some(draw);
    untracked(&mut || draw.take().map_or_else(nothing, |draw| draw()))
}

#[inline(never)]
fn untracked(draw: &mut dyn FnMut() -> Drawn) -> Drawn {
    leptos::reactive::graph::untrack(draw)
}

/// Draws what Leptos draws.
pub fn other(view: AnyView) -> Drawn {
    Drawn(Box::new(What::Other(view)))
}

/// Draws anew whenever a signal it read changes.
pub fn live<T: Draw>(mut draw: impl FnMut() -> T + Send + 'static) -> Drawn {
    lively(Box::new(move || draw().drawn()))
}

fn lively(draw: Box<dyn FnMut() -> Drawn + Send>) -> Drawn {
    Drawn(Box::new(What::Live(draw)))
}

impl Building {
    /// Sets a part.
    pub fn set(mut self, part: Part, name: &'static str, setting: Setting) -> Self {
        self.0.parts.push((part, name, setting));
        self
    }

    /// Listens to an event that Leptos has a type for.
    pub fn on<E>(self, _event: E, name: &'static str, mut handler: impl FnMut(E::EventType) + 'static) -> Self
    where
        E: EventDescriptor,
        E::EventType: JsCast,
    {
        self.on_any(name, Box::new(move |event: Event| handler(event.unchecked_into())))
    }

    /// Listens to any event.
    pub fn on_any(mut self, name: &'static str, handler: Handler) -> Self {
        self.0.events.push((name, SendWrapper::new(handler)));
        self
    }

    /// Keeps the element in a reference once it is built.
    pub fn keep<E: ElementType>(mut self, kept: impl NodeRefContainer<E>) -> Self {
        self.0.keep = Some(Box::new(move |element| kept.load(element)));
        self
    }

    /// Puts something within it, after what is there.
    pub fn with(mut self, within: Drawn) -> Self {
        self.0.within.push(within);
        self
    }

    /// The element.
    pub fn done(self) -> Drawn {
        Drawn(Box::new(What::Element(*self.0)))
    }
}

/// What is built: the nodes of the page and what was last drawn into them.
pub enum Built {
    /// A comment that keeps the place.
    Nothing(Placeholder),
    /// A text node.
    Words(Text, Words),
    /// An element.
    Element(Box<BuiltElement>),
    /// One after the other, and a comment that keeps the place of what follows.
    Row(Vec<Built>, Placeholder),
    /// One for each item of a list, each with what it owns, and a comment as above.
    Each(Vec<(Owner, Built)>, Placeholder),
    /// Drawn by an effect.
    Live(Running),
    /// Built by Leptos.
    Other(AnyViewState),
}

/// An effect that draws. What it drew goes with it at once: left to the effect's task it would stay
/// until that is run, and effects within it would read signals that are gone.
pub struct Running(RenderEffect<Built>);

impl Drop for Running {
    fn drop(&mut self) {
        drop(self.0.take_value());
    }
}

/// An element of the page.
pub struct BuiltElement {
    node: Element,
    literal: &'static str,
    parts: Vec<(Part, &'static str, BuiltPart)>,
    events: Vec<Listener>,
    within: Vec<Built>,
}

/// Listens for as long as it is kept: an event that goes up through what is drawn no more must not
/// come to its handler, whose signals are gone.
struct Listener {
    node: Element,
    name: &'static str,
    handler: JsValue,
}

enum BuiltPart {
    Fixed(Value),
    Live(RenderEffect<Value>),
}

impl Render for Drawn {
    type State = Built;

    fn build(self) -> Built {
        match *self.0 {
            What::Nothing => Built::Nothing(Rndr::create_placeholder()),
            What::Words(words) => Built::Words(Rndr::create_text_node(&words), words),
            What::Element(element) => Built::Element(Box::new(element.build())),
            What::Row(row) => Built::Row(row.into_iter().map(Self::build).collect(), Rndr::create_placeholder()),
            What::Live(mut draw) => {
                Built::Live(Running(RenderEffect::new(move |before: Option<Built>| match before {
                    Some(mut built) => {
                        draw().rebuild(&mut built);
                        built
                    }
                    None => draw().build(),
                })))
            }
            What::Each(mut items) => {
                let owner = Owner::current().unwrap_or_default();
                Built::Live(Running(RenderEffect::new(move |before: Option<Built>| match before {
                    Some(Built::Each(before, end)) => lay_out(&owner, items(), before, end),
                    _ => lay_out(&owner, items(), Vec::new(), Rndr::create_placeholder()),
                })))
            }
            What::Other(view) => Built::Other(view.build()),
        }
    }

    fn rebuild(self, built: &mut Built) {
        match (*self.0, &mut *built) {
            (What::Nothing, Built::Nothing(_)) => {}
            (What::Words(words), Built::Words(node, before)) => {
                if words != *before {
                    Rndr::set_text(node, &words);
                    *before = words;
                }
            }
            (What::Element(element), Built::Element(before)) if before.takes(&element) => before.rebuild(element),
            (What::Row(row), Built::Row(before, end)) => {
                for mut gone in before.drain(row.len().min(before.len())..) {
                    gone.unmount();
                }
                for (index, drawn) in row.into_iter().enumerate() {
                    if let Some(before) = before.get_mut(index) {
                        drawn.rebuild(before);
                    } else {
                        let mut new = drawn.build();
                        put_before(&mut new, end);
                        before.push(new);
                    }
                }
            }
            (What::Other(view), Built::Other(before)) => view.rebuild(before),
            (what, _) => {
                let mut new = Drawn(Box::new(what)).build();
                built.insert_before_this(&mut new);
                built.unmount();
                *built = new;
            }
        }
    }
}

/// Builds what is new in a list, takes out what is gone and moves what stands elsewhere.
fn lay_out(owner: &Owner, items: Vec<Item>, before: Vec<(Owner, Built)>, end: Placeholder) -> Built {
    let mut before: Vec<_> = before.into_iter().map(Some).collect();
    let mut rows = Vec::new();
    for item in items {
        match item {
            Item::Stays(place) => {
                rows.extend(before.get_mut(place).and_then(Option::take).map(|row| (row, Some(place))));
            }
            Item::New(draw) => {
                let owner = owner.with(Owner::new);
                let built = owner.with(|| leptos::reactive::graph::untrack(|| draw().build()));
                rows.push(((owner, built), None));
            }
        }
    }
    for (_, mut gone) in before.into_iter().flatten() {
        gone.unmount();
    }
    let (mut stays, mut after): (usize, Vec<(Owner, Built)>) = (usize::MAX, Vec::new());
    for ((owner, mut built), place) in rows.into_iter().rev() {
        match place {
            Some(place) if place < stays => stays = place,
            _ => match after.last() {
                Some((_, next)) => {
                    next.insert_before_this(&mut built);
                }
                None => put_before(&mut built, &end),
            },
        }
        after.push((owner, built));
    }
    after.reverse();
    Built::Each(after, end)
}

fn put_before(new: &mut dyn Mountable, node: &Node) {
    if let Some(parent) = node.parent_node() {
        new.mount(parent.unchecked_ref(), Some(node));
    }
}

impl Parts {
    fn build(self) -> BuiltElement {
        let mut lines = self.literal.split('\n');
        let tag = lines.next().unwrap_or_default();
        let drawing =
            matches!(tag, "svg" | "path" | "rect" | "line" | "polygon" | "polyline" | "circle" | "g" | "text");
        let node = Rndr::create_element(tag, drawing.then_some("http://www.w3.org/2000/svg"));
        for (name, value) in lines.filter_map(|line| line.split_once('=')) {
            Rndr::set_attribute(&node, name, value);
        }
        let parts = self
            .parts
            .into_iter()
            .map(|(part, name, setting)| (part, name, setting.build(&node, part, name, None)))
            .collect();
        let events =
            self.events.into_iter().map(|(name, handler)| Listener::new(&node, name, handler.take())).collect();
        let mut within: Vec<Built> = self.within.into_iter().map(Drawn::build).collect();
        for built in &mut within {
            built.mount(&node, None);
        }
        if let Some(keep) = self.keep {
            keep(&node);
        }
        BuiltElement { node, literal: self.literal, parts, events, within }
    }
}

impl BuiltElement {
    /// Whether an element is drawn by the same lines of a view as this one was.
    fn takes(&self, drawn: &Parts) -> bool {
        self.literal == drawn.literal
            && self.within.len() == drawn.within.len()
            && self
                .parts
                .iter()
                .map(|(part, name, _)| (part, name))
                .eq(drawn.parts.iter().map(|(part, name, _)| (part, name)))
    }

    fn rebuild(&mut self, drawn: Parts) {
        let Self { node, parts, events, within, .. } = self;
        // Writing the attribute takes away the classes that were put on one by one.
        let mut classes_gone = false;
        for ((part, name, before), (_, _, setting)) in parts.iter_mut().zip(drawn.parts) {
            let value = match before {
                BuiltPart::Fixed(value) => Some(value.clone()),
                BuiltPart::Live(effect) => effect.take_value(),
            };
            classes_gone |= *name == "class" && !matches!(&*setting.0, How::Fixed(new) if Some(new) == value.as_ref());
            *before = setting.build(node, *part, name, value.filter(|_| !(classes_gone && *part == Part::Class)));
        }
        events.clear();
        events.extend(drawn.events.into_iter().map(|(name, handler)| Listener::new(node, name, handler.take())));
        for (built, drawn) in within.iter_mut().zip(drawn.within) {
            drawn.rebuild(built);
        }
        if let Some(keep) = drawn.keep {
            keep(node);
        }
    }
}

impl Listener {
    fn new(node: &Element, name: &'static str, handler: Handler) -> Self {
        // Not dropped with this, since it may be what is running; the browser lets go of it in time.
        let handler = Closure::wrap(handler).into_js_value();
        let _ = node.add_event_listener_with_callback(name, handler.unchecked_ref());
        Self { node: node.clone(), name, handler }
    }
}

impl Drop for Listener {
    fn drop(&mut self) {
        let _ = self.node.remove_event_listener_with_callback(self.name, self.handler.unchecked_ref());
    }
}

impl Setting {
    fn build(self, node: &Element, part: Part, name: &'static str, before: Option<Value>) -> BuiltPart {
        match *self.0 {
            How::Fixed(value) => {
                put(node, part, name, &value, before.as_ref());
                BuiltPart::Fixed(value)
            }
            How::Live(mut value) => {
                let node = node.clone();
                BuiltPart::Live(RenderEffect::new_with_value(
                    move |before: Option<Value>| {
                        let value = value();
                        put(&node, part, name, &value, before.as_ref());
                        value
                    },
                    before,
                ))
            }
        }
    }
}

/// Puts a value where it belongs, unless it is there.
fn put(node: &Element, part: Part, name: &str, value: &Value, before: Option<&Value>) {
    if before == Some(value) {
        return;
    }
    match (part, value) {
        (Part::Attribute, Value::No) => Rndr::remove_attribute(node, name),
        (Part::Attribute, Value::Yes) => Rndr::set_attribute(node, name, ""),
        (Part::Attribute, Value::Words(words)) => Rndr::set_attribute(node, name, words),
        (Part::Class, Value::No) => Rndr::remove_class(&Rndr::class_list(node), name),
        (Part::Class, _) => Rndr::add_class(&Rndr::class_list(node), name),
        (Part::Style, Value::Words(words)) => Rndr::set_css_property(&Rndr::style(node), name, words),
        (Part::Style, _) => Rndr::remove_css_property(&Rndr::style(node), name),
        (Part::Property, Value::Words(words)) => Rndr::set_property(node, name, &JsValue::from_str(words)),
        (Part::Property, value) => Rndr::set_property(node, name, &JsValue::from_bool(*value == Value::Yes)),
    }
}

impl Mountable for Built {
    fn unmount(&mut self) {
        match self {
            Self::Nothing(node) => Rndr::remove(node),
            Self::Words(node, _) => Rndr::remove(node),
            Self::Element(element) => Rndr::remove(&element.node),
            Self::Row(row, end) => {
                for built in row {
                    built.unmount();
                }
                Rndr::remove(end);
            }
            Self::Each(rows, end) => {
                for (_, built) in rows {
                    built.unmount();
                }
                Rndr::remove(end);
            }
            Self::Live(effect) => effect.0.unmount(),
            Self::Other(view) => view.unmount(),
        }
    }

    fn mount(&mut self, parent: &Element, marker: Option<&Node>) {
        match self {
            Self::Nothing(node) => Rndr::insert_node(parent, node, marker),
            Self::Words(node, _) => Rndr::insert_node(parent, node, marker),
            Self::Element(element) => Rndr::insert_node(parent, &element.node, marker),
            Self::Row(row, end) => {
                for built in row {
                    built.mount(parent, marker);
                }
                Rndr::insert_node(parent, end, marker);
            }
            Self::Each(rows, end) => {
                for (_, built) in rows {
                    built.mount(parent, marker);
                }
                Rndr::insert_node(parent, end, marker);
            }
            Self::Live(effect) => effect.0.mount(parent, marker),
            Self::Other(view) => view.mount(parent, marker),
        }
    }

    fn insert_before_this(&self, child: &mut dyn Mountable) -> bool {
        match self {
            Self::Nothing(node) => put_before(child, node),
            Self::Words(node, _) => put_before(child, node),
            Self::Element(element) => put_before(child, &element.node),
            Self::Row(row, end) => match row.first() {
                Some(first) => return first.insert_before_this(child),
                None => put_before(child, end),
            },
            Self::Each(rows, end) => match rows.first() {
                Some((_, first)) => return first.insert_before_this(child),
                None => put_before(child, end),
            },
            Self::Live(effect) => return effect.0.insert_before_this(child),
            Self::Other(view) => return view.insert_before_this(child),
        }
        true
    }

    fn elements(&self) -> Vec<Element> {
        match self {
            Self::Nothing(_) | Self::Words(..) => Vec::new(),
            Self::Element(element) => vec![element.node.clone()],
            Self::Row(row, _) => row.iter().flat_map(Self::elements).collect(),
            Self::Each(rows, _) => rows.iter().flat_map(|(_, built)| built.elements()).collect(),
            Self::Live(effect) => effect.0.elements(),
            Self::Other(view) => view.elements(),
        }
    }
}

// What Leptos asks of a view besides. The app is drawn in the browser only.
impl RenderHtml for Drawn {
    type AsyncOutput = Self;
    type Owned = Self;
    const MIN_LENGTH: usize = 0;

    fn dry_resolve(&mut self) {}

    async fn resolve(self) -> Self {
        self
    }

    fn to_html_with_buf(self, _: &mut String, _: &mut Position, _: bool, _: bool, _: Vec<AnyAttribute>) {}

    fn hydrate<const FROM_SERVER: bool>(self, _: &Cursor, _: &PositionState) -> Built {
        self.build()
    }

    fn into_owned(self) -> Self {
        self
    }
}

impl AddAnyAttr for Drawn {
    type Output<A: Attribute> = Self;

    fn add_any_attr<A: Attribute>(self, _: A) -> Self {
        self
    }
}

/// What can stand in a view.
pub trait Draw {
    /// It, drawn.
    fn drawn(self) -> Drawn;
}

impl Draw for Drawn {
    fn drawn(self) -> Drawn {
        self
    }
}

impl Draw for AnyView {
    fn drawn(self) -> Drawn {
        other(self)
    }
}

impl Draw for () {
    fn drawn(self) -> Drawn {
        nothing()
    }
}

impl Draw for &'static str {
    fn drawn(self) -> Drawn {
        words(self)
    }
}

impl Draw for String {
    fn drawn(self) -> Drawn {
        Drawn(Box::new(What::Words(Cow::Owned(self))))
    }
}

impl<T: Draw> Draw for Option<T> {
    fn drawn(self) -> Drawn {
        self.map_or_else(nothing, Draw::drawn)
    }
}

impl<T: Draw> Draw for Vec<T> {
    fn drawn(self) -> Drawn {
        row(self.into_iter().map(Draw::drawn).collect())
    }
}

impl<T: Draw, F: FnMut() -> T + Send + 'static> Draw for F {
    fn drawn(self) -> Drawn {
        live(self)
    }
}

/// What a part can be set to.
pub trait ToValue {
    /// It, as a value.
    fn value(self) -> Value;
}

impl ToValue for bool {
    fn value(self) -> Value {
        if self { Value::Yes } else { Value::No }
    }
}

impl ToValue for &'static str {
    fn value(self) -> Value {
        Value::Words(Cow::Borrowed(self))
    }
}

impl ToValue for String {
    fn value(self) -> Value {
        Value::Words(Cow::Owned(self))
    }
}

impl<T: ToValue> ToValue for Option<T> {
    fn value(self) -> Value {
        self.map_or(Value::No, ToValue::value)
    }
}

/// What a part can be set to, once or with every change.
pub trait Set {
    /// It, as a setting.
    fn setting(self) -> Setting;
}

impl<T: ToValue, F: FnMut() -> T + Send + 'static> Set for F {
    fn setting(mut self) -> Setting {
        lively_setting(Box::new(move || self().value()))
    }
}

impl<T: ToValue> Set for Option<T> {
    fn setting(self) -> Setting {
        fixed(self.value())
    }
}

macro_rules! fixed {
    ($($ty:ty),*) => {$(
        impl Set for $ty {
            fn setting(self) -> Setting {
                fixed(self.value())
            }
        }
    )*};
}
fixed!(bool, &'static str, String);

macro_rules! numbers {
    ($($ty:ty),*) => {$(
        impl Draw for $ty {
            fn drawn(self) -> Drawn {
                self.to_string().drawn()
            }
        }

        impl ToValue for $ty {
            fn value(self) -> Value {
                self.to_string().value()
            }
        }

        fixed!($ty);
    )*};
}
numbers!(i64, u16, u32, usize, f64);

macro_rules! signals {
    ($($signal:ident),*) => {$(
        impl<T: Draw + Clone + PartialEq + Send + Sync + 'static> Draw for $signal<T> {
            fn drawn(self) -> Drawn {
                live(move || self.get())
            }
        }

        impl<T: ToValue + Clone + PartialEq + Send + Sync + 'static> Set for $signal<T> {
            fn setting(self) -> Setting {
                (move || self.get()).setting()
            }
        }
    )*};
}
signals!(Signal, RwSignal, Memo);
