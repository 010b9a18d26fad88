//! What stands in the cells, which cell comes after which, and the results they make.

use crate::coaching::typed;
use crate::ui::views::{
    ClassAthlete, ClassResult, ClassSet, ClassView, TypedAt, TypedCell, TypedClass, TypedRow,
};

/// A cell: whose, which row, which set.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub(super) enum Cell {
    Weighs(usize),
    Pain(usize),
    Load(usize, usize),
    Set(usize, usize, usize),
}

impl Cell {
    /// What a screen reader says after whose it is.
    pub fn name(self) -> String {
        match self {
            Cell::Weighs(_) => "weighs".to_owned(),
            Cell::Pain(_) => "pain, like elbow L 4".to_owned(),
            Cell::Load(..) => "load, if another".to_owned(),
            Cell::Set(_, _, set) => format!("set {}", set + 1),
        }
    }
}

/// The texts of all cells.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct Typed {
    athletes: Vec<OfAthlete>,
    /// For a cell that isn't there.
    nowhere: String,
    /// What was typed before of rows that aren't shown now.
    elsewhere: Vec<TypedCell>,
}

#[derive(Debug, Clone, PartialEq, Default)]
struct OfAthlete {
    weighs: String,
    pain: String,
    rows: Vec<OfRow>,
}

#[derive(Debug, Clone, PartialEq, Default)]
struct OfRow {
    load: String,
    sets: Vec<String>,
}

impl Typed {
    pub fn of(view: &ClassView) -> Self {
        let row = |sets: usize| OfRow {
            load: String::new(),
            sets: vec![String::new(); sets],
        };
        let athletes = view.athletes.iter().map(|athlete| OfAthlete {
            rows: athlete.rows.iter().map(|asked| row(asked.sets)).collect(),
            ..OfAthlete::default()
        });
        let mut typed = Self {
            athletes: athletes.collect(),
            ..Self::default()
        };
        for kept in &view.typed.cells {
            match find(view, kept) {
                Some(cell) => typed.text(cell).clone_from(&kept.text),
                None => typed.elsewhere.push(kept.clone()),
            }
        }
        typed
    }

    /// All that is typed, so that it can be kept.
    pub fn kept(&self, view: &ClassView) -> TypedClass {
        let mut cells = self.elsewhere.clone();
        for (of, athlete) in self.athletes.iter().zip(&view.athletes) {
            let mut keep = |at: TypedAt, text: &str| {
                if !text.trim().is_empty() {
                    cells.push(TypedCell {
                        athlete: athlete.athlete.clone(),
                        at,
                        text: text.to_owned(),
                    });
                }
            };
            keep(TypedAt::Weighs, &of.weighs);
            keep(TypedAt::Pain, &of.pain);
            for (row, asked) in of.rows.iter().zip(&athlete.rows) {
                keep(TypedAt::Load(asked.key()), &row.load);
                for (nth, text) in row.sets.iter().enumerate() {
                    keep(TypedAt::Set(asked.key(), nth), text);
                }
            }
        }
        TypedClass { cells }
    }

    /// Empties every cell.
    pub fn clear(&mut self) {
        self.elsewhere.clear();
        for of in &mut self.athletes {
            let cells = of
                .rows
                .iter_mut()
                .flat_map(|row| row.sets.iter_mut().chain([&mut row.load]));
            cells
                .chain([&mut of.weighs, &mut of.pain])
                .for_each(String::clear);
        }
    }

    /// The text of a cell.
    pub fn text(&mut self, cell: Cell) -> &mut String {
        let (Cell::Weighs(who) | Cell::Pain(who) | Cell::Load(who, _) | Cell::Set(who, _, _)) = cell;
        let found = self.athletes.get_mut(who).and_then(|of| match cell {
            Cell::Weighs(_) => Some(&mut of.weighs),
            Cell::Pain(_) => Some(&mut of.pain),
            Cell::Load(_, row) => of.rows.get_mut(row).map(|row| &mut row.load),
            Cell::Set(_, row, set) => of.rows.get_mut(row).and_then(|row| row.sets.get_mut(set)),
        });
        match found {
            Some(text) => text,
            None => &mut self.nowhere,
        }
    }

    /// Whether nothing is typed.
    pub fn is_empty(&self) -> bool {
        let of_athlete = |of: &OfAthlete| {
            let sets = of.rows.iter().flat_map(|row| row.sets.iter().chain([&row.load]));
            sets.chain([&of.weighs, &of.pain])
                .all(|text| text.trim().is_empty())
        };
        self.athletes.iter().all(of_athlete)
    }

    /// How many sets are typed.
    pub fn count(&self) -> usize {
        let rows = self.athletes.iter().flat_map(|of| &of.rows);
        rows.flat_map(|row| &row.sets)
            .filter(|text| !text.trim().is_empty())
            .count()
    }

    /// The cell that Enter goes to: the next set; none after the last.
    pub fn after(&self, cell: Cell) -> Option<Cell> {
        let here = match cell {
            Cell::Weighs(who) => return self.first_from(who, 0),
            Cell::Pain(who) => return self.first_from(who, 0),
            Cell::Load(who, row) => return self.first_from(who, row),
            Cell::Set(who, row, set) => (who, row, set),
        };
        let (who, row, set) = here;
        let sets = self
            .athletes
            .get(who)
            .and_then(|of| of.rows.get(row))
            .map_or(0, |row| row.sets.len());
        if set + 1 < sets {
            Some(Cell::Set(who, row, set + 1))
        } else {
            self.first_from(who, row + 1)
        }
    }

    /// The first set of this row, or of the first row after it that has any.
    fn first_from(&self, who: usize, row: usize) -> Option<Cell> {
        let rows = |who: usize| self.athletes.get(who).map_or(0, |of| of.rows.len());
        if row < rows(who) {
            return Some(Cell::Set(who, row, 0));
        }
        let next = (who + 1..self.athletes.len()).find(|who| rows(*who) > 0)?;
        Some(Cell::Set(next, 0, 0))
    }

    /// What was typed, an athlete each; those with nothing typed are left out.
    ///
    /// # Errors
    /// The first cell that says nothing sound, and what is wrong in it.
    pub fn results(&self, view: &ClassView) -> Result<Vec<ClassResult>, (Cell, String)> {
        let mut results = Vec::new();
        for (who, (of, athlete)) in self.athletes.iter().zip(&view.athletes).enumerate() {
            let mut result = ClassResult {
                athlete: athlete.athlete.clone(),
                pain: of.pain.trim().to_owned(),
                ..ClassResult::default()
            };
            if !of.weighs.trim().is_empty() {
                let wrong = || {
                    (
                        Cell::Weighs(who),
                        format!("{} is no bodyweight; write it like 74.6.", of.weighs.trim()),
                    )
                };
                result.weighs = Some(typed::number(&of.weighs).ok_or_else(wrong)?);
            }
            typed::pain(&of.pain).map_err(|words| (Cell::Pain(who), words))?;
            for (nth, (row, asked)) in of.rows.iter().zip(&athlete.rows).enumerate() {
                let load = load(&row.load).map_err(|words| (Cell::Load(who, nth), words))?;
                for (set, text) in row.sets.iter().enumerate() {
                    let cell = Cell::Set(who, nth, set);
                    let Some(done) = typed::set(text, asked.is_hold).map_err(|words| (cell, words))? else {
                        continue;
                    };
                    result.sets.push(ClassSet {
                        ladder: asked.ladder.clone(),
                        rung: asked.rung.clone(),
                        rail: asked.rail,
                        load,
                        amount: done.amount,
                        is_hold: asked.is_hold,
                        reserve: done.reserve,
                        outcome: done.outcome,
                    });
                }
            }
            if result.weighs.is_some() || !result.pain.is_empty() || !result.sets.is_empty() {
                results.push(result);
            }
        }
        Ok(results)
    }
}

/// The cell that a kept text belongs to.
fn find(view: &ClassView, kept: &TypedCell) -> Option<Cell> {
    let is_whose = |athlete: &ClassAthlete| athlete.athlete == kept.athlete;
    let who = view.athletes.iter().position(is_whose)?;
    let rows = &view.athletes.get(who)?.rows;
    let row = |key: &TypedRow| rows.iter().position(|row| row.key() == *key);
    match &kept.at {
        TypedAt::Weighs => Some(Cell::Weighs(who)),
        TypedAt::Pain => Some(Cell::Pain(who)),
        TypedAt::Load(key) => Some(Cell::Load(who, row(key)?)),
        TypedAt::Set(key, set) => {
            let nth = row(key)?;
            (*set < rows.get(nth)?.sets).then_some(Cell::Set(who, nth, *set))
        }
    }
}

/// A load as typed: `17.5`, or with a minus sign help.
fn load(text: &str) -> Result<Option<f64>, String> {
    let text = text.trim();
    if text.is_empty() {
        return Ok(None);
    }
    let (sign, digits) = match text.strip_prefix(['-', '−']) {
        Some(digits) => (-1.0, digits),
        None => (1.0, text.strip_prefix('+').unwrap_or(text)),
    };
    match typed::number(digits) {
        Some(value) => Ok(Some(sign * value + 0.0)),
        None => Err(format!("{text} is no load; write it like 17.5, or −10 for help.")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ui::views::ClassRow;
    use crate::units::{Outcome, Rail};

    fn class() -> ClassView {
        let row = |sets: usize| ClassRow {
            ladder: "weighted-dip".into(),
            rung: "plus-25".into(),
            rail: Rail::Both,
            title: "A quarter of you on the belt".into(),
            asked: "3 × 5–8".into(),
            load: "17.5".into(),
            is_help: false,
            sets,
            prefill: "5 1".into(),
            is_hold: false,
            logged: 0,
        };
        let athlete = |name: &str, rows| ClassAthlete {
            athlete: name.to_lowercase(),
            name: name.into(),
            weighs: "80".into(),
            weigh_in_first: false,
            rows,
        };
        ClassView {
            day: "Thu 26 Nov".into(),
            unit: "kg",
            typed: TypedClass::default(),
            athletes: vec![
                athlete("Ana", vec![row(2), row(1)]),
                athlete("Bo", vec![]),
                athlete("Cy", vec![row(1)]),
            ],
        }
    }

    #[test]
    fn enter_walks_every_set_of_the_class_and_nothing_else() {
        let typed = Typed::of(&class());
        let mut walked = vec![Cell::Set(0, 0, 0)];
        while let Some(next) = typed.after(*walked.last().unwrap()) {
            walked.push(next);
        }
        let sets = [(0, 0, 0), (0, 0, 1), (0, 1, 0), (2, 0, 0)];
        assert_eq!(walked, sets.map(|(who, row, set)| Cell::Set(who, row, set)));
    }

    #[test]
    fn only_what_was_typed_becomes_a_result() {
        let view = class();
        let mut typed = Typed::of(&view);
        assert!(typed.is_empty());
        *typed.text(Cell::Set(0, 0, 1)) = "6 0".into();
        *typed.text(Cell::Load(0, 0)) = "20".into();
        *typed.text(Cell::Set(2, 0, 0)) = "4 m".into();
        let results = typed.results(&view).unwrap();
        assert_eq!(results.len(), 2);
        assert_eq!(results[0].sets[0].load, Some(20.0));
        assert_eq!(
            (results[0].sets[0].amount, results[0].sets[0].reserve),
            (6.0, Some(0.0))
        );
        assert_eq!(results[1].sets[0].outcome, Outcome::Missed);
        assert_eq!(typed.count(), 2);
    }

    #[test]
    fn what_is_kept_comes_back_to_its_cells_in_any_other_class_too() {
        let mut view = class();
        view.athletes[0].rows[1].rung = "plus-50".into();
        let mut typed = Typed::of(&view);
        *typed.text(Cell::Weighs(2)) = "71.5".into();
        *typed.text(Cell::Set(0, 1, 0)) = "4 m".into();
        view.typed = typed.kept(&view);
        assert_eq!(Typed::of(&view), typed);
        view.athletes.reverse();
        let mut turned = Typed::of(&view);
        assert_eq!(turned.text(Cell::Weighs(0)), "71.5");
        assert_eq!(turned.text(Cell::Set(2, 1, 0)), "4 m");
        view.athletes.pop();
        let without = Typed::of(&view);
        assert_eq!(without.kept(&view).cells.len(), 2, "nobody's results are dropped");
    }

    #[test]
    fn a_slip_is_named_with_its_cell_and_nothing_is_saved() {
        let view = class();
        let mut typed = Typed::of(&view);
        *typed.text(Cell::Set(0, 0, 0)) = "5 1".into();
        *typed.text(Cell::Set(2, 0, 0)) = "sick".into();
        assert_eq!(typed.results(&view).unwrap_err().0, Cell::Set(2, 0, 0));
    }
}
