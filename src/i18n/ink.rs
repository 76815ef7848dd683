//! Messages: recipes, components and stock.

use super::format::{percent, weight, with_mark};
use super::locale::{Locale, localized};
use super::messages::messages;
use crate::platform::currency::{of_region, written};
use crate::platform::settings::locale_of;
use lastpull_core::ink::{ComponentKind, HeldRevision, Hiding, LowReason, PourStep, RevisionName, SumErrorCause};

messages! {
    nav_ink { "Ink", "Tintas" }
    ink_empty_title { "No recipes yet", "Aún no hay recetas" }
    ink_empty_text {
        "Write down the first one, and you can mix the same color again.",
        "Anota la primera y podrás repetir el mismo color."
    }
    ink_by_eye_hint { "Your final match becomes the recipe", "La mezcla que coincida será la receta" }
    ink_new_recipe { "New recipe", "Nueva receta" }
    ink_needs { "For upcoming runs", "Para los próximos tirajes" }
    ink_to_mix(grams) { "{grams} to mix", "Mezclar {grams}" }
    ink_needed_in_pots(grams, held) { "{grams} needed, {held} already mixed", "Hacen falta {grams}, ya hay {held}" }
    ink_left_over(grams) { "{grams} left over from the run before", "sobran {grams} del tiraje anterior" }
    // Common practice, no source.
    ink_screen_decides(used) { "The run uses {used}, but the screen needs more. What is left goes back into the container.", "El tiraje gasta {used}, pero la pantalla necesita más. Lo que sobra vuelve al recipiente." }
    ink_needed(grams) { "{grams} needed", "Hacen falta {grams}" }
    ink_mixed(grams) { "Mixed: {grams} needed", "Mezclada: hacen falta {grams}" }
    ink_in_pots(grams) { "{grams} already mixed", "{grams} ya mezclados" }
    ink_no_recipe { "No recipe yet", "Aún sin receta" }
    ink_no_print { "Ink per print not calculated yet", "Falta calcular la tinta por prenda" }
    ink_write_recipe { "Write recipe", "Anotar receta" }
    ink_mix { "Mix", "Mezclar" }
    ink_go_on { "Continue weighing", "Seguir pesando" }
    ink_low[n] { "{n} component is low" | "{n} components are low", "Queda poco de {n} componente" | "Queda poco de {n} componentes" }
    ink_low_hint { "What to buy, and for which run", "Qué comprar y para qué tiraje" }
    ink_pots { "Mixed ink", "Tinta mezclada" }
    ink_recipes { "Recipes", "Recetas" }
    ink_search { "Find a recipe", "Buscar una receta" }
    ink_none_found { "No matching recipe.", "No hay recetas así." }
    ink_no_recipes { "None yet. Write down the first one, and you can mix the same color again.", "Ninguna aún. Anota la primera y podrás repetir el mismo color." }
    ink_approved { "Approved", "Aprobada" }
    ink_not_approved { "Not approved yet", "Aún sin aprobar" }
    ink_no_revision { "No components yet", "Aún sin componentes" }
    ink_newer_short(newer) { "{newer} not approved", "{newer} sin aprobar" }
    ink_stock { "Stock", "Existencias" }
    ink_components[n] { "{n} component" | "{n} components", "{n} componente" | "{n} componentes" }
    ink_revision(number) { "Version {number}", "Versión {number}" }
    ink_changes[n] { "{n} change since" | "{n} changes since", "{n} cambio desde entonces" | "{n} cambios desde entonces" }
    ink_no_recipe_pot { "No recipe", "Sin receta" }

    // Components and stock.
    ink_kind { "Type", "Tipo" }
    ink_kind_base { "Base", "Base" }
    ink_kind_pigment { "Pigment", "Pigmento" }
    ink_kind_additive { "Additive", "Aditivo" }
    ink_kind_bases { "Bases", "Bases" }
    ink_kind_pigments { "Pigments", "Pigmentos" }
    ink_kind_additives { "Additives", "Aditivos" }
    ink_hiding { "Opacity", "Opacidad" }
    ink_transparent { "Transparent", "Transparente" }
    ink_opaque { "Opaque", "Opaco" }
    ink_component_new { "New component", "Nuevo componente" }
    ink_component_edit { "Edit component", "Editar componente" }
    ink_component_name { "Name", "Nombre" }
    ink_component_name_hint { "What the shop calls this bucket.", "Como llamas a la cubeta en el taller." }
    ink_colour { "Color", "Color" }
    ink_has_colour { "Has its own color", "Tiene color propio" }
    ink_sheet { "From its data sheet", "De su ficha técnica" }
    ink_density { "Density", "Densidad" }
    ink_most { "Maximum in an ink", "Máximo en una tinta" }
    ink_most_pigment { "Maximum pigment load", "Carga máxima de pigmento" }
    ink_most_pigment_hint { "All pigments together. Past it, the print may not cure or wash.", "Todos los pigmentos juntos. Con más, la impresión puede no curar o no aguantar el lavado." }
    ink_buying { "Purchasing", "Compra" }
    ink_cost { "Price per kilogram", "Precio por kilo" }
    ink_cost_hint { "In your own currency.", "En tu moneda." }
    ink_tub { "Bucket size", "Tamaño de la cubeta" }
    ink_low_at { "Warn me below", "Avísame por debajo de" }
    ink_component_deleted(name) { "{name} deleted. Batches and recipes that use it keep it.", "{name}: borrado. Las mezclas y recetas que lo usan lo conservan." }
    ink_left { "left", "quedan" }
    ink_never_counted { "Not weighed yet", "Aún sin pesar" }
    ink_never_counted_hint { "Weigh what is left once; after that, every amount you add to a batch comes off it.", "Pesa una vez lo que queda; desde ahí se resta lo que agregas a cada mezcla." }
    ink_counted_on(when) { "Weighed {when}", "Pesado: {when}" }
    ink_below_nothing { "More was used than stock shows. Weigh what is left.", "Se usó más de lo registrado. Pesa lo que queda." }
    ink_low_for(grams, title) { "{grams} short for {title}", "Faltan {grams} para {title}" }
    ink_low_limit { "Low", "Queda poco" }
    ink_wanted(grams) { "Upcoming runs need {grams}", "Los próximos tirajes necesitan {grams}" }
    ink_wanted_short(grams) { "{grams} needed", "se necesitan {grams}" }
    ink_came_in { "Add delivery", "Agregar entrega" }
    ink_count { "Weigh what is left", "Pesar lo que queda" }
    ink_came_in_title(name) { "Delivery: {name}", "Entrega: {name}" }
    ink_count_title(name) { "What is left of {name}", "Lo que queda de {name}" }
    ink_how_much { "Amount", "Cantidad" }
    ink_count_hint { "Without the bucket.", "Sin la cubeta." }
    ink_lot_note { "Supplier, lot number", "Proveedor, número de lote" }
    ink_delivered_notice(grams, name) { "{grams} of {name} received.", "Recibido: {grams} de {name}." }
    ink_counted_notice(grams, name) { "{grams} of {name} left.", "Quedan {grams} de {name}." }
    ink_story { "Stock history", "Historial de existencias" }
    ink_line_delivered { "Received", "Recibido" }
    ink_line_counted { "Weighed", "Pesado" }
    ink_line_poured(pot) { "Into {pot}", "En {pot}" }
    ink_line_left(grams) { "{grams} left", "quedan {grams}" }
    ink_take_back { "Remove", "Quitar" }
    ink_taken_back { "Removed.", "Quitado." }
    ink_used_in { "Used in these recipes", "Se usa en estas recetas" }
    ink_how_it_colours { "Color data", "Datos de color" }
    ink_how_it_colours_hint { "Drawdowns and their readings", "Extendidos y sus lecturas" }
    ink_data { "Data", "Datos" }
    ink_per_kilo(price) { "{price} per kilogram", "{price} por kilo" }
    ink_density_of(value) { "{value}\u{a0}g/cm³", "{value}\u{a0}g/cm³" }
    ink_stock_empty_title { "No stock yet", "Aún sin existencias" }
    ink_stock_empty_text { "Enter the bases, pigments and additives you mix with, and how much of each is left.", "Registra las bases, los pigmentos y los aditivos con que mezclas y cuánto queda de cada uno." }
    ink_buy { "To buy", "Para comprar" }
    ink_buy_tubs(tubs, grams) { "{tubs} × {grams}", "{tubs} × {grams}" }
    ink_buy_grams(grams) { "at least {grams}", "al menos {grams}" }
    ink_buy_total(price) { "About {price} total", "Unos {price} en total" }
    ink_buy_unpriced[n] { "{n} without a price" | "{n} without a price", "{n} sin precio" | "{n} sin precio" }
    ink_share_list { "Share the list", "Compartir la lista" }
    ink_list_copied { "List copied.", "Lista copiada." }
    ink_list_failed { "This browser can't share or copy the list. It is still on this page.", "Este navegador no puede compartir ni copiar la lista. Sigue en esta página." }
    ink_unknown_needs[n] { "{n} upcoming run not included: its recipe or ink per print is missing." | "{n} upcoming runs not included: a recipe or ink per print is missing.", "Sin contar {n} próximo tiraje: falta la receta o la tinta por prenda." | "Sin contar {n} próximos tirajes: falta la receta o la tinta por prenda." }
    ink_add_component { "Add component", "Agregar componente" }
    ink_scale { "Scale", "Báscula" }
    ink_scale_line(step) { "Readability {step}", "Marca de {step} en {step}" }
    ink_scale_step { "Scale readability", "Precisión de la báscula" }
    ink_scale_step_hint(step) { "How much the last digit moves: {step} on most bench scales.", "Lo que salta la última cifra: {step} en casi todas." }
    ink_scale_most { "Scale capacity", "Capacidad de la báscula" }
    ink_scale_most_hint { "Including the container.", "Con el recipiente." }

    // The recipe form.
    ink_recipe_edit { "Edit recipe", "Editar receta" }
    ink_recipe_revise(name) { "{name}: new version", "{name}: nueva versión" }
    ink_recipe_name { "Ink name", "Nombre de la tinta" }
    ink_recipe_name_hint { "Runs with this ink name use this recipe.", "Los tirajes con este nombre de tinta usan esta receta." }
    ink_recipe_parts { "Components", "Componentes" }
    ink_convention { "How percents are counted", "Cómo se cuentan los porcentajes" }
    ink_convention_whole { "Components add up to 100%", "Los componentes suman 100 %" }
    ink_convention_top { "Ink plus additives on top", "Tinta y aditivos aparte" }
    ink_convention_whole_hint { "Each component is a percent of the whole batch.", "Cada componente es un porcentaje de toda la mezcla." }
    ink_convention_top_hint { "Additives are a percent of the ink's weight and go on top: 500 g of ink plus 10% weighs 550 g.", "Los aditivos son un porcentaje del peso de la tinta y se suman a ella: 500 g de tinta y un 10 % pesan 550 g." }
    ink_the_ink { "Ink", "Tinta" }
    ink_on_top { "Additives on top", "Aditivos aparte" }
    ink_pick_component { "Choose component", "Elegir componente" }
    ink_pick_title { "Which component?", "¿Qué componente?" }
    ink_pick_search { "Find component", "Buscar componente" }
    ink_row_percent(name) { "Percent of {name}", "Porcentaje de {name}" }
    ink_row_component(at) { "Component {at}", "Componente {at}" }
    ink_row_remove(name) { "Remove {name}", "Quitar {name}" }
    ink_add_part { "Add component", "Agregar componente" }
    ink_add_on_top { "Add on top", "Agregar aparte" }
    ink_sum_whole { "Adds up to 100%", "Suma 100 %" }
    ink_with_top(grams) { "With additives on top, 100\u{a0}g of ink weighs {grams}\u{a0}g.", "Con los aditivos aparte, 100\u{a0}g de tinta pesan {grams}\u{a0}g." }
    ink_off_rounded(sum) { "Adds up to {sum}. That's just rounding.", "Suma {sum}. Es solo el redondeo." }
    ink_off_on_top(sum) { "Adds up to {sum}, and one component is 100% on its own. The others look like additives on top.", "Suma {sum} y un componente ya es el 100 %. Los otros parecen aditivos aparte." }
    ink_off_too_little(sum, off) { "Adds up to {sum}. {off} is missing.", "Suma {sum}. Falta {off}." }
    ink_off_too_much(sum, off) { "Adds up to {sum}. That is {off} too much.", "Suma {sum}. Sobra {off}." }
    ink_fix_scale { "Keep proportions, scale to 100%", "Mantener proporciones, que sumen 100 %" }
    ink_fix_fill(name, share) { "Set {name} to {share}", "Poner {name} en {share}" }
    ink_fix_on_top { "The 100% is the ink, the rest goes on top", "El 100 % es la tinta, lo demás va aparte" }
    ink_limit_component(name, share, most) { "{share} of {name}: its data sheet allows {most}.", "{share} de {name}: su ficha técnica permite {most}." }
    ink_limit_pigment(name, share, most) { "{share} pigment in total: the data sheet of {name} allows {most}.", "{share} de pigmento en total: la ficha técnica de {name} permite {most}." }
    ink_limit_hint { "Past the data sheet limit, cure and wash are not assured. Do a wash test.", "Fuera de la ficha técnica, ni el curado ni el lavado son seguros. Haz una prueba de lavado." }
    ink_why { "Reason for change", "Motivo del cambio" }
    ink_why_hint { "For whoever mixes it next.", "Para quien la mezcle después." }
    ink_same_parts(revision) { "Same as {revision}. Change something or go back.", "Igual que la {revision}. Cambia algo o vuelve atrás." }
    ink_parts_missing { "Add at least one component of the ink.", "Agrega al menos un componente de la tinta." }
    ink_row_no_component { "Choose a component.", "Elige un componente." }
    ink_row_twice { "Listed twice: combine into one row.", "Está dos veces: ponlo en una sola línea." }
    ink_saved_revision(revision) { "{revision} saved.", "{revision}: guardada." }

    // The recipe card.
    ink_make_again { "Mix again", "Mezclar otra vez" }
    ink_make { "Mix by weight or pieces", "Mezclar por peso o prendas" }
    ink_mix_pot { "Mix for a run", "Mezclar para un tiraje" }
    ink_revise { "Edit recipe", "Editar receta" }
    ink_cover { "Will it cover?", "¿Cubrirá?" }
    ink_target { "Target color", "Color objetivo" }
    ink_approved_by(client) { "Approved by {client}", "Aprobada por {client}" }
    ink_heard_by(name) { "recorded by {name}", "lo registró {name}" }
    ink_newer_not_approved(newer, best) { "{newer} is newer but not approved yet. Mixing uses {best}.", "{newer} es más nueva pero aún sin aprobar. Se mezcla la {best}." }
    ink_nobody_yet { "Not approved yet.", "Aún sin aprobar." }
    ink_top_note { "Written with additives on top. Here every percent is of the whole batch.", "Escrita con aditivos aparte. Aquí todo es porcentaje de la mezcla entera." }
    ink_cures(words) { "Cure: {words}", "Curado: {words}" }
    ink_its_pots { "Batches", "Mezclas" }
    ink_its_runs { "Upcoming runs", "Próximos tirajes" }
    ink_cost_density { "Cost and density", "Costo y densidad" }
    ink_unpriced(share) { "{share} of it has no price", "{share} no tiene precio" }
    ink_density_unknown { "Density unknown: a component has none.", "Densidad desconocida: falta la de un componente." }
    ink_revisions_n[n] { "{n} version" | "{n} versions", "{n} versión" | "{n} versiones" }
    ink_from_revision(name) { "from {name}", "de la {name}" }
    ink_from_pot(name) { "from batch {name}", "de la mezcla {name}" }
    ink_saved_by(when, name) { "{when}, {name}", "{when}, {name}" }
    ink_revise_from { "Edit this version", "Editar esta versión" }
    ink_revision_take_back { "Remove version", "Quitar esta versión" }
    ink_revision_gone(name) { "{name} removed.", "{name}: quitada." }
    ink_recipe_deleted(name) { "{name} deleted.", "{name}: borrada." }
    ink_card_empty { "No components yet. Write down what it is mixed from.", "Aún sin componentes. Anota con qué se mezcla." }

    ink_weigh_back { "Weigh what is left now, and the next batch is sized by what this run really used.", "Pesa ahora lo que quedó y la próxima mezcla se calculará con lo que gastó este tiraje." }
    ink_its_recipe { "Recipe", "Receta" }

    // Make again.
    ink_again_title(name) { "Mix {name}", "Mezclar {name}" }
    ink_by { "How to size it", "Cómo calcular la cantidad" }
    ink_by_weight { "By weight", "Por peso" }
    ink_by_pieces { "By pieces", "Por prendas" }
    ink_again_grams { "Amount to mix", "Cantidad a mezclar" }
    ink_size_means { "That weight is for", "Ese peso es de" }
    ink_size_whole { "The whole batch", "Toda la mezcla" }
    ink_size_ink { "The ink alone", "Solo la tinta" }
    ink_again_run { "Run", "Tiraje" }
    ink_no_runs { "No upcoming run uses this ink.", "Ningún tiraje próximo usa esta tinta." }
    ink_learned_from[n] { "Based on what a similar run used." | "Based on what {n} similar runs used.", "Según lo que gastó un tiraje parecido." | "Según lo que gastaron {n} tirajes parecidos." }
    ink_by_formula { "From area, mesh and strokes, plus waste. Gets better as you weigh leftovers after runs.", "Por superficie, malla y manos de tinta, más merma. Mejora al pesar lo que sobra de cada tiraje." }
    ink_this_is(name) { "This is {name}", "Esta es la {name}" }
    ink_other_approved(name, client) { "{name} is the one {client} approved.", "{name} es la que aprobó {client}." }
    ink_make_that { "Mix that one", "Mezclar esa" }
    ink_newer_is(name) { "{name} is newer but not approved.", "{name} es más nueva pero sin aprobar." }
    ink_newer_other(name) { "{name} is newer.", "{name} es más nueva." }
    ink_make_newer(name) { "Mix {name} instead", "Mezclar la {name}" }
    ink_exact(grams) { "exactly {grams}", "exacto: {grams}" }
    ink_lacks(grams) { "{grams} short in stock", "faltan {grams} en existencias" }
    ink_total { "Total", "Total" }
    ink_asked(grams) { "{grams} requested", "se pidieron {grams}" }
    ink_rounding(step, worst) { "Rounded to the scale's {step}: off by {worst} at most.", "Redondeado a {step} de la báscula: {worst} de error como máximo." }
    ink_rounding_enough(grams) { "From {grams} up, nothing is off by more than 1%.", "Desde {grams} nada se desvía más del 1 %." }
    ink_weigh_it { "Weigh", "Pesar" }
    ink_weigh_title { "Amounts to weigh", "Para pesar" }
    pot_not_as_written(revision) { "{revision}, changed", "{revision}, con cambios" }
}

/// The name of a revision, with its mark if another has the same number.
pub fn ink_revision_name(name: &RevisionName) -> String {
    if name.shares_number {
        format!("{} · {}", ink_revision(name.number), name.mark)
    } else {
        ink_revision(name.number)
    }
}

/// The name of a revision within a sentence.
pub fn ink_this_revision(name: &RevisionName) -> String {
    let words = ink_revision_name(name);
    let mut signs = words.chars();
    signs.next().map_or_else(String::new, |first| first.to_lowercase().chain(signs).collect())
}

/// Which recipe a pot holds.
pub fn ink_holds(holds: &HeldRevision) -> String {
    match &holds.revision {
        None => ink_no_recipe_pot().into(),
        Some(name) if holds.changes == 0 && holds.as_written => ink_revision_name(name),
        Some(name) if holds.changes == 0 => pot_not_as_written(ink_revision_name(name)),
        Some(name) => format!("{}, {}", ink_revision_name(name), ink_changes(holds.changes)),
    }
}

/// The name of a kind of component.
pub fn ink_kind_name(kind: ComponentKind) -> &'static str {
    match kind {
        ComponentKind::Base => ink_kind_base(),
        ComponentKind::Pigment => ink_kind_pigment(),
        ComponentKind::Additive => ink_kind_additive(),
    }
}

/// The heading of the components of a kind.
pub fn ink_kind_names(kind: ComponentKind) -> &'static str {
    match kind {
        ComponentKind::Base => ink_kind_bases(),
        ComponentKind::Pigment => ink_kind_pigments(),
        ComponentKind::Additive => ink_kind_additives(),
    }
}

/// The name of an opacity.
pub fn ink_hiding_name(hiding: Hiding) -> &'static str {
    match hiding {
        Hiding::Transparent => ink_transparent(),
        Hiding::Opaque => ink_opaque(),
    }
}

/// Why a component is low.
pub fn ink_low_why(low: &LowReason) -> String {
    match low {
        LowReason::ForRun { title, short, .. } => ink_low_for(weight(*short), title),
        LowReason::BelowLimit => ink_low_limit().into(),
    }
}

/// What a pour was for.
pub fn ink_step(step: PourStep) -> &'static str {
    match step {
        PourStep::WeighIn => localized("weighed in", "al pesar"),
        PourStep::Correction => localized("a correction", "corrección"),
        PourStep::TopUp => localized("topping up", "para rellenar"),
    }
}

/// Why a sum of parts is not 100.
pub fn ink_why_off(why: SumErrorCause, sum: f64) -> String {
    let (total, off) = (percent(sum, 4), percent((sum - 100.0).abs(), 4));
    match why {
        SumErrorCause::Rounded => ink_off_rounded(total),
        SumErrorCause::OnTop => ink_off_on_top(total),
        SumErrorCause::TooLittle => ink_off_too_little(total, off),
        SumErrorCause::TooMuch => ink_off_too_much(total, off),
    }
}

/// A price, from hundredths of the shop's currency; without a sign if it has none.
pub fn ink_price(hundredths: f64) -> String {
    let amount = hundredths / 100.0;
    match currency() {
        "" => with_mark(format!("{amount:.2}")),
        code => written(amount, code, &locale_of(Locale::current().language)),
    }
}

/// The code of the shop's currency, empty if it has none.
pub fn currency() -> &'static str {
    Locale::current().currency.unwrap_or_else(of_region)
}

/// The number of a revision, with its mark if another has the same number.
pub fn pot_revision(revision: &RevisionName) -> String {
    let name = ink_revision(revision.number);
    if revision.shares_number { format!("{name} ({})", revision.mark) } else { name }
}
