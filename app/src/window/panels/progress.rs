//! How far something is that is written beside the window.

use egui::{Align2, Context, ProgressBar};

use crate::jobs::watch::Progress;
use crate::window::state::job::Job;

/// Shows how far it is, with a button to stop it; the rest of the window stays as it is. True
/// when it is to be stopped.
pub(crate) fn show(ctx: &Context, job: &Job) -> bool {
    let Progress { done, total } = job.progress();
    let window = egui::Window::new(job.title())
        .id(egui::Id::unique("job"))
        .anchor(Align2::RIGHT_BOTTOM, [-24.0, -24.0])
        .resizable(false)
        .collapsible(false);
    let shown = window.show(ctx, |ui| {
        ui.set_width(320.0);
        ui.add(bar(job.progress()));
        if job.is_stopping() {
            ui.label("Stopping after this step");
        } else if done == total {
            ui.label("Writing");
        } else {
            return ui.button("Cancel").clicked();
        }
        false
    });
    shown.and_then(|shown| shown.inner).unwrap_or(false)
}

/// A bar that shows how far something is.
pub(crate) fn bar(Progress { done, total }: Progress) -> ProgressBar {
    ProgressBar::new(fraction(done, total)).text(format!("{done} of {total}"))
}

#[allow(
    clippy::cast_precision_loss,
    reason = "a bar on the screen shows far less than f32 holds"
)]
fn fraction(done: usize, total: usize) -> f32 {
    done as f32 / total.max(1) as f32
}
