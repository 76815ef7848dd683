//! Derives `Pack`: a struct is its fields one after the other, an enum its variant's number and then that
//! variant's fields. See `lastpull_core::pack` for why the core does not use serde for this.

use proc_macro2::TokenStream;
use quote::{format_ident, quote};
use syn::{Data, DeriveInput, Fields, Ident, Variant};

/// Derives `lastpull_core::pack::Pack`. A variant marked `#[serde(skip)]` is not packed; it must be the last.
#[proc_macro_derive(Pack)]
pub fn pack(tokens: proc_macro::TokenStream) -> proc_macro::TokenStream {
    let derived = syn::parse(tokens).and_then(|input| derive(&input));
    derived.unwrap_or_else(syn::Error::into_compile_error).into()
}

fn derive(input: &DeriveInput) -> syn::Result<TokenStream> {
    let name = &input.ident;
    let (put, take) = match &input.data {
        Data::Struct(data) => {
            let (pattern, put, take) = fields(&data.fields);
            (quote!(let Self #pattern = self; #(#put)*), quote!(Self #take))
        }
        Data::Enum(data) => an_enum(name, data.variants.iter())?,
        Data::Union(_) => return Err(syn::Error::new_spanned(name, "a union has no bytes of its own")),
    };
    Ok(quote! {
        impl crate::pack::Pack for #name {
            fn put(&self, out: &mut ::std::vec::Vec<u8>) {
                #put
            }

            fn take(from: &mut crate::pack::Reader<'_>) -> Self {
                #take
            }
        }
    })
}

fn an_enum<'a>(name: &Ident, variants: impl Iterator<Item = &'a Variant>) -> syn::Result<(TokenStream, TokenStream)> {
    let (mut puts, mut takes, mut first, mut skipped) = (Vec::new(), Vec::new(), None, false);
    for (number, variant) in variants.enumerate() {
        let (number, ident) = (number as u32, &variant.ident);
        if skipped {
            return Err(syn::Error::new_spanned(ident, "nothing may follow a variant that is skipped"));
        }
        let is_skipped = |attribute: &syn::Attribute| {
            attribute.path().is_ident("serde") && quote!(#attribute).to_string().contains("skip")
        };
        if variant.attrs.iter().any(is_skipped) {
            skipped = true;
            puts.push(quote!(Self::#ident { .. } => {}));
            continue;
        }
        let (pattern, put, take) = fields(&variant.fields);
        puts.push(quote!(Self::#ident #pattern => { crate::pack::put_number(u64::from(#number), out); #(#put)* }));
        takes.push(quote!(#number => Self::#ident #take));
        first.get_or_insert_with(|| quote!(Self::#ident #take));
    }
    let first = first.ok_or_else(|| syn::Error::new_spanned(name, "an enum needs a variant"))?;
    let take = quote! {
        match from.number_below(u64::from(u32::MAX)) as u32 {
            #(#takes,)*
            // No such variant: the reader has failed, and what it gives from here on is not looked at.
            _ => { from.fail(); #first }
        }
    };
    Ok((quote!(match self { #(#puts)* }), take))
}

/// How fields are bound, written and read.
fn fields(fields: &Fields) -> (TokenStream, Vec<TokenStream>, TokenStream) {
    match fields {
        Fields::Named(named) => {
            let names: Vec<_> = named.named.iter().filter_map(|field| field.ident.as_ref()).collect();
            let put = names.iter().map(|name| quote!(crate::pack::Pack::put(#name, out);)).collect();
            (quote!({ #(#names),* }), put, quote!({ #(#names: crate::pack::Pack::take(from)),* }))
        }
        Fields::Unnamed(unnamed) => {
            let names: Vec<_> = (0..unnamed.unnamed.len()).map(|at| format_ident!("field_{at}")).collect();
            let put = names.iter().map(|name| quote!(crate::pack::Pack::put(#name, out);)).collect();
            let takes = names.iter().map(|_| quote!(crate::pack::Pack::take(from)));
            (quote!((#(#names),*)), put, quote!((#(#takes),*)))
        }
        Fields::Unit => (TokenStream::new(), Vec::new(), TokenStream::new()),
    }
}
