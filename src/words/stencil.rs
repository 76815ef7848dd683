//! Words of exposing and reclaiming.

use super::words;

words! {
    stencil_title { "Exposure and bath", "Insolado y baño" }
}
