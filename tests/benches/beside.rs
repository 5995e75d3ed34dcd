//! What the nearest general-purpose library takes for the same work, in the same run: a solid
//! weighed by parry3d from its triangles, a page written by printpdf alone.
#![allow(missing_docs, reason = "criterion's macros make public items")]

use std::hint::black_box;
use std::time::Duration;

use criterion::{BatchSize, Criterion, criterion_group, criterion_main};
use printpdf::{PdfDocument, PdfParseOptions, PdfSaveOptions};
use reinwright::jobs::pages::Consent;
use reinwright::jobs::printing::Template;
use reinwright_core::paper::sheet::Paper;
use reinwright_core::tongs::resolve;
use reinwright_tests::mesh::Mesh;
use reinwright_tests::{close, pairs};

/// Volume and moments of half a pair: ours from its sections, parry3d's from a mesh that is there
/// already.
fn solid(c: &mut Criterion) {
    let design = pairs::v_bit();
    let model = resolve(&design);
    let mesh = Mesh::half(&model.a);
    close(
        "the same solid",
        model.a.volume_mm3(),
        mesh.measured().volume_mm3,
        1e-3,
    );
    let mut group = c.benchmark_group("a half weighed");
    group.bench_function("from its sections", |b| {
        let anew = || resolve(&design);
        b.iter_batched_ref(anew, |model| model.a.mass(), BatchSize::SmallInput);
    });
    group.bench_function("by parry3d, its mesh given", |b| {
        b.iter(|| black_box(&mesh).measured());
    });
    group.finish();
}

/// The template of a pair: laid out and written, and the pages as they are written once more.
fn pages(c: &mut Criterion) {
    let design = pairs::v_bit();
    let template = || Template::of(&design, None).pdf(Paper::A4, Consent::All);
    let written = template().expect("a few pages");
    let mut warnings = Vec::new();
    let read = PdfDocument::parse(&written, &PdfParseOptions::default(), &mut warnings)
        .expect("printpdf reads what it wrote");
    let plain = PdfSaveOptions {
        secure: false,
        ..PdfSaveOptions::default()
    };
    let mut group = c.benchmark_group("a template on A4");
    group.bench_function("laid out and written", |b| b.iter(template));
    group.bench_function("the same ink by printpdf alone", |b| {
        b.iter(|| read.save(black_box(&plain), &mut Vec::new()));
    });
    group.finish();
}

/// Short runs, as in the other benches.
fn short() -> Criterion {
    Criterion::default()
        .warm_up_time(Duration::from_millis(400))
        .measurement_time(Duration::from_millis(1500))
        .sample_size(30)
}

criterion_group!(name = benches; config = short(); targets = solid, pages);
criterion_main!(benches);
