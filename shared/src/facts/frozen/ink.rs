//! The ink bench.

use super::frozen;
use super::prelude::*;

fn drawdown() -> DrawdownRecord {
    DrawdownRecord {
        component: COMPONENT,
        share: percent(10),
        rest: Some(COMPONENT),
        lay: RecordedLayer::Hiding,
        seen: SwatchMeasurement::Flat(1_800),
        note: "Two pulls".into(),
        by: Some(person()),
    }
}

fn print_use() -> PrintUse {
    PrintUse {
        width: millimetres(280),
        height: millimetres(330),
        coverage: 450,
        volume: 32,
        hits: 2,
        transfer: 900,
        density: 1_150,
        loss: 50,
    }
}

fn parts() -> Vec<Part> {
    vec![
        Part { component: COMPONENT, share: Share::WHOLE, on_top: false },
        Part { component: DRYER, share: percent(2), on_top: true },
    ]
}

frozen! {
    enum InkFact, Fact::Ink => {
        0 ComponentSet(vec![ComponentField::Name("Base".into()), ComponentField::Tub(None)]) =>
            r#"{"component_set":[{"name":"Base"},{"tub":null}]}"#,
            "00020004426173650900";
        1 RecipeSet(vec![RecipeField::Name("Brick red".into()), RecipeField::Colour(None)]) =>
            r#"{"recipe_set":[{"name":"Brick red"},{"colour":null}]}"#,
            "01020009427269636b207265640100";
        2 PotSet(vec![PotField::Name("B1".into()), PotField::Revision(Some(REVISION))]) =>
            r#"{"pot_set":[{"name":"B1"},{"revision":"00000000-0000-0000-0000-000000000024"}]}"#,
            "02020002423101011000000000000000000000000000000024";
        3 ScaleSet { step: Grams::from_milligrams(100), most: Some(grams(5_000)) } =>
            r#"{"scale_set":{"step":100,"most":5000000}}"#,
            "03c8010180ade204";
        4 PrintSet(Some(print_use())) =>
            r#"{"print_set":{"width":280000,"height":330000,"coverage":450,"volume":32,"hits":2,"transfer":900,"density":1150,"loss":50}}"#,
            "0401809722a0a428c20320028407fe0832";
        4 PrintSet(None) => r#"{"print_set":null}"#, "0400";
        5 RevisionSaved {
            recipe: RECIPE,
            number: 3,
            parts: parts(),
            parent: Some(REVISION),
            pot: Some(POT),
            note: "Warmer".into(),
            by: Some(person()),
        } =>
            r#"{"revision_saved":{"recipe":"00000000-0000-0000-0000-000000000022","number":3,"parts":[{"component":"00000000-0000-0000-0000-000000000021","share":1000000000,"on_top":false},{"component":"00000000-0000-0000-0000-00000000001a","share":20000000,"on_top":true}],"parent":"00000000-0000-0000-0000-000000000024","pot":"00000000-0000-0000-0000-000000000023","note":"Warmer","by":"Inés"}}"#,
            "051000000000000000000000000000000022030210000000000000000000000000000000218094ebdc0300100000000000000000000000000000001a80dac40901011000000000000000000000000000000024011000000000000000000000000000000023065761726d65720105496ec3a973";
        6 Poured {
            pot: POT,
            component: COMPONENT,
            grams: grams(250),
            step: PourStep::WeighIn,
            note: "New tub".into(),
            reading: Some(reading()),
            by: Some(person()),
        } =>
            r#"{"poured":{"pot":"00000000-0000-0000-0000-000000000023","component":"00000000-0000-0000-0000-000000000021","grams":250000,"step":"weigh_in","note":"New tub","reading":{"l":52500,"a":41000,"b":-3250,"by":"photo"},"by":"Inés"}}"#,
            "0610000000000000000000000000000000231000000000000000000000000000000021a0c21e00074e65772074756201a8b406d08005e332010105496ec3a973";
        7 Resized { pot: POT, whole: grams(300), by: Some(person()) } =>
            r#"{"resized":{"pot":"00000000-0000-0000-0000-000000000023","whole":300000,"by":"Inés"}}"#,
            "071000000000000000000000000000000023c0cf240105496ec3a973";
        8 Accepted { pot: POT, component: COMPONENT, grams: grams(251), by: Some(person()) } =>
            r#"{"accepted":{"pot":"00000000-0000-0000-0000-000000000023","component":"00000000-0000-0000-0000-000000000021","grams":251000,"by":"Inés"}}"#,
            "0810000000000000000000000000000000231000000000000000000000000000000021f0d11e0105496ec3a973";
        9 Moved { from: POT, to: DRYER, grams: grams(20), by: Some(person()) } =>
            r#"{"moved":{"from":"00000000-0000-0000-0000-000000000023","to":"00000000-0000-0000-0000-00000000001a","grams":20000,"by":"Inés"}}"#,
            "091000000000000000000000000000000023100000000000000000000000000000001ac0b8020105496ec3a973";
        10 Wasted { pot: POT, grams: grams(5), note: "Skinned over".into(), by: Some(person()) } =>
            r#"{"wasted":{"pot":"00000000-0000-0000-0000-000000000023","grams":5000,"note":"Skinned over","by":"Inés"}}"#,
            "0a1000000000000000000000000000000023904e0c536b696e6e6564206f7665720105496ec3a973";
        11 Used { pot: POT, run: Some(RUN), grams: grams(90), pieces: 72, paper: Some(grams(80)), by: Some(person()) } =>
            r#"{"used":{"pot":"00000000-0000-0000-0000-000000000023","run":"00000000-0000-0000-0000-000000000012","grams":90000,"pieces":72,"paper":80000,"by":"Inés"}}"#,
            "0b1000000000000000000000000000000023011000000000000000000000000000000012a0fe0a480180e2090105496ec3a973";
        12 SwatchRead { pot: POT, reading: reading(), note: "On the garment".into(), by: Some(person()) } =>
            r#"{"swatch_read":{"pot":"00000000-0000-0000-0000-000000000023","reading":{"l":52500,"a":41000,"b":-3250,"by":"photo"},"note":"On the garment","by":"Inés"}}"#,
            "0c1000000000000000000000000000000023a8b406d08005e332010e4f6e20746865206761726d656e740105496ec3a973";
        13 Matched { pot: POT, reading: Some(reading()), by: Some(person()) } =>
            r#"{"matched":{"pot":"00000000-0000-0000-0000-000000000023","reading":{"l":52500,"a":41000,"b":-3250,"by":"photo"},"by":"Inés"}}"#,
            "0d100000000000000000000000000000002301a8b406d08005e332010105496ec3a973";
        14 Approved {
            revision: REVISION,
            pot: Some(POT),
            client: "Peña".into(),
            reading: Some(reading()),
            by: Some(person()),
        } =>
            r#"{"approved":{"revision":"00000000-0000-0000-0000-000000000024","pot":"00000000-0000-0000-0000-000000000023","client":"Peña","reading":{"l":52500,"a":41000,"b":-3250,"by":"photo"},"by":"Inés"}}"#,
            "0e1000000000000000000000000000000024011000000000000000000000000000000023055065c3b16101a8b406d08005e332010105496ec3a973";
        15 Delivered { component: COMPONENT, grams: grams(1_000), note: "Lot 7".into(), by: Some(person()) } =>
            r#"{"delivered":{"component":"00000000-0000-0000-0000-000000000021","grams":1000000,"note":"Lot 7","by":"Inés"}}"#,
            "0f100000000000000000000000000000002180897a054c6f7420370105496ec3a973";
        16 Counted { component: COMPONENT, grams: grams(640), by: Some(person()) } =>
            r#"{"counted":{"component":"00000000-0000-0000-0000-000000000021","grams":640000,"by":"Inés"}}"#,
            "10100000000000000000000000000000002180904e0105496ec3a973";
        17 DrawnDown(drawdown()) =>
            r#"{"drawn_down":{"component":"00000000-0000-0000-0000-000000000021","share":100000000,"rest":"00000000-0000-0000-0000-000000000021","lay":"hiding","seen":{"flat":1800},"note":"Two pulls","by":"Inés"}}"#,
            "11100000000000000000000000000000002180c2d72f0110000000000000000000000000000000210002880e0954776f2070756c6c730105496ec3a973";
        18 GarmentRead(Some(reading())) =>
            r#"{"garment_read":{"l":52500,"a":41000,"b":-3250,"by":"photo"}}"#,
            "1201a8b406d08005e33201";
        18 GarmentRead(None) => r#"{"garment_read":null}"#, "1200";
    }

    enum ComponentField, |field| Fact::Ink(InkFact::ComponentSet(vec![field])) => {
        0 Name("Red shade".into()) => r#"{"name":"Red shade"}"#, "0009526564207368616465";
        1 Kind(ComponentKind::Pigment) => r#"{"kind":"pigment"}"#, "0101";
        2 Colour(Some(Colour { rgb: [0xc8, 0x10, 0x2e] })) => r##"{"colour":"#c8102e"}"##, "0201c8102e";
        3 Hiding(Hiding::Opaque) => r#"{"hiding":"opaque"}"#, "0301";
        4 Density(Some(1_150)) => r#"{"density":1150}"#, "0401fe08";
        5 Cost(Some(4_200)) => r#"{"cost":4200}"#, "0501e820";
        6 Most(Some(percent(20))) => r#"{"most":200000000}"#, "06018084af5f";
        7 MostPigment(Some(percent(12))) => r#"{"most_pigment":120000000}"#, "0701809c9c39";
        8 LowAt(Some(grams(400))) => r#"{"low_at":400000}"#, "080180ea30";
        9 Tub(Some(grams(1_000))) => r#"{"tub":1000000}"#, "090180897a";
        10 Note("Stir well".into()) => r#"{"note":"Stir well"}"#, "0a09537469722077656c6c";
    }

    enum ComponentKind, |kind| Fact::Ink(InkFact::ComponentSet(vec![ComponentField::Kind(kind)])) => {
        0 Base => r#""base""#, "00";
        1 Pigment => r#""pigment""#, "01";
        2 Additive => r#""additive""#, "02";
    }

    enum Hiding, |hiding| Fact::Ink(InkFact::ComponentSet(vec![ComponentField::Hiding(hiding)])) => {
        0 Transparent => r#""transparent""#, "00";
        1 Opaque => r#""opaque""#, "01";
    }

    enum RecipeField, |field| Fact::Ink(InkFact::RecipeSet(vec![field])) => {
        0 Name("Brick red".into()) => r#"{"name":"Brick red"}"#, "0009427269636b20726564";
        1 Colour(Some(Colour { rgb: [0xb2, 0x22, 0x22] })) => r##"{"colour":"#b22222"}"##, "0101b22222";
        2 Target(Some(reading())) =>
            r#"{"target":{"l":52500,"a":41000,"b":-3250,"by":"photo"}}"#,
            "0201a8b406d08005e33201";
        3 Note("For cotton".into()) => r#"{"note":"For cotton"}"#, "030a466f7220636f74746f6e";
        4 ReadOn(ReadOn::Garment) => r#"{"read_on":"garment"}"#, "0401";
    }

    enum ReadOn, |on| Fact::Ink(InkFact::RecipeSet(vec![RecipeField::ReadOn(on)])) => {
        0 Thick => r#""thick""#, "00";
        1 Garment => r#""garment""#, "01";
    }

    enum PotField, |field| Fact::Ink(InkFact::PotSet(vec![field])) => {
        0 Name("B2".into()) => r#"{"name":"B2"}"#, "00024232";
        1 Revision(Some(REVISION)) =>
            r#"{"revision":"00000000-0000-0000-0000-000000000024"}"#,
            "01011000000000000000000000000000000024";
        2 Size(Some(BatchSize::Ink(grams(500)))) => r#"{"size":{"ink":500000}}"#, "020101c0843d";
        3 Capacity(Some(grams(1_000))) => r#"{"capacity":1000000}"#, "030180897a";
        4 Tare(Some(grams(60))) => r#"{"tare":60000}"#, "0401c0a907";
        5 Run(Some(RUN)) =>
            r#"{"run":"00000000-0000-0000-0000-000000000012"}"#,
            "05011000000000000000000000000000000012";
        6 Note("Lid is cracked".into()) => r#"{"note":"Lid is cracked"}"#, "060e4c696420697320637261636b6564";
        7 Closed(true) => r#"{"closed":true}"#, "0701";
    }

    enum BatchSize, |size| Fact::Ink(InkFact::PotSet(vec![PotField::Size(Some(size))])) => {
        0 Whole(grams(510)) => r#"{"whole":510000}"#, "00e0a03e";
        1 Ink(grams(500)) => r#"{"ink":500000}"#, "01c0843d";
    }

    struct PrintUse, |print| Fact::Ink(InkFact::PrintSet(Some(print))) => {
        print_use() =>
            r#"{"width":280000,"height":330000,"coverage":450,"volume":32,"hits":2,"transfer":900,"density":1150,"loss":50}"#,
            "809722a0a428c20320028407fe0832";
    }

    struct Part, |part| Fact::Ink(InkFact::RevisionSaved {
        recipe: RECIPE,
        number: 1,
        parts: vec![Part { share: Share::WHOLE, on_top: false, ..part }, part],
        parent: None,
        pot: None,
        note: String::new(),
        by: None,
    }) => {
        Part { component: COMPONENT, share: percent(5), on_top: true } =>
            r#"{"component":"00000000-0000-0000-0000-000000000021","share":50000000,"on_top":true}"#,
            "100000000000000000000000000000002180e1eb1701";
    }

    enum PourStep, |step| Fact::Ink(InkFact::Poured {
        pot: POT,
        component: COMPONENT,
        grams: grams(10),
        step,
        note: String::new(),
        reading: None,
        by: None,
    }) => {
        0 WeighIn => r#""weigh_in""#, "00";
        1 Correction => r#""correction""#, "01";
        2 TopUp => r#""top_up""#, "02";
    }

    struct ColourReading, |reading| Fact::Ink(InkFact::GarmentRead(Some(reading))) => {
        ColourReading { l: 93_000, a: -1_000, b: 2_500, by: ReadBy::Instrument } =>
            r#"{"l":93000,"a":-1000,"b":2500,"by":"instrument"}"#,
            "90ad0bcf0f882700";
    }

    enum ReadBy, |by| Fact::Ink(InkFact::GarmentRead(Some(ColourReading { by, ..reading() }))) => {
        0 Instrument => r#""instrument""#, "00";
        1 Photo => r#""photo""#, "01";
        2 Screen => r#""screen""#, "02";
    }

    struct DrawdownRecord, |drawdown| Fact::Ink(InkFact::DrawnDown(drawdown)) => {
        DrawdownRecord { share: Share::WHOLE, rest: None, note: String::new(), by: None, ..drawdown() } =>
            r#"{"component":"00000000-0000-0000-0000-000000000021","share":1000000000,"rest":null,"lay":"hiding","seen":{"flat":1800},"note":"","by":null}"#,
            "10000000000000000000000000000000218094ebdc03000002880e0000";
    }

    enum RecordedLayer, |lay| Fact::Ink(InkFact::DrawnDown(DrawdownRecord { lay, ..drawdown() })) => {
        0 Hiding => r#""hiding""#, "00";
        1 Over { film: Film::Hits(2), backing: SwatchMeasurement::Flat(300) } =>
            r#"{"over":{"film":{"hits":2},"backing":{"flat":300}}}"#,
            "01000202ac02";
    }

    enum Film, |film| Fact::Ink(InkFact::DrawnDown(DrawdownRecord {
        lay: RecordedLayer::Over { film, backing: SwatchMeasurement::Flat(300) },
        ..drawdown()
    })) => {
        0 Hits(1) => r#"{"hits":1}"#, "0001";
        1 Wet { um: 60, a_hit: 30 } => r#"{"wet":{"um":60,"a_hit":30}}"#, "013c1e";
    }

    enum SwatchMeasurement, |seen| Fact::Ink(InkFact::DrawnDown(DrawdownRecord { seen, ..drawdown() })) => {
        0 Colour(reading()) => r#"{"colour":{"l":52500,"a":41000,"b":-3250,"by":"photo"}}"#, "00a8b406d08005e33201";
        1 Curve((0..31).map(|band| 200 * band).collect()) =>
            r#"{"curve":[0,200,400,600,800,1000,1200,1400,1600,1800,2000,2200,2400,2600,2800,3000,3200,3400,3600,3800,4000,4200,4400,4600,4800,5000,5200,5400,5600,5800,6000]}"#,
            "011f00c8019003d804a006e807b009f80ac00c880ed00f9811e012a814f015b8178019c81a901cd81da01fe820b022f823c0258827d028982ae02ba82df02e";
        2 Flat(10_000) => r#"{"flat":10000}"#, "02904e";
    }
}

/// What a sample is about.
pub(super) fn subject_of(fact: &InkFact) -> Subject {
    match fact {
        InkFact::ComponentSet(_) => COMPONENT,
        InkFact::RecipeSet(_) => RECIPE,
        InkFact::PotSet(_) => POT,
        InkFact::ScaleSet { .. } => SHOP,
        InkFact::PrintSet(_) => RUN,
        InkFact::GarmentRead(_) => LOT,
        InkFact::RevisionSaved { .. } => REVISION,
        InkFact::Poured { .. } => POUR,
        InkFact::Resized { .. } => RESIZING,
        InkFact::Accepted { .. } => ACCEPTANCE,
        InkFact::Moved { .. } => TRANSFER,
        InkFact::Wasted { .. } => WASTE,
        InkFact::Used { .. } => USE,
        InkFact::SwatchRead { .. } => SWATCH,
        InkFact::Matched { .. } => MATCH,
        InkFact::Approved { .. } => APPROVAL,
        InkFact::Delivered { .. } => DELIVERY,
        InkFact::Counted { .. } => STOCK_COUNT,
        InkFact::DrawnDown(_) => DRAWDOWN,
    }
}
