//! How many pairs of which designs are made.

use egui::{DragValue, Label, RichText, Ui};
use reinwright_core::forge::balance::Balance;
use reinwright_core::shop::balance_of;
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::resolve;

use super::{CutList, CutWish};
use crate::disk::folder;
use crate::window::paint::focus::follow;

/// The most pairs of a design that are asked for.
const MOST: u32 = 1000;

/// So many pairs of a design.
#[derive(Debug)]
pub(super) struct Pairs {
    pub(super) design: Document,
    pub(super) balance: Balance,
    pub(super) count: u32,
    from: From,
}

/// Where a design comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum From {
    /// It is open in the window.
    Open,
    File,
}

impl Pairs {
    pub(super) fn open(design: &Document, count: u32) -> Self {
        Self::with(design, count, From::Open)
    }

    pub(super) fn of_file(design: &Document) -> Self {
        Self::with(design, 1, From::File)
    }

    fn with(design: &Document, count: u32, from: From) -> Self {
        Self {
            balance: balance_of(design, &resolve(design)),
            design: design.clone(),
            count,
            from,
        }
    }

    pub(super) fn is_open(&self) -> bool {
        self.from == From::Open
    }

    pub(super) fn name(&self) -> &str {
        match self.design.name.trim() {
            "" => "unnamed",
            name => name,
        }
    }
}

impl CutList {
    /// The designs, each with how many pairs of it.
    pub(super) fn pairs(&mut self, ui: &mut Ui, asked: &mut Vec<CutWish>) {
        ui.label(RichText::new("Pairs to make").size(15.0));
        let mut gone = None;
        for (at, own) in self.pairs.iter_mut().enumerate() {
            ui.push_id(("pairs", at), |ui| {
                ui.horizontal(|ui| {
                    let name = format!("Pairs of {}", own.name());
                    let value = DragValue::new(&mut own.count).range(0..=MOST).speed(0.1);
                    ui.add(value)
                        .accessible_name(name)
                        .on_hover_text("How many pairs are made");
                    if own.from == From::File {
                        let hint = format!("Takes {} off the list", own.name());
                        if ui.small_button("Remove").on_hover_text(hint).clicked() {
                            gone = Some(at);
                        }
                    }
                    ui.add(Label::new(own.name()).truncate())
                        .on_hover_text(format!(
                            "{}, out of {}",
                            own.name(),
                            own.design.bar.stock.words()
                        ));
                });
            });
        }
        if let Some(at) = gone {
            self.pairs.remove(at);
        }
        ui.horizontal(|ui| {
            if ui
                .button("Add a design…")
                .on_hover_text("A design, or every size of a family, from a file")
                .clicked()
            {
                asked.push(CutWish::AskDesign);
            }
            self.designs_of_shop(ui, asked);
        });
    }

    /// The designs of the shop, to choose from.
    fn designs_of_shop(&self, ui: &mut Ui, asked: &mut Vec<CutWish>) {
        let Some(shop) = self.shop() else {
            return;
        };
        ui.menu_button("From the shelf", |ui| match folder::look_into(shop) {
            Err(why) => Self::say_trouble(ui, Some(&why)),
            Ok(looked) if looked.files.is_empty() => {
                ui.weak("There is no design in the shop's folder");
            }
            Ok(looked) => {
                let list = egui::ScrollArea::vertical().max_height(360.0);
                list.show(ui, |ui| {
                    for path in looked.files {
                        if ui.button(folder::name(&path)).clicked() {
                            asked.push(CutWish::Add(path));
                            ui.close();
                        }
                    }
                    follow(ui);
                });
            }
        });
    }
}
