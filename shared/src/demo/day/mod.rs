//! The invented scenario: a two-person shop with a choir, a ferry, a seed library and a chess club.

use crate::colour::Colour;
use crate::demo::failures::record_failure;
use crate::demo::heat;
use crate::demo::ink::{Printed, bench};
use crate::demo::language::{
    APRICOT, BAKERY, BONE, CHESS, CHOIR, EMPTY, FERN, FERRY, INES, JERSEY_WHITE, Language, MOSS, NIGHT, SEEDS, Text,
    text,
};
use crate::demo::maker::{LotPlan, Maker, RunPlan};
use crate::demo::screens::{DayRuns, screens};
use crate::facts::{Draft, Fabric, Fact, Location, MisprintCause, Size, StopCause};
use crate::ids::SHOP;
use crate::time::{Due, Millis, TimeOfDay, WallClock};
use uuid::Uuid;

const MINUTE: Millis = Millis::from_minutes(1);
const HOUR: Millis = Millis::from_hours(1);

const COTTON: RunPlan = RunPlan {
    location: Location::FullFront,
    ink: APRICOT,
    colour: "#f2a65a",
    hits: 2,
    flash: true,
    fahrenheit: 320.0,
    dwell: 150.0,
    below_collar: Some(3.0),
    screens: "12, 13",
};

/// The canvas of tomorrow's totes.
const TOTE: &str = "#e6dcc3";

const TEE: Text = text("Midweight tee", "Camiseta de peso medio");

/// The facts of the demo shop, oldest first, generated around the time of `clock`. In each language they are the same
/// but for their texts.
pub fn demo_facts(
    clock: WallClock,
    device: Uuid,
    device_name: &str,
    language: Language,
    new_id: impl FnMut() -> Uuid,
) -> Vec<Draft> {
    let mut maker = Maker::new(clock, language, new_id);
    let start = clock.now - 16 * 24 * HOUR;
    maker.record(
        start,
        SHOP,
        Fact::ShopNamed(language.say(text("Two Kettles Print Shop", "Serigrafía Las Dos Ollas"))),
    );
    maker.record(start, SHOP, Fact::CrewNamed([INES, MOSS].map(|name| language.say(name)).into()));
    maker.record(start, device, Fact::DeviceNamed(device_name.into()));
    heat::equip(&mut maker, start);
    super::stencils::stencils(&mut maker);
    let earlier = earlier_weeks(&mut maker);
    let day = today(&mut maker);
    screens(&mut maker, &day);
    let inks = bench(&mut maker, &day, &earlier);
    super::colour::colours(&mut maker, &inks, Colour::from_hex(TOTE));
    maker.drafts
}

/// Two weeks of finished orders, from which the shop's pace and usual day are learned.
fn earlier_weeks<N: FnMut() -> Uuid>(maker: &mut Maker<N>) -> Vec<Printed> {
    let mut printed = Vec::new();
    let clients = [
        (FERRY, text("Deckhand tees", "Camisetas de marinero")),
        (SEEDS, text("Swap day", "Día de trueque")),
        (CHESS, text("Fall ladder", "Torneo de otoño")),
        (CHOIR, text("Rehearsal tees", "Camisetas de ensayo")),
    ];
    for (index, days_ago) in [14, 13, 12, 9, 8, 7, 6, 5, 2, 1].into_iter().enumerate() {
        let (client, title) = clients[index % clients.len()];
        let morning = maker.clock.now - days_ago * 24 * HOUR - 3 * HOUR;
        let job = maker.job(morning - HOUR, client, title, None, index % 4 == 1, EMPTY);
        let sizes: &[(Size, u32)] = &[(Size::S, 6), (Size::M, 10), (Size::L, 12), (Size::Xl, 6)];
        let lot = maker.lot(
            morning - HOUR,
            job,
            &LotPlan {
                garment: TEE,
                fabric: Fabric::Cotton,
                colour: "#23262e",
                colour_name: text("Black", "Negro"),
                pieces: sizes,
            },
        );
        let plan = if index % 2 == 0 {
            COTTON
        } else {
            RunPlan {
                location: Location::LeftChest,
                ink: BONE,
                colour: "#ece4d2",
                hits: 1,
                flash: false,
                screens: "7",
                ..COTTON
            }
        };
        let run = maker.run(morning - HOUR, lot, &plan);
        maker.record(morning, run, Fact::RunStarted);
        let pace = if index % 2 == 0 { 58.0 } else { 36.0 };
        let seconds = pace * (0.92 + 0.16 * maker.noise());
        let half = maker.pull(morning + MINUTE, run, &sizes[..2], seconds);
        maker.record(
            half + MINUTE / 12,
            run,
            Fact::Stopped(if index % 3 == 0 { StopCause::Screen } else { StopCause::Ink }),
        );
        if index % 3 == 0 {
            record_failure(maker, run, half + MINUTE / 12, index / 3);
        }
        maker.record(half + 4 * MINUTE, run, Fact::Resumed);
        let mut end = maker.pull(half + 4 * MINUTE, run, &sizes[2..], seconds);
        if index % 3 == 0 {
            end += MINUTE / 3;
            let size = Some(Size::L);
            maker.record(
                end,
                run,
                Fact::Misprinted { pieces: 1, size, cause: MisprintCause::Pinhole, was_counted: true },
            );
            end = maker.pull(end, run, &[(Size::L, 1)], seconds);
        }
        maker.record(end + MINUTE, run, Fact::RunEnded);
        maker.record(end + 20 * MINUTE, job, Fact::JobFinished);
        printed.push(Printed { run, pieces: sizes.iter().map(|(_, pieces)| pieces).sum(), ended: end + MINUTE });
    }
    printed
}

/// Today: one order done, one on the press, three to come, one of them polyester.
fn today<N: FnMut() -> Uuid>(maker: &mut Maker<N>) -> DayRuns {
    let clock = maker.clock;
    let now = clock.now;
    let today = clock.today();
    let closing = (clock.time_of_day(now).minutes() + 200).div_ceil(15) * 15;
    let closing = TimeOfDay::from_minutes(closing).min(TimeOfDay::at(23, 45));
    let early = now - 5 * HOUR;
    maker.record(early, SHOP, Fact::DayClosing { day: today, time: closing });

    let choir = maker.job(
        early,
        CHOIR,
        text("Tour tees", "Camisetas de la gira"),
        Some(Due { day: today, time: closing }),
        false,
        text("Fold in stacks of 10, sorted by size.", "Doblar en montones de 10, separadas por talla."),
    );
    let choir_sizes: &[(Size, u32)] = &[(Size::S, 6), (Size::M, 12), (Size::L, 12), (Size::Xl, 6)];
    let tee = LotPlan {
        garment: TEE,
        fabric: Fabric::Cotton,
        colour: "#2f3e5c",
        colour_name: text("Evening blue", "Azul anochecer"),
        pieces: choir_sizes,
    };
    let choir_lot = maker.lot(early, choir, &tee);
    let front = maker.run(early, choir_lot, &COTTON);
    heat::wash_test(maker, front, COTTON.ink);

    let ferry = maker.job(
        early + MINUTE,
        FERRY,
        text("Crew jerseys", "Uniformes de tripulación"),
        Some(Due { day: today, time: closing }),
        false,
        text("Numbers are added later, by hand.", "Los números se ponen después, a mano."),
    );
    let jersey = LotPlan {
        garment: text("Sport jersey", "Camiseta deportiva"),
        fabric: Fabric::Polyester,
        colour: "#7a3fa0",
        colour_name: text("Violet", "Violeta"),
        pieces: &[(Size::M, 8), (Size::L, 10), (Size::Xl, 6)],
    };
    let ferry_lot = maker.lot(early + MINUTE, ferry, &jersey);
    let cooler = RunPlan {
        location: Location::FullBack,
        ink: JERSEY_WHITE,
        colour: "#f7f5ef",
        hits: 2,
        fahrenheit: 260.0,
        dwell: 180.0,
        below_collar: Some(4.0),
        screens: "14, 15",
        ..COTTON
    };
    let back = maker.run(early + MINUTE, ferry_lot, &cooler);

    let seeds = maker.job(
        early + 2 * MINUTE,
        SEEDS,
        text("Swap day totes", "Bolsas del trueque"),
        Some(Due { day: today.plus_days(1), time: TimeOfDay::at(12, 0) }),
        true,
        text("The exemption letter is in the drawer.", "La carta de exención está en el cajón."),
    );
    let tote = LotPlan {
        garment: text("Canvas tote", "Bolsa de loneta"),
        fabric: Fabric::Canvas,
        colour: TOTE,
        colour_name: text("Natural", "Crudo"),
        pieces: &[(Size::One, 40)],
    };
    let tote_lot = maker.lot(early + 2 * MINUTE, seeds, &tote);
    let totes = maker.run(
        early + 2 * MINUTE,
        tote_lot,
        &RunPlan {
            location: Location::CentreChest,
            ink: FERN,
            colour: "#3f6b3a",
            hits: 1,
            flash: false,
            below_collar: None,
            screens: "4",
            ..COTTON
        },
    );

    let chess = maker.job(
        early + 3 * MINUTE,
        CHESS,
        text("Junior ladder", "Torneo infantil"),
        Some(Due { day: today.plus_days(3), time: TimeOfDay::at(16, 0) }),
        false,
        EMPTY,
    );
    let kids = LotPlan {
        garment: text("Youth tee", "Camiseta juvenil"),
        fabric: Fabric::Cotton,
        colour: "#f4d35e",
        colour_name: text("Straw", "Paja"),
        pieces: &[(Size::YouthS, 8), (Size::YouthM, 10), (Size::YouthL, 4), (Size::S, 4)],
    };
    let kids_lot = maker.lot(early + 3 * MINUTE, chess, &kids);
    let ladder = maker.run(
        early + 3 * MINUTE,
        kids_lot,
        &RunPlan {
            location: Location::LeftChest,
            ink: NIGHT,
            colour: "#1f2440",
            hits: 1,
            flash: false,
            screens: "7",
            ..COTTON
        },
    );

    // This morning's order, done.
    let morning = now - 4 * HOUR;
    let bakery = maker.job(
        morning - MINUTE,
        BAKERY,
        text("Counter aprons", "Delantales de mostrador"),
        Some(Due { day: today, time: closing }),
        false,
        EMPTY,
    );
    let apron_sizes: &[(Size, u32)] = &[(Size::One, 18)];
    let apron = LotPlan {
        garment: text("Bib apron", "Delantal con peto"),
        fabric: Fabric::Canvas,
        colour: "#20242b",
        colour_name: text("Coal", "Carbón"),
        pieces: apron_sizes,
    };
    let apron_lot = maker.lot(morning - MINUTE, bakery, &apron);
    let bib = maker.run(
        morning - MINUTE,
        apron_lot,
        &RunPlan {
            location: Location::CentreChest,
            ink: BONE,
            colour: "#ece4d2",
            hits: 1,
            flash: false,
            below_collar: None,
            screens: "8",
            ..COTTON
        },
    );
    maker.check(morning, bib, INES);
    maker.record(morning + 4 * MINUTE, bib, Fact::RunStarted);
    let end = maker.pull(morning + 5 * MINUTE, bib, apron_sizes, 40.0);
    maker.record(end + MINUTE, bib, Fact::RunEnded);
    maker.record(end + 10 * MINUTE, bakery, Fact::JobFinished);

    // The choir's front, on the press.
    let began = now - 22 * MINUTE;
    maker.check(began - 4 * MINUTE, front, MOSS);
    maker.record(began, front, Fact::RunStarted);
    let at = maker.pull(began + MINUTE / 2, front, &[(Size::S, 6), (Size::M, 4)], 57.0);
    maker.record(at + Millis::from_ms(4_000), front, Fact::Stopped(StopCause::Ink));
    maker.record(at + 3 * MINUTE, front, Fact::Resumed);
    let at = maker.pull(at + 3 * MINUTE, front, &[(Size::M, 5)], 57.0);
    let size = Some(Size::M);
    maker.record(
        at + MINUTE / 3,
        front,
        Fact::Misprinted { pieces: 1, size, cause: MisprintCause::Smudge, was_counted: true },
    );
    maker.pull(at + MINUTE / 3, front, &[(Size::M, 3)], 57.0);

    maker.record(now - Millis::from_ms(1_000), SHOP, Fact::RunsOrdered(vec![front, back, totes]));
    DayRuns { front, back, totes, ladder, bib, began, bib_ended: end + MINUTE }
}

#[cfg(test)]
pub(crate) mod tests;
