//! One screen a place. Each is a function of a ready view, its own state and the actions it pushes; it holds no rule of the trade.

pub mod at_the_bar;
pub mod first;
mod heading;
pub mod import;
pub mod journal;
pub mod ladders;
pub mod next;
mod past_days;
pub mod printing;
pub mod roster;
mod screen;
pub mod settings;
pub mod sheet;
pub mod strength;
pub mod totals;
pub mod week;
pub mod weigh_ins;
pub mod workshop;

pub use screen::{Around, Screen};

use super::views::Place;
use journal::JournalScreen;
use ladders::LaddersScreen;
use next::NextScreen;
use roster::RosterScreen;
use settings::SettingsScreen;
use totals::TotalsScreen;
use week::WeekScreen;
use weigh_ins::WeighInsScreen;
use workshop::WorkshopScreen;

/// Every place.
#[derive(Default)]
pub struct Screens {
    /// Everyone.
    pub roster: RosterScreen,
    /// Today's prescriptions. The bar view and the clocks look at it too.
    pub next: NextScreen,
    /// The two-rail ladder.
    pub ladders: LaddersScreen,
    /// What was lifted at each bodyweight.
    pub totals: TotalsScreen,
    /// Hard sets and joints of a week.
    pub week: WeekScreen,
    /// Bodyweight over time.
    pub weigh_ins: WeighInsScreen,
    /// Every record of the open athlete.
    pub journal: JournalScreen,
    /// Ladders as text.
    pub workshop: WorkshopScreen,
    /// Settings of the window.
    pub settings: SettingsScreen,
}

impl Screens {
    /// The screen of a place.
    pub fn of(&mut self, place: Place) -> &mut dyn Screen {
        match place {
            Place::Roster => &mut self.roster,
            Place::Next => &mut self.next,
            Place::Ladders => &mut self.ladders,
            Place::Totals => &mut self.totals,
            Place::Week => &mut self.week,
            Place::WeighIns => &mut self.weigh_ins,
            Place::Journal => &mut self.journal,
            Place::Workshop => &mut self.workshop,
            Place::Settings => &mut self.settings,
        }
    }
}
