//! Messages: recipes, components and stock.

use super::format::{percent, weight, with_mark};
use super::locale::localized;
use super::messages::messages;
use lastpull_core::ink::{ComponentKind, HeldRevision, Hiding, LowReason, PourStep, RevisionName, SumErrorCause};

messages! {
    nav_ink { "Ink", "Tintas" }
    ink_empty_title { "No recipes yet", "Aún no hay recetas" }
    ink_empty_text {
        "Write down the first one, and the same colour can be made again.",
        "Anota la primera y podrás repetir el mismo color."
    }
    ink_by_eye_hint { "What matches in the end becomes the recipe", "Lo que al final coincide será la receta" }
    ink_new_recipe { "New recipe", "Nueva receta" }
    ink_needs { "For the coming runs", "Para las próximas tiradas" }
    ink_to_mix(grams) { "{grams} to mix", "Faltan {grams}" }
    ink_needed_in_pots(grams, held) { "{grams} needed, {held} in pots", "Hacen falta {grams}, hay {held} en botes" }
    ink_left_over(grams) { "{grams} left over from the run before", "sobran {grams} de la tirada anterior" }
    // Common practice, no source.
    ink_screen_decides(used) { "The run uses {used}, but the screen needs more. What is left goes back into the pot.", "La tirada gasta {used}, pero la pantalla necesita más. Lo que sobra vuelve al bote." }
    ink_needed(grams) { "{grams} needed", "Hacen falta {grams}" }
    ink_mixed(grams) { "Mixed: {grams} needed", "Mezclada: hacen falta {grams}" }
    ink_in_pots(grams) { "{grams} in pots", "{grams} en botes" }
    ink_no_recipe { "No recipe yet", "Aún sin receta" }
    ink_no_print { "What a print takes is not worked out", "Falta calcular cuánto lleva cada estampado" }
    ink_write_recipe { "Write it down", "Anotarla" }
    ink_mix { "Mix it", "Mezclarla" }
    ink_go_on { "Go on weighing", "Seguir pesando" }
    ink_low[n] { "{n} component is low" | "{n} components are low", "Queda poco de {n} componente" | "Queda poco de {n} componentes" }
    ink_low_hint { "What to buy, and for which run", "Qué comprar y para qué tirada" }
    ink_pots { "Open pots", "Botes abiertos" }
    ink_recipes { "Recipes", "Recetas" }
    ink_search { "Find a recipe", "Buscar una receta" }
    ink_none_found { "No recipe is called that.", "Ninguna receta se llama así." }
    ink_no_recipes { "None yet. Write down the first, and the same colour can be made again.", "Ninguna aún. Anota la primera y podrás repetir el mismo color." }
    ink_approved { "Approved", "Aprobada" }
    ink_not_approved { "Not approved yet", "Aún sin aprobar" }
    ink_no_revision { "Nothing in it yet", "Aún sin partes" }
    ink_newer_short(newer) { "{newer} not approved", "{newer} sin aprobar" }
    ink_stock { "Stock", "Existencias" }
    ink_components[n] { "{n} component" | "{n} components", "{n} componente" | "{n} componentes" }
    ink_revision(number) { "Revision {number}", "Revisión {number}" }
    ink_changes[n] { "{n} change since" | "{n} changes since", "{n} cambio desde entonces" | "{n} cambios desde entonces" }
    ink_no_recipe_pot { "Not of a recipe", "Sin receta" }

    // Components and stock.
    ink_kind { "What it is", "Qué es" }
    ink_kind_base { "Base", "Base" }
    ink_kind_pigment { "Pigment", "Pigmento" }
    ink_kind_additive { "Additive", "Aditivo" }
    ink_kind_bases { "Bases", "Bases" }
    ink_kind_pigments { "Pigments", "Pigmentos" }
    ink_kind_additives { "Additives", "Aditivos" }
    ink_hiding { "On a dark garment", "Sobre una prenda oscura" }
    ink_transparent { "It shows through", "Deja ver el fondo" }
    ink_opaque { "It covers", "Cubre" }
    ink_component_new { "New component", "Nuevo componente" }
    ink_component_edit { "Edit component", "Editar componente" }
    ink_component_name { "Name", "Nombre" }
    ink_component_name_hint { "As the tub is called in the shop.", "Como llamas al cubo en el taller." }
    ink_colour { "Colour", "Color" }
    ink_has_colour { "It has a colour of its own", "Tiene color propio" }
    ink_sheet { "From its data sheet", "De su ficha técnica" }
    ink_density { "Density", "Densidad" }
    ink_most { "Most of it in an ink", "Máximo en una tinta" }
    ink_most_pigment { "Most pigment in an ink of it", "Máximo de pigmento en una tinta con ella" }
    ink_most_pigment_hint { "All pigments together. Beyond it the print may not cure or wash.", "Todos los pigmentos juntos. Con más, el estampado puede no curar o no aguantar el lavado." }
    ink_buying { "Buying it", "Al comprarlo" }
    ink_cost { "Price of a kilogram", "Precio del kilo" }
    ink_cost_hint { "In your own currency.", "En tu moneda." }
    ink_tub { "Comes in tubs of", "Viene en envases de" }
    ink_low_at { "Tell me below", "Avísame por debajo de" }
    ink_component_deleted(name) { "{name} was deleted. What is in pots and recipes of it stays.", "{name}: borrado. Lo que hay en botes y recetas se queda." }
    ink_left { "left", "quedan" }
    ink_never_counted { "Not weighed yet", "Aún sin pesar" }
    ink_never_counted_hint { "Weigh what is left once; from then on every pour is taken off it.", "Pesa una vez lo que queda; desde ahí se resta cada vertido." }
    ink_counted_on(when) { "Weighed {when}", "Pesado: {when}" }
    ink_below_nothing { "More was poured than is noted here. Weigh what is left.", "Se ha vertido más de lo anotado. Pesa lo que queda." }
    ink_low_for(grams, title) { "{grams} short for {title}", "Faltan {grams} para {title}" }
    ink_low_limit { "Low", "Queda poco" }
    ink_wanted(grams) { "Coming runs take {grams}", "Las próximas tiradas gastan {grams}" }
    ink_wanted_short(grams) { "{grams} wanted", "se piden {grams}" }
    ink_came_in { "It came in", "Ha llegado" }
    ink_count { "Weigh what is left", "Pesar lo que queda" }
    ink_came_in_title(name) { "{name} came in", "Ha llegado: {name}" }
    ink_count_title(name) { "What is left of {name}", "Lo que queda de {name}" }
    ink_how_much { "How much", "Cuánto" }
    ink_count_hint { "Without its tub.", "Sin el envase." }
    ink_lot_note { "From where, which lot", "De dónde, qué lote" }
    ink_delivered_notice(grams, name) { "{grams} of {name} came in.", "Han llegado {grams} de {name}." }
    ink_counted_notice(grams, name) { "{grams} of {name} are left.", "Quedan {grams} de {name}." }
    ink_story { "What came and went", "Entradas y salidas" }
    ink_line_delivered { "Came in", "Llegó" }
    ink_line_counted { "Weighed", "Pesado" }
    ink_line_poured(pot) { "Into {pot}", "En {pot}" }
    ink_line_left(grams) { "{grams} left", "quedan {grams}" }
    ink_take_back { "Take it back", "Quitarlo" }
    ink_taken_back { "Taken back.", "Quitado." }
    ink_used_in { "In these recipes", "En estas recetas" }
    ink_how_it_colours { "How it colours", "Cómo tiñe" }
    ink_how_it_colours_hint { "Drawdowns and what was read from them", "Extendidos y lo que se leyó de ellos" }
    ink_data { "Data", "Datos" }
    ink_per_kilo(price) { "{price} a kilogram", "{price} el kilo" }
    ink_density_of(value) { "{value}\u{a0}g/cm³", "{value}\u{a0}g/cm³" }
    ink_stock_empty_title { "Nothing on the shelf yet", "Aún no hay nada en el estante" }
    ink_stock_empty_text { "Note the bases, pigments and additives you mix of, and what is left of each.", "Anota las bases, los pigmentos y los aditivos con que mezclas y cuánto queda de cada uno." }
    ink_buy { "To buy", "Para comprar" }
    ink_buy_tubs(tubs, grams) { "{tubs} × {grams}", "{tubs} × {grams}" }
    ink_buy_grams(grams) { "at least {grams}", "al menos {grams}" }
    ink_buy_total(price) { "About {price} together", "Unos {price} en total" }
    ink_buy_unpriced[n] { "{n} without a price" | "{n} without a price", "{n} sin precio" | "{n} sin precio" }
    ink_share_list { "Share the list", "Compartir la lista" }
    ink_list_copied { "The list is copied.", "Lista copiada." }
    ink_list_failed { "This browser can neither share nor copy it. The list stands on this page.", "Este navegador no puede compartirla ni copiarla. La lista está en esta página." }
    ink_unknown_needs[n] { "{n} coming run is not counted in: its recipe or what a print takes is missing." | "{n} coming runs are not counted in: a recipe or what a print takes is missing.", "Sin contar {n} tirada próxima: falta la receta o cuánto lleva cada estampado." | "Sin contar {n} tiradas próximas: falta la receta o cuánto lleva cada estampado." }
    ink_add_component { "Add a component", "Añadir componente" }
    ink_scale { "Scale", "Báscula" }
    ink_scale_line(step) { "Reads in steps of {step}", "Marca de {step} en {step}" }
    ink_scale_step { "Steps it reads in", "Marca de … en …" }
    ink_scale_step_hint { "What the last digit moves by: 0.1 on most bench scales. Scales read grams in every country.", "Lo que salta la última cifra: 0,1 en casi todas. Las básculas marcan gramos en todas partes." }
    ink_scale_most { "The most it bears", "Peso máximo" }
    ink_scale_most_hint { "Pot and all.", "Con el bote." }

    // The recipe form.
    ink_recipe_edit { "Edit recipe", "Editar receta" }
    ink_recipe_revise(name) { "{name}: another revision", "{name}: otra revisión" }
    ink_recipe_name { "Name of the ink", "Nombre de la tinta" }
    ink_recipe_name_hint { "Runs that name it so are printed with it.", "Las tiradas que la nombran así se estampan con ella." }
    ink_recipe_parts { "What it is mixed of", "De qué se mezcla" }
    ink_convention { "How it is written", "Cómo está escrita" }
    ink_convention_whole { "Parts that add up to 100 %", "Partes que suman 100 %" }
    ink_convention_top { "Ink, and additions on top", "Tinta y añadidos aparte" }
    ink_convention_whole_hint { "Every part is percent of the whole pot.", "Cada parte es un porcentaje de todo el bote." }
    ink_convention_top_hint { "Additions are percent of the ink's weight and come on top of it: 500 g of ink and 10 % weigh 550 g.", "Los añadidos son un porcentaje del peso de la tinta y se suman a ella: 500 g de tinta y un 10 % pesan 550 g." }
    ink_the_ink { "The ink", "La tinta" }
    ink_on_top { "On top of it", "Añadido aparte" }
    ink_pick_component { "Choose a component", "Elegir componente" }
    ink_pick_title { "Which component?", "¿Qué componente?" }
    ink_pick_search { "Find a component", "Buscar un componente" }
    ink_row_percent(name) { "Percent of {name}", "Porcentaje de {name}" }
    ink_row_component(at) { "Component {at}", "Componente {at}" }
    ink_row_remove(name) { "Take out {name}", "Quitar {name}" }
    ink_add_part { "Add a part", "Añadir parte" }
    ink_add_on_top { "Add something on top", "Añadir aparte" }
    ink_sum_whole { "Adds up to 100 %", "Suma 100 %" }
    ink_with_top(grams) { "With what comes on top, 100\u{a0}g of ink weigh {grams}\u{a0}g.", "Con lo añadido, 100\u{a0}g de tinta pesan {grams}\u{a0}g." }
    ink_off_rounded(sum) { "The parts add up to {sum}. That is as far off as rounding makes it.", "Las partes suman {sum}. Es lo que desvía el redondeo." }
    ink_off_on_top(sum) { "The parts add up to {sum}, and one is 100 % by itself. It looks as if the others come on top of it.", "Las partes suman {sum} y una ya es el 100 %. Parece que las otras van aparte." }
    ink_off_too_little(sum, off) { "The parts add up to {sum}. {off} is missing.", "Las partes suman {sum}. Falta {off}." }
    ink_off_too_much(sum, off) { "The parts add up to {sum}. That is {off} too much.", "Las partes suman {sum}. Sobra {off}." }
    ink_fix_scale { "Keep the proportions, make it 100 %", "Mantener proporciones, que sumen 100 %" }
    ink_fix_fill(name, share) { "{name} makes up for it: {share}", "{name} lo compensa: {share}" }
    ink_fix_on_top { "The 100 % is the ink, the others come on top", "El 100 % es la tinta, lo demás va aparte" }
    ink_limit_component(name, share, most) { "{share} of {name}: its data sheet allows {most}.", "{share} de {name}: su ficha permite {most}." }
    ink_limit_pigment(name, share, most) { "{share} pigment together: the data sheet of {name} allows {most}.", "{share} de pigmento en total: la ficha de {name} permite {most}." }
    ink_limit_hint { "Beyond the sheet, cure and wash are not what it promises. The wash test decides.", "Fuera de la ficha, ni el curado ni el lavado son los que promete. Decide la prueba de lavado." }
    ink_why { "Why it differs", "Por qué cambia" }
    ink_why_hint { "Whoever makes it next will want to know.", "Quien la haga después querrá saberlo." }
    ink_same_parts(revision) { "Nothing differs from {revision}. Change a part, or go back.", "Nada cambia respecto a {revision}. Cambia una parte o vuelve atrás." }
    ink_parts_missing { "Add at least one part of the ink.", "Añade al menos una parte de la tinta." }
    ink_row_no_component { "Choose what it is.", "Elige qué es." }
    ink_row_twice { "It stands twice: put both in one row.", "Está dos veces: ponlo en una sola línea." }
    ink_saved_revision(revision) { "{revision} is saved.", "{revision}: guardada." }

    // The recipe card.
    ink_make_again { "Make again", "Hacer otra vez" }
    ink_make { "Make it", "Hacerla" }
    ink_mix_pot { "Mix a pot", "Nuevo bote" }
    ink_revise { "Revise", "Revisar" }
    ink_cover { "Will it cover?", "¿Cubrirá?" }
    ink_target { "Target colour", "Color objetivo" }
    ink_approved_by(client) { "Approved by {client}", "Aprobada por {client}" }
    ink_heard_by(name) { "heard by {name}", "lo oyó {name}" }
    ink_newer_not_approved(newer, best) { "{newer} is newer, and nobody said yes to it yet. What is made is {best}.", "{newer} es más nueva y nadie la ha aprobado. Se hace la {best}." }
    ink_nobody_yet { "Nobody said yes to it yet.", "Nadie la ha aprobado aún." }
    ink_top_note { "Written with additions on top. Here everything is percent of the whole pot.", "Escrita con añadidos aparte. Aquí todo es porcentaje del bote entero." }
    ink_its_pots { "Pots of it", "Sus botes" }
    ink_its_runs { "Coming runs with it", "Próximas tiradas con ella" }
    ink_cost_density { "Cost and density", "Coste y densidad" }
    ink_unpriced(share) { "{share} of it has no price", "{share} no tiene precio" }
    ink_density_unknown { "Density not known: a component has none.", "Densidad desconocida: falta la de un componente." }
    ink_revisions_n[n] { "{n} revision" | "{n} revisions", "{n} revisión" | "{n} revisiones" }
    ink_from_revision(name) { "from {name}", "de la {name}" }
    ink_from_pot(name) { "as it was in the pot {name}", "como estaba en el bote {name}" }
    ink_saved_by(when, name) { "{when}, {name}", "{when}, {name}" }
    ink_revise_from { "Revise from this one", "Revisar desde esta" }
    ink_revision_take_back { "Take this revision back", "Quitar esta revisión" }
    ink_revision_gone(name) { "{name} was taken back.", "{name}: quitada." }
    ink_recipe_deleted(name) { "{name} was deleted.", "{name}: borrada." }
    ink_card_empty { "Nothing in it yet. Write down what it is mixed of.", "Aún sin partes. Anota de qué se mezcla." }

    ink_weigh_back { "Weigh the pot now, and the next batch is sized by what this run really took.", "Pesa el bote ahora y la próxima mezcla se calculará con lo que gastó esta tirada." }
    ink_its_recipe { "Its recipe", "Su receta" }

    // Make again.
    ink_again_title(name) { "Make {name}", "Hacer {name}" }
    ink_by { "How much", "Cuánto" }
    ink_by_weight { "By weight", "Por peso" }
    ink_by_pieces { "For pieces", "Para piezas" }
    ink_again_grams { "Ink to make", "Tinta que hacer" }
    ink_size_means { "That weight is", "Ese peso es" }
    ink_size_whole { "The whole pot", "Todo el bote" }
    ink_size_ink { "The ink alone", "Solo la tinta" }
    ink_again_run { "Which run", "Qué tirada" }
    ink_no_runs { "No coming run names this ink.", "Ninguna tirada próxima nombra esta tinta." }
    ink_learned_from[n] { "By what such a run really used." | "By what {n} such runs really used.", "Según lo que gastó una tirada así." | "Según lo que gastaron {n} tiradas así." }
    ink_by_formula { "By area, mesh and hits, with losses. It gets better once pots are weighed after runs.", "Por superficie, malla y pasadas, con mermas. Mejora al pesar los botes después de las tiradas." }
    ink_this_is(name) { "This is {name}", "Esta es la {name}" }
    ink_other_approved(name, client) { "{name} is the one {client} approved.", "{name} es la que aprobó {client}." }
    ink_make_that { "Make that one", "Hacer esa" }
    ink_newer_is(name) { "{name} is newer and not approved.", "{name} es más nueva y no está aprobada." }
    ink_newer_other(name) { "{name} is newer.", "{name} es más nueva." }
    ink_make_newer(name) { "Make {name} instead", "Hacer la {name}" }
    ink_exact(grams) { "exactly {grams}", "exacto: {grams}" }
    ink_lacks(grams) { "shelf lacks {grams}", "faltan {grams}" }
    ink_total { "Together", "En total" }
    ink_asked(grams) { "{grams} asked", "se pidieron {grams}" }
    ink_rounding(step, worst) { "Rounded to the scale's {step}: {worst} off at worst.", "Redondeado a {step} de la báscula: {worst} de error como mucho." }
    ink_rounding_enough(grams) { "From {grams} on nothing is off by more than 1 %.", "Desde {grams} nada se desvía más del 1 %." }
    ink_weigh_it { "Weigh it", "Pesarla" }
    ink_weigh_title { "To weigh", "Para pesar" }
    pot_not_as_written(revision) { "{revision}, not as written", "{revision}, no tal cual" }
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

/// A price, from hundredths of the shop's currency.
pub fn ink_price(hundredths: f64) -> String {
    with_mark(format!("{:.2}", hundredths / 100.0))
}

/// The number of a revision, with its mark if another has the same number.
pub fn pot_revision(revision: &RevisionName) -> String {
    let name = ink_revision(revision.number);
    if revision.shares_number { format!("{name} ({})", revision.mark) } else { name }
}
