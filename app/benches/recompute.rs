//! How long a design takes from document to answers and paper. Figures to reach: all answers of
//! one design under 1 ms, its ways to mend under 50 ms, a template on A4 under 50 ms, how it is made
//! with all stages under 2 ms, its heats in six sources under 5 ms for forty operations.
#![allow(missing_docs, reason = "criterion's macros make public items")]

use std::hint::black_box;
use std::ops::ControlFlow;
use std::time::Duration;

use criterion::{BatchSize, Bencher, Criterion, criterion_group, criterion_main};
use kurbo::Vec2;
use reinwright::jobs::pages::Consent;
use reinwright::jobs::printing::Template;
use reinwright_core::asked::{Units, parse_bar, parse_work};
use reinwright_core::draw::handle::{OnPaper, Step, drag, handles, node_handles};
use reinwright_core::draw::{DrawOptions, half, pair};
use reinwright_core::finding::{Part, Severity};
use reinwright_core::forge::bar;
use reinwright_core::heats::{Prepared, SourceKind, Sources, heat_plan};
use reinwright_core::making::{Plan, plan, usual};
use reinwright_core::paper::sheet::Paper;
use reinwright_core::proof::fit::fit;
use reinwright_core::proof::strength::{StrengthLoad, strength_on};
use reinwright_core::shop::cut::{Lying, Order, Rack, Sold, Wanted, plan as cut_plan};
use reinwright_core::shop::family::{Family, Size, answer_all};
use reinwright_core::shop::mend::ways;
use reinwright_core::shop::{Answers, balance_of};
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::jaw::JawKind;
use reinwright_core::tongs::model::Model;
use reinwright_core::tongs::resolve;
use reinwright_core::units::{Length, Unit};

/// One design of each jaw style that the trade makes most.
fn designs() -> Vec<Document> {
    [
        (JawKind::Flat, "3/8 in flat", "3/4 in square"),
        (JawKind::VBit, "16 mm square on corners", "20 mm round"),
        (JawKind::HollowBit, "5/8 in round", "3/4 in square"),
    ]
    .into_iter()
    .map(|(jaw, work, bar)| {
        let work = parse_work(work).expect("a size and a shape");
        let bar = parse_bar(bar).expect("a size and a shape");
        Document::starting(jaw, work, bar)
    })
    .collect()
}

/// Every other style, on work that most of them hold: round bar.
fn others() -> Vec<Document> {
    let made_most = designs();
    let measured = |kind: &JawKind| made_most.iter().any(|design| design.jaw.kind() == *kind);
    let kinds = JawKind::ALL
        .iter()
        .filter(|kind| **kind != JawKind::Sketch && !measured(kind));
    kinds
        .map(|&jaw| {
            let work = parse_work("5/8 in round").expect("a size and a shape");
            let bar = parse_bar("3/4 in square").expect("a size and a shape");
            Document::starting(jaw, work, bar)
        })
        .collect()
}

fn every_style(c: &mut Criterion) {
    for design in others() {
        let mut group = c.benchmark_group(design.jaw.name());
        group.bench_function("everything", |b| b.iter(|| everything(black_box(&design))));
        group.finish();
    }
}

/// Times an answer to a model that has none yet: a model keeps what it was asked for once.
fn anew<T>(b: &mut Bencher<'_>, design: &Document, answer: impl Fn(&Model) -> T) {
    let model = || resolve(design);
    b.iter_batched_ref(model, |model| answer(model), BatchSize::SmallInput);
}

fn stages(c: &mut Criterion) {
    for design in designs() {
        let model = resolve(&design);
        let account = balance_of(&design, &model);
        let load = StrengthLoad::default();
        let mut group = c.benchmark_group(design.jaw.name());
        group.bench_function("resolve", |b| b.iter(|| resolve(black_box(&design))));
        group.bench_function("balance", |b| {
            anew(b, &design, |model| balance_of(&design, model));
        });
        group.bench_function("findings", |b| {
            b.iter(|| Answers::to(black_box(&design)).findings);
        });
        group.bench_function("fit", |b| anew(b, &design, |model| fit(&design, model)));
        let fitted = fit(&design, &model);
        let held = fitted.nominal.as_ref().ok();
        group.bench_function("strength", |b| {
            anew(b, &design, |model| strength_on(&design, model, held, &load));
        });
        group.bench_function("pair", |b| {
            anew(b, &design, |model| {
                pair(&design, model, &DrawOptions::default())
            });
        });
        group.bench_function("half", |b| {
            anew(b, &design, |model| {
                half(&design, model, &DrawOptions::default())
            });
        });
        group.bench_function("bar", |b| {
            b.iter(|| bar((&design.bar, design.units), black_box(&account), 3.5));
        });
        let made = plan(&design, &model, &account, usual(&design, &model));
        let long = forty(&made);
        let sources = six_sources();
        group.bench_function("heats of 40 operations, 6 sources", |b| {
            b.iter(|| heat_plan(&Prepared::new(design.bar.steel, black_box(&long), &sources)));
        });
        group.bench_function("plan and all stages", |b| {
            anew(b, &design, |model| {
                plan(&design, model, &account, usual(&design, model))
            });
        });
        let held = handles(&design, &model);
        group.bench_function("handles", |b| {
            b.iter(|| handles(&design, black_box(&model)));
        });
        let on = OnPaper::default();
        let pulled = (Vec2::new(3.0, 1.0), &on);
        group.bench_function("drag", |b| {
            b.iter(|| drag(&design, black_box(&held[0]), pulled, Step::Usual));
        });
        group.bench_function("everything", |b| b.iter(|| everything(black_box(&design))));
        group.finish();
    }
}

/// A plan of forty operations: those of a design over and over.
fn forty(made: &Plan) -> Plan {
    const OPERATIONS: usize = 40;
    let again = made.stages.iter().cycle().cloned();
    Plan {
        stages: again.take(OPERATIONS + OPERATIONS / 10 + 1).collect(),
        ..made.clone()
    }
}

/// The ready examples and one more coil.
fn six_sources() -> Sources {
    let mut sources = Sources::default();
    let mut more = sources.sources[4].clone();
    more.name = "wider coil".to_owned();
    if let SourceKind::Coil(coil) = &mut more.kind {
        coil.bore = Length::fraction(2, 1, Unit::Inch);
    }
    sources.sources.push(more);
    sources
}

/// What the window does when a value changes.
fn everything(design: &Document) -> usize {
    let answers = Answers::to(design);
    let drawn = pair(design, &answers.model, &DrawOptions::default());
    let strip = bar((&design.bar, design.units), &answers.balance, 3.5);
    answers.findings.len() + drawn.items.len() + strip.items.len()
}

/// A jaw drawn by hand, of so many nodes: a bolt jaw long enough for them, with nodes added where
/// they are farthest apart.
fn sketch(nodes: usize) -> Document {
    let work = parse_work("1 1/2 in round").expect("a size and a shape");
    let bar = parse_bar("1 1/4 in square").expect("a size and a shape");
    let mut design = Document::starting(JawKind::Bolt, work, bar);
    design.jaw = design.jaw.sketched(work.size());
    let length = design.jaw.length.mm();
    let mut drawn = design.jaw.sketch().expect("it was turned into one").clone();
    for count in drawn.nodes.len()..nodes {
        let place = |node: &usize| drawn.nodes[node + 1].x.mm() - drawn.nodes[*node].x.mm();
        let room = (0..count - 1).filter(|node| drawn.has_room_after(*node, length));
        let widest = room.max_by(|a, b| place(a).total_cmp(&place(b)));
        drawn = drawn.with_node_after(widest.expect("the jaw has room for the nodes"), length);
        assert_eq!(
            drawn.nodes.len(),
            count + 1,
            "the jaw has room for the nodes"
        );
    }
    design.jaw = design.jaw.with_sketch(drawn);
    design
}

/// A frame of dragging a node of a jaw of sixty: the new design and all answers to it.
fn drawing_by_hand(c: &mut Criterion) {
    let design = sketch(60);
    let model = resolve(&design);
    let held = node_handles(&design, &model, (Part::Jaw, 30));
    let middle = held.iter().find(|handle| handle.label.ends_with("place"));
    let middle = middle.expect("every node has a place");
    let on = OnPaper::default();
    let mut group = c.benchmark_group("sketch of 60 nodes");
    group.bench_function("everything", |b| b.iter(|| everything(black_box(&design))));
    group.bench_function("handles", |b| {
        b.iter(|| handles(&design, black_box(&model)));
    });
    group.bench_function("a frame of dragging a node", |b| {
        b.iter(|| {
            let pulled = (Vec2::new(0.3, 0.4), &on);
            let dragged = drag(&design, black_box(middle), pulled, Step::Fine);
            everything(&dragged.document)
        });
    });
    group.finish();
}

fn paper(c: &mut Criterion) {
    let design = &designs()[0];
    c.bench_function("template on A4", |b| {
        b.iter(|| Template::of(black_box(design), None).pdf(Paper::A4, Consent::All));
    });
}

/// All answers to a family of a hundred sizes, one after the other on one core.
fn family(c: &mut Criterion) {
    let base = &designs()[0];
    let mut family = Family::from_design(base);
    family.sizes = (0..100u32)
        .map(|i| Length::decimal(5.0 + 0.2 * f64::from(i), Unit::Millimetre))
        .map(|size| Size::new(base.work.with_size(size)))
        .collect();
    c.bench_function("family of 100, all answers", |b| {
        b.iter(|| answer_all(black_box(&family)));
    });
}

/// Short runs: what changed by a tenth shows, and all of it is done in two minutes.
fn short() -> Criterion {
    Criterion::default()
        .warm_up_time(Duration::from_millis(400))
        .measurement_time(Duration::from_millis(1500))
        .sample_size(30)
}

/// The ways to mend designs with one thing wrong and with many. Figure to reach: under 50 ms.
fn mends(c: &mut Criterion) {
    let mut group = c.benchmark_group("ways to mend");
    let spoilt: [(&str, &[(&str, &str)]); 3] = [
        ("a deep neck", &[("neck.depth", "13/16 in")]),
        ("a thin rein", &[("rein.start.depth", "1/4 in")]),
        (
            "nine findings",
            &[
                ("rivet.hole", "1/2 in"),
                ("neck.depth", "1/4 in"),
                ("boss.thickness", "5/16 in"),
                ("rein.gap", "1/4 in"),
                ("shoulder.fillet", "1/32 in"),
            ],
        ),
    ];
    for (name, values) in spoilt {
        let mut design = designs().swap_remove(0);
        for (path, text) in values {
            design.set(path, text).expect("a value");
        }
        let answers = Answers::to(&design);
        assert!(
            answers.worst() > Some(Severity::Note),
            "there is something to mend"
        );
        group.bench_function(name, |b| b.iter(|| ways(black_box(&design), &answers)));
    }
    group.finish();
}

/// Lengths of bar as a shop might want them, so many of so many kinds, mm.
fn wanted(pieces: u32, kinds: u32) -> Order {
    let wanted = |kind: u32| Wanted {
        what: format!("pair {kind}"),
        length_mm: 320.0 + f64::from(kind * 7919 % 613),
        count: pieces / kinds,
    };
    Order {
        bar: parse_bar("16 mm square").expect("a size and a shape"),
        pieces: (0..kinds).map(wanted).collect(),
        kerf_mm: 1.5,
        crop_mm: 0.0,
    }
}

/// Cut lists. Figures to reach: 60 pieces out of 10 bars under 100 ms, 1,000 pieces under 1 s.
fn cut_lists(c: &mut Criterion) {
    let mut group = c.benchmark_group("cut list");
    group.sample_size(10);
    for (pieces, kinds) in [
        (60, 4),
        (60, 20),
        (60, 60),
        (1000, 10),
        (1000, 50),
        (1000, 500),
    ] {
        let order = [wanted(pieces, kinds)];
        let length = if pieces == 60 { 3650.0 } else { 6000.0 };
        let length = Length::decimal(length, Unit::Millimetre);
        let bar = order[0].bar;
        let rack = Rack {
            bars: vec![Lying {
                bar,
                length,
                count: 8,
            }],
            sold: vec![Sold {
                bar,
                length,
                price: Some(18.5),
            }],
            ..Rack::default()
        };
        let go_on = &mut |_: usize| ControlFlow::Continue(());
        let plan = cut_plan(&order, &rack, Units::Millimetre, go_on).expect("bars are long enough");
        let stock = &plan.expect("nobody stops it").stocks[0];
        let name = format!("{pieces} pieces of {kinds} lengths");
        assert!(
            stock.proven_least || kinds > 100,
            "{name}: a shop's list is proven"
        );
        group.bench_function(name, |b| {
            b.iter(|| {
                let go_on = &mut |_: usize| ControlFlow::Continue(());
                cut_plan(black_box(&order), &rack, Units::Millimetre, go_on)
            });
        });
    }
    group.finish();
}

criterion_group! {
    name = benches;
    config = short();
    targets = stages, every_style, mends, drawing_by_hand, paper, family, cut_lists
}
criterion_main!(benches);
