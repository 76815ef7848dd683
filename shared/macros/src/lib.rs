//! Derives `Encode`: a struct is its fields one after the other, an enum the number of its variant and then
//! that variant's fields. `lastpull_core::codec` says why the core does not use serde for this.

use proc_macro2::TokenStream;
use quote::{format_ident, quote};
use syn::{Data, DeriveInput, Fields, Ident, Variant};

/// Derives `lastpull_core::codec::Encode`. A variant added after version 1.0 is marked `#[encode(new)]`. A variant marked `#[serde(skip)]` has no bytes; it must be the
/// last, and whoever encodes the enum must write it in another way.
#[proc_macro_derive(Encode, attributes(encode))]
pub fn encode(tokens: proc_macro::TokenStream) -> proc_macro::TokenStream {
    let derived = syn::parse(tokens).and_then(|input| derive(&input));
    derived.unwrap_or_else(syn::Error::into_compile_error).into()
}

fn derive(input: &DeriveInput) -> syn::Result<TokenStream> {
    let name = &input.ident;
    let (encode, decode, is_new) = match &input.data {
        Data::Struct(data) => {
            let (pattern, encode, decode, is_new) = fields(&data.fields);
            let is_new = quote!({ #[allow(unused_variables)] let Self #pattern = self; false #(|| #is_new)* });
            (quote!(let Self #pattern = self; #(#encode)*), quote!(Self #decode), is_new)
        }
        Data::Enum(data) => variants(name, data.variants.iter())?,
        Data::Union(_) => return Err(syn::Error::new_spanned(name, "a union has no bytes of its own")),
    };
    Ok(quote! {
        impl ::lastpull_core::codec::Encode for #name {
            fn encode(&self, out: &mut ::std::vec::Vec<u8>) {
                #encode
            }

            fn decode(from: &mut ::lastpull_core::codec::Reader<'_>) -> Self {
                #decode
            }

            fn is_new(&self) -> bool {
                #is_new
            }
        }
    })
}

/// How an enum is written and read.
fn variants<'a>(
    name: &Ident,
    variants: impl Iterator<Item = &'a Variant>,
) -> syn::Result<(TokenStream, TokenStream, TokenStream)> {
    let (mut encodes, mut decodes, mut news, mut first, mut skipped) =
        (Vec::new(), Vec::new(), Vec::new(), None, false);
    for (number, variant) in variants.enumerate() {
        let (number, ident) = (number as u32, &variant.ident);
        if skipped {
            return Err(syn::Error::new_spanned(ident, "nothing may follow a variant that is skipped"));
        }
        if is_skipped(variant)? {
            skipped = true;
            encodes.push(quote!(Self::#ident { .. } => {}));
            news.push(quote!(Self::#ident { .. } => false));
            continue;
        }
        let (pattern, encode, decode, is_new) = fields(&variant.fields);
        news.push(if is_marked_new(variant)? {
            quote!(Self::#ident { .. } => true)
        } else {
            quote!(#[allow(unused_variables)] Self::#ident #pattern => false #(|| #is_new)*)
        });
        encodes.push(quote! {
            Self::#ident #pattern => { ::lastpull_core::codec::encode_number(u64::from(#number), out); #(#encode)* }
        });
        decodes.push(quote!(#number => Self::#ident #decode));
        first.get_or_insert_with(|| quote!(Self::#ident #decode));
    }
    let count = decodes.len() as u32;
    let first = first.ok_or_else(|| syn::Error::new_spanned(name, "an enum needs a variant"))?;
    let decode = quote! {
        match from.number_below(u64::from(u32::MAX)) as u32 {
            #(#decodes,)*
            // No such variant: the reader has failed, and what it gives from here on is not looked at.
            number => { from.fail_at_variant(number, #count); #first }
        }
    };
    Ok((quote!(match self { #(#encodes)* }), decode, quote!(match self { #(#news,)* })))
}

/// Whether a variant has the attribute `#[serde(skip)]`.
fn is_skipped(variant: &Variant) -> syn::Result<bool> {
    let mut skipped = false;
    for attribute in variant.attrs.iter().filter(|attribute| attribute.path().is_ident("serde")) {
        attribute.parse_nested_meta(|meta| {
            skipped |= meta.path.is_ident("skip");
            // Serde's other attributes are read over: `name`, `name = value`, `name(…)`.
            if meta.input.peek(syn::Token![=]) {
                meta.value()?.parse::<syn::Expr>()?;
            } else if meta.input.peek(syn::token::Paren) {
                let inside;
                syn::parenthesized!(inside in meta.input);
                inside.parse::<TokenStream>()?;
            }
            Ok(())
        })?;
    }
    Ok(skipped)
}

/// Whether a variant has the attribute `#[encode(new)]`.
fn is_marked_new(variant: &Variant) -> syn::Result<bool> {
    let mut new = false;
    for attribute in variant.attrs.iter().filter(|attribute| attribute.path().is_ident("encode")) {
        attribute.parse_nested_meta(|meta| {
            new |= meta.path.is_ident("new");
            if meta.path.is_ident("new") { Ok(()) } else { Err(meta.error("only `new` is known here")) }
        })?;
    }
    Ok(new)
}

/// How fields are bound, written, read, and asked whether they are new.
fn fields(fields: &Fields) -> (TokenStream, Vec<TokenStream>, TokenStream, Vec<TokenStream>) {
    let is_new = |name: &Ident| quote!(::lastpull_core::codec::Encode::is_new(#name));
    let encode = |name: &Ident| quote!(::lastpull_core::codec::Encode::encode(#name, out););
    let decode = quote!(::lastpull_core::codec::Encode::decode(from));
    match fields {
        Fields::Named(named) => {
            let names: Vec<_> = named.named.iter().filter_map(|field| field.ident.as_ref()).collect();
            let encodes = names.iter().map(|name| encode(name)).collect();
            let news = names.iter().map(|name| is_new(name)).collect();
            (quote!({ #(#names),* }), encodes, quote!({ #(#names: #decode),* }), news)
        }
        Fields::Unnamed(unnamed) => {
            let names: Vec<_> = (0..unnamed.unnamed.len()).map(|at| format_ident!("field_{at}")).collect();
            let encodes = names.iter().map(encode).collect();
            let decodes = names.iter().map(|_| &decode);
            let news = names.iter().map(is_new).collect();
            (quote!((#(#names),*)), encodes, quote!((#(#decodes),*)), news)
        }
        Fields::Unit => (TokenStream::new(), Vec::new(), TokenStream::new(), Vec::new()),
    }
}
