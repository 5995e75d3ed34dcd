//! How many pairs of which designs are made.

use egui::{DragValue, Label, RichText, Ui};
use reinwright_core::forge::balance::Balance;

use super::{CutList, CutWish};
use crate::disk::folder;
use crate::jobs::cut_wanted::Made;
use crate::window::paint::focus::follow;

/// The most pairs of a design that are asked for.
const MOST: u32 = 1000;

/// So many pairs of a design, or so many of a tool.
#[derive(Debug)]
pub(super) struct Pairs {
    pub(super) design: Made,
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
    pub(super) fn open(design: &Made, count: u32) -> Self {
        Self::with(design, count, From::Open)
    }

    pub(super) fn of_file(design: &Made) -> Self {
        Self::with(design, 1, From::File)
    }

    fn with(design: &Made, count: u32, from: From) -> Self {
        Self {
            balance: design.balance(),
            design: design.clone(),
            count,
            from,
        }
    }

    pub(super) fn is_open(&self) -> bool {
        self.from == From::Open
    }

    pub(super) fn name(&self) -> &str {
        match self.design.name().trim() {
            "" => "unnamed",
            name => name,
        }
    }

    /// What the number of them is called.
    fn counted(&self) -> String {
        match &self.design {
            Made::Pair(_) => format!("Pairs of {}", self.name()),
            Made::Tool(_) => format!("How many of {}", self.name()),
        }
    }

    fn hint(&self) -> &'static str {
        match &self.design {
            Made::Pair(_) => "How many pairs are made",
            Made::Tool(_) => "How many of the tool are made",
        }
    }
}

impl CutList {
    /// The designs, each with how many pairs of it.
    pub(super) fn pairs(&mut self, ui: &mut Ui, asked: &mut Vec<CutWish>) {
        ui.label(RichText::new("To make").size(15.0));
        let mut gone = None;
        for (at, own) in self.pairs.iter_mut().enumerate() {
            ui.push_id(("pairs", at), |ui| {
                ui.horizontal(|ui| {
                    let (name, hint) = (own.counted(), own.hint());
                    let value = DragValue::new(&mut own.count).range(0..=MOST).speed(0.1);
                    ui.add(value).accessible_name(name).on_hover_text(hint);
                    if own.from == From::File {
                        let hint = format!("Takes {} off the list", own.name());
                        if ui.small_button("Remove").on_hover_text(hint).clicked() {
                            gone = Some(at);
                        }
                    }
                    ui.add(Label::new(own.name()).wrap()).on_hover_text(format!(
                        "{}, out of {}",
                        own.name(),
                        own.design.bar().stock.words()
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
                .on_hover_text("A pair, a tool, or every size of a family, from a file")
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
