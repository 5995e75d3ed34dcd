//! The cut list: how many pairs of which designs and how many of which tools, out of which bars.

mod list;
mod orders;
mod rack;
mod typed;

use std::path::{Path, PathBuf};

use egui::{CentralPanel, Context, Panel, RichText, ScrollArea, Ui};
use lyon::tessellation::FillTessellator;
use reinwright_core::asked::Units;
use reinwright_core::paper::Paper;
use reinwright_core::shop::cut::{CutPlan, Order, Rack, orders};

use super::wish::{CutWish, RackChange, Wish};
use crate::disk::folder;
use crate::jobs::cut_wanted::Made;
use crate::window::paint::focus::follow;
use crate::window::paint::theme::Palette;
use crate::window::state::cutting::Cutting;
use crate::window::state::rows::capital;
use orders::Pairs;
use rack::Fields;

/// Everything on the page of the cut list.
#[derive(Debug)]
pub(crate) struct CutList {
    pub(crate) units: Units,
    /// What is made.
    pairs: Vec<Pairs>,
    rack: Rack,
    /// The shop's folder, in which the rack is kept, if one is known.
    shop: Option<PathBuf>,
    /// Why the shop's rack could not be read; it is not written over then.
    trouble: Option<String>,
    /// The rack as it was before what was cut was taken off.
    before: Option<Rack>,
    fields: Fields,
    paper: Paper,
    /// What the list is of.
    asked: Option<Asked>,
    cutting: Option<Cutting>,
    found: Found,
}

/// What a list depends on: what is usual, such as the shortest end that is kept, is so in its units.
type Asked = (Vec<Order>, Rack, Units);

/// How far a list is known.
#[derive(Debug, Default)]
struct Found {
    plan: Option<CutPlan>,
    /// Why there is none.
    against: Option<String>,
    /// Whether it was stopped, so that what is shown is of before.
    stopped: bool,
    /// Counts up with each list.
    revision: u64,
}

impl CutList {
    /// A list with nothing on it.
    pub(crate) fn new(units: Units, paper: Paper) -> Self {
        Self {
            units,
            pairs: Vec::new(),
            rack: Rack::default(),
            shop: None,
            trouble: None,
            before: None,
            fields: Fields::default(),
            paper,
            asked: None,
            cutting: None,
            found: Found::default(),
        }
    }

    /// Takes the rack of a shop; what was written down here without one is laid on it and kept there.
    ///
    /// # Errors
    /// One sentence when it cannot be kept there; the list stays as it was then.
    pub(crate) fn go_to_shop(&mut self, shop: PathBuf) -> Result<(), String> {
        match folder::rack(&shop) {
            Ok(mut rack) => {
                if self.shop.is_none() && self.rack != Rack::default() {
                    rack::put(&mut rack, &RackChange::Lay(self.rack.bars.clone()));
                    for sold in &self.rack.sold {
                        rack::put(&mut rack, &RackChange::Sell(*sold));
                    }
                    rack.kerf = rack.kerf.or(self.rack.kerf);
                    rack.crop = rack.crop.or(self.rack.crop);
                    rack.least_offcut = rack.least_offcut.or(self.rack.least_offcut);
                    folder::keep_rack(&shop, &rack)?;
                }
                self.trouble = None;
                self.rack = rack;
                self.shop = Some(shop);
            }
            Err(why) => self.trouble = Some(why),
        }
        self.before = None;
        Ok(())
    }

    /// What is open comes first, as it stands now, in place of what was open before. What was added from
    /// its file already is not cut a second time.
    pub(crate) fn open(&mut self, designs: Vec<Made>) {
        let known = |design: &Made| {
            let same = |own: &&Pairs| own.is_open() && own.name() == design.name();
            self.pairs.iter().find(same).map_or(1, |own| own.count)
        };
        let added = |design: &&Made| {
            let same = |own: &Pairs| !own.is_open() && own.design == **design;
            self.pairs.iter().any(same)
        };
        let open = designs
            .iter()
            .filter(|design| !added(design))
            .map(|design| Pairs::open(design, known(design)));
        let open: Vec<Pairs> = open.collect();
        self.pairs.retain(|own| !own.is_open());
        self.pairs.splice(0..0, open);
    }

    /// What is in a file is made too.
    pub(crate) fn add(&mut self, designs: &[Made]) {
        self.pairs.extend(designs.iter().map(Pairs::of_file));
    }

    /// Changes the rack, and keeps it with the shop if there is one.
    ///
    /// # Errors
    /// One sentence when it cannot be kept; nothing is changed then.
    pub(crate) fn change(&mut self, change: &RackChange) -> Result<(), String> {
        if let Some(trouble) = &self.trouble {
            return Err(format!(
                "{trouble}. Mend or remove that file, then open the list anew"
            ));
        }
        // Another window may have changed it since: that stays.
        let mut rack = match &self.shop {
            Some(shop) => folder::rack(shop)?,
            None => self.rack.clone(),
        };
        let was = rack.clone();
        match change {
            RackChange::TakeOff => {
                let Some(plan) = &self.found.plan else {
                    return Ok(());
                };
                rack = rack.without(plan, self.units);
            }
            RackChange::PutBack => match &self.before {
                Some(before) => rack = before.clone(),
                None => return Ok(()),
            },
            other => rack::put(&mut rack, other),
        }
        if let Some(shop) = &self.shop {
            folder::keep_rack(shop, &rack)?;
        }
        self.rack = rack;
        let cut = *change == RackChange::TakeOff;
        self.before = cut.then_some(was);
        if cut {
            // The list stays as it was cut, though the bars are gone.
            self.asked = Some(self.asks());
        }
        Ok(())
    }

    fn orders(&self) -> Vec<Order> {
        let wanted = self.pairs.iter().filter(|own| own.count > 0);
        orders(wanted.map(|own| own.design.order(&own.balance, own.count)))
    }

    fn asks(&self) -> Asked {
        (self.orders(), self.rack.clone(), self.units)
    }

    /// The plan that is shown, to be printed.
    pub(crate) fn plan(&self) -> Option<&CutPlan> {
        self.found.plan.as_ref()
    }

    /// Whether there is anything on it to be printed.
    pub(crate) fn can_be_printed(&self) -> bool {
        self.plan().is_some_and(|plan| !plan.stocks.is_empty())
    }

    /// The paper that it is printed on.
    pub(crate) fn paper(&self) -> Paper {
        self.paper
    }

    /// Looks for the list anew where something else is asked, and takes in what was found.
    fn follow(&mut self, ctx: &Context) {
        let asked = self.asks();
        if self.asked.as_ref() != Some(&asked) {
            let (orders, rack, units) = asked.clone();
            self.asked = Some(asked);
            self.before = None;
            self.found.stopped = false;
            self.cutting = Some(Cutting::start(ctx, orders, rack, units));
        }
        let Some(found) = self.cutting.as_ref().and_then(|cutting| cutting.poll(ctx)) else {
            return;
        };
        self.cutting = None;
        self.found.revision += 1;
        match found {
            Ok(Some(plan)) => (self.found.plan, self.found.against) = (Some(plan), None),
            Ok(None) => self.found.stopped = true,
            Err(why) => (self.found.plan, self.found.against) = (None, Some(why.to_string())),
        }
    }

    /// Shows everything under the menu. `behind` is what the design or family behind it is called.
    pub(crate) fn show(
        &mut self,
        ui: &mut Ui,
        behind: &str,
        fills: &mut FillTessellator,
    ) -> Vec<Wish> {
        self.follow(ui.ctx());
        let mut asked = Vec::new();
        Panel::top("cut head").show(ui, |ui| {
            ui.add_space(4.0);
            self.head(ui, behind, &mut asked);
            ui.add_space(2.0);
        });
        Panel::left("cut wanted")
            .default_size(340.0)
            .size_range(300.0..=480.0)
            .show(ui, |ui| {
                let page = ScrollArea::vertical().auto_shrink([false, false]);
                page.show(ui, |ui| {
                    self.pairs(ui, &mut asked);
                    self.show_rack(ui, &mut asked);
                    follow(ui);
                });
            });
        CentralPanel::default().show(ui, |ui| self.list(ui, fills));
        asked.into_iter().map(Wish::Cut).collect()
    }

    fn head(&mut self, ui: &mut Ui, behind: &str, asked: &mut Vec<CutWish>) {
        ui.horizontal_wrapped(|ui| {
            ui.label(RichText::new("Cut list").size(18.0).strong());
            let ready = self.can_be_printed();
            let mut wish = |ui: &mut Ui, (label, tip): (&str, &str), can: bool, wish: CutWish| {
                let button = ui.add_enabled(can, egui::Button::new(label));
                if button.on_hover_text(tip).clicked() {
                    asked.push(wish);
                }
            };
            let tip = "The bars with their pieces as PDF";
            wish(ui, ("Print the list", tip), ready, CutWish::Print(self.paper));
            egui::ComboBox::from_id_salt("cut paper")
                .selected_text(capital(&self.paper.to_string()))
                .show_ui(ui, |ui| {
                    for paper in Paper::NAMED {
                        ui.selectable_value(&mut self.paper, paper, capital(&paper.to_string()));
                    }
                })
                .response
                .accessible_name("Paper");
            if self.before.is_some() {
                let tip = "Lays the bars on the rack again, as they were before the list was cut";
                let back = CutWish::Rack(RackChange::PutBack);
                wish(ui, ("Put them back", tip), true, back);
            } else {
                let tip = "The bars are cut: takes them off the rack, and puts back the ends that are worth keeping";
                let off = CutWish::Rack(RackChange::TakeOff);
                wish(ui, ("Take off the rack", tip), ready && !self.found.stopped, off);
            }
            ui.separator();
            let back = format!("Back to {behind}");
            wish(ui, (&back, "Leaves the cut list"), true, CutWish::Leave);
        });
    }

    /// What cannot be read or kept, in one line.
    fn say_trouble(ui: &mut Ui, trouble: Option<&str>) {
        if let Some(trouble) = trouble {
            ui.colored_label(Palette::of(ui.visuals()).stop, trouble);
        }
    }

    /// The shop's folder.
    pub(crate) fn shop(&self) -> Option<&Path> {
        self.shop.as_deref()
    }
}
