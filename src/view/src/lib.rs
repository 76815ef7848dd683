//! `view!` with the syntax of Leptos, expanded to calls on the app's own `crate::live`.
//!
//! Leptos gives every element, closure and attribute a type of its own, and each such type its own
//! copy of the code that builds, updates and removes it: two thirds of a bundle of this app. Here every
//! element is of one type, and what its tag and its literal attributes are is one string. Components
//! are called as Leptos calls them; they are transparent and give what `view!` gives.

use proc_macro2::TokenStream;
use quote::{format_ident, quote};
use rstml::node::{Infallible, KeyedAttribute, Node, NodeAttribute, NodeElement};
use syn::{Expr, Lit, Stmt};

/// Draws elements and components. See the crate for what differs from Leptos' macro of this name.
#[proc_macro]
pub fn view(tokens: proc_macro::TokenStream) -> proc_macro::TokenStream {
    let drawn = rstml::parse2(tokens.into()).and_then(|nodes| all(&nodes));
    let drawn = drawn.unwrap_or_else(|error| {
        let error = error.into_compile_error();
        quote!({ #error })
    });
    drawn.into()
}

type Nodes = [Node<Infallible>];

/// The nodes as one.
fn all(nodes: &Nodes) -> syn::Result<TokenStream> {
    let mut drawn =
        nodes.iter().filter(|node| !matches!(node, Node::Comment(_))).map(one).collect::<syn::Result<Vec<_>>>()?;
    Ok(if drawn.len() == 1 { drawn.remove(0) } else { quote!(crate::live::row(::std::vec![#(#drawn),*])) })
}

fn one(node: &Node<Infallible>) -> syn::Result<TokenStream> {
    Ok(match node {
        Node::Text(text) => {
            let text = text.value_string();
            quote!(crate::live::words(#text))
        }
        Node::RawText(text) => {
            let text = text.to_string_best();
            quote!(crate::live::words(#text))
        }
        Node::Block(block) => match block.try_block().map(|block| block.stmts.as_slice()) {
            Some([Stmt::Expr(closure @ Expr::Closure(_), None)]) => quote!(crate::live::live(#closure)),
            Some([Stmt::Expr(value, None)]) => quote!(crate::live::Draw::drawn(#value)),
            _ => quote!(crate::live::Draw::drawn(#block)),
        },
        Node::Fragment(fragment) => all(&fragment.children)?,
        Node::Element(element) if is_component(element) => component(element)?,
        Node::Element(element) => plain(element)?,
        _ => return Err(syn::Error::new_spanned(node, "not known to this view!")),
    })
}

fn is_component(element: &NodeElement<Infallible>) -> bool {
    element.name().to_string().rsplit(':').next().is_some_and(|name| name.trim().starts_with(char::is_uppercase))
}

fn component(element: &NodeElement<Infallible>) -> syn::Result<TokenStream> {
    let (name, attributes) = (element.name(), element.attributes());
    let children = if element.children.is_empty() { None } else { Some(all(&element.children)?) };
    if name.to_string() == "For" {
        return for_each(element, children.as_ref());
    }
    let mut props = Vec::new();
    for attribute in attributes {
        let NodeAttribute::Attribute(attribute) = attribute else {
            return Err(syn::Error::new_spanned(attribute, "not known to this view!"));
        };
        let key = &attribute.key;
        let value = attribute.value().map_or_else(|| quote!(#key), |value| quote!(#value));
        props.push(quote!(.#key(#value)));
    }
    let children =
        children.map(|children| quote!(.children(::leptos::children::ToChildren::to_children(move || #children))));
    Ok(quote!({
        let props = ::leptos::component::component_props_builder(&#name) #(#props)* #children .build();
        crate::live::component(move || ::leptos::component::component_view(&#name, props))
    }))
}

/// `<For each=… key=… let:item>`, as Leptos has it.
fn for_each(element: &NodeElement<Infallible>, children: Option<&TokenStream>) -> syn::Result<TokenStream> {
    let (mut each, mut key, mut item) = (None, None, None);
    for attribute in element.attributes() {
        let NodeAttribute::Attribute(attribute) = attribute else { continue };
        match attribute.key.to_string().as_str() {
            "each" => each = attribute.value(),
            "key" => key = attribute.value(),
            name => item = name.strip_prefix("let:").map(|name| format_ident!("{name}")),
        }
    }
    match (each, key, item) {
        (Some(each), Some(key), Some(item)) => Ok(quote!(crate::live::each(#each, #key, move |#item| #children))),
        _ => Err(syn::Error::new_spanned(element.name(), "wants each, key and let:item")),
    }
}

fn plain(element: &NodeElement<Infallible>) -> syn::Result<TokenStream> {
    // The tag and, a line each, the attributes whose value is written out.
    let mut literal = element.name().to_string();
    let mut calls = Vec::new();
    for attribute in element.attributes() {
        let NodeAttribute::Attribute(attribute) = attribute else {
            return Err(syn::Error::new_spanned(attribute, "not known to this view!"));
        };
        let name = attribute.key.to_string();
        match (attribute.value(), name.split_once(':')) {
            (None, None) => literal.extend(["\n", &name, "="]),
            (Some(Expr::Lit(no)), None) if matches!(&no.lit, Lit::Bool(no) if !no.value) => {}
            (Some(Expr::Lit(text)), None) => literal.extend(["\n", &name, "=", &written(&text.lit)]),
            (Some(Expr::Tuple(pair)), None) if name == "style" && pair.elems.len() == 2 => {
                let (name, value) = (&pair.elems[0], &pair.elems[1]);
                calls.push(quote!(.set(crate::live::Part::Style, #name, crate::live::Set::setting(#value))));
            }
            (Some(value), None) if name == "node_ref" => calls.push(quote!(.keep(#value))),
            (Some(value), None) => {
                calls.push(quote!(.set(crate::live::Part::Attribute, #name, crate::live::Set::setting(#value))));
            }
            (Some(value), Some((kind, name))) => calls.push(special(attribute, kind, name, value)?),
            (None, Some(_)) => return Err(syn::Error::new_spanned(attribute, "wants a value")),
        }
    }
    let children = element
        .children
        .iter()
        .filter(|node| !matches!(node, Node::Comment(_)))
        .map(one)
        .collect::<syn::Result<Vec<_>>>()?;
    Ok(quote!(crate::live::element(#literal) #(#calls)* #(.with(#children))* .done()))
}

fn special(attribute: &KeyedAttribute, kind: &str, name: &str, value: &Expr) -> syn::Result<TokenStream> {
    let part = match kind {
        "class" => quote!(Class),
        "style" => quote!(Style),
        "prop" => quote!(Property),
        // The browser has this event, Leptos no type for it.
        "on" if name == "cancel" => return Ok(quote!(.on_any(#name, ::std::boxed::Box::new(#value)))),
        "on" => {
            let event = format_ident!("{name}");
            return Ok(quote!(.on(::leptos::ev::#event, #name, #value)));
        }
        _ => return Err(syn::Error::new_spanned(attribute, "not known to this view!")),
    };
    Ok(quote!(.set(crate::live::Part::#part, #name, crate::live::Set::setting(#value))))
}

fn written(literal: &Lit) -> String {
    match literal {
        Lit::Str(text) => text.value(),
        Lit::Bool(yes) if yes.value => String::new(),
        other => quote!(#other).to_string(),
    }
}
