//! How long a design takes from document to answers and paper. Figures to reach: all answers of
//! one design under 1 ms, a template on A4 under 50 ms.
#![allow(missing_docs, reason = "criterion's macros make public items")]

use std::hint::black_box;
use std::time::Duration;

use criterion::{Criterion, criterion_group, criterion_main};
use kurbo::Vec2;
use reinwright_core::balance::balance;
use reinwright_core::document::{Document, parse_bar, parse_work};
use reinwright_core::drawing::{DrawOptions, bar, half, pair, sheet::Paper};
use reinwright_core::family::{Family, Size, answer_all};
use reinwright_core::fit::fit;
use reinwright_core::handle::{OnPaper, Step, drag, handles};
use reinwright_core::strength::{StrengthLoad, strength_on};
use reinwright_core::units::{Length, Unit};
use reinwright_core::{finding, resolve};

/// One design of each jaw style that the trade makes most.
fn designs() -> Vec<Document> {
    [
        ("flat", "3/8 in flat", "3/4 in square"),
        ("v bit", "16 mm square on corners", "20 mm round"),
        ("hollow bit", "5/8 in round", "3/4 in square"),
    ]
    .into_iter()
    .map(|(jaw, work, bar)| {
        let work = parse_work(work).expect("a size and a shape");
        let bar = parse_bar(bar).expect("a size and a shape");
        Document::starting(jaw, work, bar).expect("a style of that name")
    })
    .collect()
}

fn stages(c: &mut Criterion) {
    for design in designs() {
        let model = resolve(&design);
        let account = balance(&design, &model);
        let load = StrengthLoad::default();
        let mut group = c.benchmark_group(design.jaw.name());
        group.bench_function("resolve", |b| b.iter(|| resolve(black_box(&design))));
        group.bench_function("balance", |b| {
            b.iter(|| balance(&design, black_box(&model)));
        });
        group.bench_function("findings", |b| {
            b.iter(|| finding::all(&design, black_box(&model)));
        });
        group.bench_function("fit", |b| b.iter(|| fit(&design, black_box(&model))));
        let fitted = fit(&design, &model);
        let held = fitted.nominal.as_ref().ok();
        group.bench_function("strength", |b| {
            b.iter(|| strength_on(&design, black_box(&model), held, &load));
        });
        group.bench_function("pair", |b| {
            b.iter(|| pair(&design, black_box(&model), &DrawOptions::default()));
        });
        group.bench_function("half", |b| b.iter(|| half(&design, black_box(&model))));
        group.bench_function("bar", |b| b.iter(|| bar(&design, black_box(&account), 3.5)));
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

/// What the window does when a value changes.
fn everything(design: &Document) -> usize {
    let model = resolve(design);
    let account = balance(design, &model);
    let fits = fit(design, &model);
    let held = fits.nominal.as_ref().ok();
    let lasts = strength_on(design, &model, held, &StrengthLoad::default());
    let found = finding::of(design, &model, &fits, &lasts);
    let drawn = pair(design, &model, &DrawOptions::default());
    let strip = bar(design, &account, 3.5);
    found.len() + drawn.items.len() + strip.items.len()
}

fn paper(c: &mut Criterion) {
    let design = &designs()[0];
    c.bench_function("template on A4", |b| {
        b.iter(|| reinwright::printing::template_pdf(black_box(design), Paper::A4, None));
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

criterion_group! {
    name = benches;
    config = short();
    targets = stages, paper, family
}
criterion_main!(benches);
