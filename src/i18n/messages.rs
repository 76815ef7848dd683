//! The macro that declares texts.

/// Declares texts, English before Spanish: `name { "English", "Español" }`, with arguments
/// `name(a, b) { "… {a} …", "… {b} …" }`, or by number `name[n] { "{n} piece" | "{n} pieces", "{n} pieza" | "{n} piezas" }`.
macro_rules! messages {
    ($($name:ident $(($($arg:ident),+))? $([$n:ident])? { $($body:tt)* })*) => {
        $(messages! { @one $name ($($($arg),+)?) [$($n)?] $($body)* })*
    };
    (@one $name:ident () [] $en:literal, $es:literal) => {
        #[doc = concat!("“", $en, "”")]
        pub fn $name() -> &'static str {
            $crate::i18n::locale::localized_str(concat!($en, "\n", $es))
        }
    };
    (@one $name:ident ($($arg:ident),+) [] $en:literal, $es:literal) => {
        #[doc = concat!("“", $en, "”")]
        pub fn $name($($arg: impl std::fmt::Display),+) -> String {
            if $crate::i18n::locale::localized(true, false) { format!($en) } else { format!($es) }
        }
    };
    (@one $name:ident () [$n:ident] $one:literal | $many:literal, $uno:literal | $muchos:literal) => {
        #[doc = concat!("“", $many, "”")]
        pub fn $name($n: u32) -> String {
            match ($crate::i18n::locale::localized(true, false), $n == 1) {
                (true, true) => format!($one),
                (true, false) => format!($many),
                (false, true) => format!($uno),
                (false, false) => format!($muchos),
            }
        }
    };
}
pub(super) use messages;
