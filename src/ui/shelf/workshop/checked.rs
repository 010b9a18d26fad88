//! A text as the check sees it, among the logbook's other files.

use crate::body::{Body, demand};
use crate::catalogue::{Catalogue, Ladder, OwnFile};
use crate::problem::{Problem, Severity};
use crate::ui::shelf::opened::Opened;
use crate::ui::views::{BranchView, LadderView, Mistake, RungState, RungView, SheetView};

use super::super::{ladders, say};

/// Where own ladders lie.
pub(super) const LADDERS: &str = "ladders/";
/// What the keys of shipped files begin with.
pub(super) const SHIPPED: &str = "shipped/";
/// The own movements.
pub(super) const MOVEMENTS: &str = "movements.ron";

/// What a text comes to.
pub(super) struct Checked {
    /// What is wrong in it, in the order of its lines.
    pub problems: Vec<Problem>,
    /// Its ladder, where it makes one.
    pub ladder: Option<Ladder>,
    /// The movements and ladders that would be in force with it.
    pub catalogue: Catalogue,
}

impl Checked {
    /// Checks `text` as the own file `file`, in place of what is there: exactly what `check` would say of it once it is saved.
    pub fn of(opened: &Opened, file: &str, text: &str) -> Self {
        let mut files: Vec<OwnFile> = opened.own_files();
        files.retain(|other| other.path != file);
        let own = OwnFile::new(file, text);
        files.push(own.clone());
        let (catalogue, mut problems) = Catalogue::shipped().with_own(&files);
        problems.retain(|problem| problem.place.file == file);
        let ladder = if own.is_movements() {
            None
        } else {
            problems.extend(demand::warnings(&catalogue, &own));
            catalogue.read_ladder(file, text).0
        };
        problems.sort();
        Self {
            problems,
            ladder,
            catalogue,
        }
    }

    /// How many mistakes keep it from being used.
    pub fn errors(&self) -> usize {
        let is_error = |problem: &&Problem| problem.severity == Severity::Error;
        self.problems.iter().filter(is_error).count()
    }

    /// The text with its mistake of this number mended; none where a person must decide, or where it would not help.
    pub fn mended(&self, opened: &Opened, file: &str, text: &str, nth: usize) -> Option<String> {
        let problem = self.problems.get(nth)?;
        let mended = problem.edit.as_ref()?.made_in(text)?;
        let after = Self::of(opened, file, &mended);
        let is_left = after
            .problems
            .iter()
            .any(|left| left.place == problem.place && left.what == problem.what);
        (!is_left).then_some(mended)
    }
}

/// A problem as the Workshop shows it.
pub(super) fn mistake(problem: &Problem) -> Mistake {
    let width = problem
        .excerpt
        .as_ref()
        .map_or(1, |excerpt| excerpt.to.saturating_sub(excerpt.from).max(1));
    Mistake {
        line: problem.place.line,
        column: problem.place.column,
        width,
        what: problem.what.clone(),
        mend: problem.mend.clone(),
        by_key: problem.edit.is_some(),
        is_warning: problem.severity == Severity::Warning,
    }
}

/// A ladder without anybody on it, with what each rung asks of `body`.
pub(super) fn drawn(ladder: &Ladder, catalogue: &Catalogue, body: &Body) -> LadderView {
    let demands = demand::demands(ladder, catalogue, body);
    let of = |id: &str| demands.iter().find(|demand| demand.rung == id);
    let centre = |id: &str| of(id)?.demand.map(crate::body::Band::centre);
    let sheet = |id: &str| SheetView {
        sections: Vec::new(),
        demand_band: of(id)
            .and_then(|demand| demand.demand)
            .map(|band| (band.low(), band.high())),
    };
    let goal = demand::goal(ladder).map(|goal| goal.id.clone());
    let rungs = ladder.main_line().map(|rung| {
        let is_goal = goal.as_deref() == Some(rung.id.as_str());
        let whence = if rung.demand.is_some() {
            "stated"
        } else {
            "computed"
        };
        RungView {
            id: rung.id.clone(),
            title: rung.title.clone(),
            standard: say::standard(rung),
            demand: centre(&rung.id),
            is_goal,
            state: [RungState::Open; 2],
            status: (!is_goal).then(|| whence.to_owned()),
            status_is_now: false,
            sheet: sheet(&rung.id),
        }
    });
    let branches = ladder.rungs.iter().filter_map(|rung| {
        let crate::catalogue::Way::Branch { from, to } = &rung.way else {
            return None;
        };
        Some(BranchView {
            id: rung.id.clone(),
            title: rung.title.clone(),
            line: format!("branch, {}", say::standard(rung)),
            from: ladder.main_index(from)?,
            to: ladder.main_index(to)?,
            demand: centre(&rung.id),
            passed: false,
            sheet: sheet(&rung.id),
        })
    });
    LadderView {
        id: ladder.id.clone(),
        title: ladder.title.clone(),
        sided: ladder.is_sided(),
        rungs: rungs.collect(),
        branches: branches.collect(),
        companions: ladders::companions(catalogue, ladder),
        ..LadderView::default()
    }
}
