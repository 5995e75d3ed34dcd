//! What the workbench does with tools that are begun, by themselves or for a pair.

use std::path::Path;

use egui::Context;
use reinwright_core::asked::Units;

use super::open::Open;
use super::workbench::Workbench;
use crate::disk::{files, versions};
use crate::jobs::cut_wanted;
use crate::jobs::pair_tools::{self, Named};
use crate::window::panels::begin_tool::{BeginTool, ToolOutcome};
use crate::window::panels::dialog::{Next, Purpose};
use crate::window::panels::tools_for::{ToolsAsked, ToolsForPair};

impl Workbench {
    /// Asks which tool, of what size and from which bar.
    pub(super) fn ask_for_tool(&mut self, units: Units) {
        self.shown.begin_tool = Some(BeginTool::new(units));
    }

    /// Shows the tools that the open pair, or each size of the open family, is made with.
    pub(super) fn show_tools_for_pair(&mut self) {
        let pairs = match &self.open {
            Open::Design(design) => vec![design.desk.session.now.clone()],
            Open::Family(bench) => cut_wanted::sizes(&bench.session.now),
            Open::Tool(_) | Open::Tools(_) => {
                let why = "Tools are for a pair of tongs: open the pair that they make first";
                self.tell(Err(why.to_owned()));
                return;
            }
        };
        let name = self.open.session().name();
        let tools = pair_tools::of_all(&pairs);
        self.shown.tools_for = Some(ToolsForPair::of(name, tools));
    }

    /// Shows the questions about tools that are open, and does what they were answered with.
    pub(super) fn questions_of_tools(&mut self, ctx: &Context) {
        if let Some(begin) = &mut self.shown.begin_tool
            && let Some(outcome) = begin.show(ctx, &mut self.shown.fills)
        {
            self.shown.begin_tool = None;
            if let ToolOutcome::Tool(tool) = outcome {
                self.leave_for(ctx, Next::BeginTool(tool));
            }
            ctx.request_repaint();
        }
        if let Some(tools) = &self.shown.tools_for
            && let Some(asked) = tools.show(ctx, &mut self.shown.fills)
        {
            self.shown.tools_for = None;
            match asked {
                ToolsAsked::Close => {}
                ToolsAsked::Open(tool) => self.leave_for(ctx, Next::BeginTool(tool)),
                ToolsAsked::KeepAll(tools) => self.ask(Purpose::Tools(tools)),
            }
            ctx.request_repaint();
        }
    }

    /// Writes tools into a folder, a file each; what stands in a file of the same name is put among
    /// its earlier versions.
    ///
    /// # Errors
    /// One sentence that names the file, what is wrong and the mend.
    pub(super) fn keep_tools(&mut self, folder: &Path, tools: &[Named]) -> Result<(), String> {
        files::make_folder(folder)?;
        for (name, tool) in tools {
            let path = folder.join(format!("{name}.ron"));
            if let Some(all) = &self.remembered.versions {
                versions::put_aside(all, &path)?;
            }
            self.write_beside(&path, reinwright_core::tool::write(tool).as_bytes())?;
        }
        let count = match tools.len() {
            1 => "1 tool".to_owned(),
            count => format!("{count} tools"),
        };
        self.say(Ok(format!("{count} saved into {}", folder.display())));
        Ok(())
    }
}
