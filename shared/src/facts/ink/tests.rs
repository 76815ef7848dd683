use super::{pot, *};
use crate::facts::Fact;
use crate::journal::JournalFact;
use crate::units::Length;
use component::{ComponentKind, Hiding};
use drawdown::{Film, RecordedLayer, SwatchMeasurement};
use reading::{ReadBy, ReadOn};
use share::Share;
use uuid::Uuid;

const POT: Subject = Uuid::from_u128(0x1);
const RED: Subject = Uuid::from_u128(0x2);
const ONE: &str = "00000000-0000-0000-0000-000000000001";
const TWO: &str = "00000000-0000-0000-0000-000000000002";

fn poured() -> InkFact {
    InkFact::Poured {
        pot: POT,
        component: RED,
        grams: Grams::from_grams(2.6),
        step: PourStep::Correction,
        note: "a touch".into(),
        reading: Some(ColourReading::from_lab([52.5, 41.0, -3.25], ReadBy::Photo)),
        by: Some("Ines".into()),
    }
}

fn saved() -> InkFact {
    InkFact::RevisionSaved {
        recipe: POT,
        number: 3,
        parts: vec![
            Part { component: RED, share: Share::WHOLE, on_top: false },
            Part { component: POT, share: Share::from_percent(2.5), on_top: true },
        ],
        parent: Some(RED),
        pot: None,
        note: String::new(),
        by: None,
    }
}

fn drawn(lay: RecordedLayer, seen: SwatchMeasurement) -> InkFact {
    InkFact::DrawnDown(DrawdownRecord {
        component: RED,
        share: Share::from_percent(10.0),
        rest: Some(POT),
        lay,
        seen,
        note: String::new(),
        by: Some("Ines".into()),
    })
}

/// Lines like these are in people's backup files.
#[test]
fn the_names_of_ink_facts_are_a_file_format() {
    let grams = Grams::from_grams(1.0);
    let print = PrintUse {
        width: Length::from_millimetres(250.0),
        height: Length::from_millimetres(200.0),
        coverage: 500,
        volume: 4_000,
        hits: 1,
        transfer: 900,
        density: 1_050,
        loss: 100,
    };
    for (fact, json) in [
        (
            InkFact::ComponentSet(vec![
                ComponentField::Kind(ComponentKind::Pigment),
                ComponentField::Hiding(Hiding::Opaque),
                ComponentField::Density(Some(1_180)),
                ComponentField::Cost(None),
                ComponentField::Most(Some(Share::from_percent(12.0))),
                ComponentField::MostPigment(None),
                ComponentField::LowAt(Some(grams)),
                ComponentField::Tub(None),
            ]),
            r#"{"component_set":[{"kind":"pigment"},{"hiding":"opaque"},{"density":1180},{"cost":null},{"most":120000000},{"most_pigment":null},{"low_at":1000},{"tub":null}]}"#.to_owned(),
        ),
        (
            InkFact::RecipeSet(vec![RecipeField::Name("Brick".into()), RecipeField::Target(None)]),
            r#"{"recipe_set":[{"name":"Brick"},{"target":null}]}"#.to_owned(),
        ),
        (
            InkFact::PotSet(vec![
                PotField::Revision(Some(RED)),
                PotField::Size(Some(pot::BatchSize::Ink(grams))),
                PotField::Capacity(None),
                PotField::Tare(Some(grams)),
                PotField::Closed(true),
            ]),
            format!(
                r#"{{"pot_set":[{{"revision":"{TWO}"}},{{"size":{{"ink":1000}}}},{{"capacity":null}},{{"tare":1000}},{{"closed":true}}]}}"#
            ),
        ),
        (
            InkFact::ScaleSet { step: Grams::from_grams(0.1), most: None },
            r#"{"scale_set":{"step":100,"most":null}}"#.to_owned(),
        ),
        (
            InkFact::PrintSet(Some(print)),
            r#"{"print_set":{"width":250000,"height":200000,"coverage":500,"volume":4000,"hits":1,"transfer":900,"density":1050,"loss":100}}"#.to_owned(),
        ),
        (
            saved(),
            format!(
                r#"{{"revision_saved":{{"recipe":"{ONE}","number":3,"parts":[{{"component":"{TWO}","share":1000000000,"on_top":false}},{{"component":"{ONE}","share":25000000,"on_top":true}}],"parent":"{TWO}","pot":null,"note":"","by":null}}}}"#
            ),
        ),
        (
            poured(),
            format!(
                r#"{{"poured":{{"pot":"{ONE}","component":"{TWO}","grams":2600,"step":"correction","note":"a touch","reading":{{"l":52500,"a":41000,"b":-3250,"by":"photo"}},"by":"Ines"}}}}"#
            ),
        ),
        (
            InkFact::Resized { pot: POT, whole: grams, by: None },
            format!(r#"{{"resized":{{"pot":"{ONE}","whole":1000,"by":null}}}}"#),
        ),
        (
            InkFact::Accepted { pot: POT, component: RED, grams, by: None },
            format!(r#"{{"accepted":{{"pot":"{ONE}","component":"{TWO}","grams":1000,"by":null}}}}"#),
        ),
        (
            InkFact::Moved { from: POT, to: RED, grams, by: None },
            format!(r#"{{"moved":{{"from":"{ONE}","to":"{TWO}","grams":1000,"by":null}}}}"#),
        ),
        (
            InkFact::Wasted { pot: POT, grams, note: "dried".into(), by: None },
            format!(r#"{{"wasted":{{"pot":"{ONE}","grams":1000,"note":"dried","by":null}}}}"#),
        ),
        (
            InkFact::Used { pot: POT, run: Some(RED), grams, pieces: 9, paper: None, by: None },
            format!(r#"{{"used":{{"pot":"{ONE}","run":"{TWO}","grams":1000,"pieces":9,"paper":null,"by":null}}}}"#),
        ),
        (
            InkFact::SwatchRead {
                pot: POT,
                reading: ColourReading::from_lab([1.0, 2.0, 3.0], ReadBy::Instrument),
                note: String::new(),
                by: None,
            },
            format!(
                r#"{{"swatch_read":{{"pot":"{ONE}","reading":{{"l":1000,"a":2000,"b":3000,"by":"instrument"}},"note":"","by":null}}}}"#
            ),
        ),
        (
            InkFact::Matched { pot: POT, reading: None, by: None },
            format!(r#"{{"matched":{{"pot":"{ONE}","reading":null,"by":null}}}}"#),
        ),
        (
            InkFact::Approved { revision: RED, pot: Some(POT), client: "Moss".into(), reading: None, by: None },
            format!(
                r#"{{"approved":{{"revision":"{TWO}","pot":"{ONE}","client":"Moss","reading":null,"by":null}}}}"#
            ),
        ),
        (
            InkFact::Delivered { component: RED, grams, note: String::new(), by: None },
            format!(r#"{{"delivered":{{"component":"{TWO}","grams":1000,"note":"","by":null}}}}"#),
        ),
        (
            InkFact::Counted { component: RED, grams, by: None },
            format!(r#"{{"counted":{{"component":"{TWO}","grams":1000,"by":null}}}}"#),
        ),
        (
            drawn(RecordedLayer::Hiding, SwatchMeasurement::Colour(ColourReading::from_lab([1.0, 2.0, 3.0], ReadBy::Instrument))),
            format!(
                r#"{{"drawn_down":{{"component":"{TWO}","share":100000000,"rest":"{ONE}","lay":"hiding","seen":{{"colour":{{"l":1000,"a":2000,"b":3000,"by":"instrument"}}}},"note":"","by":"Ines"}}}}"#
            ),
        ),
        (
            drawn(
                RecordedLayer::Over { film: Film::Wet { um: 100, a_hit: 40 }, backing: SwatchMeasurement::CHART_BLACK },
                SwatchMeasurement::Curve(vec![500; crate::colour::BANDS]),
            ),
            format!(
                r#"{{"drawn_down":{{"component":"{TWO}","share":100000000,"rest":"{ONE}","lay":{{"over":{{"film":{{"wet":{{"um":100,"a_hit":40}}}},"backing":{{"flat":100}}}}}},"seen":{{"curve":[{}]}},"note":"","by":"Ines"}}}}"#,
                ["500"; crate::colour::BANDS].join(",")
            ),
        ),
        (InkFact::GarmentRead(None), r#"{"garment_read":null}"#.to_owned()),
        (
            InkFact::RecipeSet(vec![RecipeField::ReadOn(ReadOn::Garment)]),
            r#"{"recipe_set":[{"read_on":"garment"}]}"#.to_owned(),
        ),
    ] {
        let fact = Fact::Ink(fact);
        assert!(fact.in_bounds(), "{fact:?}");
        let json = format!(r#"{{"ink":{json}}}"#);
        assert_eq!(fact.to_json().get(), json);
        assert_eq!(Fact::from_json(&json), Some(fact));
    }
}

/// Bytes like these are on people's phones.
#[test]
fn the_packed_bytes_of_ink_facts_are_frozen() {
    let id = |last: u8| [&[16][..], &[0; 15], &[last]].concat();
    let grams = [0xd0, 0x28];
    let reading = [1, 0xa8, 0xb4, 0x06, 0xd0, 0x80, 0x05, 0xe3, 0x32, 1];
    let frozen = [&[6][..], &id(1), &id(2), &grams, &[1, 7], b"a touch", &reading, &[1, 4], b"Ines"].concat();
    assert_eq!(postcard::to_allocvec(&poured()).unwrap(), frozen);
    assert_eq!(crate::codec::from_bytes::<InkFact>(&frozen), Some(poured()));
    let whole = [0x80, 0x94, 0xeb, 0xdc, 0x03];
    let top = [0xc0, 0xf0, 0xf5, 0x0b];
    let frozen =
        [&[5][..], &id(1), &[3, 2], &id(2), &whole, &[0], &id(1), &top, &[1], &[1], &id(2), &[0, 0, 0]].concat();
    assert_eq!(crate::codec::to_bytes(&saved()), frozen);
    assert_eq!(crate::codec::from_bytes::<InkFact>(&frozen), Some(saved()));
    let over = drawn(
        RecordedLayer::Over { film: Film::Hits(2), backing: SwatchMeasurement::CHART_WHITE },
        SwatchMeasurement::Flat(1),
    );
    let tenth = [0x80, 0xc2, 0xd7, 0x2f];
    let frozen =
        [&[17][..], &id(2), &tenth, &[1], &id(1), &[1, 0, 2, 2, 0xc0, 0x3e], &[2, 1, 0], &[1, 4], b"Ines"].concat();
    assert_eq!(crate::codec::to_bytes(&over), frozen);
    assert_eq!(postcard::to_allocvec(&over).unwrap(), frozen);
    assert_eq!(crate::codec::from_bytes::<InkFact>(&frozen), Some(over));
    assert_eq!(crate::codec::to_bytes(&InkFact::GarmentRead(None)), [18, 0]);
}

#[test]
fn impossible_weights_and_recipes_are_out_of_bounds() {
    let pour = |grams| InkFact::Wasted { pot: POT, grams, note: String::new(), by: None };
    let too_much = Grams::MOST.saturating_add(Grams::from_milligrams(1));
    for (grams, taken) in
        [(Grams::MOST, true), (Grams::ZERO, false), (too_much, false), (Grams::from_grams(-1.0), false)]
    {
        assert_eq!(pour(grams).in_bounds(), taken);
    }
    let InkFact::RevisionSaved { recipe, number, parent, pot, note, by, .. } = saved() else { panic!() };
    let short = vec![Part { component: RED, share: Share::from_percent(99.0), on_top: false }];
    assert!(!InkFact::RevisionSaved { recipe, number, parts: short, parent, pot, note, by }.in_bounds());
    assert!(!InkFact::ScaleSet { step: Grams::ZERO, most: None }.in_bounds());
    let far = ColourReading { l: 0, a: 0, b: 200_000, by: ReadBy::Screen };
    assert!(!InkFact::Matched { pot: POT, reading: Some(far), by: None }.in_bounds());
    assert!(!InkFact::GarmentRead(Some(far)).in_bounds());
    assert!(!drawn(RecordedLayer::Hiding, SwatchMeasurement::Curve(vec![500; 30])).in_bounds());
    assert!(
        !drawn(
            RecordedLayer::Over { film: Film::Hits(0), backing: SwatchMeasurement::Flat(1) },
            SwatchMeasurement::Flat(1)
        )
        .in_bounds()
    );
}
