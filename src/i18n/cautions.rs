//! Messages: cautions about heat, electricity, fumes and chemicals, each in one place. They defer to data sheets, local
//! code and licensed people.

use super::failure::failure_lamp;
use super::messages::messages;
use lastpull_core::screen::BurnStep;

messages! {
    caution_stopped {
        "Swing the flash off the platen and let the belt run empty. If the belt stops, turn off the heat and follow the manual.",
        "Quita el flash de encima de la paleta y deja que la banda saque todo. Si la banda se para, apaga el calor y sigue el manual."
    }
    caution_around_heat {
        "Prop the phone where you don't reach across the flash or hot platens. Keep lint, solvent rags and spray adhesive away from the heat.",
        "Pon el teléfono donde no tengas que pasar la mano sobre el flash ni las paletas calientes. Lejos del calor: pelusa, trapos con solvente y adhesivo en aerosol."
    }
    caution_power_and_fumes {
        "Each dryer and flash needs the circuit its nameplate calls for: no extension cords. Vent fumes as manuals, data sheets and local code require; wiring is for a licensed electrician.",
        "Cada horno y cada flash necesita el circuito que indica su placa: sin extensiones. Extrae los vapores como piden los manuales, las fichas y la norma local; del cableado se encarga un electricista autorizado."
    }
    caution_lamp_power {
        "It needs the circuit its nameplate calls for: no extension cord. A licensed electrician and local code decide on wiring.",
        "Necesita el circuito que indica su placa: sin extensión. Del cableado deciden un electricista autorizado y la norma local."
    }
    caution_washer {
        "Pressure washer: goggles and ear protection, never aimed at anyone. Near water, GFCI-protected outlets; a licensed electrician and local code decide.",
        "Hidrolavadora: gafas protectoras y protección para oídos; nunca apuntes a nadie. Cerca del agua, tomacorrientes con protección GFCI; deciden un electricista autorizado y la norma local."
    }
    caution_remover {
        "Reclaimers are caustic or oxidizing: chemical gloves, goggles, ventilation. Never mix products; follow each safety data sheet (SDS).",
        "Los recuperadores son cáusticos u oxidantes: guantes químicos, gafas protectoras y ventilación. Nunca mezcles productos; sigue cada hoja de seguridad (SDS)."
    }
    caution_haze {
        "Haze removers are caustic: chemical gloves, goggles, ventilation. Never mix products; follow the safety data sheet (SDS).",
        "Los removedores de imagen fantasma son cáusticos: guantes químicos, gafas protectoras y ventilación. Nunca mezcles productos; sigue la hoja de seguridad (SDS)."
    }
    caution_block_out {
        "Block-out: gloves and goggles; follow its safety data sheet (SDS).",
        "Bloqueador: guantes y gafas protectoras; sigue su hoja de seguridad (SDS)."
    }
    caution_coat {
        "Degreaser, emulsion and sensitizer: gloves and goggles; follow each safety data sheet (SDS).",
        "Desengrasante, emulsión y sensibilizador: guantes y gafas protectoras; sigue cada hoja de seguridad (SDS)."
    }
    bath_caution {
        "Caustic or oxidizing tank: open with chemical gloves, goggles and ventilation; eyewash in reach. Never mix products. Follow each SDS; local code says what may go down the drain.",
        "Tanque cáustico u oxidante: abre con guantes químicos, gafas protectoras y ventilación; lavaojos cerca. Nunca mezcles productos. Sigue cada hoja de seguridad (SDS); al desagüe, solo según norma local."
    }
    caution_open_tank {
        "Before you open the tank: chemical gloves, goggles and ventilation; eyewash within reach. Follow each SDS.",
        "Antes de abrir el tanque: guantes químicos, gafas protectoras y ventilación; lavaojos a la mano. Sigue cada SDS."
    }
    caution_additive {
        "Some additives irritate or sensitize: gloves, goggles, ventilation; follow the safety data sheet (SDS).",
        "Algunos aditivos irritan o causan alergias: guantes, gafas protectoras y ventilación; sigue la hoja de seguridad (SDS)."
    }
    who_decides_title { "Cautions", "Precauciones" }
    who_decides {
        "Lastpull plans and counts. It does not know your ink, garment, dryer or wiring. Manufacturers' data sheets, local code and licensed people come first; only a wash test shows that a print is cured.",
        "Lastpull planea y cuenta; no conoce tu tinta, prenda, horno ni instalación eléctrica. Mandan las fichas del fabricante, la norma local y los profesionales autorizados; solo la prueba de lavado muestra el curado."
    }
}

/// The cautions for these steps of burning a screen, each once.
pub fn step_cautions(steps: &[BurnStep]) -> Vec<&'static str> {
    let mut lines = Vec::new();
    for step in steps {
        let of_step = match step {
            BurnStep::Reclaim => [Some(caution_remover()), Some(caution_washer())],
            BurnStep::Coat => [Some(caution_coat()), None],
            BurnStep::Expose => [Some(failure_lamp()), None],
            BurnStep::WashDry => [Some(caution_washer()), None],
            BurnStep::Dry | BurnStep::Tape => [None, None],
        };
        for line in of_step.into_iter().flatten() {
            if !lines.contains(&line) {
                lines.push(line);
            }
        }
    }
    lines
}
