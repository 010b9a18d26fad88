//! A book that keeps everything in memory: the window is driven against it, and tests read what was written.

use rungwright::ui::book::{Book, Deed, Done, News};
use rungwright::ui::views::*;
use rungwright::units::{Outcome, Rail};

use crate::{sample_ladders, sample_next, sample_roster, sample_totals, sample_week};

pub struct FakeBook {
    pub open: bool,
    pub revision: u64,
    pub next: NextView,
    pub ladders: LaddersView,
    pub roster: RosterView,
    pub totals: TotalsView,
    pub week: WeekView,
    pub class: ClassView,
    pub deeds: Vec<Deed>,
    pub saved: Saved,
    pub banner: Option<Banner>,
    /// The next deed fails with these words.
    pub fails: Option<String>,
    /// Long work: what, done, of how many.
    pub working: Option<(String, u64, u64)>,
}

impl FakeBook {
    /// With the sample gym open.
    pub fn open() -> Self {
        Self {
            open: true,
            revision: 1,
            next: sample_next::usual(),
            ladders: LaddersView {
                open: Some(sample_ladders::one_arm()),
                others: others(),
                strength: vec![],
            },
            roster: sample_roster::gym(),
            totals: sample_totals::dip(70),
            week: sample_week::usual(),
            class: sample_roster::class(),
            deeds: vec![],
            saved: Saved::At {
                time: "18:42".into(),
                device: "this laptop".into(),
            },
            banner: None,
            fails: None,
            working: None,
        }
    }

    /// Before anything is open.
    pub fn closed() -> Self {
        Self {
            open: false,
            ..Self::open()
        }
    }

    fn card(&mut self, rail: Rail, ladder: &str) -> Option<&mut CardView> {
        self.next
            .ladders
            .iter_mut()
            .flat_map(|group| &mut group.cards)
            .find(|card| card.rail == rail && card.ladder == ladder)
    }
}

fn others() -> Vec<OtherLadder> {
    let ladder = |id: &str, title: &str, joined| OtherLadder {
        id: id.into(),
        title: title.into(),
        joined,
        broken: None,
    };
    vec![
        ladder("one-arm-pull-up", "One-arm pull-up", true),
        ladder("front-lever", "Front lever", false),
        OtherLadder {
            broken: Some("small-steps.ron:12:9: demand falls along the main line".into()),
            ..ladder("small-steps", "Small steps", false)
        },
    ]
}

impl Book for FakeBook {
    fn is_open(&self) -> bool {
        self.open
    }
    fn revision(&self) -> u64 {
        self.revision
    }
    fn frame(&self) -> FrameView {
        FrameView {
            logbook: "Kiln Yard".into(),
            places: vec![Place::Roster, Place::Next, Place::Ladders],
            athlete: Some(AthleteLine {
                name: "Dele Akintola".into(),
                nth: 5,
                of: 36,
            }),
            saved: self.saved.clone(),
            banner: self.banner.clone(),
        }
    }
    fn roster(&self) -> RosterView {
        self.roster.clone()
    }
    fn next(&self) -> NextView {
        self.next.clone()
    }
    fn ladders(&self) -> LaddersView {
        self.ladders.clone()
    }
    fn totals(&self) -> TotalsView {
        self.totals.clone()
    }
    fn week(&self) -> WeekView {
        self.week.clone()
    }
    fn first(&self) -> FirstView {
        FirstView {
            demo_words: "36 invented athletes, 14 months of sets.".into(),
            ladders: vec![
                LadderChoice {
                    id: "first-pull-up".into(),
                    title: "First pull-up".into(),
                    goal: "3 strict pull-ups, own weight.".into(),
                    sided: false,
                    rungs: vec!["Dead hang".into(), "Row".into()],
                    questions: vec![("Dead hang".into(), true), ("Row".into(), false)],
                },
                LadderChoice {
                    id: "one-arm-pull-up".into(),
                    title: "One-arm pull-up".into(),
                    goal: "One strict pull-up with each arm.".into(),
                    sided: true,
                    rungs: vec!["Pull-up".into()],
                    questions: vec![
                        ("Pull-up, own weight".into(), false),
                        ("Three fingers help".into(), false),
                    ],
                },
            ],
            new_folder: "your documents, folder Rungwright".into(),
            problem: None,
        }
    }
    fn import(&self) -> Option<ImportView> {
        matches!(self.deeds.last(), Some(Deed::PreviewImport(_))).then(|| ImportView {
            columns: vec![
                ("who".into(), Some("athlete".into())),
                ("when".into(), Some("date".into())),
                ("mood".into(), None),
            ],
            known_columns: vec!["athlete", "date", "movement", "reps"],
            rows: vec![
                ImportRow {
                    line: 2,
                    text: "Ana,2025-10-01,ok".into(),
                    problem: None,
                },
                ImportRow {
                    line: 3,
                    text: "Ana,1.10.25,ok".into(),
                    problem: Some("1.10.25 is no date; write it as 2025-10-01".into()),
                },
            ],
            good: 1,
            bad: 1,
            into: "A new logbook is made in your documents, folder Rungwright.".into(),
            ..ImportView::default()
        })
    }
    fn perform(&mut self, deed: Deed) -> Done {
        self.deeds.push(deed.clone());
        if let Some(words) = self.fails.take() {
            self.saved = Saved::Not { why: words.clone() };
            return Done::Failed(words);
        }
        self.revision += 1;
        match deed {
            Deed::Log(set) => {
                let words = format!("{} reps", set.amount);
                let nth = self.next.logged.len();
                let missed = if set.outcome == Outcome::Missed {
                    ", missed"
                } else {
                    ""
                };
                self.next.logged.insert(
                    0,
                    LoggedLine {
                        id: format!("new{nth}"),
                        time: "18:45".into(),
                        rail: Some(set.rail),
                        what: set.rung.clone(),
                        result: format!("{words}{missed}"),
                        best: None,
                        doubt: None,
                    },
                );
                if let Some(CardView {
                    asked: Asked::Work(work),
                    ..
                }) = self.card(set.rail, &set.ladder)
                {
                    work.done.push(words);
                }
            }
            Deed::Undo => {
                self.next.logged.remove(0);
            }
            Deed::OpenDemo | Deed::Start(_) => self.open = true,
            _ => {}
        }
        Done::Ok(None)
    }
    fn class(&self) -> ClassView {
        self.class.clone()
    }
    fn gym(&self) -> GymView {
        GymView {
            ladders: vec![
                ("first-pull-up".into(), "First pull-up".into()),
                ("front-lever".into(), "Front lever".into()),
            ],
            out_folder: "/home/coach".into(),
            today: "2026-11-26".into(),
            archived: vec![("gus".into(), "Gus Ohlin".into())],
            ..GymView::default()
        }
    }
    fn poll(&mut self) -> News {
        News::None
    }
    fn progress(&self) -> Option<(String, u64, u64)> {
        self.working.clone()
    }
    fn stop(&mut self) {
        self.working = None;
    }
}
