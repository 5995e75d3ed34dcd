//! The heats of a pair or of a tool, reckoned in a thread so that no frame waits for them.

use std::collections::BTreeMap;
use std::rc::Rc;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::mpsc::{Receiver, Sender, TryRecvError, channel};

use egui::Context;
use reinwright_core::finding::Finding;
use reinwright_core::heats::course::{Course, Warmth, course};
use reinwright_core::heats::helper::{Advice, best_coil};
use reinwright_core::heats::{
    Compared, HeatPlan, Prepared, Priced, Riveted, Sources, compare, heat_plan, no_longer, noticed,
    priced, riveted, scale_percent,
};
use reinwright_core::making::Plan;
use reinwright_core::shop::Answers;
use reinwright_core::steel::Steel;
use reinwright_core::tongs::document::Document;
use reinwright_core::tool::Tool;
use reinwright_core::units::Show;

use super::bar::Forged;
use super::making::Planned;

/// The heats of one plan in one shop.
#[derive(Debug)]
pub(crate) struct Heat {
    pub(crate) plan: Plan,
    pub(crate) prepared: Prepared,
    pub(crate) heats: HeatPlan,
    pub(crate) findings: Vec<Finding>,
    /// From where on each source no longer serves.
    pub(crate) no_longer: Vec<Option<String>>,
    pub(crate) scale_percent: f64,
    /// The pair once it is riveted; nothing of a tool.
    pub(crate) riveted: Option<Riveted>,
    pub(crate) of: Forged,
    pub(crate) show: Show,
}

/// What is heated.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Subject<'a> {
    Pair(&'a Document, &'a Answers),
    Tool(&'a Tool),
}

impl Subject<'_> {
    /// What sizes are shown in.
    pub(crate) fn show(self) -> Show {
        match self {
            Self::Pair(document, _) => document.units.show(),
            Self::Tool(tool) => tool.units.show(),
        }
    }

    /// What it is made of.
    pub(crate) fn steel(self) -> Steel {
        match self {
            Self::Pair(document, _) => document.bar.steel,
            Self::Tool(tool) => tool.bar.steel,
        }
    }

    /// The pair, if it is one: only a pair is riveted, and has procedures to be compared.
    fn pair(self) -> Option<(Document, Answers)> {
        match self {
            Self::Pair(document, answers) => Some((document.clone(), answers.clone())),
            Self::Tool(_) => None,
        }
    }

    fn of(self) -> Forged {
        match self {
            Self::Pair(..) => Forged::Pair,
            Self::Tool(_) => Forged::Tool,
        }
    }
}

/// What is known so far.
#[derive(Debug)]
pub(crate) struct Known {
    pub(crate) heat: Arc<Heat>,
    pub(crate) priced: Option<Vec<Priced>>,
    pub(crate) compared: Option<Vec<Compared>>,
    /// Heats that were followed, by row and source.
    courses: BTreeMap<(usize, usize), Course>,
    /// How warm the piece comes to each row.
    before: BTreeMap<usize, Warmth>,
    /// The best coil, once it was asked for.
    pub(crate) coil: Option<Option<Advice>>,
}

/// A step on the way to the answer.
enum Told {
    Heat(Box<Heat>),
    Course((usize, usize), Warmth, Box<Course>),
    Others(Vec<Priced>, Vec<Compared>),
}

/// A thread that was asked.
#[derive(Debug)]
struct Seeking {
    told: Receiver<Told>,
    stop: Arc<AtomicBool>,
    /// Whether the heats themselves are still to come.
    is_first: bool,
}

impl Drop for Seeking {
    fn drop(&mut self) {
        self.stop.store(true, Ordering::Relaxed);
    }
}

/// What is asked, what is sought, what is known.
#[derive(Debug, Default)]
pub(crate) struct Heating {
    asked: Option<(Rc<Planned>, Sources, Show)>,
    seeking: Option<Seeking>,
    known: Option<Known>,
    /// A heat that is followed beside the plan.
    beside: Option<((usize, usize), Receiver<Course>)>,
    coil: Option<Receiver<Option<Advice>>>,
}

impl Heating {
    /// Asks for the heats of a plan in a shop, and takes in what has become known. While the heats of
    /// an older design are on their way they are waited for, and shown as such, so that a size that
    /// is dragged has its heats with it.
    pub(crate) fn follow(
        &mut self,
        ctx: &Context,
        (planned, shop): (&Rc<Planned>, &Sources),
        subject: Subject<'_>,
    ) {
        self.poll(ctx);
        let show = subject.show();
        let same = self.asked.as_ref().is_some_and(|(own, sources, units)| {
            Rc::ptr_eq(own, planned) && sources == shop && *units == show
        });
        let waits = self.seeking.as_ref().is_some_and(|own| own.is_first);
        if same || waits {
            return;
        }
        self.asked = Some((Rc::clone(planned), shop.clone(), show));
        self.beside = None;
        self.coil = None;
        let question = Question {
            pair: subject.pair(),
            of: subject.of(),
            steel: subject.steel(),
            show,
            plan: planned.plan.clone(),
            shop: shop.clone(),
        };
        self.seeking = Some(question.ask(ctx));
        self.poll(ctx);
    }

    fn poll(&mut self, ctx: &Context) {
        while let Some(seeking) = &mut self.seeking {
            match seeking.told.try_recv() {
                Ok(Told::Heat(heat)) => {
                    seeking.is_first = false;
                    self.known = Some(Known::of(*heat));
                    ctx.request_repaint();
                }
                Ok(told) => {
                    if let Some(known) = &mut self.known {
                        known.take(told);
                    }
                }
                Err(TryRecvError::Empty) => break,
                Err(TryRecvError::Disconnected) => self.seeking = None,
            }
        }
        self.poll_beside();
    }

    fn poll_beside(&mut self) {
        let Some(known) = &mut self.known else { return };
        if let Some((at, told)) = &self.beside {
            match told.try_recv() {
                Ok(course) => {
                    known.courses.insert(*at, course);
                    self.beside = None;
                }
                Err(TryRecvError::Disconnected) => self.beside = None,
                Err(TryRecvError::Empty) => {}
            }
        }
        if let Some(told) = &self.coil {
            match told.try_recv() {
                Ok(advice) => {
                    known.coil = Some(advice);
                    self.coil = None;
                }
                Err(TryRecvError::Disconnected) => self.coil = None,
                Err(TryRecvError::Empty) => {}
            }
        }
    }

    /// What is known; of a design that has changed meanwhile while its own is on the way.
    pub(crate) fn known(&self) -> Option<&Known> {
        self.known.as_ref()
    }

    /// Whether what is known is of the design as it stands.
    pub(crate) fn is_current(&self) -> bool {
        !self.seeking.as_ref().is_some_and(|own| own.is_first)
    }

    /// A heat followed through piece and time; looked for where it is not known yet.
    pub(crate) fn course(&mut self, ctx: &Context, at: (usize, usize)) -> Option<&Course> {
        let known = self.known.as_ref()?;
        let sought =
            known.courses.contains_key(&at) || known.is_on_its_way(at) && self.seeking.is_some();
        if !sought && self.beside.is_none() && self.is_current() {
            self.beside = Some((at, known.follow(ctx, at)));
        }
        self.known.as_ref()?.courses.get(&at)
    }

    /// Looks for the coil that would do the most.
    pub(crate) fn ask_coil(&mut self, ctx: &Context) {
        let Some(known) = &self.known else { return };
        let (teller, told) = channel();
        let (heat, ctx) = (Arc::clone(&known.heat), ctx.clone());
        std::thread::spawn(move || {
            let advice = best_coil(&[&heat.prepared], heat.show.unit);
            if teller.send(advice).is_ok() {
                ctx.request_repaint();
            }
        });
        self.coil = Some(told);
    }

    /// Whether that coil is looked for.
    pub(crate) fn is_after_coil(&self) -> bool {
        self.coil.is_some()
    }
}

impl Known {
    fn of(heat: Heat) -> Self {
        Self {
            heat: Arc::new(heat),
            priced: None,
            compared: None,
            courses: BTreeMap::new(),
            before: BTreeMap::new(),
            coil: None,
        }
    }

    fn take(&mut self, told: Told) {
        match told {
            Told::Heat(heat) => *self = Self::of(*heat),
            Told::Course(at, before, course) => {
                self.before.insert(at.0, before);
                self.courses.insert(at, *course);
            }
            Told::Others(priced, compared) => {
                self.priced = Some(priced);
                self.compared = Some(compared);
            }
        }
    }

    /// Whether the plan has it, so that it is followed with all others.
    fn is_on_its_way(&self, (row, source): (usize, usize)) -> bool {
        let own = self.heat.heats.operations.get(row);
        own.is_some_and(|own| own.source == Some(source))
    }

    fn follow(&self, ctx: &Context, at: (usize, usize)) -> Receiver<Course> {
        let (teller, told) = channel();
        let start = self.before.get(&at.0).cloned().unwrap_or_default();
        let (heat, ctx) = (Arc::clone(&self.heat), ctx.clone());
        std::thread::spawn(move || {
            let found = course(&heat.prepared, at, &start);
            if found.is_some_and(|found| teller.send(found).is_ok()) {
                ctx.request_repaint();
            }
        });
        told
    }
}

/// All that the answer follows from.
struct Question {
    pair: Option<(Document, Answers)>,
    of: Forged,
    steel: Steel,
    show: Show,
    plan: Plan,
    shop: Sources,
}

impl Question {
    fn ask(self, ctx: &Context) -> Seeking {
        let (teller, told) = channel();
        let stop = Arc::new(AtomicBool::new(false));
        let (stopped, ctx) = (Arc::clone(&stop), ctx.clone());
        std::thread::spawn(move || {
            let answer = Answer {
                teller,
                stopped,
                ctx,
            };
            answer.to(&self);
        });
        Seeking {
            told,
            stop,
            is_first: true,
        }
    }

    fn heat(&self) -> Heat {
        let show = self.show;
        let prepared = Prepared::new(self.steel, &self.plan, &self.shop);
        let heats = heat_plan(&prepared);
        Heat {
            findings: noticed(&prepared, &heats, show),
            no_longer: (0..self.shop.sources.len())
                .map(|source| no_longer(&prepared, source, show))
                .collect(),
            scale_percent: scale_percent(&prepared, &heats),
            riveted: self
                .pair
                .as_ref()
                .map(|(_, answers)| riveted(&answers.model, &self.shop)),
            of: self.of,
            plan: self.plan.clone(),
            prepared,
            heats,
            show,
        }
    }
}

/// The thread's side.
struct Answer {
    teller: Sender<Told>,
    stopped: Arc<AtomicBool>,
    ctx: Context,
}

impl Answer {
    /// The heats first, then each of them followed, then what else could be done.
    fn to(&self, asked: &Question) {
        let heat = asked.heat();
        let (prepared, heats) = (heat.prepared.clone(), heat.heats.clone());
        if self.tell(Told::Heat(Box::new(heat))).is_none() {
            return;
        }
        if self.courses(&prepared, &heats).is_none() {
            return;
        }
        let compared = asked
            .pair
            .as_ref()
            .map_or_else(Vec::new, |(document, answers)| {
                compare(document, (&answers.model, &answers.balance), &asked.shop)
            });
        self.tell(Told::Others(priced(&prepared, &heats), compared));
    }

    /// Each heat of the plan, from what the one before has left in the piece.
    fn courses(&self, prepared: &Prepared, heats: &HeatPlan) -> Option<()> {
        let mut warm = Warmth::default();
        let mut half = 0;
        for heated in &heats.operations {
            let own = prepared.rows[heated.row].half;
            if std::mem::replace(&mut half, own) != own {
                warm = Warmth::default();
            }
            let found = heated.source.and_then(|source| {
                let at = (heated.row, source);
                Some((at, course(prepared, at, &warm)?))
            });
            // Cold work and other pieces let it go cold.
            let left = found.as_ref().map(|(_, own)| own.left.clone());
            let before = std::mem::replace(&mut warm, left.unwrap_or_default());
            if let Some((at, found)) = found {
                self.tell(Told::Course(at, before, Box::new(found)))?;
            }
        }
        Some(())
    }

    /// Tells a step; nothing where nobody wants to know any more.
    fn tell(&self, told: Told) -> Option<()> {
        if self.stopped.load(Ordering::Relaxed) {
            return None;
        }
        self.teller.send(told).ok()?;
        self.ctx.request_repaint();
        Some(())
    }
}
